package report

import (
	"cmp"
	"fmt"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/summary"
)

// Check is what a layout makes: sizes, strips, counts, fabrics. Its title says what was found in the text.
func Check(title string, s *summary.Summary) document.Document {
	c := &checked{Summary: s}
	d := document.Document{Title: title}
	for _, s := range []document.Section{
		c.sizes(), c.blocks(), c.centers(), c.hints(), c.strips(), c.stripSets(), c.sashes(), c.borders(), c.binding(), c.fabrics(), c.onHand(), c.colorways(), c.quiltSizes(), c.marks(),
	} {
		if len(s.Blocks) > 0 {
			d.Sections = append(d.Sections, s)
		}
	}
	if c.about {
		d.Sections = append(d.Sections, with(section("about", "Lengths", document.Why), paragraph(c.Units.AboutMeans())))
	}
	return d
}

// checked turns a summary into sections.
type checked struct {
	*summary.Summary
	about bool // some length was written with the word about
}

func (c *checked) length(nm measure.NM) string { return c.told(c.Units.Nearest(nm)) }

func (c *checked) size(s summary.Size) string { return c.told(c.Units.By(s.Width, s.Height)) }

// told marks that the reader is to be told what about means, where a length has the word.
func (c *checked) told(text string) string {
	c.about = c.about || strings.HasPrefix(text, "about ")
	return text
}

func (c *checked) finished(nm measure.NM) string { return c.length(nm) + " finished" }
func (c *checked) cut(nm measure.NM) string      { return c.length(nm) + " cut" }

func (c *checked) sizes() document.Section {
	title := c.Title
	if title == "" {
		title = "The quilt"
	}
	t := table(words(""), words(""))
	t.Rows = []document.Row{
		row("grid", fmt.Sprintf("%s across, %d down", measure.Count(c.Across, "block"), c.Down)),
		row("block", c.finished(c.SideFinished)),
		row("quilt top", c.size(c.TopFinished)+" finished"),
		row("", c.size(c.TopUnfinished)+" unfinished, with "+c.length(c.SeamAllowance)+" seams"),
	}
	if len(c.Borders) > 0 {
		t.Rows = append(t.Rows, row("center", c.size(c.FieldFinished)+" finished, inside the borders"))
	}
	return with(section("sizes", title, document.Answer), t)
}

func (c *checked) strips() document.Section {
	t := table(words(""), words(""))
	for _, s := range c.Strips {
		t.Rows = append(t.Rows, row(strings.Join(s.Kinds, ", "), c.cut(s.WidthCut)+", "+c.finished(s.WidthFinished)))
	}
	return with(section("strips", "Strips for wedges", document.Answer), t)
}

// marks is what comes of strips that are cut to the nearest mark of a ruler.
func (c *checked) marks() document.Section {
	var list []string
	for _, s := range c.Strips {
		if n := s.Nearest; n != nil && n.WidthCut != s.WidthCut {
			list = append(list, fmt.Sprintf("Strips for %s cut to the nearest %s: %s; a row of %s then finishes %s.",
				measure.List(s.Kinds), c.length(n.Mark), c.length(n.WidthCut), measure.Count(c.Across, "block"), c.off(n.RowErrorFinished)))
		}
	}
	return with(section("ruler-marks", "To the nearest mark", document.Why), bullets(list...)...)
}

// off is how much a length is off.
func (c *checked) off(error measure.NM) string {
	if error < 0 {
		return c.length(-error) + " shorter"
	}
	return c.length(error) + " longer"
}

func (c *checked) stripSets() document.Section {
	t := table(words(""), words(""), words(""), words(""), words(""))
	for _, set := range c.StripSets {
		for _, use := range set.Uses {
			name := set.Name
			if len(set.Uses) > 1 {
				name += " for " + strings.Join(use.Kinds, ", ")
			}
			for _, b := range use.Bands {
				rest := ""
				switch {
				case b.Rest:
					rest = "the rest"
				case b.Equal:
					rest = "equal"
				}
				t.Rows = append(t.Rows, row(name, b.Fabric, c.cut(b.WidthCut), c.finished(b.WidthFinished), rest))
				name = ""
			}
		}
	}
	return with(section("strip-sets", "Strip sets, from the wide end of the wedge to its tip", document.Detail), t)
}

func (c *checked) sashes() document.Section {
	s := section("sashes", "Sashes", document.Detail)
	e := c.Sash
	if e == nil {
		return s
	}
	posts, around := "", ""
	if e.Posts != "" {
		posts = "posts " + e.Posts
	}
	if e.Around {
		around = "around the outside too"
	}
	t := table(words(""), words(""), words(""), words(""), words(""))
	t.Rows = []document.Row{row(e.Fabric, c.finished(e.WidthFinished), c.cut(e.WidthCut), posts, around)}
	return with(s, t)
}

func (c *checked) borders() document.Section {
	t := table(words(""), words(""), words(""), words(""))
	for _, b := range c.Borders {
		corners := ""
		if b.Corners != "" {
			corners = "corners " + b.Corners
		}
		t.Rows = append(t.Rows, row(b.Fabric, c.finished(b.WidthFinished), c.cut(b.WidthCut), corners))
	}
	return with(section("borders", "Borders, from the inside out", document.Detail), t)
}

func (c *checked) binding() document.Section {
	t := table(words(""), words(""), words(""))
	if c.Binding != nil {
		t.Rows = append(t.Rows, row("binding", c.Binding.Fabric, c.cut(c.Binding.WidthCut)))
	}
	if c.Backing != "" {
		t.Rows = append(t.Rows, row("backing", c.Backing, ""))
	}
	return with(section("binding", "Binding and backing", document.Detail), t)
}

func (c *checked) blocks() document.Section {
	t := table(words(""), words(""), counts(""))
	for _, b := range c.Blocks {
		t.Rows = append(t.Rows, row(b.Label, b.Kind, fmt.Sprint(b.Count)))
	}
	if c.EmptyPlaces > 0 {
		t.Rows = append(t.Rows, row(".", "nothing", fmt.Sprint(c.EmptyPlaces)))
	}
	return with(section("blocks", "Blocks", document.Answer), t, c.pieces())
}

// pieces is how many pieces there are of each shape.
func (c *checked) pieces() document.Block {
	total := 0
	var list []string
	for _, s := range c.Pieces {
		total += s.Count
		text := measure.Count(s.Count, s.Shape)
		switch {
		case s.FromSets > 0 && s.FromSets == s.Count:
			text += " (cut from strip sets)"
		case s.FromSets > 0:
			text += fmt.Sprintf(" (%d cut from strip sets)", s.FromSets)
		}
		list = append(list, together(text))
	}
	return para("%s: %s", together(measure.Count(total, "piece")), strings.Join(list, ", "))
}

// together is text that is not broken between lines.
func together(text string) string { return strings.ReplaceAll(text, " ", "\u00a0") }

func (c *checked) centers() document.Section {
	t := table(words(""), counts(""), counts(""))
	for _, of := range []struct {
		name string
		*summary.Centres
	}{{"webs", &c.Webs}, {"stars", &c.Stars}} {
		if of.Inside() == 0 {
			continue
		}
		open := ""
		if n := len(of.Open); n > 0 {
			open = fmt.Sprintf("%d incomplete", n)
		}
		t.Rows = append(t.Rows, row(of.name, fmt.Sprintf("%d complete", of.Closed), open))
	}
	s := with(section("centers", "Centers inside the quilt", document.Answer), t)
	if len(t.Rows) > 0 && len(c.Webs.Open) > 0 {
		s.Blocks = append(s.Blocks, c.openWebs())
	}
	return s
}

// maxOpen is how many incomplete webs are named with their places.
const maxOpen = 4

// openWebs names the webs that are not complete; stars are often meant to stay open.
func (c *checked) openWebs() document.Block {
	t := table(words(""), words(""), counts(""))
	t.Caption = document.Plain("incomplete webs")
	for _, o := range c.Webs.Open[:min(maxOpen, len(c.Webs.Open))] {
		t.Rows = append(t.Rows, row(fmt.Sprintf("rows %d and %d", o.Row, o.Row+1), fmt.Sprintf("columns %d and %d", o.Column, o.Column+1), measure.Count(o.Has, "wedge")))
	}
	if more := len(c.Webs.Open) - maxOpen; more > 0 {
		t.More = document.Plain(fmt.Sprintf("and %d more", more))
	}
	return t
}

func (c *checked) fabrics() document.Section {
	t := table(words(""), counts("value L*"), counts("of the top"), words(""))
	for i := range c.Fabrics {
		f := &c.Fabrics[i]
		r := row(f.Name, fmt.Sprintf("%.0f", f.Lightness), part(f), f.Print)
		r.Cells[0].Swatches = []document.Swatch{{Colour: f.Colour}}
		t.Rows = append(t.Rows, r)
	}
	return with(section("fabrics", "Fabrics from dark to light", document.Detail), t)
}

// onHand are the pieces that are cut already.
func (c *checked) onHand() document.Section {
	t := table(words(""), counts(""))
	for _, o := range c.OnHand {
		t.Rows = append(t.Rows, row(measure.Plural(handCloth(o.Cloth, o.Reversed)+" "+handPieces(o.Role)), number(o.Pieces)))
	}
	return with(section(UseFirstID, "Already cut", document.Detail), t)
}

// colorways are what takes the place of what.
func (c *checked) colorways() document.Section {
	t := table(words(""), words(""))
	for i := range c.Colorways {
		var list []string
		for _, change := range c.Colorways[i].Changes {
			list = append(list, together(takesPlace(change.Fabric, change.Takes, change.Colour)+" for "+change.Fabric))
		}
		t.Rows = append(t.Rows, row(c.Colorways[i].Name, strings.Join(list, ", ")))
	}
	return with(section(ColorwaysID, "Colorways", document.Detail), t)
}

// quiltSizes are the sizes of the quilt side by side.
func (c *checked) quiltSizes() document.Section {
	s := section(SizesID, "Sizes", document.Detail)
	for first := 0; first < len(c.Summary.Sizes); first += sizesBeside {
		list := c.Summary.Sizes[first:min(first+sizesBeside, len(c.Summary.Sizes))]
		t := table(words("size"))
		t.Named = true
		for i := range list {
			t.Columns = append(t.Columns, words(list[i].Name))
		}
		for _, r := range []struct {
			head string
			of   func(*summary.QuiltSize) string
		}{
			{"quilt top, finished", func(q *summary.QuiltSize) string {
				return c.told(q.System.By(q.TopFinished.Width, q.TopFinished.Height))
			}},
			{"blocks", func(q *summary.QuiltSize) string { return fmt.Sprintf("%d across, %d down", q.Across, q.Down) }},
			{"block, finished", func(q *summary.QuiltSize) string { return c.told(q.System.Nearest(q.SideFinished)) }},
			{"borders, finished", func(q *summary.QuiltSize) string {
				var widths []string
				for _, nm := range q.BordersFinished {
					widths = append(widths, c.told(q.System.Nearest(nm)))
				}
				return cmp.Or(measure.List(widths), none)
			}},
			{"pieces", func(q *summary.QuiltSize) string { return number(q.Pieces) }},
		} {
			line := row(r.head)
			for i := range list {
				line.Cells = append(line.Cells, cell(r.of(&list[i])))
			}
			t.Rows = append(t.Rows, line)
		}
		s.Blocks = append(s.Blocks, t)
	}
	return s
}

// part is how much of the top a fabric makes, or what else it is for.
func part(f *summary.Fabric) string {
	switch {
	case f.Share > 0:
		return share(f.Share)
	case f.Binds && f.Backs:
		return "binding, backing"
	case f.Binds:
		return "binding"
	case f.Backs:
		return "backing"
	}
	return "none"
}

func (c *checked) hints() document.Section {
	var list []string
	for _, h := range c.Hints {
		list = append(list, c.hint(h))
	}
	return with(section("hints", "Hints", document.Answer), bullets(list...)...)
}

// hint puts a hint into words.
func (c *checked) hint(h summary.Hint) string {
	here := fmt.Sprintf("here they are %d and %d", c.Across, c.Down)
	switch h.About {
	case summary.OddMatchesCorners:
		return fmt.Sprintf("The %s blocks %s alternate, and the quilt's corners are not all alike; use an odd number of blocks across and down to match them (%s).", h.Kind, measure.List(h.Labels), here)
	default:
		return fmt.Sprintf("%s blocks face in from the quilt's edge; use an even number of blocks across and down to complete the webs in all four corners too (%s).", capital(h.Kind), here)
	}
}

// share is a part of the top in whole percent.
func share(part float64) string {
	if text := fmt.Sprintf("%.0f%%", 100*part); text != "0%" {
		return text
	}
	return "under 1%"
}
