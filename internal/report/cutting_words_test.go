package report

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// cutsOf are the words of a layout's plan.
func cutsOf(t *testing.T, text string, o cutting.Options) *cuts {
	t.Helper()
	return newCuts(&Plans{Top: lay.Top(t, text), Cutting: o})
}

// TestOnHand: cloth on hand is written as it was.
func TestOnHand(t *testing.T) {
	c := cutsOf(t, "side 4\nfabric a #111 on-hand 3/8 yd\nblock A plain piece a\ngrid\n A\n", cutting.Options{})
	if said := c.onHand(c.Fabrics[0].OnHand); said != "3/8 yd: buy none" {
		t.Errorf("on hand: %q", said)
	}
}

// TestAddedLengths: what is added to each fabric is named beside the lengths that it is in.
func TestAddedLengths(t *testing.T) {
	const slips = "as insurance against cutting errors, rounded"
	for _, w := range []struct {
		cutting.Options
		want  string
		added measure.NM
	}{
		{cutting.Options{}, "includes 2 in for squaring up and, except for the backing, a spare strip of the widest cut (up to 9 in), rounded", 13 * measure.Inch / 2},
		{cutting.Options{SquareUp: measure.Inch, Spare: 2 * measure.Inch}, "includes 1 in for squaring up and 2 in " + slips, 3 * measure.Inch},
		{cutting.Options{SquareUp: measure.Inch, NoSpare: true}, "includes 1 in for squaring up, rounded", measure.Inch},
		{cutting.Options{NoSquareUp: true, Spare: 2 * measure.Inch}, "includes 2 in " + slips, 2 * measure.Inch},
		{cutting.Options{NoSquareUp: true, NoSpare: true}, "includes nothing for squaring up or for cutting errors, rounded", 0},
	} {
		c := cutsOf(t, "side 4\nfabric a #111\nblock A plain piece a\ngrid\n A A\n", w.Options)
		if note := c.rounding(); !strings.Contains(note, w.want) {
			t.Errorf("%q, want %q in it", note, w.want)
		}
		if f := c.Fabrics[0].Purchase; f.Need-f.ExactCut != w.added || f.SquareUp+f.Spare != w.added {
			t.Errorf("%s more is needed than is cut, expected %s", c.length(f.Need-f.ExactCut), c.length(w.added))
		}
	}
}

var (
	eachOf = regexp.MustCompile(`, for each quilt: .*?(?:(\d+) (?:strip|panel)|one length)`)
	allOf  = regexp.MustCompile(` For all (\d+) quilts: (\d+) (?:strip|panel)s?`)
)

// wrongEdges says what the sentences on binding and backing have otherwise than the plan of several quilts.
func wrongEdges(p *cuts, list []string) error {
	bindings := 0
	for i := range p.Fabrics {
		for _, s := range p.Fabrics[i].Strips {
			for _, c := range s.Cuts {
				if c.Use == cutting.ForBinding {
					bindings += s.Times * c.Units
				}
			}
		}
	}
	for _, text := range list {
		if !strings.Contains(text, ", for each quilt: ") {
			return fmt.Errorf("%q does not say that it is for each quilt", text)
		}
		if strings.HasPrefix(text, "Batting") {
			continue
		}
		each, all := eachOf.FindStringSubmatch(text), allOf.FindStringSubmatch(text)
		if each == nil || all == nil {
			return fmt.Errorf("%q does not say how many", text)
		}
		one, _ := strconv.Atoi(each[1])
		copies, _ := strconv.Atoi(all[1])
		whole, _ := strconv.Atoi(all[2])
		if one = max(one, 1); copies != p.Copies || whole != one*copies {
			return fmt.Errorf("%q: %d times %d are not %d", text, copies, one, whole)
		}
		if strings.HasPrefix(text, "Binding") && whole != bindings {
			return fmt.Errorf("%q, but %d are cut", text, bindings)
		}
	}
	return nil
}

// itemsOf are the items of the lists of a section.
func itemsOf(s document.Section) (list []string) {
	for _, b := range s.Blocks {
		if l, ok := b.(document.List); ok {
			for _, it := range l.Items {
				list = append(list, it.Text.String())
			}
		}
	}
	return list
}

// TestEdgesOfSeveralQuilts: of several quilts binding, backing and batting are said for each, with the numbers of one, and
// what all of them take is what the plan cuts.
func TestEdgesOfSeveralQuilts(t *testing.T) {
	bound := 0
	for _, n := range everyPlan() {
		c := newCuts(n.Plans)
		list := itemsOf(c.forFinishing())
		if c.Copies == 1 {
			if said := strings.Join(list, " "); strings.Contains(said, "each quilt") || strings.Contains(said, "For all") {
				t.Errorf("%s: of one quilt %q", n.name, said)
			}
			continue
		}
		list = slices.DeleteFunc(list, func(s string) bool { return strings.HasPrefix(s, "Leftover") })
		if err := wrongEdges(c, list); err != nil {
			t.Errorf("%s: %v", n.name, err)
		}
		if c.Binding != nil {
			bound++
			c.Binding.Strips++
			if wrongEdges(c, itemsOf(c.forFinishing())) == nil {
				t.Errorf("%s: a strip of binding too many in every quilt is not noticed", n.name)
			}
			c.Binding.Strips--
		}
	}
	if bound < 4 {
		t.Errorf("only %d plans have a binding", bound)
	}
}

// longer says which side of an end's words is longer than the end is.
func longer(text string, l *cutting.LeftOver, units measure.System) error {
	_, size, ok := strings.Cut(text, " of ")
	if !ok {
		return fmt.Errorf("%q is no size", text)
	}
	across, along, ok := strings.Cut(size, " by ")
	if !ok { // a square
		along = across
		across = strings.TrimSuffix(strings.TrimSuffix(across, " in"), " cm")
	}
	if err := misread(across, l.AcrossCut, units, -measure.Inch/8, measure.Slack); err != nil {
		return err
	}
	return misread(along, l.AlongCut, units, -measure.Inch/8, measure.Slack)
}

// TestLeftOversAreThere: no end of a strip is said to be longer or wider than it is.
func TestLeftOversAreThere(t *testing.T) {
	ends := 0
	for _, n := range everyPlan() {
		p := newCuts(n.Plans)
		for i := range p.Fabrics {
			f := &p.Fabrics[i]
			for _, l := range f.LeftOver {
				ends++
				if err := longer(p.leftOver(&l), &l, p.Units); err != nil {
					t.Errorf("%s: %v", n.name, err)
				}
				less := cutting.LeftOver{AcrossCut: l.AcrossCut - measure.Inch/4, AlongCut: l.AlongCut}
				if longer(p.leftOver(&l), &less, p.Units) == nil {
					t.Fatalf("%s: an end that is wider than it is passes", n.name)
				}
			}
			for s := range f.Strips {
				switch left, said := f.Strips[s].EndLeftCut, p.endLeft(&f.Strips[s]); {
				case left == 0 && said != "":
					t.Errorf("%s: nothing is left, and it says %q", n.name, said)
				case left > 0 && strings.HasPrefix(said, "under "):
					if left >= p.Units.CutMark() {
						t.Errorf("%s: %q, and %d is left", n.name, said, left)
					}
				case left > 0:
					if err := misread(said, left, p.Units, -measure.Inch/8, measure.Slack); err != nil {
						t.Errorf("%s: %v", n.name, err)
					}
				}
			}
		}
	}
	if said := newCuts(usualPlans()[0].Plans).endLeft(&cutting.Strip{EndLeftCut: measure.Inch / 100}); !strings.HasPrefix(said, "under ") {
		t.Errorf("of an end under a mark it says %q", said)
	}
	if ends == 0 {
		t.Error("no ends")
	}
}

// TestHowToCut: how kites and background pieces are cut is told where there are some, once in the whole document; a square for stop
// pieces that is larger than need be is explained.
func TestHowToCut(t *testing.T) {
	kites, stops, large := 0, 0, 0
	for _, n := range usualPlans() {
		c := newCuts(n.Plans)
		said := allText(Cutting(n.Plans))
		has := map[blocks.Shape]int{}
		for i := range c.Lines {
			piece := &c.Lines[i].Piece
			has[piece.Shape] = 1
			if want := piece.Shape == blocks.Background && piece.TrimCut > 0; want != strings.Contains(said, fmt.Sprintf("Line %d: these squares are generous", i+1)) {
				t.Errorf("%s: line %d", n.name, i+1)
			} else if want {
				large++
			}
		}
		if strings.Count(said, "Draw a diagonal line on the square") != has[blocks.Kite] || strings.Count(said, "a left or a right background piece") != has[blocks.Background] {
			t.Errorf("%s: %q", n.name, said)
		}
		kites, stops = kites+has[blocks.Kite], stops+has[blocks.Background]
	}
	if kites == 0 || stops == 0 || large == 0 {
		t.Errorf("%d plans with kites, %d with background pieces, %d larger squares", kites, stops, large)
	}
}

// allText is all that a document says, a line for each text and cell.
func allText(d document.Document) string {
	var b strings.Builder
	var walk func(list []document.Block)
	walk = func(list []document.Block) {
		for _, block := range list {
			switch v := block.(type) {
			case document.Section:
				b.WriteString(v.Title + "\n")
				walk(v.Blocks)
			case document.Together:
				walk(v.Blocks)
			case document.Paragraph:
				b.WriteString(v.Text.String() + "\n")
			case document.List:
				for _, it := range v.Items {
					b.WriteString(it.Text.String() + "\n")
					walk(it.Blocks)
				}
			case document.Table:
				for _, r := range v.Rows {
					for _, cell := range r.Cells {
						b.WriteString(cell.Text.String() + "\n")
					}
				}
			}
		}
	}
	for _, s := range d.Sections {
		b.WriteString(s.Title + "\n")
		walk(s.Blocks)
	}
	return b.String()
}
