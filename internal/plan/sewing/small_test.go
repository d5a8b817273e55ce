package sewing_test

import (
	"cmp"
	"sync"
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// smallTexts are small layouts that together have all sorts of blocks, edges, sashes, borders, holes and loose parts.
func smallTexts() []string {
	fabrics := "fabric a #112233\nfabric b #eeeeee\nfabric c #a04030\nfabric d #c0b090\n"
	four := "side 7\n" + fabrics
	hard := mixedText(73, 3, 3) // with joints that cannot nest
	return []string{
		four + "block A web wedges a c kites b\nblock S star wedges a kites b d\ngrid\n A S A\n . A A\nborder 2 a corners b\nborder 1/8 c\n",
		four + "block R ring wedges a b c d a b c a corners b c\nblock Q ring wedges a b corners c\nblock P plain piece b\ngrid\n R P R\n Q R P\nborder 1 a\nborder 2 b corners c\n",
		"seam 3/8\nstrip 4\n" + fabrics + "block F floating wedges a c background b\nblock G floating-star kites a wedges b c background d\ngrid\n F F:ne G\n F:se F:sw G:sw\n G:ne F G:se\n",
		"side 6\n" + fabrics + "block H halves pieces a b\nblock P plain piece a\nblock K halves pieces c c\ngrid\n H H:ne P K\n H:se H:sw H P\n",
		four + "block A web wedges a kites b\nblock R ring wedges a b corners c\nblock P plain piece d\nsash 1 c\ngrid\n A R P\n P A .\n R P A\nborder 1 1/2 b corners a\n",
		four + "block R ring wedges a b corners c\nblock H halves pieces a b\nblock G floating-star kites a wedges b background c\nsash 1 1/2 d posts a around\ngrid\n R H G\n G:sw . R\nborder 2 b\n",
		four + "block R ring wedges a b corners c\nblock F floating wedges a background b\nsash 1 d posts a\ngrid\n R F F:se\n F:ne F:sw R\nborder 1 b corners c\nborder 2 a corners b\n",
		"side 6\n" + fabrics + "block P plain piece a\nblock H halves pieces b c\nsash 1 d around\ngrid\n P H\n H:ne P\n",
		"side 5\n" + fabrics + "block T tumblers pieces a b about 4\nblock P plain piece c\nblock H halves pieces a c\ngrid\n T T P\n T T H\n T P T\nborder 2 b corners d\n",
		"side 5\n" + fabrics + "block T tumblers pieces a b c about 2 3/4\nblock U tumblers pieces d line 6 1/2\nblock F floating wedges a background b\ngrid\n T T F\n U T .\n U F:se T\n",
		"side 6\n" + fabrics + "block P plain piece a\nblock H halves pieces b c\ngrid\n P . P H\n P P P .\n . . . H\n P H . .\n",
		"side 6\n" + fabrics + "block P plain piece a\nblock H halves pieces b c\nblock A web wedges a kites b\ngrid\n . P H A\n P . A .\n A H . P\nborder 1 a\nborder 2 b corners c\n",
		four + "strip-set shore a 1 3/4 b rest\nstrip-set tide b 1 c 1 d rest\nblock W web wedges shore reversed shore kites d\nblock V web wedges tide kites a\nblock R ring wedges shore tide corners a\ngrid\n W W V\n W W V\n R R V\n",
		four + "strip-set shore a 1 3/4 b rest\nstrip-set tide b 1 c 1 d rest\nblock R ring wedges shore tide shore shore shore shore shore shore corners a\ngrid\n R R\n",
		four + "strip-set shore a 1 3/4 b rest\nstrip-set tide b 1 c 1 d rest\nstrip-set reef a 1 c 1 d rest\nblock R ring wedges shore tide reef tide corners a\nblock S star wedges reef shore kites b\ngrid\n R R S\n R R S\n",
		four + "scraps p a c d by set\nstrip-set deep p 2 b rest\nblock W web wedges deep kites a\ngrid\n W W W\n W W W\n",
		"units cm\nside 12\n" + fabrics + "block A web wedges a kites b\nblock S star wedges c kites d\nblock F floating wedges a background b\nblock G floating-star kites a wedges b background d\ngrid\n A A S S\n A A S S\n F G F G\n G F A A\n",
		"side 6\n" + fabrics + "block P plain piece a\nblock Q plain piece b\ngrid\n P Q P\n Q P Q\n",
		"side 6\n" + fabrics + "block P plain piece a\ngrid\n P\nborder 1 b\n",
		"side 6\n" + fabrics + "block P plain piece a\nblock H halves pieces a b\ngrid\n P H P\nborder 1 b corners c\n",
		"side 6\n" + fabrics + "block P plain piece a\ngrid\n P\n P\n P\n",
		"side 6\n" + fabrics + "block P plain piece a\nblock H halves pieces a b\ngrid\n P H .\n P . H\n . . .\n",
		"side 6\n" + fabrics + "block P plain piece a\nblock H halves pieces a b\ngrid\n P . P\n . H .\n",
		"side 6\n" + fabrics + "block P plain piece a\nblock H halves pieces a b\ngrid\n . P H\n . . .\n . H P\n",
		four + "scraps p a c d\nstrip-set deep p 2 b rest\nblock W web wedges deep reversed deep kites a\nblock R ring wedges b p corners p\ngrid\n W W R\n W W R\n R R R\n",
		four + "scraps p a b\nblock R ring wedges c corners p\nblock P plain piece p\nblock H halves pieces p\ngrid\n R R R R P\n R R R R H\n R R R R H:ne\n P R H R H\n",
		"side 5\n" + fabrics + "block T tumblers pieces a about 3\nblock U tumblers pieces b c about 4\ngrid\n T T U T\n T T U T\n . T U .\n U T T U\n",
		four + "block A web wedges a kites b\nblock F floating wedges a background b\nsash 1 c\ngrid\n . A A\n A F A\n A A .\n",
		four + "fabric s stripes a 1 b 1\nblock R ring wedges s lengthwise from 1/2 s crosswise from 1/4 corners s\nblock P plain piece s crosswise\nblock Q plain piece s lengthwise\ngrid\n R P Q\n Q R P\n",
		"side 6\n" + fabrics + "block P plain piece a\nblock H halves pieces a b\ngrid\n P P . .\n . . . .\n P H P P\n",
		four + "block A ring wedges c corners a a b b\nblock B ring wedges c corners a b b a\nblock C ring wedges c corners a b a b\nblock D ring wedges a b b b b b b b corners c\n" +
			"block E ring wedges a b a b b b b b corners c\nblock F ring wedges a b c b a b c b corners d\nblock G ring wedges b a b b b b b b corners c\nblock I ring wedges b b b b a b a b corners c\ngrid\n A B C D\n E F G I\n",
		four + "block A web wedges a kites b\ngrid\n A A A A A A A\n A A A A A A A\n A A A A A A A\n A A A A A A A\n A A A A A A A\n A A A A A A A\n",
		four + "block A web wedges a kites b\ngrid\n A A A A\n A . A A\n A A A .\nborder 1/8 a\n",
		four + "block A web wedges a kites b\ngrid\n A . A A\n A A A A\n . A A A\n A A . A\nborder 1/4 a\n",
		hard,
	}
}

// smallPlans are these layouts, laid out and planned once.
var smallPlans = sync.OnceValue(func() (list []planned) {
	for _, text := range smallTexts() {
		top, err := lay.Read(text)
		if err != nil {
			panic(err)
		}
		list = append(list, planned{text, top, planOf(top, planOptions)})
	}
	return list
})

// checkAll is every law of a plan.
func checkAll(t *testing.T, top *quilt.Top, p *sewing.Plan) (errs []error) {
	cuts := cutting.Pieces(top, cutting.Options{})
	r := newReplay(top, p)
	errs = append(errs, checkCounts(top, p), checkCloths(top, p), checkTrimmed(top, p))
	if err := r.check(); err != nil {
		return append(errs, err)
	}
	errs = append(errs, checkParts(top, p), checkLines(top, p), checkStages(top, p), checkChoices(top, p), checkLoose(p), checkCellOf(top, p), checkClothsOf(top, p), checkLabels(top, p))
	errs = append(errs, checkArms(func(seam int) int { return r.pressedTo(t, seam) }, top, p))
	errs = append(errs, checkPressing(t, r), checkBulk(t, r), checkMeeting(top, p), checkGrain(top, p, cuts), checkPoints(top, p), checkCustom(top, p), checkSets(top, cuts, sewing.PressSets(top, cuts)))
	for i := range p.Blocks {
		b := &p.Blocks[i]
		errs = append(errs, checkMakesByCloth(b), checkSizes(top, p, b), checkShown(top, p, i), checkJoins(p, i), checkEnds(p, i, cuts), checkVariants(p, i))
		if !b.Column {
			errs = append(errs, checkRounds(p, i), checkUnits(p, i, cuts))
		}
		for k := range b.Variants {
			errs = append(errs, checkLandmark(p, i, &b.Variants[k]))
			if b.Column {
				errs = append(errs, checkColumnRaw(p, i, cuts), checkColumn(top, cuts, &b.Variants[k]))
			}
		}
	}
	return errs
}

// TestSmall holds every law on small layouts of all sorts, so that what is broken shows at once.
func TestSmall(t *testing.T) {
	for _, n := range smallPlans() {
		for _, err := range checkAll(t, n.Top, n.plan) {
			if err != nil {
				t.Errorf("%v\n%s", err, n.name)
			}
		}
	}
}

// TestSmallCatches: of a plan that is spoilt in one place the laws of units and of the assembly tell.
func TestSmallCatches(t *testing.T) {
	text := "side 7\nfabric a #112233\nfabric b #eeeeee\nblock A web wedges a kites b\nblock R ring wedges a b corners a\nsash 1 b posts a\ngrid\n A R A\n A . A\nborder 2 a corners b\n"
	top := lay.Top(t, text)
	cuts := cutting.Pieces(top, cutting.Options{})
	r := newReplay(top, planOf(top, sewing.Options{}))
	for _, err := range append(checkAll(t, top, r.plan), r.check()) {
		if err != nil {
			t.Fatal(err)
		}
	}
	pressedTo := func(seam int) int { return r.pressedTo(t, seam) }
	for name, broken := range map[string]func(p *sewing.Plan){
		"a part":               func(p *sewing.Plan) { p.Assembly.Parts[0].First++ },
		"by rows":              func(p *sewing.Plan) { p.Assembly.ByColumns = true },
		"the size of a row":    func(p *sewing.Plan) { p.Assembly.Stages[0].Size.Down++ },
		"where a stage begins": func(p *sewing.Plan) { p.Assembly.Stages[1].First++ },
		"which row sashes are": func(p *sewing.Plan) { p.Assembly.Stages[1].After++ },
		"a choice of a row":    func(p *sewing.Plan) { p.Pressing.Choices[p.Choice(0)].Stage++ },
		"a row's pressing":     func(p *sewing.Plan) { p.Assembly.Seams[0].Press = !p.Assembly.Seams[0].Press },
		"what is loose":        func(p *sewing.Plan) { p.Assembly.Loose = append(p.Assembly.Loose, 0) },
		"a joint's pieces": func(p *sewing.Plan) {
			a := &p.Pressing.Joints[0].A
			a.Patches[0], a.Patches[1] = a.Patches[1], a.Patches[0]
		},
		"what made a part":          func(p *sewing.Plan) { p.Blocks[0].Steps[1].Joins[0].MadeA = 1 },
		"units in a block":          func(p *sewing.Plan) { p.Blocks[0].Steps[0].PerBlock++ },
		"a finished size":           func(p *sewing.Plan) { p.Blocks[0].Steps[1].Finished.Across += 10 },
		"a size before trimming":    func(p *sewing.Plan) { p.Blocks[0].Steps[1].Before.Down += 10 },
		"what is measured":          func(p *sewing.Plan) { p.Blocks[0].Steps[1].CheckSizes[0].Length += 10 },
		"how it is measured":        func(p *sewing.Plan) { c := &p.Blocks[0].Steps[1].CheckSizes[0]; c.Opposite = !c.Opposite },
		"what stands out":           func(p *sewing.Plan) { p.Blocks[0].Steps[1].StandsOut++ },
		"an angle":                  func(p *sewing.Plan) { p.Blocks[0].Steps[0].Joins[0].Ends[0].Degrees[1]++ },
		"an offset":                 func(p *sewing.Plan) { p.Blocks[0].Steps[0].Joins[0].Ends[0].Lead += 10 },
		"what is cut off":           func(p *sewing.Plan) { p.Blocks[1].Steps[3].Joins[0].Ends[0].Off[1] += 10 },
		"what is still to trim":     func(p *sewing.Plan) { p.Blocks[1].Steps[3].Joins[2].Ends[0].Spare[0] = 10 },
		"that a seam turns a point": func(p *sewing.Plan) { j := &p.Blocks[0].Steps[0].Joins[0]; j.Round = !j.Round },
	} {
		p := planOf(top, sewing.Options{})
		broken(p)
		errs := []error{checkParts(top, p), checkLines(top, p), checkStages(top, p), checkChoices(top, p), checkLoose(p), checkArms(pressedTo, top, p)}
		for i := range p.Blocks {
			errs = append(errs, checkJoins(p, i), checkEnds(p, i, cuts), checkUnits(p, i, cuts))
		}
		if cmp.Or(errs...) == nil {
			t.Errorf("%s is not caught", name)
		}
	}
}
