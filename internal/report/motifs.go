package report

import (
	"fmt"
	"math"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/motifs"
)

// Motifs is the centers that a print gives, with the line to write for each.
func Motifs(name string, units measure.System, p *motifs.Plan) document.Document {
	d := document.Document{Title: name + ": " + motifsTitle(p)}
	t := table(counts(""), words("eight wedges make"), counts("light"), lengths("across"), lengths("down"), counts("pointing"))
	lines := document.Source{}
	for i := range p.Motifs {
		m := &p.Motifs[i]
		t.Rows = append(t.Rows, row(number(i+1), MotifLooks(m), motifLight(m), units.Number(m.Across), units.Number(m.Down), number(m.Pointing)))
		lines.Lines = append(lines.Lines, m.Line)
	}
	s := section("centers", "Centers", document.Answer)
	d.Sections = append(d.Sections, with(s, para("%s from %s, each of eight wedges %s high, cut alike.", measure.Count(len(p.Motifs), "center"), p.Fabric, units.Nearest(p.WedgeFinished)),
		t, para("Write the line of the one you like, and its name for the wedges of a block: wedges %s.", p.Motifs[0].Name), lines))
	if few := p.Asked - len(p.Motifs); few > 0 {
		d.Sections[0].Blocks = append(d.Sections[0].Blocks, para("One repeat has no more places that are different; you asked for %d.", p.Asked))
	}
	d.Sections = append(d.Sections, with(section("how-chosen", "How they were chosen", document.Why), motifsWhy(units, p)))
	return d
}

// motifsWhy says how places were chosen.
func motifsWhy(units measure.System, p *motifs.Plan) document.Block {
	apart := "Any two are at least " + units.AtMost(p.Apart) + " apart on the fabric"
	if p.Striped {
		apart += ", or turned by " + number(motifs.Quarter) + " degrees or more"
	}
	return paragraph("The first has the most contrast within the wedge. Each next one adds contrast and looks least like those before it; mirror images count as alike. " + apart +
		". Light is the part of the wedge that is lighter than the middle of the print. Busy: small shapes have more contrast than the figure.")
}

// motifsTitle says what is shown.
func motifsTitle(p *motifs.Plan) string { return "centers from " + p.Fabric }

// MotifsHeading is the title on a picture.
func MotifsHeading(p *motifs.Plan) string { return capital(motifsTitle(p)) }

// MotifName heads a center: its number and what stands out of it.
func MotifName(number int, m *motifs.Motif) string {
	figure, _ := motifFigure(m)
	return fmt.Sprintf("%d. %s", number, figure)
}

// MotifSays is the line to write for a center, in short ones.
func MotifSays(m *motifs.Motif) []string {
	place := strings.Index(m.Line, " across ")
	lines := []string{m.Line[:place], m.Line[place+1:]}
	if pointing := strings.Index(lines[1], " pointing "); pointing >= 0 {
		lines = []string{lines[0], lines[1][:pointing], lines[1][pointing+1:]}
	}
	return lines
}

// motifLight is how much of a wedge is light.
func motifLight(m *motifs.Motif) string { return fmt.Sprintf("%.0f%%", math.Round(100*m.Share)) }

// MotifLooks is what eight like wedges make, in a few words.
func MotifLooks(m *motifs.Motif) string {
	figure, ground := motifFigure(m)
	if m.Busy {
		ground += ", busy"
	}
	return figure + ground
}

// motifFigure is what stands out of eight like wedges, and what it lies on.
func motifFigure(m *motifs.Motif) (figure, ground string) {
	tone, other := "dark ", " on light"
	if m.Light {
		tone, other = "light ", " on dark"
	}
	switch m.Figure {
	case motifs.Even, motifs.Pinwheel, motifs.Mixed:
		return m.Figure.String(), ""
	case motifs.Rim:
		return tone + "edge", other
	}
	return tone + m.Figure.String(), other
}
