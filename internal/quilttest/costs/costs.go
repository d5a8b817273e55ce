// Package costs counts the steps that plans take, and has families of layouts that grow, for tests of what planning costs.
// Steps are counted and no clock is asked, so that a cost is the same on every machine.
package costs

import (
	"fmt"
	"math"
	"strings"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// Steps is what the plans of one layout took.
type Steps struct {
	Size                        int // of the layout: its pieces and strips of strip sets, seams, fabrics and what is read of pools
	Lay, Study, Cutting, Sewing int
}

// All is the steps of all plans.
func (s *Steps) All() int { return s.Lay + s.Study + s.Cutting + s.Sewing }

// Of plans a layout and counts; false for one that is refused or has more pieces than most.
func Of(text string, most int) (Steps, bool) {
	design, _, _ := layout.Read(text)
	if design == nil || len(design.Cells)*16 > most {
		return Steps{}, false
	}
	var s Steps
	var top *quilt.Top
	s.Lay = stop.Count(func(sign *stop.Sign) { top = quilt.LayUntil(sign, design) })
	if len(top.Faces) > most {
		return Steps{}, false
	}
	s.Size = len(top.Faces) + len(top.Seams) + len(top.StripSeams) + len(top.Fabrics)
	s.Study = stop.Count(func(sign *stop.Sign) { contrast.StudyUntil(sign, top, contrast.Options{}) })
	var cuts *cutting.Plan
	s.Cutting = stop.Count(func(sign *stop.Sign) { cuts = cutting.Build(sign, top, cutting.Options{}) })
	s.Sewing = stop.Count(func(sign *stop.Sign) { sewing.Build(sign, top, cuts, sewing.Options{}) })
	return s, true
}

// PerPiece is how many steps each piece, seam or fabric may take beside the searches, for each doubling of their number.
const PerPiece = 2

// Line is what a layout of some size may cost where its plans search for nothing: n log n.
func Line(size int) int {
	n := float64(size + 2)
	return int(PerPiece * n * math.Log2(n))
}

// budgets are what the searches of each plan may take beside the line, whatever the layout: those of the packages, and a little
// for what was begun when one ended.
func budgets() Steps { return Steps{Lay: 190_000_000, Cutting: 95_000_000, Sewing: 31_000_000} }

// Over says which plan costs more than it may, "" for none: more than the line and the budget of its searches.
func (s *Steps) Over() string {
	line, most := Line(s.Size), budgets()
	switch {
	case s.Lay > line+most.Lay:
		return "laying"
	case s.Study > line+most.Study:
		return "the study"
	case s.Cutting > line+most.Cutting:
		return "cutting"
	case s.Sewing > line+most.Sewing:
		return "sewing"
	}
	return ""
}

// Family is layouts that grow in one respect.
type Family struct {
	Name     string
	Searches bool // cutting has to search for how pieces go together; else it takes no more than the line
	Text     func(n int) string
}

// Families are layouts that grow in borders, kinds, fabrics, cells, bands, pools, sets and cloth on hand.
func Families() []Family {
	return []Family{
		{"borders of four fabrics", true, func(n int) string { return borders(n, 4, "") }},
		{"borders of one fabric", true, func(n int) string { return borders(n, 1, "") }},
		{"lengthwise borders", true, func(n int) string { return "usable-width 300\n" + borders(n, 4, " lengthwise") }},
		{"tumbler kinds", true, tumblers},
		{"fabrics on hand", true, func(n int) string { return onHand(n) }},
		{"cells", false, func(n int) string { return field(n, "W", "block W web wedges f0 f1 kites f2\n") }},
		{"rings", false, func(n int) string { return field(n, "R", "block R ring wedges f0 f1 corners f2\n") }},
		{"pools", false, func(n int) string { return pool(n) + field(10, "R", "block R ring wedges p corners p\n") }},
		{"scant pools", true, func(n int) string { return "scraps p f0 f1 f2\n" + field(n, "W", "block W web wedges p p kites p\n") }},
		{"many pools", false, pools},
		{"strip sets", true, sets},
		{"bands", false, bands},
	}
}

func fabrics(n int, more string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "fabric f%d #%06x%s\n", i, i*0x23457%0x1000000, more)
	}
	return b.String()
}

func borders(n, of int, more string) string {
	var b strings.Builder
	b.WriteString("side 2\n" + fabrics(of, "") + "block P plain piece f0\ngrid\n P P\n P P\n")
	for i := range n {
		fmt.Fprintf(&b, "border %.2f f%d corners f%d%s\n", 0.30+0.01*float64(i), i%of, (i+1)%of, more)
	}
	return b.String()
}

func tumblers(n int) string {
	var b, row strings.Builder
	b.WriteString("side 4\n" + fabrics(5, ""))
	for i := range n {
		fmt.Fprintf(&b, "block T%d tumblers pieces f%d f%d about %.3f\n", i, i%5, (i+2)%5, 2+0.01*float64(i))
		fmt.Fprintf(&row, " T%d", i)
	}
	return b.String() + "grid\n" + strings.Repeat(row.String()+"\n", 12)
}

func onHand(n int) string {
	n = n * 5 / 2
	var b, row strings.Builder
	b.WriteString("side 4\n" + fabrics(n, " on-hand 1/8 yd"))
	for i := range n {
		fmt.Fprintf(&b, "block R%d ring wedges f%d corners f%d\nborder %.2f f%d corners f%d\n", i, i, (i+1)%n, 1+0.13*float64(i), i, (i+1)%n)
		fmt.Fprintf(&row, " R%d", i)
	}
	return b.String() + "grid\n" + strings.Repeat(row.String()+"\n", 8)
}

func field(n int, label, block string) string {
	return "strip 4\n" + fabrics(3, "") + block + fmt.Sprintf("grid\n %s\nrepeat across %d down %d\n", label, n, n)
}

func pool(n int) string {
	var b strings.Builder
	b.WriteString("scraps p")
	for i := range n {
		fmt.Fprintf(&b, " g%d", i)
	}
	return strings.ReplaceAll(fabrics(n, ""), "fabric f", "fabric g") + b.String() + "\n"
}

// pools are light pools with a dark fabric each that stands against dark ones: scraps that fall out of their pools.
func pools(n int) string {
	var b, row strings.Builder
	b.WriteString("side 4\nfabric f0 #eee\nfabric f1 #ddd\nfabric f2 #fff\nfabric g0 #111\nfabric g1 #222\nfabric g2 #333\n")
	for i := range n {
		fmt.Fprintf(&b, "fabric d%d #2%x1\nscraps p%d f0 f1 f2 d%d\nscraps q%d g0 g1 g2\nblock R%d ring wedges p%d corners q%d\n", i, i%16, i, i, i, i, i, i)
		fmt.Fprintf(&row, " R%d", i)
	}
	return b.String() + "grid\n" + strings.Repeat(row.String()+"\n", 4)
}

func sets(n int) string {
	var b, row strings.Builder
	b.WriteString("side 12\n" + fabrics(2, ""))
	for i := range n {
		fmt.Fprintf(&b, "strip-set s%d f0 %.3f f1 rest\nblock W%d web wedges s%d kites f0\n", i, 1+0.02*float64(i), i, i)
		fmt.Fprintf(&row, " W%d", i)
	}
	return b.String() + "grid\n" + strings.Repeat(row.String()+"\n", 4)
}

func bands(n int) string {
	return "side 15\nseam 0.1\n" + fabrics(4, "") + "strip-set s" + strings.Repeat(" f1 0.36 f2 0.36", n/2) + " f0 rest\nblock W web wedges s kites f3\ngrid\n W\nrepeat across 12 down 12\n"
}
