package leftovers

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
)

// choose chooses the fabrics of what lies between the circles and around them, and takes pieces of it that are left.
func (w *work) choose(c *candidate) {
	c.ground = w.contrasting(w.shown(c), w.shown(c), w.groundNow)
	outside := []int{c.ground} // and the fabrics at the wide ends of wedges, which the border touches
	for _, s := range c.stocks() {
		outside = append(outside, w.fabricsOf(&w.Stocks[s])[0])
	}
	c.edge = w.contrasting([]int{c.ground}, outside, w.borderNow)
	for i, s := range w.Stocks {
		if !s.wedges && s.StripCut == c.stripCut && s.fabric == w.fabricFor(c, s.Role) {
			c.extra = append(c.extra, i)
		}
	}
}

// fabricFor is the fabric of the pieces of a role in a candidate's blocks, -1 where they have no such pieces.
func (w *work) fabricFor(c *candidate, role string) int {
	for _, k := range c.kinds() {
		if i := k.Role(role); i >= 0 {
			return w.fabricOf(c, k, i)
		}
	}
	return -1
}

// fabricOf is the fabric of a role that takes no strip sets: the border's for the points of stars that float, else the ground's.
func (w *work) fabricOf(c *candidate, k *blocks.Kind, role int) int {
	if k.Turning == blocks.ToStarCentre && isPoints(k, role) {
		return c.edge
	}
	return c.ground
}

// kinds are the kinds of block in a candidate's grid.
func (c *candidate) kinds() []*blocks.Kind {
	switch {
	case c.frame == nil:
		return []*blocks.Kind{c.main}
	case c.down == 2:
		return []*blocks.Kind{c.frame}
	}
	return []*blocks.Kind{c.main, c.frame}
}

// shown are the fabrics of a candidate's wedges, each once.
func (w *work) shown(c *candidate) []int {
	var list []int
	for _, s := range c.stocks() {
		list = append(list, w.fabricsOf(&w.Stocks[s])...)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// fabricsOf are the fabrics of a stock, from the wide end of a wedge to its tip.
func (w *work) fabricsOf(s *Stock) []int {
	if s.set < 0 {
		return []int{s.fabric}
	}
	var list []int
	for _, b := range w.plan.Sets[s.set].Bands {
		list = append(list, w.plan.Fabrics[b.Fabric].Index)
	}
	if s.Reversed {
		slices.Reverse(list)
	}
	return list
}

// usual is how many steps of value a fabric is worth more where the quilt already uses it so.
const usual = 15

// contrasting is the fabric of the quilt, not one of some, that stands apart most in value from some; those that the quilt uses in
// the same way are preferred. Where there is no other it is one of them.
func (w *work) contrasting(from, not []int, now func(int) bool) int {
	mean := 0.0
	for _, f := range from {
		mean += w.top.Fabrics[f].Colour.Lightness() / float64(len(from))
	}
	best, most := -1, 0.0
	for _, but := range [][]int{not, nil} {
		for i := range w.plan.Fabrics {
			f := w.plan.Fabrics[i].Index
			if slices.Contains(but, f) {
				continue
			}
			apart := w.top.Fabrics[f].Colour.Lightness() - mean
			if apart = max(apart, -apart); now(f) {
				apart += usual
			}
			if best < 0 || apart > most {
				best, most = f, apart
			}
		}
		if best >= 0 {
			break
		}
	}
	return best
}

// groundNow says whether a fabric lies beside wedges in the quilt's blocks.
func (w *work) groundNow(fabric int) bool {
	return slices.ContainsFunc(w.top.Patches, func(p quilt.Patch) bool {
		d := p.Shape.Description()
		return p.Cell >= 0 && p.Count == 1 && d.Sized == blocks.ByBlock && int(w.top.Faces[p.First].Fabric) == fabric
	})
}

// borderNow says whether a fabric makes a border of the quilt.
func (w *work) borderNow(fabric int) bool {
	return slices.ContainsFunc(w.plan.Lines, func(l cutting.Line) bool {
		return l.Border >= 0 && l.Fabric >= 0 && w.plan.Fabrics[l.Fabric].Index == fabric
	})
}

// written is the layout of a candidate.
func (w *work) written(c *candidate) string {
	border := c.edge
	var b strings.Builder
	line := func(format string, a ...any) { fmt.Fprintf(&b, format+"\n", a...) }
	if w.Units == measure.Centimetres {
		line("units cm")
	}
	if w.top.Seam != w.Units.Usual(measure.Inch/4, 75*measure.Millimetre/10) {
		line("seam %s", measure.Written(w.top.Seam, w.Units))
	}
	line("strip %s", measure.Written(c.stripCut, w.Units))
	if width := w.top.CutFacts.UsableWidth; width != w.Units.Usual(40*measure.Inch, measure.Metre) {
		line("usable-width %s", measure.Written(width, w.Units))
	}
	line("")
	for _, f := range w.needed(c, border) {
		line("%s", w.fabricLine(f))
	}
	line("")
	w.setLines(c, line)
	w.blockLines(c, line)
	line("")
	if c.border > 0 {
		line("border %s %s", measure.Written(c.border, w.Units), w.top.Fabrics[border].Name)
	}
	line("binding %s cut %s", measure.Written(w.bindingCut(), w.Units), w.top.Fabrics[border].Name)
	line("")
	for _, n := range c.stocks() {
		s := &w.Stocks[n]
		line("on-hand %s %s %d", s.Role, value(s), s.Pieces)
	}
	return b.String()
}

// bindingCut is how wide a binding is cut: as the quilt's, or as it usually is. Common practice, no source.
func (w *work) bindingCut() measure.NM {
	width := w.Units.Usual(5*measure.Inch/2, 65*measure.Millimetre)
	if b := w.top.CutFacts.Binding; b != nil {
		width = b.Width
	}
	return max(width, 4*w.top.Seam) // it reaches over a seam on both sides
}

// value is what pieces are cut from, as a layout has it.
func value(s *Stock) string {
	if s.Reversed {
		return "reversed " + s.Cloth
	}
	return s.Cloth
}

// needed are the fabrics of a candidate, in the order of the top.
func (w *work) needed(c *candidate, border int) []int {
	list := append(w.shown(c), c.ground, border)
	slices.Sort(list)
	return slices.Compact(list)
}

// fabricLine is the statement of a fabric.
func (w *work) fabricLine(fabric int) string {
	f := &w.top.Fabrics[fabric]
	text := "fabric " + f.Name + " " + f.Colour.Hex()
	if f.Print != "" && !strings.ContainsAny(f.Print, "\"“”„\n") {
		text += ` "` + f.Print + `"`
	}
	if width := w.top.CutFacts.Fabrics[fabric].UsableWidth; width != w.top.CutFacts.UsableWidth {
		text += " usable-width " + measure.Written(width, w.Units)
	}
	return text
}

// setLines are the strip sets of a candidate, each once.
func (w *work) setLines(c *candidate, line func(string, ...any)) {
	seen := map[int]bool{}
	for _, n := range c.stocks() {
		s := &w.Stocks[n]
		if s.set < 0 || seen[s.set] {
			continue
		}
		seen[s.set] = true
		set := &w.plan.Sets[s.set]
		text := "strip-set " + s.Cloth
		for i, b := range set.Bands {
			width := measure.Written(b.WidthCut, w.Units)
			if i == len(set.Bands)-1 && set.WidthCut != set.StripCut { // widths that were rounded
				width = "rest"
			}
			text += " " + w.top.Fabrics[w.plan.Fabrics[b.Fabric].Index].Name + " " + width
		}
		line("%s", text)
	}
}

// blockLines are the blocks of a candidate and its grid. Wedges of each stock have a block of their own, or a place in the table of webs.
func (w *work) blockLines(c *candidate, line func(string, ...any)) {
	labels := map[int]string{}
	table := c.main.Turning == blocks.OnWebCentres
	if table {
		w.websLines(c, line)
		for _, k := range c.kinds() {
			line("%s", w.blockLine(c, map[bool]string{true: "F", false: "W"}[k == c.frame], k, ""))
		}
	} else {
		for _, n := range c.stocks() {
			if s := &w.Stocks[n]; s.wedges {
				labels[n] = string(rune('A'+len(labels)%26)) + strings.Repeat("x", len(labels)/26)
				line("%s", w.blockLine(c, labels[n], c.main, value(s)))
			}
		}
	}
	line("")
	line("grid")
	for row := range c.down {
		words := make([]string, c.across)
		for column := range words {
			words[column] = c.label(row, column, labels)
		}
		line("  %s", strings.Join(words, " "))
	}
}

// label is the label of a place of the grid.
func (c *candidate) label(row, column int, labels map[int]string) string {
	switch {
	case c.main.Turning == blocks.OnWebCentres && (row == 0 || column == 0 || row == c.down-1 || column == c.across-1):
		return "F"
	case c.main.Turning == blocks.OnWebCentres:
		return "W"
	case c.main.Turning.InLattice():
		return labels[c.circles[row/2*(c.across/2)+column/2]]
	}
	return labels[c.circles[row*c.across+column]]
}

// blockLine is the statement of a block: wedges from a value, or "" where the webs have theirs.
func (w *work) blockLine(c *candidate, label string, k *blocks.Kind, wedges string) string {
	text := "block " + label + " " + k.Name
	for i := range k.Roles {
		switch r := &k.Roles[i]; {
		case r.Outer:
		case !r.Banded:
			text += " " + r.Name + " " + w.top.Fabrics[w.fabricOf(c, k, i)].Name
		case wedges != "":
			text += " " + r.Name + " " + wedges
		}
	}
	return text
}

// isPoints says whether the pieces of a role of a kind are the points of a star.
func isPoints(k *blocks.Kind, role int) bool {
	return slices.ContainsFunc(k.Pieces, func(p blocks.Piece) bool { return p.Role == role && p.Shape.Description().Gathers == blocks.StarCentre })
}

// websLines are the webs of a candidate: one value for all, or one for each.
func (w *work) websLines(c *candidate, line func(string, ...any)) {
	if first := c.circles[0]; !slices.ContainsFunc(c.circles, func(n int) bool { return n != first }) {
		line("webs %s", value(&w.Stocks[first]))
		return
	}
	line("webs")
	at := 0
	for row := 1; row < c.down; row++ {
		count := c.across / 2
		if row%2 == 0 {
			count--
		}
		var words []string
		for range count {
			words = append(words, value(&w.Stocks[c.circles[at]]))
			at++
		}
		if count > 0 {
			line("  %s", strings.Join(words, " "))
		}
	}
}
