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
	d.Sections = append(d.Sections, with(s, para("%s from %s, each of eight wedges %s high, %s.", measure.Count(len(p.Motifs), "center"), p.Fabric, units.Nearest(p.WedgeFinished), motifPairs(p)),
		t, para("Write the line of the one you like, and its name for the wedges of a block: wedges %s.", p.Motifs[0].Name), lines))
	if few := p.Asked - len(p.Motifs); few > 0 {
		d.Sections[0].Blocks = append(d.Sections[0].Blocks, para("One repeat has no more places that are different; you asked for %d.", p.Asked))
	}
	d.Sections = append(d.Sections, with(section("mirror-lines", "Mirror lines", document.Answer), mirrorLines(units, p)))
	d.Sections = append(d.Sections, with(section("how-chosen", "How they were chosen", document.Why), motifsWhy(units, p)))
	return d
}

// motifPairs is how eight wedges are cut.
func motifPairs(p *motifs.Plan) string {
	if p.Mirrored {
		return "four cut alike and four mirrored"
	}
	return "cut alike"
}

// mirrorLines says where a print's mirror lines are.
func mirrorLines(units measure.System, p *motifs.Plan) document.Block {
	var list []string
	for _, way := range []struct {
		lines []measure.NM
		any   bool
		runs  string
		off   string
	}{{p.Lengthwise, p.AnyLengthwise, "along the selvages", "across"}, {p.Crosswise, p.AnyCrosswise, "across the width of fabric", "down"}} {
		var places []string
		for _, at := range way.lines {
			places = append(places, units.Nearest(at))
		}
		switch {
		case way.any:
			list = append(list, "any line "+way.runs)
		case len(places) > 0:
			list = append(list, fmt.Sprintf("lines %s, %s %s", way.runs, measure.List(places), way.off))
		}
	}
	if len(list) == 0 {
		return para("The print has no mirror line, so its wedges cannot be mirrored in pairs.")
	}
	says := fmt.Sprintf("The print is its own mirror image at %s.", strings.Join(list, ", and at "))
	if !p.Mirrored {
		says += " So every other wedge can be cut mirrored, and neighbors meet in mirror image: add --mirrored to see such centers."
	}
	return para("%s", says)
}

// motifsWhy says how places were chosen.
func motifsWhy(units measure.System, p *motifs.Plan) document.Block {
	apart := "Any two are at least " + units.AtMost(p.Apart) + " apart on the fabric"
	if p.Apart < units.CutMark() {
		apart = "Any two are at different places of the fabric"
	}
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
	for _, word := range []string{" pointing ", " mirrored"} {
		if at := strings.Index(lines[1], word); at >= 0 {
			return []string{lines[0], lines[1][:at], lines[1][at+1:]}
		}
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
	case motifs.Even, motifs.Pinwheel, motifs.FourPoints, motifs.Mixed:
		return m.Figure.String(), ""
	case motifs.Rim:
		return tone + "edge", other
	}
	return tone + m.Figure.String(), other
}
