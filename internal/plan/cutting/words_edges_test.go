package cutting

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// TestLimitText: what shops sell by is rounded to the nearest tenth, and said as about so much where that is not all of it.
func TestLimitText(t *testing.T) {
	for _, c := range []struct {
		nm    measure.NM
		units measure.System
		want  string
	}{
		{1000 * measure.Inch, measure.Inches, "1000 in (27.78 yd)"}, {MaxExtra, measure.Inches, "100 in (2.78 yd)"}, {500 * measure.Yard, measure.Inches, "18000 in (500 yd)"},
		{9 * measure.Yard / 2, measure.Inches, "162 in (4 1/2 yd)"}, {MaxStep, measure.Inches, "2 in"}, {MaxExtra, measure.Centimetres, "254 cm (2.54 m)"}, {3 * measure.Metre, measure.Centimetres, "300 cm (3 m)"},
	} {
		if got := limitText(c.nm, c.units); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestShopHad: cloth on hand is written as it was.
func TestShopHad(t *testing.T) {
	p := Build(topOf(t, "side 4\nfabric a #111 on-hand 3/8 yd\nblock A plain piece a\ngrid\n A\n"), Options{})
	if said := (Words{p}).OnHand(p.Fabrics[0].OnHand); said != "3/8 yd, enough" {
		t.Errorf("on hand: %q", said)
	}
}

// TestAddedLengths: what is added to each fabric is named beside the lengths that it is in.
func TestAddedLengths(t *testing.T) {
	top := topOf(t, "side 4\nfabric a #111\nblock A plain piece a\ngrid\n A A\n")
	for _, c := range []struct {
		squareUp, spare measure.NM
		want            string
	}{
		{measure.Inch, 2 * measure.Inch, "with 3 in more than is cut from it (1 in for squaring its end and 2 in for slips)"},
		{measure.Inch, 0, "first, with 1 in for squaring its end, and"}, {0, 2 * measure.Inch, "first, with 2 in for slips, and"}, {0, 0, "first and rounded once"},
	} {
		p := Build(top, Options{SquareUp: c.squareUp, Spare: c.spare})
		if note := (Words{p}).RoundingNote(); !strings.Contains(note, c.want) {
			t.Errorf("%q, want %q in it", note, c.want)
		}
		if f := p.Fabrics[0].Purchase; f.Need-f.ExactCut != p.SquareUp+p.Spare {
			t.Errorf("%s more is needed than is cut, the plan names %s", p.text(f.Need-f.ExactCut), p.text(p.SquareUp+p.Spare))
		}
	}
}

var (
	eachOf = regexp.MustCompile(`, for each quilt: (?:(\d+) (?:strip|panel)|one length)`)
	allOf  = regexp.MustCompile(` For all (\d+) quilts these are (\d+) (?:strip|panel)s?`)
)

// wrongEdges says what the sentences on binding and backing have otherwise than the plan of several quilts.
func wrongEdges(p *Plan, list []string) error {
	bindings := 0
	for i := range p.Fabrics {
		for _, s := range p.Fabrics[i].Strips {
			for _, c := range s.Cuts {
				if c.Use == ForBinding {
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

// TestEdgesOfSeveralQuilts: of several quilts binding, backing and batting are said for each, with the numbers of one, and
// what all of them take is what the plan cuts.
func TestEdgesOfSeveralQuilts(t *testing.T) {
	bound := 0
	for _, n := range sampleTops() {
		for _, copies := range []int{1, 2, 12} {
			p := Build(n.Top, Options{Copies: copies})
			list := Words{p}.Edges()
			if copies == 1 {
				if said := strings.Join(list, " "); strings.Contains(said, "each quilt") || strings.Contains(said, "For all") {
					t.Errorf("%s: of one quilt %q", n.name, said)
				}
				continue
			}
			if err := wrongEdges(p, list); err != nil {
				t.Errorf("%s: %v", n.name, err)
			}
			if p.Binding != nil {
				bound++
				p.Binding.Strips++
				if wrongEdges(p, Words{p}.Edges()) == nil {
					t.Errorf("%s: a strip of binding too many in every quilt is not noticed", n.name)
				}
			}
		}
	}
	if bound < 4 {
		t.Errorf("only %d plans have a binding", bound)
	}
}

// longer says which side of an end's words is longer than the end is.
func longer(text string, l *LeftOver, units measure.System) error {
	across, along, ok := strings.Cut(text, " by ")
	if !ok {
		return fmt.Errorf("%q is no size", text)
	}
	if err := misread(across, l.AcrossCut, units, -measure.Inch/8, measure.Slack); err != nil {
		return err
	}
	return misread(along, l.AlongCut, units, -measure.Inch/8, measure.Slack)
}

// TestLeftOversAreThere: no end of a strip is said to be longer or wider than it is.
func TestLeftOversAreThere(t *testing.T) {
	ends, under := 0, 0
	for _, n := range everyTop(40) {
		p := usual(n)
		w := Words{p}
		for i := range p.Fabrics {
			f := &p.Fabrics[i]
			for _, l := range f.LeftOver {
				ends++
				if err := longer(w.LeftOver(&l), &l, p.Units); err != nil {
					t.Errorf("%s: %v", n.name, err)
				}
				less := LeftOver{AcrossCut: l.AcrossCut - measure.Inch/4, AlongCut: l.AlongCut}
				if longer(w.LeftOver(&l), &less, p.Units) == nil {
					t.Fatalf("%s: an end that is wider than it is passes", n.name)
				}
			}
			for s := range f.Strips {
				switch left, said := f.Strips[s].EndLeftCut, w.EndLeft(&f.Strips[s]); {
				case left == 0 && said != "":
					t.Errorf("%s: nothing is left, and it says %q", n.name, said)
				case left > 0 && strings.HasPrefix(said, "under "):
					under++
				case left > 0:
					if err := misread(said, left, p.Units, -measure.Inch/8, measure.Slack); err != nil {
						t.Errorf("%s: %v", n.name, err)
					}
				}
			}
		}
	}
	if ends == 0 || under == 0 {
		t.Errorf("%d ends, %d of them under a mark", ends, under)
	}
}

// TestShapeNotes: how kites and stop pieces are cut stands beside them, once, and nowhere else; a square for stop pieces that
// is larger than need be is explained.
func TestShapeNotes(t *testing.T) {
	kites, stops, large := 0, 0, 0
	for _, n := range everyTop(60) {
		p := usual(n)
		said := strings.Join(Words{p}.ShapeNotes(), "\n")
		has := map[blocks.Shape]int{}
		for i := range p.Lines {
			piece := &p.Lines[i].Piece
			has[piece.Shape] = 1
			if want := piece.Shape == blocks.StopGround && piece.TrimCut > 0; want != strings.Contains(said, fmt.Sprintf("Line %d: by custom", i+1)) {
				t.Errorf("%s: line %d: %q", n.name, i+1, said)
			} else if want {
				large++
			}
		}
		if strings.Count(said, "Kites. Draw a line") != has[blocks.Kite] || strings.Count(said, "as a left or a right stop piece") != has[blocks.StopGround] {
			t.Errorf("%s: %q", n.name, said)
		}
		kites, stops = kites+has[blocks.Kite], stops+has[blocks.StopGround]
	}
	if kites == 0 || stops == 0 || large == 0 {
		t.Errorf("%d plans with kites, %d with stop pieces, %d larger squares", kites, stops, large)
	}
}
