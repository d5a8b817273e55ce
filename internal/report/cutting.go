package report

import (
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
)

// Ids of the sections of the cutting report. A strip set's is StripSetID with its number from 1 behind it, a dealt one's
// DealtSetsID, a fabric's FabricID.
const (
	cannotCutID    = "cannot-cut"
	toKnowID       = "to-know"
	BeforeCutID    = "before-you-cut"
	ToBuyID        = "to-buy"
	PrecutsID      = "precuts"
	OnHandID       = "on-hand"
	UseFirstID     = "pieces-on-hand"
	ForFinishingID = "for-finishing"
	PiecesID       = "pieces"
	HowToCutID     = "how-pieces-are-cut"
	BetweenMarksID = "between-marks"
	StripSetsID    = "strip-sets"
	StripSetID     = "strip-set-"
	DealtSetsID    = "dealt-sets-"
	SetLabelsID    = "set-labels"
	FabricID       = "fabric-"
	LeftoversID    = "leftovers"
	whyCutID       = "why-cutting"
	cautionsID     = "rotary-cutting-safety"
)

// Cutting is what to cut and what to buy.
func Cutting(p *Plans) document.Document {
	c := newCuts(p)
	d := document.Document{Title: p.named("what to cut and what to buy, for " + c.quilts())}
	for _, s := range slices.Concat(
		c.faults(),
		[]document.Section{c.toBuy(), c.useFirst(), c.ownPrecuts(), c.waysToFit(), c.forFinishing(), c.toCut(), c.fewerSets(), c.leastFabric(), c.advice(), c.precuts(), c.scrapsToSort(), c.pieces(), c.howTo(), c.betweenMarks()},
		c.stripSets(),
		c.dealtSets(),
		[]document.Section{c.setLabels()},
		c.fabrics(),
		[]document.Section{c.sizes(), cautions(), c.leftovers(), c.why()},
	) {
		if len(s.Blocks) > 0 {
			d.Sections = append(d.Sections, s)
		}
	}
	return d
}

// cuts puts a cutting plan into words.
type cuts struct {
	*cutting.Plan
	plans *Plans
}

func newCuts(p *Plans) *cuts { return &cuts{p.Cuts(), p} }

// length is a length as people read it.
func (c *cuts) length(nm measure.NM) string {
	if c.plans.Exact {
		return c.Units.Exact(nm)
	}
	return c.Units.Nearest(nm)
}

// size is across by along.
func (c *cuts) size(across, along measure.NM) string {
	if c.plans.Exact {
		return c.Units.ExactNumber(across) + " by " + c.Units.Exact(along)
	}
	return c.Units.By(across, along)
}

// quilts says for how many quilts the plan is.
func (c *cuts) quilts() string {
	if c.Copies == 1 {
		return "one quilt"
	}
	return measure.Count(c.Copies, "quilt")
}

// several is words for a plan of more than one quilt, "" for one.
func (c *cuts) several(text string) string {
	if c.Copies == 1 {
		return ""
	}
	return text
}

// name is a fabric of the plan, with its letter where fabrics have letters.
func (c *cuts) name(fabric int) string {
	return c.plans.called(c.Fabrics[fabric].Index)
}

// fabricCell is a fabric's name beside its color, which holds its letter.
func (c *cuts) fabricCell(fabric int) document.Cell {
	f := &c.Fabrics[fabric]
	return document.Cell{Swatches: c.plans.swatch(f.Index), Text: document.Plain(f.Name)}
}

// patches are those of the top that some lines supply.
func (c *cuts) patches(lines []int) document.About {
	var list []int
	for _, n := range lines {
		list = append(list, c.Lines[n].Patches...)
	}
	return document.About{Patches: list}
}

// supplied are the patches of each line, by its number.
func (c *cuts) supplied() [][]int {
	list := make([][]int, len(c.Lines))
	for i := range c.Lines {
		list[i] = c.Lines[i].Patches
	}
	return list
}

// faults are what cannot be cut and what is to be known before, with their places in the layout, for those who do not
// show them otherwise.
func (c *cuts) faults() []document.Section {
	if c.plans.Line == nil {
		return nil
	}
	return []document.Section{
		c.faultSection(cannotCutID, "What cannot be cut", c.Faults, document.Wrong),
		c.faultSection(toKnowID, "Check before cutting", c.Warnings, document.Doubtful),
	}
}

func (c *cuts) faultSection(id, title string, list []cutting.Fault, tone document.Tone) document.Section {
	s := document.Section{ID: id, Title: title, Tone: tone}
	var l document.List
	for _, f := range list {
		i := item("Line " + number(c.plans.Line(f.Place.Start)) + ": " + f.Message + ".")
		i.Tone, i.About.Place = tone, &document.Place{Start: f.Place.Start, End: f.Place.End}
		if f.Hint != "" {
			i.Blocks = []document.Block{para("%s", f.Hint)}
		}
		l.Items = append(l.Items, i)
	}
	if len(list) > 0 {
		s.Blocks = []document.Block{l}
	}
	return s
}

// advice is what should be done before all cloth is cut.
func (c *cuts) advice() document.Section {
	first, there := "one test block", "in one block"
	if c.columnsOnly() {
		first, there = "three pieces in a row", "in these"
	}
	list := []string{
		"Cut, sew and measure " + first + " before you cut the rest: a seam that is even a thread too wide will show up " + there + " instead of in the whole quilt.",
		"Square up the fabric, then cut strips across the width of fabric (WOF), widest first; cut small pieces from the ends.",
	}
	return document.Section{ID: BeforeCutID, Title: "Before you cut", Depth: document.Detail, Blocks: bullets(append(list, c.tight()...)...)}
}

// tight names the fabrics of which one spoiled piece takes another strip, and says whether that is bought.
func (c *cuts) tight() []string {
	var names []string
	bought := true
	for i := range c.Fabrics {
		if f := &c.Fabrics[i]; f.Tight {
			names = append(names, c.name(i))
			for _, s := range stripsByWidth(f, (*cutting.Strip).OfYardage) {
				bought = bought && f.Purchase.Spare >= s.width
			}
		}
	}
	which, then := measure.List(names), "the yardage includes one"
	switch {
	case len(names) == 0:
		return nil
	case len(names) > maxNamed:
		which = measure.Count(len(names), "fabric")
	}
	if !bought {
		then = "buy enough for one more"
	}
	return []string{"Cut with care from " + which + ": every strip is used to within " + c.length(cutting.TightEnd(c.Units)) + ", and a spoiled piece takes another strip; " + then + "."}
}

// columnsOnly says whether all blocks are columns, which are long: a few of their pieces are sewn for a test.
func (c *cuts) columnsOnly() bool {
	return !slices.ContainsFunc(c.plans.Top.Cells, func(cell quilt.Cell) bool {
		k, ok := blocks.Find(blocks.Kinds(), cell.Kind)
		return ok && !k.Column
	})
}

// Cautions are what is customarily said to those who cut and press. The facts are those of the trade's own cautions (quilt
// guilds' and shops' pages on rotary cutters, classroom rules for irons); the words are ours.
func Cautions() []string {
	return []string{
		"Rotary cutter: close the guard after every cut; never put the cutter down or hand it to someone with the blade exposed.",
		"Stand to cut, wear shoes and use a flat mat. Cut away from yourself; keep your fingers on the ruler, well back from its edge.",
		"Replace a dull blade: it needs more pressure and is more likely to slip. Wrap old blades in tape before you throw them away. Do not cut when you are tired. Keep cutters out of the reach of children.",
		"Iron: stand it on its heel, keep your face and fingers out of the steam, and unplug it before filling and when you finish. Keep the cord off the cutting mat. Do not press over pins.",
		"Starch: let it soak in before you press, air the room, and keep spray cans away from flames and heat.",
	}
}

// CutterCautions are those of them for people who only cut.
func CutterCautions() []string { return Cautions()[:3] }

// PatternCautions are all cautions of a pattern, each once: those for cutters, and those for irons, machines and pins.
func PatternCautions() []string {
	return slices.Concat(CutterCautions(), SewingCautions()) // the rest are in other words among those of sewing
}

func cautions() document.Section {
	return document.Section{ID: cautionsID, Title: "Rotary-cutting safety", Depth: document.Detail, Blocks: bullets(Cautions()...)}
}
