package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/fit"
)

// drawsIn is what sizes of tops leave out: tops that were measured before quilting and after it lost 2.2 to 3.6 in a hundred,
// https://melgeecrafts.com/needlework/your-question-how-much-does-fabric-shrink-when-you-quilt-it.html
const drawsIn = "Sizes are for the finished top. Quilting often shrinks it by 2 to 4%, and the first wash by more."

// Fit is what comes nearest to a wanted size, and what to write for one of the suggestions, counted from 1.
func Fit(name string, r *fit.Report, number int) document.Document {
	f := &fitted{r}
	d := document.Document{Title: name + ": " + f.wish()}
	for _, s := range []document.Section{
		f.now(), f.nearest(), f.toWrite(number), f.grows(), f.lists(), {ID: "draws-in", Depth: document.Detail, Blocks: []document.Block{paragraph(drawsIn)}}, f.bySize(), f.refused(),
	} {
		if len(s.Blocks) > 0 {
			d.Sections = append(d.Sections, s)
		}
	}
	return d
}

// fitted turns suggestions into sections.
type fitted struct{ *fit.Report }

func (f *fitted) length(nm measure.NM) string { return f.Units.Nearest(nm) }

func (f *fitted) size(width, height measure.NM) string { return f.Units.By(width, height) }

// mark is a length to the nearest mark of a ruler, without its unit.
func (f *fitted) mark(nm measure.NM) string {
	return measure.Number(measure.Nearest(nm, f.Units.Mark()), f.Units)
}

// eighth is a length as a whole quilt is measured, to 1/8 in or a millimeter, without its unit.
func (f *fitted) eighth(nm measure.NM) string {
	return f.mark(measure.Nearest(nm, f.eighths()))
}

func (f *fitted) eighths() measure.NM {
	return f.Units.Usual(measure.Inch/8, measure.Millimetre)
}

// signed is a difference with its sign, without its unit.
func (f *fitted) signed(nm measure.NM) string {
	switch near := measure.Nearest(nm, f.eighths()); {
	case near < 0:
		return "-" + f.eighth(-near)
	case near > 0:
		return "+" + f.eighth(near)
	}
	return "0"
}

// wish is the size that is wanted.
func (f *fitted) wish() string {
	w := &f.Wanted
	size := f.size(w.Finished.Width, w.Finished.Height)
	switch {
	case w.Bed == "":
		return "target size " + size
	case w.Drop != 0:
		return fmt.Sprintf("target size for a %s mattress with a drop of %s at both sides and the foot: %s", w.Bed, f.length(w.Drop), size)
	}
	return fmt.Sprintf("target size for a %s quilt, %s", w.Bed, size)
}

// lists says how many published lists the size of a bed rests on, and between what they put it.
func (f *fitted) lists() document.Section {
	w := &f.Wanted
	if len(w.Lists) == 0 {
		return document.Section{}
	}
	least, most := w.Lists[0].Least, w.Lists[0].Most
	for _, l := range w.Lists {
		least.Width, least.Height = min(least.Width, l.Least.Width), min(least.Height, l.Least.Height)
		most.Width, most.Height = max(most.Width, l.Most.Width), max(most.Height, l.Most.Height)
	}
	what := w.Bed + " quilt"
	if w.Drop != 0 {
		what = w.Bed + " mattress"
	}
	text := fmt.Sprintf("%s: a %s is between %s and %s.", measure.Count(len(w.Lists), "published list"), what, f.size(least.Width, least.Height), f.size(most.Width, most.Height))
	if least == most {
		text = fmt.Sprintf("%s agree: a %s is %s.", measure.Count(len(w.Lists), "published list"), what, f.size(least.Width, least.Height))
	}
	return with(section("lists", "", document.Detail), paragraph(text))
}

// now is the layout's own size, and how it grows.
func (f *fitted) now() document.Section {
	n := &f.Now
	count := fmt.Sprintf("%d by %d blocks", n.Columns, n.Rows)
	if n.Columns*n.Rows == 1 {
		count = "1 block"
	}
	what := "Current layout"
	if f.Size != "" && f.SizeKnown {
		what = "The size " + f.Size + " now"
	}
	text := fmt.Sprintf(what+": %s (%s finished)", count, f.length(n.SideFinished))
	if len(n.BordersFinished) > 0 {
		var widths []string
		for _, nm := range n.BordersFinished {
			widths = append(widths, f.length(nm))
		}
		text += ", borders of " + measure.List(widths)
	}
	text += "; the top finishes " + f.size(n.Finished.Width, n.Finished.Height) + "."
	return with(section("now", "", document.Answer), paragraph(text))
}

// grows is how the layout grows, and to which counts best.
func (f *fitted) grows() document.Section {
	return with(section("grows", "About these sizes", document.Detail), paragraph(strings.TrimSpace(f.steps()+" "+f.preferred())))
}

// preferred says which counts are better, "" where none are.
func (f *fitted) preferred() string {
	even := func(g fit.Growth) bool { return g.Parity == fit.Even }
	switch {
	case even(f.Across) && !f.Across.Corners || even(f.Down) && !f.Down.Corners:
		return "Even numbers of blocks are preferred: odd numbers cause warnings here, for webs or stars that cannot be completed."
	case f.Across.Parity == fit.Odd || f.Down.Parity == fit.Odd:
		return "Odd numbers of blocks are preferred: even numbers cause warnings here."
	case f.Across.Corners || f.Down.Corners:
		return "Even numbers of blocks are preferred: they keep the quilt's four corners alike."
	}
	return ""
}

// steps says by how many columns and rows the grid grows.
func (f *fitted) steps() string {
	text := "The grid grows by " + measure.Count(f.Across.Step, "column") + " and " + measure.Count(f.Down.Step, "row") + " at a time"
	switch across, down := f.Across.Repeats, f.Down.Repeats; {
	case across && down:
		text += ", written with repeat"
	case across:
		text += ", the columns with repeat"
	case down:
		text += ", the rows with repeat"
	}
	if f.Across.Before+f.Across.Behind+f.Down.Before+f.Down.Behind > 0 {
		text += "; the outer blocks stay as a frame"
	}
	return text + "."
}

// suggestions is a table without rows.
func (f *fitted) suggestions() document.Table {
	t := table(counts(""), words("strip"), words("block"), words("blocks"), words("top"), lengths("off by"), lengths(""), words("borders"))
	if !f.ByStrip {
		t.Columns = append(t.Columns[:1], t.Columns[2:]...)
	}
	return t
}

// row is a suggestion in a table.
func (f *fitted) row(label string, s *fit.Suggestion) document.Row {
	mark := ""
	if s.Within {
		mark = " *"
	}
	if s.MoreWarnings > 0 {
		mark += " !"
	}
	r := row(label, f.mark(s.StripCut), f.mark(s.SideFinished), fmt.Sprintf("%d x %d", s.Columns, s.Rows),
		f.eighth(s.Finished.Width)+" x "+f.eighth(s.Finished.Height)+mark, f.signed(s.Over.Width), f.signed(s.Over.Height), f.borders(s))
	if !f.ByStrip {
		r.Cells = append(r.Cells[:1], r.Cells[2:]...)
	}
	return r
}

// borders are the finished widths of a suggestion's borders.
func (f *fitted) borders(s *fit.Suggestion) string {
	switch {
	case s.Borders == fit.LeftOut:
		return "omitted"
	case len(s.BordersFinished) == 0:
		return "none"
	}
	var widths []string
	for _, nm := range s.BordersFinished {
		widths = append(widths, f.mark(nm))
	}
	return strings.Join(widths, ", ")
}

// nearest is the best of all.
func (f *fitted) nearest() document.Section {
	if len(f.Suggestions) == 0 {
		return with(section("nearest", "", document.Answer), paragraph("Nothing fits."))
	}
	units := "inches"
	if f.Units == measure.Centimetres {
		units = "centimeters"
	}
	t := f.suggestions()
	for i := range f.Suggestions[:f.LaidOut] {
		t.Rows = append(t.Rows, f.row(strconv.Itoa(i+1), &f.Suggestions[i]))
	}
	s := with(section("nearest", "Closest sizes, in "+units+": strips cut, all else finished", document.Answer), t)
	if !f.ByStrip {
		s.Title = "Closest sizes, in " + units + ", finished"
	}
	return with(s, f.marks()...)
}

// bySize is the best for each strip or side, where there are several.
func (f *fitted) bySize() document.Section {
	best := map[measure.NM]int{}
	var order []measure.NM
	for i := range f.Suggestions {
		side := f.Suggestions[i].SideFinished
		if _, seen := best[side]; !seen {
			best[side] = i
			order = append(order, side)
		}
	}
	if len(order) < 2 || !slices.ContainsFunc(order, func(side measure.NM) bool { return best[side] >= f.LaidOut }) {
		return document.Section{}
	}
	what := "side"
	if f.ByStrip {
		what = "strip"
	}
	t := f.suggestions()
	slices.Sort(order)
	for _, side := range order {
		label := ""
		if i := best[side]; i < f.LaidOut {
			label = strconv.Itoa(i + 1)
		}
		t.Rows = append(t.Rows, f.row(label, &f.Suggestions[best[side]]))
	}
	return with(section("by-size", "Best fit for each "+what, document.Detail), t)
}

// marks explains what stands beside sizes, if anything does.
func (f *fitted) marks() []document.Block {
	within, warned := false, false
	for i := range f.Suggestions {
		within, warned = within || f.Suggestions[i].Within, warned || f.Suggestions[i].MoreWarnings > 0
	}
	var list []document.Block
	if within {
		list = append(list, paragraph("* within published sizes"))
	}
	if warned {
		list = append(list, paragraph("! more warnings than the current layout"))
	}
	return list
}

// toWrite says what to write for one of the nearest.
func (f *fitted) toWrite(number int) document.Section {
	switch {
	case len(f.Suggestions) == 0:
		return document.Section{}
	case number > len(f.Suggestions):
		return with(section("to-write", "", document.Answer), para("There is no number %d.", number))
	}
	chosen := &f.Suggestions[number-1]
	if f.Size != "" {
		return f.sizeLine(chosen)
	}
	s := section("to-write", fmt.Sprintf("Changes for number %d, with the current line numbers", number), document.Detail)
	if len(chosen.Changes) == 0 {
		s.Blocks = append(s.Blocks, paragraph("No changes: the layout is already like this."))
	}
	for _, c := range chosen.Changes {
		s.Blocks = append(s.Blocks, change(c)...)
	}
	for _, text := range chosen.Warnings {
		s.Blocks = append(s.Blocks, paragraph("warning: "+text))
	}
	if len(chosen.Changes) > 0 {
		s.Blocks = append(s.Blocks, paragraph("Or leave the layout as it is and add it as another size:"), document.Source{Lines: []string{chosen.SizeLine}})
	}
	return s
}

// sizeLine says what to write so that a suggestion is the size that was named.
func (f *fitted) sizeLine(chosen *fit.Suggestion) document.Section {
	s := section("to-write", "The size "+f.Size, document.Detail)
	where := "Add this line at the end of the layout:"
	if c := chosen.Changes[0]; !strings.Contains(c.Write, "\n") && !strings.Contains(c.Write, "\r") {
		where = fmt.Sprintf("Write this in line %d:", c.First)
		if slices.Equal(strings.Fields(c.Was), strings.Fields(c.Write)) {
			return with(s, paragraph("No changes: the size is already like this."))
		}
	}
	s.Blocks = []document.Block{paragraph(where), document.Source{Lines: []string{chosen.SizeLine}}}
	for _, text := range chosen.Warnings {
		s.Blocks = append(s.Blocks, paragraph("warning: "+text))
	}
	return s
}

// change is lines that become others.
func change(c fit.Change) []document.Block {
	where := fmt.Sprintf("line %d", c.First)
	if c.Last > c.First {
		where = fmt.Sprintf("lines %d to %d", c.First, c.Last)
	}
	if c.Write == "" {
		return []document.Block{paragraph(where + ": delete " + strings.TrimSpace(c.Was))}
	}
	lines := strings.FieldsFunc(c.Write, func(r rune) bool { return r == '\n' || r == '\r' })
	return []document.Block{paragraph(where + ":"), document.Source{Lines: lines}}
}

// refused lists the sizes that the layout does not take.
func (f *fitted) refused() document.Section {
	var list []string
	for _, r := range f.Refused {
		list = append(list, f.length(r.Size)+": "+r.Message)
	}
	return with(section("refused", "Not possible", document.Detail), bullets(list...)...)
}
