package booklet

import (
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/sewing"
)

// Minutes that are reckoned for a class: guesses of ours, and said to be guesses where they are printed.
const (
	forHello   = 15 // places, cautions
	forShow    = 10 // to show a step before it is sewn
	forUnit    = 5  // to pin, sew, press and measure a unit
	forCutting = 30 // the pieces of one block
	forLook    = 20 // blocks laid out together at the end
	forLong    = 8  // a seam of rows, columns or borders
)

// hour is one line of the plan of the day.
type hour struct {
	what    string
	minutes int
}

// day is the plan of the day: one block of each label, step by step.
func (b *patternBuilder) day() {
	b.part("Class schedule", true)
	b.add(para("In class, sew one block of each kind from start to finish, so that you can continue at home. "+
		"Times are approximate, based on the number of steps and units: about %s to demonstrate a step and %s to sew each unit. Work at your own pace.",
		count(forShow, "minute"), count(forUnit, "minute")))
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Start", Kind: document.Counts}, {Title: "Activity"}, {Title: "Approx. time", Kind: document.Counts}}}
	at := 0
	for _, h := range b.hours() {
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cell(clock(at)), cell(h.what), cell(count(h.minutes, "minute"))}})
		at += h.minutes
	}
	t.Rows = append(t.Rows, document.Row{Total: true, Cells: []document.Cell{cell(clock(at)), cell("Finish (breaks not included)"), cell("")}})
	b.add(t)
	b.atHome()
}

// hours is the day's lines.
func (b *patternBuilder) hours() []hour {
	list := []hour{{"Welcome and safety", forHello}, {"Cutting the pieces for one block of each kind", forCutting}}
	if b.kits() {
		list[1].what = "Opening the kits and cutting the remaining pieces"
	}
	for i := range b.Sewing.Blocks {
		k := &b.Sewing.Blocks[i]
		for n := range k.Steps {
			s := &k.Steps[n]
			list = append(list, hour{"Block " + k.Label + ", step " + numeral(n+1) + ": " + s.Name, forShow + forUnit*unitsOf(s)})
		}
	}
	return append(list, hour{"Laying out blocks, questions, what to do at home", forLook})
}

// unitsOf is how many units a step makes for one block.
func unitsOf(s *sewing.Step) int { return max(1, s.PerBlock) }

// atHome is a guess of the time for what is not sewn in class.
func (b *patternBuilder) atHome() {
	units, long := b.unitsLeft(), 0
	for i := range b.Sewing.Assembly.Stages {
		long += b.Sewing.Assembly.Stages[i].Count
	}
	list := []string{}
	if units > 0 {
		list = append(list, count(units, "more unit")+", not counting those sewn in class, at "+count(forUnit, "minute")+" each about "+count(roundHours(units*forUnit), "hour"))
	}
	if long > 0 {
		list = append(list, count(long, "long seam")+" to sew "+b.laidTogether()+" together, at "+count(forLong, "minute")+" each about "+count(roundHours(long*forLong), "hour"))
	}
	if len(list) > 0 {
		b.add(para("To finish the top at home: %s. These times are also approximate.", strings.Join(list, "; and ")))
	}
}

// unitsLeft is how many units the top has beside those of one block of each sort.
func (b *patternBuilder) unitsLeft() int {
	units := 0
	for i := range b.Sewing.Blocks {
		for n := range b.Sewing.Blocks[i].Steps {
			s := &b.Sewing.Blocks[i].Steps[n]
			units += max(0, s.Make-unitsOf(s))
		}
	}
	return units
}

// laidTogether names what long seams join.
func (b *patternBuilder) laidTogether() string {
	var list []string
	if b.noun() == "block" {
		list = append(list, "blocks")
	}
	list = append(list, plural(b.grid().Line()))
	if len(b.Top.CutFacts.Borders) > 0 {
		list = append(list, "borders")
	}
	return listed(list)
}

// roundHours is minutes in whole hours, at least one.
func roundHours(minutes int) int { return max(1, (minutes+30)/60) }

// clock is minutes as hours and minutes.
func clock(minutes int) string {
	rest := numeral(minutes % 60)
	if len(rest) == 1 {
		rest = "0" + rest
	}
	return numeral(minutes/60) + ":" + rest
}
