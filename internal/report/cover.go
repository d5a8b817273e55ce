package report

import (
	"strings"

	"eighthturn/internal/document"
)

// CoverLines are what the cover of a pattern says below its picture.
func CoverLines(p *Plans) []document.Text {
	t := p.Top
	lines := []document.Text{
		lead("Finished size:", "%s", t.Units.Size(t.Outer.Width(), t.Outer.Height())),
		lead("Block size:", "%s finished", t.Units.Size(t.SideFinished, t.SideFinished)),
	}
	if (Grid{t, p.Steps()}).Noun() == "column" {
		lines = lines[:1]
	}
	return append(lines, lead("Skill level:", "%s", SkillLevel(p)))
}

// BackCover is what stands on the back of a pattern; with little room, what to buy is a list.
func BackCover(p *Plans, little bool) document.Section {
	c, t := newCuts(p), p.Top
	out := document.Section{ID: "back-cover", Blocks: []document.Block{
		document.Paragraph{Text: lead("Finished size:", "%s", t.Units.Size(t.Outer.Width(), t.Outer.Height()))},
		document.Section{Title: "Fabric requirements", Blocks: []document.Block{c.backTable(little)}},
		document.Section{Title: "Skills", Blocks: []document.Block{paragraph(capital(strings.Join(Skills(p), "; ")) + ".")}},
	}}
	var line []string
	for _, part := range []struct{ word, text string }{{"Pattern ", t.Credits.Number}, {"Version ", t.Credits.Version}, {"", t.Credits.Date}, {"", t.Credits.Copyright}} {
		if part.text != "" {
			line = append(line, part.word+part.text)
		}
	}
	if len(line) > 0 {
		out.Blocks = append(out.Blocks, paragraph(strings.Join(line, " | ")))
	}
	return out
}

// maxOnBack is how many fabrics the back cover has in a table with their colors; up to maxPairedOnBack, or maxPairedLittle with
// little room, stand two to a row, and more are a sentence.
const (
	maxOnBack       = 6
	maxPairedOnBack = 14
	maxPairedLittle = 10
)

// backTable is what to buy, in short.
func (c *cuts) backTable(little bool) document.Block {
	if little || len(c.Fabrics) > maxOnBack {
		list := make([]string, len(c.Fabrics))
		for i := range c.Fabrics {
			list[i] = c.name(i) + ": " + c.Units.Shop(c.Fabrics[i].Purchase.Buy)
		}
		for _, more := range c.besideFabrics() {
			list = append(list, more[0]+": "+more[1])
		}
		switch {
		case len(c.Fabrics) <= maxOnBack:
			return bullets(list...)[0]
		case len(c.Fabrics) <= maxPairedLittle || !little && len(c.Fabrics) <= maxPairedOnBack:
			return paired(list)
		}
		return paragraph(strings.Join(list, "; ") + ".")
	}
	t := table(words("Fabric"), lengths("Buy"))
	t.Named = true
	for i := range c.Fabrics {
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{c.fabricCell(i), cell(c.Units.Shop(c.Fabrics[i].Purchase.Buy))}})
	}
	for _, more := range c.besideFabrics() {
		t.Rows = append(t.Rows, row(more[0], more[1]))
	}
	return t
}

// paired is a list in two columns, to be read down.
func paired(list []string) document.Table {
	t, half := table(words(""), words("")), (len(list)+1)/2
	for i := range half {
		other := ""
		if half+i < len(list) {
			other = list[half+i]
		}
		t.Rows = append(t.Rows, row(list[i], other))
	}
	return t
}

// besideFabrics are what is bought beside the fabrics of the layout, each with its length or size.
func (c *cuts) besideFabrics() [][2]string {
	var list [][2]string
	if c.BackingBuy.Buy > 0 {
		list = append(list, [2]string{chosenBacking, c.Units.Shop(c.BackingBuy.Buy)})
	}
	if c.Batting != nil {
		list = append(list, [2]string{"batting", "at least " + c.Units.ByAtLeast(c.Batting.WidthCut, c.Batting.HeightCut)})
	}
	return list
}

// blank is a place to fill in by hand.
const blank = "____________________"

// ToFillIn are the things that a pattern needs and a layout does not name, for a note to its designer.
func ToFillIn(p *Plans) []string {
	var list []string
	for _, m := range []struct {
		missing bool
		name    string
	}{{p.Top.Credits.Designer == "", "designer"}, {p.Top.CutFacts.Binding == nil, "binding"}} {
		if m.missing {
			list = append(list, m.name)
		}
	}
	return list
}

// Designed names the designer of a quilt, a place to fill in for none.
func Designed(name string) string {
	if name == "" {
		name = blank
	}
	return "Designed by " + name
}
