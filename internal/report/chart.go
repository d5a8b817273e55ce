package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
)

// chart puts what strips make into tables. Exact lengths stand with their decimals: that is what a chart is read for.
type chart struct{ sizes.Options }

func (c chart) title(what string) string {
	units := "inches"
	if c.Units == measure.Centimetres {
		units = "centimeters"
	}
	return fmt.Sprintf("%s, in %s, for seams of %s", what, units, c.length(c.Seam))
}

func (c chart) length(nm measure.NM) string { return c.Units.Nearest(nm) }

// mark is a length that lies on the marks of a ruler, without its unit.
func (c chart) mark(nm measure.NM) string { return c.Units.Number(nm) }

// exact is a length that lies between marks: a thousandth of an inch, a tenth of a millimeter, without its unit.
func (c chart) exact(nm measure.NM) string {
	if c.Units == measure.Centimetres {
		return measure.Decimal(nm, c.Units, 2)
	}
	return measure.Decimal(nm, c.Units, 3)
}

// off is a difference with its sign.
func (c chart) off(nm measure.NM) string {
	text := c.exact(nm)
	switch {
	case strings.Trim(text, "-0.") == "":
		return "0"
	case nm > 0:
		return "+" + text
	}
	return text
}

// usable is the width of cloth that pieces are counted from.
func (c chart) usable() string { return c.length(c.UsableWidth) }

// notes is what stands below a chart, a paragraph each.
func notes(list ...string) document.Section {
	s := section("notes", "", document.Answer)
	for _, text := range append(list, "Rotary-cutting safety: keep fingers back from the ruler's edge, cut away from yourself, and close the guard after every cut.") {
		if text != "" {
			s.Blocks = append(s.Blocks, paragraph(text))
		}
	}
	return s
}

// alsoOf says which kinds share the sides of the first, "" where it is alone.
func alsoOf(list []sizes.Height) string {
	var said []string
	for _, h := range list {
		if len(h.Kinds) > 1 {
			said = append(said, "Notes on "+h.Kinds[0]+" blocks also apply to "+measure.List(h.Kinds[1:])+" blocks.")
		}
	}
	return strings.Join(said, " ")
}

// StripChart is what strips of several widths make.
func StripChart(made *sizes.StripChart) document.Document {
	c := chart{made.Options}
	d := document.Document{Title: c.title("Sizes from strip widths")}
	var how []string
	for _, shape := range blocks.Shapes() {
		if text := shape.Description().SquareWords; text != "" {
			how = append(how, strings.ReplaceAll(text, "%s", c.length(blocks.StepsOf(c.Units).Exact)))
		}
	}
	for n := range made.Shapes {
		if ruled(made, n) {
			how = append(how, "Where the rule of thumb (finished leg plus 7/8) gives more, it is under \"rule\".")
		}
	}
	d.Sections = []document.Section{
		{ID: "blocks", Blocks: []document.Block{c.blocks(made)}},
		{ID: "squares", Blocks: []document.Block{c.squares(made)}},
		notes(strings.Join(how, " "),
			"Wedges are cut side by side, rotating the ruler 180 degrees after each cut; the count is how many fit in "+c.usable()+" of strip, including squaring up the ends.",
			alsoOf(made.Heights)),
	}
	return d
}

// blocks is what is finished, and the wedges.
func (c chart) blocks(made *sizes.StripChart) document.Table {
	t := table(words("strip"), words("wedge"))
	under := []string{"cut", "finished"}
	for _, h := range made.Heights {
		t.Columns = append(t.Columns, lengths(h.Kinds[0]+" side"))
		under = append(under, "finished")
	}
	t.Columns = append(t.Columns, lengths("wedge base"), counts("wedges"))
	t.Rows = []document.Row{row(append(under, "cut", "of "+c.usable())...)}
	for _, s := range made.Strips {
		texts := []string{c.mark(s.StripCut), c.mark(s.WedgeFinished)}
		for _, side := range s.SidesFinished {
			texts = append(texts, c.exact(side))
		}
		t.Rows = append(t.Rows, row(append(texts, c.exact(s.WedgeBaseCut), fmt.Sprint(s.Wedges))...))
	}
	return t
}

// ofSquare is what a column calls the square for a shape: by its name's first word.
func ofSquare(shape string) string {
	word, _, _ := strings.Cut(shape, " ")
	return word
}

// squares is the squares to cut, shape by shape.
func (c chart) squares(made *sizes.StripChart) document.Table {
	t := table(words("strip"))
	under := []string{"cut"}
	for n, shape := range made.Shapes {
		t.Columns = append(t.Columns, lengths(ofSquare(shape)), words(""))
		under = append(under, "need", "cut")
		if ruled(made, n) {
			t.Columns, under = append(t.Columns, words("")), append(under, "rule")
		}
	}
	t.Rows = []document.Row{row(under...)}
	for _, s := range made.Strips {
		texts := []string{c.mark(s.StripCut)}
		for n, square := range s.Squares {
			texts = append(texts, c.exact(square.Need), c.mark(square.Cut))
			if !ruled(made, n) {
				continue
			}
			rule := ""
			if square.RuleCut > square.Cut {
				rule = c.mark(square.RuleCut)
			}
			texts = append(texts, rule)
		}
		t.Rows = append(t.Rows, row(texts...))
	}
	return t
}

// ruled says whether the rule of thumb asks for more than the exact need of a shape in some row.
func ruled(made *sizes.StripChart, shape int) bool {
	return slices.ContainsFunc(made.Strips, func(s sizes.Strip) bool { return s.Squares[shape].RuleCut > s.Squares[shape].Cut })
}

// SideChart is which strips blocks of several sides need.
func SideChart(made *sizes.SideChart) document.Document {
	c := chart{made.Options}
	t := table(words("block"))
	under := []string{"finished"}
	for _, h := range made.Heights {
		t.Columns = append(t.Columns, lengths(h.Kinds[0]+" strip"), words(""), lengths(""))
		under = append(under, "exact", "mark", "off by")
	}
	t.Columns = append(t.Columns, words(""))
	t.Rows = []document.Row{row(under...)}
	for _, s := range made.Sides {
		texts := []string{c.mark(s.SideFinished)}
		for _, strip := range s.Strips {
			texts = append(texts, c.exact(strip.StripCut), c.mark(strip.MarkCut), c.off(strip.SideErrorFinished))
		}
		if s.Near {
			texts = append(texts, "*")
		}
		t.Rows = append(t.Rows, row(texts...))
	}
	return document.Document{Title: c.title("Strip widths for each block size"), Sections: []document.Section{
		{ID: "strips", Blocks: []document.Block{t}},
		notes("Strips: cut widths. Mark: the nearest ruler mark. Off by: how much larger or smaller a block finishes when its strip is cut there; this adds up over a row of blocks.",
			"* works for all of them: no side is off by more than "+c.length(measure.Nearest(sizes.Near, c.Units.Fine()))+".", alsoOf(made.Heights)),
	}}
}

// TumblerChart is the pieces that each line of a wedge ruler gives.
func TumblerChart(made *sizes.TumblerChart) document.Document {
	c := chart{made.Options}
	t := table(words("line"), lengths("wide side"), lengths(""), lengths("narrow side"), lengths(""), lengths("mean"), counts("pieces"), words(""))
	t.Rows = []document.Row{row("", "cut", "finished", "cut", "finished", "finished", "of "+c.usable())}
	slim := ""
	for _, made := range made.Tumblers {
		r := row(c.mark(made.LineCut), c.exact(made.WideCut), c.exact(made.WideFinished), c.exact(made.NarrowCut), c.exact(made.NarrowFinished), c.exact(made.MeanFinished), fmt.Sprint(made.Pieces))
		if made.Slim {
			r.Cells = append(r.Cells, cell("slim"))
			slim = "Slim: the narrow side finishes at less than two seam allowances, so the seams overlap."
		}
		t.Rows = append(t.Rows, r)
	}
	return document.Document{Title: c.title(fmt.Sprintf("Pieces from strips of %s by the line of a wedge ruler", c.length(c.StripCut))), Sections: []document.Section{
		{ID: "pieces", Blocks: []document.Block{t}},
		notes("Line: the ruler line to align with the strip's edge, marked with the strip width that it measures. Mean: what a piece adds to its column. Cut pieces side by side, rotating the ruler 180 degrees after each cut.", slim),
	}}
}

// StripTable is a chart of strips for a spreadsheet.
func StripTable(made *sizes.StripChart) document.Document {
	l := ledger{units: made.Units}
	l.lengthColumns("strip_cut", "wedge_finished")
	for _, h := range made.Heights {
		l.lengthColumns(h.Kinds[0] + "_side_finished")
	}
	for _, shape := range made.Shapes {
		name := ofSquare(shape)
		l.lengthColumns(name+"_need", name+"_cut")
	}
	l.lengthColumns("wedge_base_cut", "wedge_tip_cut", "pitch_cut")
	l.countColumn("wedges")
	for _, s := range made.Strips {
		l.row()
		l.lengths(s.StripCut, s.WedgeFinished)
		l.lengths(s.SidesFinished...)
		for _, square := range s.Squares {
			l.lengths(square.Need, square.Cut)
		}
		l.lengths(s.WedgeBaseCut, s.WedgeTipCut, s.PitchCut)
		l.count(s.Wedges)
	}
	return l.document("strips")
}

// SideTable is a chart of sides for a spreadsheet.
func SideTable(made *sizes.SideChart) document.Document {
	l := ledger{units: made.Units}
	l.lengthColumns("side_finished")
	for _, h := range made.Heights {
		l.lengthColumns(h.Kinds[0]+"_strip_cut", h.Kinds[0]+"_mark_cut")
		l.columns(l.withUnit(h.Kinds[0] + "_side_error_finished"))
	}
	l.columns("near")
	for _, side := range made.Sides {
		l.row()
		l.lengths(side.SideFinished)
		for _, strip := range side.Strips {
			l.lengths(strip.StripCut, strip.MarkCut)
			l.number(strip.SideErrorFinished)
		}
		l.yes(side.Near)
	}
	return l.document("sides")
}

// TumblerTable is a chart of tumblers for a spreadsheet.
func TumblerTable(made *sizes.TumblerChart) document.Document {
	l := ledger{units: made.Units}
	l.lengthColumns("line_cut", "wide_cut", "narrow_cut", "wide_finished", "narrow_finished", "mean_finished")
	l.countColumn("pieces")
	l.columns("slim")
	for _, t := range made.Tumblers {
		l.row()
		l.lengths(t.LineCut, t.WideCut, t.NarrowCut, t.WideFinished, t.NarrowFinished, t.MeanFinished)
		l.count(t.Pieces)
		l.yes(t.Slim)
	}
	return l.document("lines of a wedge ruler")
}
