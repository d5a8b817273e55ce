package report

import (
	"fmt"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// Sections of Class.
const (
	ClassBring    = "bring"
	ClassProvided = "provided"
)

// classroom words what a class needs. Where several quilts are planned, each student has a kit with the pieces of one.
type classroom struct {
	*cuts
	one *cuts // for one quilt
}

// Class is what to bring to a class and what is provided there.
func Class(p *Plans) document.Document {
	c := &classroom{newCuts(p), newCuts(p.as(p.One()))}
	return document.Document{Title: p.named("class handout"), Sections: []document.Section{c.bring(), c.provided()}}
}

// kits says whether kits are provided.
func (c *classroom) kits() bool { return c.Copies > 1 }

// bring is what each one brings.
func (c *classroom) bring() document.Section {
	out := document.Section{ID: ClassBring, Title: "What to bring"}
	list := document.List{Marker: document.Tick}
	add := func(texts ...string) {
		for _, text := range texts {
			list.Items = append(list.Items, item(text))
		}
	}
	add("sewing machine with power cord, foot pedal and a "+c.Units.Nearest(c.plans.Top.Seam)+" presser foot", "new needle, thread, thread scissors and a seam ripper")
	add(c.tools(!c.kits())...)
	add("fine pins", "pencil and paper")
	out.Blocks = append(out.Blocks, list)
	if !c.kits() {
		out.Blocks = append(out.Blocks, document.Section{ID: "your-fabrics", Title: "Your fabrics", Blocks: []document.Block{para("Prewash and press all of them, or none."), c.bringTable()}})
	}
	out.Blocks = append(out.Blocks, document.Section{ID: "for-later", Title: "For later, at home", Blocks: []document.Block{c.later()}})
	return out
}

// bringTable is the cloth for one quilt.
func (c *classroom) bringTable() document.Table {
	t := table(words("fabric"), counts("bring"))
	t.Named = true
	for i := range c.one.Fabrics {
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{c.one.boughtCell(i), cell(c.one.bought(&c.one.Fabrics[i]))}})
	}
	return t
}

// later is what is needed at home, and whether its cloth is in a list or a kit already.
func (c *classroom) later() document.List {
	where := "; its fabric is included in your list and can stay at home"
	if c.kits() {
		where = "; its fabric is in the kit"
	}
	outer := c.plans.Top.Outer
	led := func(bold, format string, args ...any) document.Item {
		return document.Item{Text: lead(bold, format, args...)}
	}
	items := []document.Item{led("Backing:", "of your choice, larger than the top on all sides; the top finishes at %s.", c.Units.Size(outer.Width(), outer.Height()))}
	switch k := c.one.Backing; {
	case k != nil && c.one.BackingOf < 0:
		items[0] = led("Backing:", "of your choice, at least %s: %s of fabric %s wide.", c.Units.ByAtLeast(k.WidthCut, k.HeightCut), c.Units.Shop(c.one.BackingBuy.Buy), c.Units.Nearest(k.UsableWidth))
	case k != nil:
		items[0] = led("Backing:", "at least %s%s.", c.Units.ByAtLeast(k.WidthCut, k.HeightCut), where)
	}
	batting := "a little larger than the top"
	if k := c.one.Batting; k != nil {
		batting = "at least " + c.Units.ByAtLeast(k.WidthCut, k.HeightCut)
	}
	if c.kits() {
		batting += "; it is not in the kit"
	}
	items = append(items, led("Batting:", "%s.", batting))
	if k := c.one.Binding; k != nil {
		return document.List{Items: append(items, led("Binding:", "%s %s wide%s.", measure.Count(k.Strips, "strip"), c.Units.Nearest(k.StripCut), where))}
	}
	return document.List{Items: append(items, led("Binding:", "of your choice."))}
}

// provided is what is there already.
func (c *classroom) provided() document.Section {
	out := document.Section{ID: ClassProvided, Title: "What is provided"}
	list := []string{"irons and ironing boards, to share", "the pattern, and a sewn block to look at"}
	if !c.kits() {
		out.Blocks = bullets(list...)
		return out
	}
	kits := measure.Count(c.Copies, "kit")
	list = append(list, "a kit for each student, "+kits+" in all: the pieces of one "+c.kitHolds()+", already cut")
	buy := c.toBuy().Blocks[0].(document.Table)
	if c.BackingBuy.Buy > 0 { // which is not in the kits
		buy.Rows = buy.Rows[:len(buy.Rows)-1]
	}
	to := document.Section{ID: "for-the-teacher", Title: "For the teacher: fabric for " + kits,
		Blocks: []document.Block{para("Cut all kits at once, combining their strips: this takes less fabric than cutting each kit separately."), buy}}
	out.Blocks = append(bullets(list...),
		document.Section{ID: "in-each-kit", Title: "In each kit", Blocks: []document.Block{c.kitTable(), para("Not in the kit: %s.", measure.List(c.notInKit()))}}, to)
	return out
}

// kitHolds is what a kit is for.
func (c *classroom) kitHolds() string {
	list := []string{"top"}
	if c.one.Binding != nil {
		list = append(list, "its binding")
	}
	if c.one.BackingOf >= 0 {
		list = append(list, "its backing")
	}
	return measure.List(list)
}

// notInKit is what each one needs beside the kit.
func (c *classroom) notInKit() []string {
	var list []string
	if c.one.BackingOf < 0 {
		list = append(list, "backing")
	}
	list = append(list, "batting")
	if c.one.Binding == nil {
		list = append(list, "binding")
	}
	return append(list, "thread", "tools")
}

// maxKitRows is how long the table of a kit may be; what is beyond is said to be left out.
const maxKitRows = 150

// kitTable is what a kit holds, by fabric: pieces, strips for the strip sets that are sewn in class, binding and backing.
func (c *classroom) kitTable() document.Table {
	t := table(words("fabric"), words("pieces"), counts("number"))
	t.Named = true
	for i := range c.one.Fabrics {
		f := &c.one.Fabrics[i]
		add := func(what string, n int) {
			t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{c.one.boughtCell(i), cell(what), cell(number(n))}})
		}
		for _, n := range f.Lines {
			add(c.kitPiece(&c.one.Lines[n]), c.one.Lines[n].Pieces)
		}
		c.kitStrips(i, add)
		if b := c.plans.Top.CutFacts.Binding; b != nil && b.Fabric == f.Index && c.one.Binding != nil {
			add("strips for the binding, "+c.Units.Nearest(c.one.Binding.StripCut)+" wide", c.one.Binding.Strips)
		}
		if k := c.one.Backing; k != nil && c.one.BackingOf == f.Index {
			add("fabric for the backing, at least "+c.Units.ByAtLeast(k.WidthCut, k.HeightCut), 1)
		}
	}
	if over := len(t.Rows) - maxKitRows; over > 0 {
		t.Rows = append(t.Rows[:maxKitRows], document.Row{Cells: cells("and " + measure.Count(over, "more line") + " in the cutting plan")})
	}
	return t
}

// kitPiece names a piece of a kit; strips by their size, since they come in several lengths.
func (c *classroom) kitPiece(line *cutting.Line) string {
	if line.Border >= 0 && c.one.Longer > 0 && line.Piece.Shape.Description().Edging {
		return fmt.Sprintf("%s, %s by at least %s%s", c.plans.piecesName(line), c.Units.Nearest(line.Piece.AcrossCut), c.Units.AtLeast(line.Piece.AlongCut+c.one.Longer), joinedAlready(line))
	}
	if line.Piece.Shape.Description().Edging {
		return c.plans.piecesName(line) + ", " + c.Units.Size(line.Piece.AcrossCut, line.Piece.AlongCut) + joinedAlready(line)
	}
	return c.plans.piecesName(line)
}

// joinedAlready says that a strip in a kit is joined from shorter ones.
func joinedAlready(line *cutting.Line) string {
	if line.Piece.Method == cutting.Joined {
		return ", joined"
	}
	return ""
}

// kitStrips hands on the strips of a fabric that strip sets are sewn of.
func (c *classroom) kitStrips(fabric int, with func(what string, n int)) {
	for i := range c.one.Sets {
		for _, b := range c.one.Sets[i].Bands {
			if b.Fabric != fabric {
				continue
			}
			for _, r := range c.one.Sets[i].Runs {
				with(fmt.Sprintf("strips for %s, %s by at least %s", c.one.setName(i, false), c.Units.Nearest(b.WidthCut), c.Units.AtLeast(r.LengthCut)), r.Sets)
			}
		}
	}
}
