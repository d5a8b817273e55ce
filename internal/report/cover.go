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

// ShoppingForm is how the back cover says what to buy.
type ShoppingForm uint8

const (
	ShoppingTable    ShoppingForm = iota // a row for each fabric
	ShoppingPairs                        // a table of two fabrics to a row, to be read down
	ShoppingSentence                     // one sentence
	NoShopping                           // not at all: the table of fabrics says it
)

// MaxShoppingRows is how many fabrics a table on the back cover has at the most.
const MaxShoppingRows = 40

// BackCover is what stands on the back of a pattern, with the skills that it asks for or without.
func BackCover(p *Plans, form ShoppingForm, skills bool) document.Section {
	c, t := newCuts(p), p.Top
	out := document.Section{ID: "back-cover", Blocks: []document.Block{
		document.Paragraph{Text: lead("Finished size:", "%s", t.Units.Size(t.Outer.Width(), t.Outer.Height()))},
	}}
	if form != NoShopping {
		out.Blocks = append(out.Blocks, document.Section{Title: "Fabric requirements", Blocks: []document.Block{c.shopping(form)}})
	}
	if skills {
		out.Blocks = append(out.Blocks, document.Section{Title: "Skills", Blocks: []document.Block{paragraph(capital(strings.Join(Skills(p), "; ")) + ".")}})
	}
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

// shopping is what to buy, in short.
func (c *cuts) shopping(form ShoppingForm) document.Block {
	var list [][]document.Cell // each of a fabric and its length
	for i := range c.Fabrics {
		list = append(list, []document.Cell{c.fabricCell(i), cell(c.bought(&c.Fabrics[i]))})
	}
	for _, more := range c.besideFabrics() {
		list = append(list, cells(more[0], more[1]))
	}
	switch form {
	case ShoppingSentence:
		said := make([]string, len(list))
		for i := range list {
			if said[i] = list[i][0].Text.String() + ": " + list[i][1].Text.String(); i < len(c.Fabrics) {
				said[i] = c.name(i) + ": " + list[i][1].Text.String()
			}
		}
		return paragraph(strings.Join(said, "; ") + ".")
	case ShoppingPairs:
		t, half := table(words("Fabric"), lengths("Buy"), words("Fabric"), lengths("Buy")), (len(list)+1)/2
		for i := range half {
			r := document.Row{Cells: list[i]}
			if half+i < len(list) {
				r.Cells = append(r.Cells, list[half+i]...)
			} else {
				r.Cells = append(r.Cells, cells("", "")...)
			}
			t.Rows = append(t.Rows, r)
		}
		return t
	}
	t := table(words("Fabric"), document.Column{Title: "Buy", Kind: document.Lengths, BySize: true})
	t.Named = true
	for _, r := range list {
		t.Rows = append(t.Rows, document.Row{Cells: r})
	}
	return t
}

// besideFabrics are what is bought beside the fabrics of the layout, each with its length or size.
func (c *cuts) besideFabrics() [][2]string {
	var list [][2]string
	if c.BackingBuy.Buy > 0 {
		list = append(list, [2]string{chosenBacking, c.shop(&c.BackingBuy)})
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
