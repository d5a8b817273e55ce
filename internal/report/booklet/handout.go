package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
)

// Handout is the paper for a class: what to bring, what is provided, the plan of the day. Where the plan is for several
// quilts, each is a kit.
func Handout(r Reports, o Options) document.Document {
	b := newBook(r, o)
	b.bring()
	b.provided()
	b.day()
	b.abbreviations(b.saidIn(nil))
	d := b.document(b.parts)
	d.Cover.Subtitle = "Class handout"
	d.Subject = "A class handout: what to bring, what is provided, the class schedule."
	return d
}

// single is the plan for one quilt.
func (b *patternBuilder) single() *cutting.Plan {
	if b.One != nil {
		return b.One
	}
	return b.Cuts
}

// kits says whether the cloth of the tops is provided.
func (b *patternBuilder) kits() bool { return b.Cuts.Copies > 1 }

// bring is what each one brings.
func (b *patternBuilder) bring() {
	b.part("What to bring", true)
	b.addNotes("")
	list := document.List{Marker: document.Tick}
	tick := func(format string, args ...any) { list.Items = append(list.Items, item(para(format, args...).Text)) }
	tick("sewing machine with power cord, foot pedal and a presser foot for a %s seam allowance", b.length(b.Top.Seam))
	tick("new needle, thread, thread scissors and a seam ripper")
	for _, tool := range b.cuttingTools() {
		tick("%s", tool)
	}
	tick("fine pins")
	tick("pencil and paper")
	b.add(list)
	if !b.kits() {
		b.add(heading(1, "Your fabrics"), para("Prewash and press all of them, or none."), b.bringTable())
	}
	b.laterNeeds()
	b.cautions()
}

// bringTable is the cloth for one quilt.
func (b *patternBuilder) bringTable() document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Fabric"}, {Title: "Bring", Kind: document.Counts}}}
	plan := b.single()
	for i := range plan.Fabrics {
		f := &plan.Fabrics[i]
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{b.fabricCell(f), cell(b.shop(f.Purchase.Buy))}})
	}
	return t
}

// laterNeeds is what is needed at home, and whether its cloth is in a list or a kit already.
func (b *patternBuilder) laterNeeds() {
	where := "; its fabric is included in your list and can stay at home"
	if b.kits() {
		where = "; its fabric is in the kit"
	}
	plan := b.single()
	items := []document.Item{item(lead("Backing:", "of your choice, larger than the top on all sides; the top finishes at %s.", b.size(b.Top.Outer.Width(), b.Top.Outer.Height())))}
	if k := plan.Backing; k != nil {
		items[0] = item(lead("Backing:", "at least %s%s.", b.sizeAtLeast(k.WidthCut, k.HeightCut), where))
	}
	batting := "a little larger than the top"
	if k := plan.Batting; k != nil {
		batting = "at least " + b.sizeAtLeast(k.WidthCut, k.HeightCut)
	}
	if b.kits() {
		batting += "; it is not in the kit"
	}
	items = append(items, item(lead("Batting:", "%s.", batting)))
	if k := plan.Binding; k != nil {
		items = append(items, item(lead("Binding:", "%s %s wide%s.", count(k.Strips, "strip"), b.length(k.StripCut), where)))
	} else {
		items = append(items, item(lead("Binding:", "of your choice.")))
	}
	b.add(heading(1, "For later, at home"), document.List{Items: items})
}

// provided is what is there already.
func (b *patternBuilder) provided() {
	b.part("What is provided", false)
	list := []document.Item{item(document.Plain("irons and ironing boards, to share")), item(document.Plain("the pattern, and a sewn block to look at"))}
	if b.kits() {
		list = append(list, item(document.Plain("a kit with the fabric for one "+b.kitHolds()+" for each student, "+count(b.Cuts.Copies, "kit")+" in all")))
	}
	b.keep(document.List{Items: list})
	if !b.kits() {
		return
	}
	b.add(heading(1, "In each kit"), b.kitTable(), para("Not in the kit: %s.", listed(b.notInKit())))
	b.keep(heading(1, "For the teacher: fabric for "+count(b.Cuts.Copies, "kit")),
		para("Cut all kits at once, combining their strips: this takes less fabric than cutting each kit separately."), b.fabricTable())
}

// kitHolds is what a kit's cloth is for.
func (b *patternBuilder) kitHolds() string {
	list := []string{"top"}
	if b.single().Binding != nil {
		list = append(list, "its binding")
	}
	if b.single().Backing != nil {
		list = append(list, "its backing")
	}
	return listed(list)
}

// notInKit is what each one needs beside the kit.
func (b *patternBuilder) notInKit() []string {
	var list []string
	if b.single().Backing == nil {
		list = append(list, "backing")
	}
	list = append(list, "batting")
	if b.single().Binding == nil {
		list = append(list, "binding")
	}
	return append(list, "thread", "tools")
}

// maxRows is how long a table of a kit may be; what is beyond is said to be left out.
const maxRows = 150

// kitPiece names a piece of a kit; strips by their size, since they come in several lengths.
func (b *patternBuilder) kitPiece(line *cutting.Line) string {
	if line.Piece.Shape.Description().Edging {
		return b.pieces(line) + ", " + b.size(line.Piece.AcrossCut, line.Piece.AlongCut)
	}
	return b.pieces(line)
}

// kitTable is the pieces of one quilt by fabric.
func (b *patternBuilder) kitTable() document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Fabric"}, {Title: "Pieces"}, {Title: "Number", Kind: document.Counts}}}
	plan := b.single()
	for i := range plan.Fabrics {
		f := &plan.Fabrics[i]
		for _, n := range f.Lines {
			line := &plan.Lines[n]
			t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{b.fabricCell(f), cell(b.kitPiece(line)), cell(numeral(line.Pieces))}})
		}
	}
	for i := range plan.Sets {
		s := &plan.Sets[i]
		for way, n := range s.Wanted {
			name := "wedges of strip set " + plan.SetName(i)
			if way == 1 {
				name += " reversed"
			}
			if n > 0 {
				t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cell("strip set"), cell(name), cell(numeral(n))}})
			}
		}
	}
	t.Rows = append(t.Rows, b.kitFinishing()...)
	if over := len(t.Rows) - maxRows; over > 0 {
		t.Rows = append(t.Rows[:maxRows], document.Row{Cells: []document.Cell{cell("and " + count(over, "more line") + " in the cutting plan")}})
	}
	return t
}

// kitFinishing is the rows of a kit that are for binding and backing.
func (b *patternBuilder) kitFinishing() []document.Row {
	plan := b.single()
	var rows []document.Row
	row := func(fabric int, what string, number int) {
		for i := range plan.Fabrics {
			if f := &plan.Fabrics[i]; f.Index == fabric {
				rows = append(rows, document.Row{Cells: []document.Cell{b.fabricCell(f), cell(what), cell(numeral(number))}})
			}
		}
	}
	if k := plan.Binding; k != nil {
		row(b.Top.CutFacts.Binding.Fabric, "strips for the binding, "+b.length(k.StripCut)+" wide", k.Strips)
	}
	if k := plan.Backing; k != nil {
		row(plan.BackingOf, "fabric for the backing, at least "+b.sizeAtLeast(k.WidthCut, k.HeightCut), 1)
	}
	return rows
}
