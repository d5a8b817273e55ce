// Package costs counts the steps that plans take, and has families of layouts that grow, for tests of what planning costs.
// Steps are counted and no clock is asked, so that a cost is the same on every machine.
package costs

import (
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
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

// Of plans a layout for so many quilts and counts; false for one that is refused or has more pieces than most.
func Of(text string, copies, most int) (Steps, bool) {
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
	s.Cutting = stop.Count(func(sign *stop.Sign) { cuts = cutting.Build(sign, top, cutting.Options{Copies: copies}) })
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
func budgets() Steps { return Steps{Lay: 46_000_000, Cutting: 95_000_000, Sewing: 31_000_000} }

// Over says which plan costs more than it may, "" for none: more than the line and the budget of its searches.
func (s *Steps) Over() string {
	line, most := Line(s.Size), budgets()
	switch {
	case s.Lay > line+most.Lay:
		return laying
	case s.Study > line+most.Study:
		return study
	case s.Cutting > line+most.Cutting:
		return planCutting
	case s.Sewing > line+most.Sewing:
		return planSewing
	}
	return ""
}

// Family is layouts that grow in one respect.
type Family struct {
	Name     string
	Searches []string // the plans that have to search, as Over names them; every other takes no more than the line
	Most     int      // steps of the first of those, about, when the budget that it reaches in the end is spent; 0 for one that reaches none
	Text     func(n int) string
	Copies   int // quilts that are planned; 0 for one
}

// The plans, as Over names them.
const (
	laying, study, planCutting, planSewing = "laying", "the study", "cutting", "sewing"
)

// Families are layouts that grow in borders, kinds, fabrics, cells, bands, pools, sets and cloth on hand.
func Families() []Family {
	return []Family{
		{"borders of four fabrics", []string{planCutting}, 0, func(n int) string { return borders(n, 4, "") }, 0},
		{"borders of one fabric", []string{planCutting}, 32_000_000, func(n int) string { return borders(n, 1, "") }, 0},
		{"lengthwise borders", []string{planCutting}, 30_500_000, func(n int) string { return "usable-width 300\n" + borders(n, 4, " lengthwise") }, 0},
		{"tumbler kinds", []string{planCutting}, 41_000_000, func(n int) string { return tumblers(n*n*maxKinds/36/36, 0) }, 0},
		{"tumblers beside strip sets", []string{planCutting}, 13_500_000, func(n int) string { return tumblers(n, n/4) }, 7},
		{"fabrics on hand", []string{planCutting}, 44_000_000, func(n int) string { return onHand(n) }, 0},
		{"cells", nil, 0, func(n int) string { return field(n, "W", "block W web wedges f0 f1 kites f2\n") }, 0},
		{"rings", nil, 0, func(n int) string { return field(n, "R", "block R ring wedges f0 f1 corners f2\n") }, 0},
		{"pools", []string{laying}, 0, func(n int) string { return pool(n) + field(10, "R", "block R ring wedges p corners p\n") }, 0},
		{"scant pools", []string{laying, planCutting}, 0, func(n int) string { return "scraps p f0 f1 f2\n" + field(n, "W", "block W web wedges p p kites p\n") }, 0},
		{"many pools", []string{laying}, 0, pools, 0},
		{"dealt sets", []string{laying, planCutting}, 0, dealtSets, 0},
		{"pools without a deal", []string{laying, planCutting}, 42_000_000, noDeal, 0},
		{"uneven pools", []string{laying, planCutting}, 4_400_000, uneven, 0},
		{"overlapping pools", []string{laying, planCutting}, 16_100_000, overlapping, 0},
		{"islands", []string{planSewing, planCutting}, 32_500_000, islands, 0},
		{"strip sets", []string{planCutting}, 0, sets, 0},
		{"bands", nil, 0, bands, 0},
		{"motifs", []string{planCutting}, 245_000, motifs, 0},
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

// maxKinds is how many kinds of tumblers are tried: nearly as many as a layout may have labels.
const maxKinds = 490

// tumblers are columns of so many kinds, and as many strip sets as there are to be.
func tumblers(n, sets int) string {
	var b, row strings.Builder
	b.WriteString("side 4\n" + fabrics(5, ""))
	for i := range n {
		fmt.Fprintf(&b, "block T%d tumblers pieces f%d f%d about %.3f\n", i, i%5, (i+2)%5, 2+0.01*float64(i))
		fmt.Fprintf(&row, " T%d", i)
	}
	for i := range sets {
		fmt.Fprintf(&b, "strip-set s%d f0 %.3f f1 rest\nblock W%d web wedges s%d kites f0\n", i, 1+0.02*float64(i), i, i)
		fmt.Fprintf(&row, " W%d", i)
	}
	return b.String() + "grid\n" + strings.Repeat(row.String()+"\n", 12+max(0, n-60)/12)
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

// motifs are blocks of wedges and corners that are cut each from a place of its own of one striped fabric.
func motifs(n int) string {
	var b, row strings.Builder
	b.WriteString("side 4\n" + fabrics(3, "") + "fabric s stripes f0 3/4 f1 1/4 f2 1/2 crosswise\n")
	for i := range n {
		fmt.Fprintf(&b, "motif m%d s across 0 down %.2f pointing %d\nmotif c%d s across 0 down %.2f\nblock R%d ring wedges m%d corners c%d\n", i, 0.13*float64(i%11), i*5%360, i, 0.17*float64(i%7), i, i, i)
		fmt.Fprintf(&row, " R%d", i)
	}
	return b.String() + "grid\n" + strings.Repeat(row.String()+"\n", 4)
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

// dealtSets are webs of strip sets that are dealt from a pool set by set.
func dealtSets(n int) string {
	return "scraps p f0 f1 f2 f3 f4 f5 f6 by set\nfabric f3 #888\nfabric f4 #777\nfabric f5 #666\nfabric f6 #555\nstrip-set s p equal p equal p equal\n" +
		field(n*5/3, "W", "block W web wedges s reversed s kites f0\n")
}

func bands(n int) string {
	return "side 15\nseam 0.1\n" + fabrics(4, "") + "strip-set s" + strings.Repeat(" f1 0.36 f2 0.36", n/2) + " f0 rest\nblock W web wedges s kites f3\ngrid\n W\nrepeat across 12 down 12\n"
}

// noDeal is rings of two pools in which neighbors cannot all differ, and that takes long to see.
func noDeal(n int) string {
	return "side 6\n" + fabrics(6, "") + "scraps p f1 f2 f3 deal 2\nscraps q f0 f2 f3 by web deal 3\n" +
		"block A ring wedges f0 p q f0 p f1 f0 q corners f0 q p q\nblock B ring wedges f5 q p f4 q q f4 q corners q q q f5\n" +
		"block C plain piece f1\nblock D ring wedges q f0 q f2 q f2 f2 f5 corners q p p q\n" +
		"block E ring wedges q f1 p f2 f4 f1 f2 f1 corners p f4 q p\nblock F plain piece f5\nblock G plain piece p\n" +
		"block H ring wedges f5 p f1 q f1 p p q corners f0 f1 f4 q\n" +
		"grid\n B E E C H\n H B B H F\n B D D A H\n H D G A E\n B D A D .\n" + fmt.Sprintf("repeat across %d down %[1]d\n", max(1, n/5))
}

// uneven are rings of pools in which no deal uses all fabrics alike, and each pool has its own.
func uneven(n int) string {
	var b, rows strings.Builder
	b.WriteString("side 6\n" + fabrics(3, ""))
	for i := range max(1, n/4) {
		name := func(letter string) string { return letter + fmt.Sprint(i) }
		label := strings.NewReplacer("A", name("A"), "B", name("B"), "p", name("p"), "q", name("q"), "r", name("r"), "s", name("s"))
		for _, p := range []string{"p by block deal 4", "q deal 1", "r by web deal 1", "s deal 2"} {
			letter, how, _ := strings.Cut(p, " ")
			fmt.Fprintf(&b, "scraps %s f0 f1 f2 %s\n", name(letter), how)
		}
		fmt.Fprintf(&b, "block %s ring wedges %s corners %s\n", name("A"), label.Replace("s f1 f0 p s f2 f0 p"), label.Replace("q s q p"))
		fmt.Fprintf(&b, "block %s ring wedges %s corners %s\n", name("B"), label.Replace("q p f2 s p p p f2"), label.Replace("f0 s f0 p"))
		for _, row := range []string{"A B A A A", "B A B B B", "B B A A A", "A B A B B", "A B B B A", "A B A A A", "B A B B B", "B B A A A", "A B A B B", "A B B B A"} {
			rows.WriteString(" " + label.Replace(row+" "+row) + "\n")
		}
	}
	return b.String() + "grid\n" + rows.String()
}

// overlapping are rings of two pools that have one fabric in common, which no deal uses as often as the others.
func overlapping(n int) string {
	return "scraps p f0 f1 f2\nscraps q f2 f3\nfabric f3 #888\n" + field(n*5/3, "R", "block R ring wedges p q p q corners p\nsash 1 f0 posts f1\n")
}

// islands are webs and floating stars turned at random among rings, in parts that nothing joins: no way to press lets all seams nest.
func islands(n int) string {
	const wide = 20
	dice := rand.New(rand.NewPCG(41, wide))
	var rows strings.Builder
	for range wide {
		for range wide {
			rows.WriteString(" " + []string{"R", "W", "S"}[dice.IntN(3)])
		}
		rows.WriteString(" .\n")
	}
	turned := regexp.MustCompile("[WS]").ReplaceAllStringFunc(rows.String(), func(label string) string {
		return label + []string{":nw", ":ne", ":se", ":sw"}[dice.IntN(4)]
	})
	return "side 6\n" + fabrics(3, "") + "block W web wedges f0 kites f1\nblock S floating-star kites f1 wedges f0 background f2\nblock R ring wedges f0 f2 corners f1\n" +
		"grid\n" + turned + strings.Repeat(" .", wide+1) + "\n" + fmt.Sprintf("repeat across %d down %[1]d\n", max(1, n/5))
}
