package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/supplies"
)

// The heads of the columns that say how much of a fabric is cut, and how much the designer has.
const (
	LengthUsedHead = "length used"
	OnHandHead     = "on hand"
)

// toBuy is the cloth of all fabrics.
func (c *cuts) toBuy() document.Section {
	t := document.Table{Named: true, Columns: []document.Column{
		{Title: "fabric"}, {Title: "buy", Kind: document.Lengths, BySize: true}, {Title: LengthUsedHead, Kind: document.Lengths}}}
	if c.allows() {
		t.Columns = append(t.Columns, document.Column{Title: "with allowance", Kind: document.Lengths})
	}
	t.Columns = append(t.Columns, document.Column{Title: "used for", Aside: true})
	hand := slices.ContainsFunc(c.Fabrics, func(f cutting.Fabric) bool { return f.OnHand != nil })
	if hand {
		t.Columns = append(t.Columns, document.Column{Title: OnHandHead, Aside: true})
	}
	_, same := c.usableWidth()
	if !same {
		t.Columns = append(t.Columns, document.Column{Title: "usable width", Kind: document.Lengths, Aside: true})
	}
	for i := range c.Fabrics {
		f := &c.Fabrics[i]
		r := document.Row{Cells: append([]document.Cell{c.boughtCell(i)}, c.lengths(&f.Purchase)...)}
		r.Cells[1] = cell(c.bought(f))
		r.Cells = append(r.Cells, cell(measure.List(c.uses(i))))
		if hand {
			r.Cells = append(r.Cells, cell(c.onHand(f.OnHand)))
		}
		if !same {
			r.Cells = append(r.Cells, cell(c.length(f.UsableWidth)))
		}
		if f.OnHand != nil && !f.OnHand.Enough {
			r.Tone = document.Doubtful
		}
		r.About.Faces = c.plans.FacesByFabric()[f.Index]
		t.Rows = append(t.Rows, r)
	}
	if c.BackingBuy.Buy > 0 {
		r := document.Row{Cells: append(append(cells(chosenBacking), c.lengths(&c.BackingBuy)...), cell("backing"))}
		for len(r.Cells) < len(t.Columns) {
			r.Cells = append(r.Cells, document.Cell{})
		}
		if !same {
			r.Cells[len(r.Cells)-1] = cell(c.length(c.Backing.UsableWidth))
		}
		t.Rows = append(t.Rows, r)
	}
	return document.Section{ID: ToBuyID, Title: "To buy, for " + c.quilts(), Blocks: append([]document.Block{t}, bullets(c.rounding())...)}
}

// allows says whether anything is bought beyond what is cut.
func (c *cuts) allows() bool { return c.Allowance.SquareUp+c.Allowance.Spare > 0 }

// lengths are what is bought and what is cut of it, and between them what that takes with the allowances, where there are any.
func (c *cuts) lengths(p *supplies.Purchase) []document.Cell {
	list := cells(c.shop(p), c.Units.AtLeast(p.ExactCut), c.Units.AtLeast(p.Need))
	if p.Buy == 0 {
		list = cells(c.shop(p), "", "")
	}
	if c.allows() {
		return list
	}
	return list[:2]
}

// chosenBacking is the fabric of a backing that the layout does not name.
const chosenBacking = "your choice of backing"

// boughtCell is a fabric with its print.
func (c *cuts) boughtCell(fabric int) document.Cell {
	cell := c.fabricCell(fabric)
	if print := c.Fabrics[fabric].Print; print != "" && print != c.Fabrics[fabric].Name {
		cell.Text = append(cell.Text, document.Run{Text: " (" + print + ")", Small: true})
	}
	return cell
}

// usableWidth is that of the fabrics, and whether all have the same.
func (c *cuts) usableWidth() (width measure.NM, same bool) {
	for i := range c.Fabrics {
		if w := c.Fabrics[i].UsableWidth; i > 0 && w != width {
			return 0, false
		} else {
			width = w
		}
	}
	return width, true
}

// uses is what a fabric is for, each thing once.
func (c *cuts) uses(fabric int) []string {
	f := &c.Fabrics[fabric]
	var list []string
	say := func(text string) {
		if !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	for _, n := range f.Lines {
		if l := &c.Lines[n]; l.OnHand > 0 && l.OnHand == l.Pieces {
			continue
		}
		say(c.plans.useName(&c.Lines[n]))
	}
	if slices.ContainsFunc(c.Sets, func(s cutting.StripSet) bool {
		return len(s.Runs) > 0 && slices.ContainsFunc(s.Bands, func(b cutting.Band) bool { return b.Fabric == fabric })
	}) {
		say("strip sets")
	}
	if b := c.plans.Top.CutFacts.Binding; b != nil && b.Fabric == f.Index {
		say("binding")
	}
	if c.BackingOf == f.Index {
		say("backing")
	}
	return list
}

// rounding says what each fabric's length is rounded up to, and what it rests on.
func (c *cuts) rounding() string {
	step := (supplies.Buying{Units: c.Units}).Step()
	for i := range c.Fabrics {
		if s := c.Fabrics[i].Purchase.Step; s > 0 {
			step = s
			break
		}
	}
	text := fmt.Sprintf("Yardage includes %s, rounded up to the next %s.", c.added(), c.Units.Shop(step))
	if w, same := c.usableWidth(); same {
		text += " It is based on " + c.length(w) + " usable width of fabric (WOF), selvages removed."
	}
	return text
}

// added says what each fabric's length includes beside what is cut from it.
func (c *cuts) added() string {
	a := c.Allowance
	end, slips := c.length(a.SquareUp)+" for squaring up", c.length(a.Spare)
	if a.OneStrip {
		slips = "a spare strip of the widest cut (up to " + c.length(a.Spare) + ")"
	} else {
		slips += " as insurance against cutting errors"
	}
	switch backing := c.Backing != nil && a.OneStrip; {
	case a.SquareUp > 0 && a.Spare > 0 && backing:
		return end + " and, except for the backing, " + slips
	case a.SquareUp > 0 && a.Spare > 0:
		return end + " and " + slips
	case a.SquareUp > 0:
		return end
	case a.Spare > 0:
		return slips
	}
	return "nothing for squaring up or for cutting errors"
}

// onHand says how the cloth that there is compares with what is needed, "" if the layout does not say what there is.
func (c *cuts) onHand(h *cutting.OnHand) string {
	switch {
	case h == nil:
		return ""
	case h.NoSpare:
		return c.Units.Shop(h.HaveCut) + ", enough if nothing is cut wrong"
	case h.Enough:
		return c.Units.Shop(h.HaveCut) + ": buy none"
	}
	return c.Units.Shop(h.HaveCut) + ", short by " + c.Units.AtLeast(h.ShortCut)
}

// waysToFit says what would make cloth on hand suffice that is short.
func (c *cuts) waysToFit() document.Section {
	var list []string
	for i := range c.Fabrics {
		if f := &c.Fabrics[i]; f.OnHand != nil && !f.OnHand.Enough {
			list = append(list, c.name(i)+": "+c.wayWords(f.OnHand)+".")
		}
	}
	return document.Section{ID: OnHandID, Title: "To use the fabric on hand", Blocks: bullets(list...)}
}

func (c *cuts) wayWords(h *cutting.OnHand) string {
	var parts []string
	for _, y := range h.WaysToFit {
		switch {
		case y.Border >= 0:
			parts = append(parts, c.plans.borderName(y.Border+1)+" finished "+c.length(y.WidthFinished)+" wide")
		case y.StripCut > 0:
			parts = append(parts, fmt.Sprintf("strips cut %s, for %s finished blocks", c.length(y.StripCut), c.length(y.SideFinished)))
		default:
			parts = append(parts, fmt.Sprintf("%s finished blocks", c.length(y.SideFinished)))
		}
	}
	if h.ByLeast {
		words := "the fabric on hand is enough with --least-cloth, which pieces borders and binding from strip ends"
		if len(parts) > 0 {
			words += ", or with " + strings.Join(parts, ", or with ")
		}
		return words
	}
	switch {
	case len(parts) == 0 && h.SearchEnded:
		return "the fabric on hand is not enough; there was too much to try for a way out"
	case len(parts) == 0:
		return "the fabric on hand is not enough, even with narrower borders or blocks half the size"
	}
	enough := "the fabric on hand is enough with " + strings.Join(parts, ", or with ") + "; change nothing else"
	if h.SearchEnded {
		return enough + ", and there may be other ways"
	}
	return enough
}

// precuts says what would do in place of cloth by the length.
func (c *cuts) precuts() document.Section {
	s := document.Section{ID: PrecutsID, Title: "From precuts", Depth: document.Detail}
	var names []string
	for i := range c.Fabrics {
		for _, p := range c.Fabrics[i].Precuts {
			if p.SoldIn(c.Units) && !slices.Contains(names, p.Name) {
				names = append(names, p.Name)
			}
		}
	}
	if len(names) == 0 {
		return s
	}
	t := document.Table{Named: true, Columns: []document.Column{{Title: "fabric"}}}
	for n, name := range names {
		t.Columns = append(t.Columns, document.Column{Title: measure.Plural(name), Kind: document.Counts, Aside: n > 1})
	}
	for i := range c.Fabrics {
		f := &c.Fabrics[i]
		if len(f.Precuts) == 0 {
			continue
		}
		r := document.Row{Cells: []document.Cell{c.fabricCell(i)}, About: document.About{Faces: c.plans.FacesByFabric()[f.Index]}}
		for _, name := range names {
			r.Cells = append(r.Cells, cell(precutCount(f.Precuts, name)))
		}
		t.Rows = append(t.Rows, r)
	}
	s.Blocks = []document.Block{t, para("Precuts may be used instead of yardage: choose one kind per fabric, and trim them to the sizes in the cutting lists. The table gives the number to buy.%s%s", c.precutSizes(names), c.onlyYardage())}
	return s
}

// maxNamed is how many fabrics a sentence names.
const maxNamed = 4

// onlyYardage says which fabrics of those that pieces are cut from are not in the table of precuts, and why; "" where all are.
func (c *cuts) onlyYardage() string {
	var names []string
	for i := range c.Fabrics {
		if f := &c.Fabrics[i]; len(f.Precuts) == 0 && f.From == nil && f.IsCut() {
			names = append(names, c.name(i))
		}
	}
	which := measure.List(names)
	switch {
	case len(names) == 0:
		return ""
	case len(names) > maxNamed:
		which = "the other fabrics"
	}
	return " Buy yardage of " + which + ": some strips are longer or wider than precuts."
}

// precutSizes says as how large precuts are taken whose name does not tell; "" for none.
func (c *cuts) precutSizes(names []string) string {
	var sizes []string
	for _, p := range supplies.Precuts() {
		if slices.Contains(names, p.Name) && !strings.Contains(p.Name, " in ") {
			units := measure.Inches
			if p.Sort == supplies.MetricFatQuarter {
				units = measure.Centimetres
			}
			sizes = append(sizes, p.Name+" "+units.By(p.Usable.Height, p.Usable.Width))
		}
	}
	if len(sizes) == 0 {
		return ""
	}
	return " Usable sizes: " + strings.Join(sizes, "; ") + "."
}

// precutCount is how many of a precut would do, nothing where none would.
func precutCount(list []cutting.Precut, name string) string {
	for _, p := range list {
		if p.Name == name {
			return number(p.Count)
		}
	}
	return ""
}

// forFinishing says what binding, backing and batting take. Lengths are those of one quilt; where several are planned the
// sentences say so, and what all of them take.
func (c *cuts) forFinishing() document.Section {
	var list []string
	if c.Binding != nil {
		list = append(list, c.bindingTakes(c.Binding))
	}
	if c.Backing != nil {
		list = append(list, c.backingTakes(c.Backing))
	}
	if c.Batting != nil {
		list = append(list, c.battingTakes(c.Batting))
	}
	return document.Section{ID: ForFinishingID, Title: "For finishing", Blocks: bullets(list...)}
}

// forEach names what is for each of several quilts.
func (c *cuts) forEach(what string) string { return what + c.several(", for each quilt") + ": " }

// forAll says what all of several quilts take.
func (c *cuts) forAll(takes string) string {
	return c.several(fmt.Sprintf(" For all %d quilts: %s.", c.Copies, takes))
}

func (c *cuts) bindingTakes(b *supplies.Binding) string {
	return c.forEach("Binding") + fmt.Sprintf("%s cut %s wide, joined with diagonal seams to at least %s: the perimeter plus %s for corners and joining the ends.",
		measure.Count(b.Strips, "strip"), c.length(b.StripCut), c.Units.AtLeast(b.Need), c.length(b.Need-b.Perimeter)) +
		c.forAll(measure.Count(b.Strips*c.Copies, "strip"))
}

func (c *cuts) backingTakes(b *supplies.Backing) string {
	way, other := &b.Ways[b.Less], &b.Ways[1-b.Less]
	what := "Backing"
	if c.BackingOf < 0 {
		what = fmt.Sprintf("Backing (your choice, %s of fabric with %s usable WOF)", c.shop(&c.BackingBuy), c.length(b.UsableWidth))
	}
	text := c.forEach(what) + "at least " + c.Units.ByAtLeast(b.WidthCut, b.HeightCut) + ", "
	if way.Panels == 1 {
		text += fmt.Sprintf("one length of at least %s, no seam.", c.Units.AtLeast(way.PanelCut))
	} else if way.Panels == other.Panels && way.PanelCut == other.PanelCut { // of a square quilt
		text += fmt.Sprintf("%s at least %s long with %s, horizontal or vertical: %s.", measure.Count(way.Panels, "panel"), c.Units.AtLeast(way.PanelCut), measure.Count(way.Panels-1, "seam"), c.Units.AtLeast(way.LengthCut))
	} else {
		text += fmt.Sprintf("%s at least %s long with %s: %s; with %s: %s.", measure.Count(way.Panels, "panel"), c.Units.AtLeast(way.PanelCut),
			BackingSeams(b, b.Less), c.Units.AtLeast(way.LengthCut), BackingSeams(b, 1-b.Less), c.Units.AtLeast(other.LengthCut))
	}
	text += c.forAll(fmt.Sprintf("%s, total length at least %s", measure.Count(way.Panels*c.Copies, "panel"), c.Units.AtLeast(way.LengthCut*measure.NM(c.Copies))))
	return text + panelCliff(way, c.Units)
}

// panelCliff warns where a backing of cloth that is a little narrower takes another panel, "" where it does not.
func panelCliff(way *supplies.Pieced, units measure.System) string {
	if !way.Cliff.Costs {
		return ""
	}
	return fmt.Sprintf(" Measure your fabric first: if the usable WOF is %s less, you need another panel.", units.Nearest(way.Cliff.Step))
}

// BackingSeams names the seams of a backing whose seams run one way: "1 horizontal seam", "no seam".
func BackingSeams(b *supplies.Backing, d supplies.Direction) string {
	n := b.Ways[d].Panels - 1
	if n == 0 {
		return "no seam"
	}
	return measure.Count(n, DirectionWord(d)+" seam")
}

// DirectionWord is which way the seams of a backing run.
func DirectionWord(d supplies.Direction) string {
	if d == supplies.UpAndDown {
		return "vertical"
	}
	return "horizontal"
}

func (c *cuts) battingTakes(b *supplies.Batting) string {
	text := c.forEach("Batting") + "at least " + c.Units.ByAtLeast(b.WidthCut, b.HeightCut)
	if len(b.Packages) == 0 {
		return text + "; no standard package is big enough, so buy it off the roll."
	}
	k := &b.Packages[0]
	return text + fmt.Sprintf(", a %s package (%s).", k.Name, measure.Inches.Size(k.Size.Width, k.Size.Height)) // in whole inches everywhere
}
