package report

import (
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/plan/orders"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/quilttest/spelled"
	"eighthturn/internal/stop"
)

// alteration is a plan that is another in one thing, as quilts seldom have it: the words must follow.
type alteration struct {
	name   string
	change func(c *cuts, s *sewer)
}

// spellAltered spells out which lines of the two reports are others where a plan is.
func spellAltered(t *testing.T, b *spelled.Book, text string, o cutting.Options, list []alteration) {
	spell := func(change func(*cuts, *sewer)) []string {
		p := &Plans{Top: lay.Top(t, text), Cutting: o, Line: func(at int) int { return at + 1 }}
		c, s := newCuts(p), newSewer(p)
		change(c, s)
		page := spelled.New()
		page.Document(Cutting(p))
		page.Document(Sewing(p))
		page.Blocks("", []document.Block{(&classroom{c, c}).kitTable()})
		for _, m := range CuttingMaps(p) {
			page.Line("%s", m.Figure.Description)
		}
		return strings.Split(page.Page(), "\n")
	}
	before := map[string]int{}
	for _, line := range spell(func(*cuts, *sewer) {}) {
		before[line]++
	}
	for _, a := range list {
		b.Line("# %s", a.name)
		left := map[string]int{}
		for line, n := range before {
			left[line] = n
		}
		for _, line := range spell(a.change) {
			if left[line]--; left[line] < 0 {
				b.Line("%s", strings.TrimSpace(line))
			}
		}
		gone := 0
		for _, n := range left {
			gone += max(n, 0)
		}
		b.Line("and %d lines are gone", gone)
	}
}

// TestSpelledCutsAltered: see alteration, of cutting plans.
func TestSpelledCutsAltered(t *testing.T) {
	b := spelled.New()
	text := "strip 4\n" + sixFabrics + "strip-set shore rust 1 3/4 cream rest\nblock W web wedges navy rust kites cream\nblock V web wedges shore reversed shore kites cream\ngrid\n W V\n V W\nborder 12 1/2 plum\nborder 15 teal lengthwise\nbinding 2 1/2 moss\n"
	fault := []cutting.Fault{{Place: cutting.Place{Start: 3, End: 7}, Message: "the strip is too narrow", Hint: "write strip 4"}, {Message: "another"}}
	strip := func(c *cuts, fabric int) *cutting.Strip { return &c.Fabrics[fabric].Strips[0] }
	spellAltered(t, b, text, cutting.Options{}, []alteration{
		{"faults", func(c *cuts, _ *sewer) { c.Faults, c.Warnings = fault, fault[1:] }},
		{"on the print", func(c *cuts, _ *sewer) { strip(c, 0).OnPrint = true }},
		{"two lengths", func(c *cuts, _ *sewer) {
			for i := range c.Fabrics {
				for n := range c.Fabrics[i].Blocks {
					c.Fabrics[i].Blocks[n].Times = 2
				}
			}
		}},
		{"no backing", func(c *cuts, _ *sewer) { c.Backing, c.BackingBuy = nil, supplies.Purchase{} }},
		{"a backing of the first fabric", func(c *cuts, _ *sewer) { c.BackingOf, c.BackingBuy = 0, supplies.Purchase{} }},
		{"no batting", func(c *cuts, _ *sewer) { c.Batting = nil }},
		{"no binding", func(c *cuts, _ *sewer) { c.Binding = nil }},
		{"straight joins", func(c *cuts, _ *sewer) { c.Binding.Join = supplies.Straight }},
		{"no package", func(c *cuts, _ *sewer) { c.Batting.Packages = nil }},
		{"a cliff", func(c *cuts, _ *sewer) {
			c.Backing.Ways[c.Backing.Less].Cliff = supplies.Cliff{Costs: true, Step: measure.Inch}
		}},
		{"another width of backing", func(c *cuts, _ *sewer) { c.Backing.UsableWidth = 108 * measure.Inch }},
		{"tight", func(c *cuts, _ *sewer) { c.Fabrics[0].Tight = true }},
		{"tight, bought", func(c *cuts, _ *sewer) { c.Fabrics[0].Tight, c.Fabrics[0].Purchase.Spare = true, 40*measure.Inch }},
		{"tight, bought to the thread", func(c *cuts, _ *sewer) { c.Fabrics[0].Tight, c.Fabrics[0].Purchase.Spare = true, 4*measure.Inch }},
		{"tight, a thread too little", func(c *cuts, _ *sewer) { c.Fabrics[0].Tight, c.Fabrics[0].Purchase.Spare = true, 4*measure.Inch-1 }},
		{"four tight", func(c *cuts, _ *sewer) {
			for i := range 4 {
				c.Fabrics[i].Tight = true
			}
		}},
		{"five tight", func(c *cuts, _ *sewer) {
			for i := range 5 {
				c.Fabrics[i].Tight = true
			}
		}},
		{"search ended", func(c *cuts, _ *sewer) { c.Fabrics[0].SearchEnded = true }},
		{"more rows than strips", func(c *cuts, _ *sewer) { c.Fabrics[0].StripRows = 3 }},
		{"below the bound", func(c *cuts, _ *sewer) { c.Fabrics[0].LengthBound = measure.Inch }},
		{"below both bounds", func(c *cuts, _ *sewer) { c.Fabrics[0].LengthBound, c.Fabrics[0].StripRows = measure.Inch, 3 }},
		{"a rule", func(c *cuts, _ *sewer) {
			c.Lines[0].Piece.RuleCut, c.Lines[0].Piece.KitesCut = measure.Inch, 2*measure.Inch
		}},
		{"all on hand", func(c *cuts, _ *sewer) { c.Lines[0].OnHand = c.Lines[0].Pieces }},
		{"one on hand", func(c *cuts, _ *sewer) { c.Lines[0].OnHand = 1 }},
		{"nothing to buy", func(c *cuts, _ *sewer) { c.Fabrics[0].Purchase = supplies.Purchase{} }},
		{"no allowance", func(c *cuts, _ *sewer) { c.Allowance.SquareUp, c.Allowance.Spare = 0, 0 }},
		{"squared up alone", func(c *cuts, _ *sewer) { c.Allowance.Spare = 0 }},
		{"spare alone", func(c *cuts, _ *sewer) { c.Allowance.SquareUp = 0 }},
		{"spare by length", func(c *cuts, _ *sewer) { c.Allowance.OneStrip = false }},
		{"another usable width", func(c *cuts, _ *sewer) { c.Fabrics[1].UsableWidth = 50 * measure.Inch }},
		{"rows", func(c *cuts, _ *sewer) { strip(c, 0).Cuts[0].Rows = 2 }},
		{"narrower", func(c *cuts, _ *sewer) { strip(c, 0).WidthCut += measure.Inch }},
		{"nothing left of a strip", func(c *cuts, _ *sewer) { strip(c, 0).EndLeftCut = 0 }},
		{"not longer", func(c *cuts, _ *sewer) { c.Longer = 0 }},
		{"two quilts", func(c *cuts, _ *sewer) { c.Copies = 2 }},
	})
	spellSets(t, b, text)
	spellCloth(t, b, text)
	keep(t, b, "cuts-altered")
}

// spellSets spells out how strip sets are pressed and cut, by what they give and what is wanted of them.
func spellSets(t *testing.T, b *spelled.Book, text string) {
	c := cutsOf(t, text, cutting.Options{})
	set := &c.Sets[0]
	one, three := set.Bands, append(append([]cutting.Band{}, set.Bands...), set.Bands[0])
	run := func(sets, wedges, first int) cutting.SetRun {
		return cutting.SetRun{Sets: sets, LengthCut: 40 * measure.Inch, Wedges: wedges, FirstReversed: first}
	}
	for _, runs := range [][]cutting.SetRun{{run(1, 18, 0)}, {run(2, 19, 0)}, {run(3, 19, 3)}, {run(3, 19, 1)}, {run(2, 18, 0), run(1, 9, 0)}, {run(2, 18, 2), run(1, 9, 0)}, {run(4, 18, 4), run(2, 18, 2)}, {run(4, 18, 0), run(2, 18, 1)}, {run(3, 18, 0), run(1, 8, 0)}} {
		for _, wanted := range [][2]int{{20, 0}, {0, 20}, {12, 8}} {
			for _, press := range []sewing.SetPressing{{Wedges: [2]int{10, 10}, Alternate: true}, {Wedges: [2]int{12, 8}, Alternate: true}, {Wedges: [2]int{20, 0}}, {Wedges: [2]int{0, 20}}} {
				set.Runs, set.Wanted, set.Bands = runs, wanted, one
				p := &sewing.StripSets{Sets: []sewing.SetPressing{press}}
				b.Line("%v of %v, wanted %v: %s; %s", press, runs, wanted, c.setPressed(p, 0), c.setPressedShort(p, 0))
			}
		}
		for _, r := range runs {
			b.Line("%s", c.bothKinds(0, r))
		}
		b.Line("%s", c.runs(set))
	}
	for _, bands := range [][]cutting.Band{one[:1], one, three} {
		for _, alike := range []bool{false, true} {
			set.Bands, set.Alike, set.Runs = bands, alike, []cutting.SetRun{run(2, 18, 0)}
			for _, press := range []sewing.SetPressing{{Wedges: [2]int{10, 10}, Alternate: true}, {Wedges: [2]int{20, 0}}} {
				p := &sewing.StripSets{Sets: []sewing.SetPressing{press}}
				b.Line("%d strips: %s; %s; %s", len(bands), c.setPressed(p, 0), c.setPressedShort(p, 0), strings.Join(c.setNotes(p, 0), " "))
			}
		}
	}
	for _, onHand := range [][2]int{{}, {3, 0}, {0, 2}, {1, 5}} {
		set.OnHand = onHand
		b.Line("%s", c.handSet(0))
	}
	for _, n := range []int{0, 7, 8, 15, 16} {
		b.Line("%d: %s%s", n, enoughFor(true, n), enoughFor(false, n))
	}
}

// spellCloth spells out what is said of chains, precuts, cloth on hand, stacks and dealt sets.
func spellCloth(t *testing.T, b *spelled.Book, text string) {
	c := cutsOf(t, text, cutting.Options{})
	border := 0
	for i := range c.Lines {
		if c.Lines[i].Border == 0 {
			border = i
		}
	}
	ways := []cutting.Way{{Border: 0, WidthFinished: 2 * measure.Inch}, {Border: -1, StripCut: 3 * measure.Inch, SideFinished: 4 * measure.Inch}, {Border: -1, SideFinished: 5 * measure.Inch}}
	for n := range 4 {
		for _, h := range []cutting.OnHand{{}, {ByLeast: true}, {SearchEnded: true}, {NoSpare: true, Enough: true}, {Enough: true}} {
			h.WaysToFit, h.HaveCut, h.ShortCut = ways[:n], measure.Yard, 3*measure.Inch
			b.Line("%s: %s", c.onHand(&h), c.wayWords(&h))
		}
	}
	for n := range 3 {
		chain := &cutting.Chain{Times: n, Strips: []cutting.Stretch{{Count: 3, LengthCut: 40 * measure.Inch}, {Count: 1, LengthCut: 20 * measure.Inch}}[:1+n/2], Pieces: []cutting.Share{{Line: border, Count: 2}, {Line: border, Count: 1}}[:1+n/2],
			Scant: n > 0, SpareCut: measure.NM(n/2) * measure.Inch / 2, Short: n == 1, LeastCut: 3 * measure.Inch}
		b.Line("%s", c.chainWords(chain))
		c.Longer = 0
	}
	sorts := []supplies.Precut{supplies.OwnPrecut(supplies.FatQuarter, 0, 40*measure.Inch, measure.Inches), supplies.OwnPrecut(supplies.FatEighth, 0, 40*measure.Inch, measure.Inches), supplies.OwnPrecut(supplies.SquarePrecut, 10*measure.Inch, 40*measure.Inch, measure.Inches), supplies.OwnPrecut(supplies.StripPrecut, 5*measure.Inch/2, 40*measure.Inch, measure.Inches)}
	for _, sort := range sorts {
		for _, from := range []cutting.FromPrecuts{{Have: 3, Used: 0}, {Have: 3, Used: 3}, {Have: 3, Used: 1, Alone: 3}, {Have: 1, Used: 1, Alone: 5}} {
			from.Precut = sort
			f := &cutting.Fabric{From: &from}
			b.Line("%s; %s", c.howFar(f), precutsNamed(from.Used, &from))
			f.Purchase.Buy = measure.Yard
			b.Line("%s; %s", c.howFar(f), c.bought(f))
		}
	}
	for _, r := range []cutting.Ruler{{ExactCut: 4 * measure.Inch, BelowCut: 4*measure.Inch - measure.Inch/128, AboveCut: 4*measure.Inch + measure.Inch/128 + 1}, {ExactCut: 4 * measure.Inch, BelowCut: 4*measure.Inch - measure.Inch/16, AboveCut: 4*measure.Inch + measure.Inch/128}, {ExactCut: 4 * measure.Inch, BelowCut: 4*measure.Inch - measure.Inch/32, AboveCut: 4*measure.Inch + measure.Inch/32}} {
		b.Line("%s", c.besideMark(r))
	}
	b.Line("%s, %s", stackStrips(&cutting.FromPrint{StackStrips: 1}), stackStrips(&cutting.FromPrint{StackStrips: 2}))
	for _, better := range []orders.Better{{Sets: [2]int{4, 1}}, {Sets: [2]int{4, 2}, ByWebs: true, Saved: []orders.Saved{{Fabric: 1, Now: supplies.Purchase{Buy: 2 * measure.Yard}, Then: supplies.Purchase{Buy: measure.Yard}}}}} {
		b.Line("%s", c.saves(&better))
		better.LeftOver, better.Lines = [2]int{7, 0}, []string{"webs  shore /  reversed shore"}
		for n := range 3 {
			c.plans.Nearby = func(*stop.Sign, *cutting.Plan, cutting.Options) []orders.Better {
				return []orders.Better{better, better}[:n]
			}
			c.plans.made = nil
			s := c.fewerSets()
			b.Section("", &s)
		}
	}
	for m := cutting.Whole; m <= cutting.FussyCut; m++ {
		for _, along := range []measure.NM{2 * measure.Inch, 3 * measure.Inch} {
			piece := &cutting.Piece{CutSize: blocks.CutSize{Method: m, AcrossCut: 2 * measure.Inch, AlongCut: along, SideFinished: measure.Inch}}
			b.Line("%s: %s, %s", methodName(m), c.cutSize(piece), c.finished(piece))
		}
	}
	for _, h := range []cutting.OnHandPieces{{Role: "kites", Cloth: "cream", Pieces: 4}, {Role: "wedges", Cloth: "shore", Reversed: true, Pieces: 4, Used: 3}, {Role: "corners", Cloth: "navy", Pieces: 1, Used: 1}, {Role: "nothing", Cloth: "navy", Pieces: 2, Used: 2}} {
		b.Line("%s", c.handWords(&h))
	}
	spellDealt(b, c)
}

func spellDealt(b *spelled.Book, c *cuts) {
	for _, w := range []cutting.DealtWeb{{Wedges: [2]int{8, 0}}, {Wedges: [2]int{0, 8}}, {Wedges: [2]int{5, 3}}, {Wedges: [2]int{5, 0}, Mixed: true}} {
		b.Line("%s", c.wedgesOf(&w))
	}
	sets := func(fabrics ...[]int) (list []cutting.DealtSet) {
		for i, f := range fabrics {
			list = append(list, cutting.DealtSet{Number: i + 1, Fabrics: f})
		}
		return list
	}
	for _, list := range [][]cutting.DealtSet{sets([]int{0, 5}, []int{1, 5}, []int{2, 5}), sets([]int{0, 1}, []int{1, 2}, []int{2, 0}), sets([]int{0, 2}, []int{1, 0}, []int{2, 1}, []int{0, 1}), sets([]int{0, 1}, []int{0, 2}, []int{1, 2}), sets([]int{5, 4}, []int{5, 4}), sets([]int{0, 1, 2}, []int{1, 2, 0}, []int{2, 0, 1}, []int{0, 1, 2}, []int{1, 2, 0}, []int{2, 0, 1}, []int{0, 1, 2}, []int{1, 2, 0}, []int{2, 0, 1})} {
		for _, d := range []cutting.Dealing{{Sets: list}, {Sets: list, Mixed: 1, Whole: 6, Neighbors: 2}, {Sets: list, Mixed: 3, Whole: 1, Neighbors: 1}} {
			b.Line("%s %s", c.restacked(&d), strings.Join(c.asDealt(&d), " "))
		}
	}
	for n := 1; n < 4; n++ {
		b.Line("%s %s", topStrips(n), times(n))
	}
}

// TestSpelledStepsAltered: see alteration, of sewing plans.
func TestSpelledStepsAltered(t *testing.T) {
	b := spelled.New()
	flip := func(sort sewing.StageSort, which func(i int) bool) func(c *cuts, s *sewer) {
		return func(_ *cuts, s *sewer) {
			for i := range s.Assembly.Stages {
				stage := &s.Assembly.Stages[i]
				for n := stage.First; stage.Sort == sort && n < stage.First+stage.Count; n++ {
					if which(n - stage.First) {
						s.Pressing.Choices[s.Choice(n)].Way ^= 1
					}
				}
			}
		}
	}
	every := func(int) bool { return true }
	first := func(i int) bool { return i == 0 }
	grids := []string{"side 6\n" + sixFabrics + "block R ring wedges navy corners cream\nblock P plain piece plum\ngrid\n R P R\n P R P\n R P R\n%sborder 2 rust corners teal\nborder 1 navy\n", "side 5 1/2\n" + sixFabrics + "block T tumblers pieces navy rust line 8\nblock W web wedges teal kites cream\ngrid\n T W T\n T W T\n"}
	for i, text := range []string{strings.Replace(grids[0], "%s", "", 1), strings.Replace(grids[0], "%s", "sash 1 moss posts cream around\n", 1), strings.Replace(grids[0], "%s", "sash 1 moss\n", 1), grids[1]} {
		b.Line("## grid %d", i)
		spellAltered(t, b, text, cutting.Options{}, []alteration{
			{"long seams the other way", flip(sewing.LinesStage, every)},
			{"the first long seam the other way", flip(sewing.LinesStage, first)},
			{"lines the other way", flip(sewing.LineStage, every)},
			{"the first seam of each line the other way", flip(sewing.LineStage, first)},
			{"borders the other way", flip(sewing.BorderStage, every)},
			{"the first seam of borders the other way", flip(sewing.BorderStage, first)},
			{"the last ones", flip(sewing.BorderStage, func(i int) bool { return i > 1 })},
			{"one joint inside", func(_ *cuts, s *sewer) { s.Pressing.Inside = 1 }},
			{"none inside", func(_ *cuts, s *sewer) { s.Pressing.Inside = 0 }},
			{"nothing nests", func(_ *cuts, s *sewer) { nestless(s, len(s.Pressing.Joints)) }},
			{"one does not nest", func(_ *cuts, s *sewer) { nestless(s, 1) }},
			{"unproved", func(_ *cuts, s *sewer) { nestless(s, 2); s.Pressing.Proved, s.Pressing.AtMost = false, 5 }},
			{"straight edges", func(_ *cuts, s *sewer) { s.Grain.Outside = nil }},
			{"edges inside", func(_ *cuts, s *sewer) { s.Grain.Outside = []sewing.OutsideGrain{{Side: "inside", Cells: []int{1}}} }},
			{"a top edge", func(_ *cuts, s *sewer) {
				s.Grain.Outside, s.Grain.AtEdge, s.Grain.Staystitch = []sewing.OutsideGrain{{Side: "top", Cells: []int{0, 1}}, {Side: "inside", Cells: []int{1}}}, true, s.Seam
			}},
			{"two edges", func(_ *cuts, s *sewer) {
				s.Grain.Outside, s.Grain.Staystitch = []sewing.OutsideGrain{{Side: "left", Cells: []int{3}}, {Side: "right", Cells: []int{2}}}, 0
			}},
			{"edges of blocks", func(_ *cuts, s *sewer) {
				s.Blocks[0].Edges = [4]sewing.EdgeGrain{{Bias: measure.Inch, Degrees: 45}, {}, {}, {OffGrain: measure.Inch, Straight: 3 * measure.Inch, Degrees: 10}}
			}},
			{"one edge of blocks", func(_ *cuts, s *sewer) {
				s.Blocks[0].Edges = [4]sewing.EdgeGrain{2: {OffGrain: measure.Inch, Degrees: 22.5}}
			}},
			{"bulk", func(_ *cuts, s *sewer) {
				at := []measure.Point{s.top.Patches[0].Outline[0]}
				s.Bulk.Thick = []sewing.ThickPoint{{Pieces: 8, Layers: 16, Open: 14, At: at, Sorts: []sewing.MeetingPoints{{Sort: sewing.InBlocks, Count: 1}, {Sort: sewing.AtSashes, Count: 2}}}, {Pieces: 4, Layers: 9, Open: 8, At: at, Sorts: []sewing.MeetingPoints{{Sort: sewing.AtBorders, Count: 1}}}, {Inside: true, Pieces: 4, Layers: 9, Open: 2, At: at, Sorts: []sewing.MeetingPoints{{Sort: sewing.AtEdges, Count: 1}}}}
				s.Bulk.Points = []sewing.Points{{Shape: "wedge", Keep: 3, Count: 4, AtEdge: 1}, {Shape: "kite", Keep: 4, Count: 4}}
				s.Bulk.Blunted = []sewing.NearPoint{{Distance: 0, Count: 2, At: at}, {Distance: measure.Inch / 8, Count: 1, At: at}, {Distance: measure.Inch / 8, Count: 2, At: at}}
			}},
			{"no bulk", func(_ *cuts, s *sewer) { s.Bulk.Thick, s.Bulk.Most = nil, 0 }},
			{"some layers", func(_ *cuts, s *sewer) { s.Bulk.Thick, s.Bulk.Most = nil, 7 }},
			{"rounds", func(_ *cuts, s *sewer) {
				for i := range s.Blocks {
					for n := range s.Blocks[i].Rounds {
						r := &s.Blocks[i].Rounds[n]
						r.Turns, r.Last, r.WhyNot, r.Through = false, r.Without, sewing.RunsThrough, 0
					}
				}
			}},
		})
	}
	spellSteps(t, b)
	keep(t, b, "steps-altered")
}

// nestless makes so many joints ones that do not nest.
func nestless(s *sewer, n int) {
	for i := range s.Pressing.Joints {
		s.Pressing.Joints[i].Nests = i >= n
	}
	s.Pressing.Nests, s.Pressing.Cannot = len(s.Pressing.Joints)-n, nil
	for i := range min(n, len(s.Pressing.Joints)) {
		var ring []int
		for k := range i * 3 % 10 {
			ring = append(ring, (i+k)%len(s.Pressing.Joints))
		}
		s.Pressing.Cannot = append(s.Pressing.Cannot, sewing.Cannot{Joint: i, OddCycle: ring})
	}
}

// spellSteps spells out how units are measured and how seams end, by all there is of them.
func spellSteps(t *testing.T, b *spelled.Book) {
	s := sewerOf(t, "strip 4\n"+sixFabrics+"block W web wedges navy rust kites cream\ngrid\n W W\n W W\n")
	k := &s.Blocks[0]
	for _, form := range []sewing.Form{sewing.Rectangle, sewing.Triangle, sewing.Slanted} {
		for n := range 24 {
			step := &sewing.Step{Step: k.Steps[0].Step, Form: form, Unfinished: sewing.Size{Across: 4 * measure.Inch, Down: measure.NM(4+n%2) * measure.Inch}, CheckBefore: 6 * measure.Inch}
			step.CheckSizes = [2]sewing.CheckSize{{Length: 5 * measure.Inch, Opposite: n&1 > 0}, {Length: measure.NM(5-n&2) * measure.Inch, Opposite: n&4 > 0}}
			switch n / 8 {
			case 1:
				step.CheckSizes[1] = sewing.CheckSize{}
			case 2:
				step.CheckSizes[0].Of = []int{0}
			}
			said := s.unfinished(k, step)
			for _, before := range []sewing.Size{{Across: 6 * measure.Inch, Down: 6 * measure.Inch}, {Across: 4 * measure.Inch, Down: 5 * measure.Inch}} {
				step.Before = &before
				said += " | " + s.unfinished(k, step)
			}
			b.Line("%s %d: %s", form, n, said)
		}
	}
	join := k.Steps[0].Joins[0]
	for _, leads := range [][2]measure.NM{{}, {measure.Inch, measure.Inch}, {measure.Inch, 0}, {0, -measure.Inch}, {-measure.Inch, measure.Inch / 2}} {
		for n := range 8 {
			j := join
			for e := range j.Ends {
				j.Ends[e].LeadBlunt, j.Ends[e].Spare, j.Ends[e].Partial, j.Ends[e].Blunted = leads[e], [2]measure.NM{}, n == 7, [2]bool{n == 6, n == 5 && e == 1}
			}
			if n < 4 {
				j.Ends[n/2].Spare[n%2] = measure.Inch / 4
			}
			var said []string
			for _, text := range s.seam(k, &j) {
				said = append(said, text.String())
			}
			b.Line("%v %d: %s", leads, n, strings.Join(said, " "))
		}
	}
	at := func(x, y int) measure.Point {
		return measure.Point{X: measure.NM(x) * k.Finished.Across / 2, Y: measure.NM(y) * k.Finished.Across / 2}
	}
	for _, p := range [][2]measure.Point{{at(0, 0), at(1, 1)}, {at(1, 1), at(2, 1)}, {at(0, 1), at(1, 0)}, {at(1, 1), at(1, 1)}, {at(1, 0), at(1, 1)}, {at(1, 1), at(1, 2)}} {
		j := join
		j.From, j.To = p[0], p[1]
		b.Line("%v: %s, %s", p, s.end(k, &j, 0), s.end(k, &j, 1))
	}
	for turns := range 5 {
		b.Line("%s", byPicture(turns))
	}
	for _, degrees := range []float64{45, 22.5, 10.04} {
		b.Line("%s", offGrain(degrees))
	}
	for made := -1; made < 6; made++ {
		b.Line("%s", s.partName(k, made, []int{0, 4}))
	}
	field := s.top.Field
	half := measure.Point{X: field.Max.X / 2, Y: field.Max.Y / 2}
	for _, p := range []measure.Point{field.Min, half, {X: half.X, Y: 0}, {X: 0, Y: half.Y}, field.Max, {X: -measure.Inch}, {X: half.X / 2, Y: half.Y / 2}, {X: half.X / 2}, {X: half.X / 2, Y: half.Y}, {X: half.X, Y: half.Y / 2}, {Y: half.Y / 2}, {X: field.Max.X, Y: half.Y / 2}} {
		b.Line("%v: %s", p, s.where(p))
	}
}

// TestSpelledFitsAltered: lists of sizes, by what a layout may be and a suggestion ask for.
func TestSpelledFitsAltered(t *testing.T) {
	b := spelled.New()
	size := func(w, h int) supplies.Size {
		return supplies.Size{Width: measure.NM(w) * measure.Inch, Height: measure.NM(h) * measure.Inch}
	}
	one := fit.Suggestion{StripCut: 4 * measure.Inch, SideFinished: 6 * measure.Inch, Columns: 8, Rows: 9, Finished: size(50, 60), Changes: []fit.Change{{First: 3, Last: 3, Was: "border 2 navy", Write: "border 3 navy"}}, SizeLine: "size lap across 8"}
	more := one
	more.SideFinished, more.MoreWarnings, more.Warnings, more.Borders, more.Over = 7*measure.Inch, 1, []string{"an odd web"}, fit.LeftOut, supplies.Size{Width: -measure.Inch / 4, Height: measure.Inch / 17}
	more.Changes = []fit.Change{{First: 3, Last: 5, Was: " border 2 navy"}, {First: 7, Last: 8, Was: "a", Write: "b\nc\r\nd"}}
	same := one
	same.Changes, same.BordersFinished, same.Within = nil, []measure.NM{measure.Inch, 2 * measure.Inch}, true
	kept := one
	kept.Changes = []fit.Change{{First: 9, Was: "size lap across  8", Write: "size lap  across 8"}}
	for n, list := range [][]fit.Suggestion{nil, {one}, {same, more}, {more, same}, {kept}} {
		one.BordersFinished = []measure.NM{3 * measure.Inch, measure.Inch}[:n%3]
		for _, o := range []fit.Options{{}, {Size: "lap"}} {
			r := &fit.Report{Options: o, Units: measure.System(n % 2), ByStrip: n > 2, Now: one, Suggestions: list, LaidOut: min(1, len(list)), SizeKnown: n > 1, Refused: []fit.Refusal{{Size: 3 * measure.Inch, Message: "too small"}}[:n%2]}
			r.Wanted = fit.Wanted{Finished: size(50, 60)}
			for number := 1; number < 3; number++ {
				if o.Size != "" && number <= len(list) && len(list[number-1].Changes) == 0 {
					continue
				}
				b.Document(Fit("quilt", r, number))
			}
		}
	}
	for n := range 64 {
		g := func(n int) fit.Growth {
			return fit.Growth{Step: 1 + n&1, Repeats: n&2 > 0, Parity: []fit.Parity{"", fit.Even, fit.Odd}[n%3], Corners: n&4 > 0, Before: n / 6 & 1}
		}
		f := &fitted{&fit.Report{Across: g(n % 8), Down: g(n / 8)}}
		b.Line("%s %s", f.steps(), f.preferred())
	}
	keep(t, b, "fits-altered")
}

// TestSpelledStudiesAltered: what is lost and what would help, by all there is of losses and changes.
func TestSpelledStudiesAltered(t *testing.T) {
	b := spelled.New()
	top := lay.Top(t, "strip 4\n"+sixFabrics+"scraps darks navy plum\nscraps lights cream rust\nblock W web wedges darks kites lights\ngrid\n W W\n W W\nborder 2 rust\n")
	names := strings.Fields("navy rust teal plum moss cream oat")
	sorts := []contrast.Sort{contrast.Web, contrast.Star, contrast.Wheel, contrast.Alternation, contrast.DownColumns, contrast.BetweenColumns, contrast.InBlocks, contrast.Squares, contrast.Sashes, contrast.Border, contrast.ByTurns, contrast.Strips}
	verdicts := []contrast.Verdict{contrast.Reads, contrast.OutlineOnly, contrast.FromAfarOnly, contrast.Faint, contrast.RunsOn, contrast.Lost}
	lack := func(i int, band contrast.Band) []contrast.Lack {
		return []contrast.Lack{{Names: [2]string{names[i], names[i+1]}, Band: band, Step: 7}}
	}
	for n, sort := range sorts {
		f := contrast.Figure{Sort: sort, Count: 1 + n%3, Of: names[:1+n%7], Against: names[1:3], Border: 1, Reversed: n == 1, Closed: n % 2, Alternates: 0.9, Lacks: lack(n%5, contrast.Band(n%2)), Rim: &contrast.Rim{Count: 1 + n%2, Against: names[2:4], Lost: 20 * measure.Inch, Verdict: contrast.Lost, Lacks: lack(2, contrast.Soft)}}
		if n%2 > 0 {
			f.Complement = &contrast.Complement{Sort: contrast.Star, Count: n, Of: names[:2], Stronger: n > 4}
		}
		for m, verdict := range verdicts {
			f.Verdict = verdict
			r := &contrast.Report{Figures: []contrast.Figure{f, f}, Units: measure.Inches}
			r.Thresholds.Clear = 20
			r.Losses = []contrast.Loss{{Of: contrast.LossOfFigure, Verdict: verdict, Part: 0.5}, {Of: contrast.LossOfFrame, Figure: 1, Verdict: contrast.Faint}, {Of: contrast.LossOfRim}, {Of: contrast.LossOfTurns}, {Of: contrast.LossOfScrap, Figure: -1}, {Of: contrast.LossOfScrap, Figure: -1}}[m%3 : m%3+1+(n+m)%(6-m%3)]
			r.Stray = []contrast.Stray{{Pool: "darks", Fabric: "rust", Pieces: 3, Like: names[4:5], Darker: m == 0}, {Pool: "darks", Fabric: "oat"}, {Pool: "lights", Fabric: "navy", LikePool: "darks", Pieces: 1}}[n%3 : min(3, 1+n%3+n%2)]
			step := contrast.Step{Fabric: "rust", Lighter: m%2 > 0, Quieter: m == 3, Print: m == 4, Lightness: 44.6, Colour: top.Fabrics[1].Colour.Hex()}
			r.Changes = []contrast.Change{{Of: contrast.TakeOut}, {Of: contrast.Unreversed, Leaves: []int{0}}, {Of: contrast.SwapTwo, Swap: names[:2]}, {Steps: []contrast.Step{step, step}, Breaks: []contrast.Broken{{Figure: 1, To: contrast.Faint}}}, {Steps: []contrast.Step{step}}}[min(n%6, 5):]
			v := valuesOf(&Plans{Top: top}, r)
			b.Line("%s, %s: %s%s", sort, verdict, v.answer(), v.losses(v.toTell()))
			b.Line("  %s", v.advice())
			b.Line("  %s: %s; %s; %s", v.figure(&f), verdictOf(&f), strings.Join(v.beside(&f), "; "), strings.Join(v.parts(&f), "; "))
		}
	}
	for n := range 5 {
		p := contrast.Pair{Length: 10 * measure.Inch, Inside: measure.NM(10*(n/4)) * measure.Inch, ColourOnly: n == 1, BreaksUp: n == 2, Doubtful: n == 3}
		b.Line("%q %q", pairNote(&p), fabricNote(&contrast.Fabric{Spread: float64(n / 3), Vivid: n > 1}))
	}
	var places []contrast.Place
	for n := range 9 {
		places = append(places, contrast.Place{Row: 2*n + 1, Column: n + 1}, contrast.Place{Row: 2*n + 1, Column: n + 3})
		b.Line("%s", valuesText{borders: 2}.cells(append(places[:len(places):len(places)], contrast.Place{Border: n}, contrast.Place{Border: 3})))
	}
	keep(t, b, "studies-altered")
}
