package booklet

import (
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/sewing"
)

// Minutes that are reckoned for a class where the teacher gives none: guesses of ours, and said to be guesses where they are
// printed.
const (
	forHello   = 15 // places, cautions
	forShow    = 10 // to show a step before it is sewn
	forUnit    = 5  // to pin, sew, press and measure a unit
	forCutting = 30 // the pieces of one block
	forSets    = 25 // a strip set: sewn, pressed and cut
	forLook    = 20 // blocks laid out together at the end
	forLong    = 8  // a seam of rows, columns or borders
)

// Schedule is the teacher's own times of a class, in minutes; what is 0 is guessed.
type Schedule struct {
	Times    map[string]int // by Activities
	Sessions []int          // the length of each; more than there are last as long as the last one; nil for one session
}

// Bounds of a teacher's times, in minutes.
const (
	MinSession = 30
	MaxSession = 600
	MaxMinutes = 600 // of an activity
)

// Activities are the names of what takes time in a class.
func Activities() []string {
	return []string{"welcome", "cutting", "strip-set", "show", "unit", "layout"}
}

// guesses are the minutes of activities where the teacher gives none.
func guesses() map[string]int {
	return map[string]int{"welcome": forHello, "cutting": forCutting, "strip-set": forSets, "show": forShow, "unit": forUnit, "layout": forLook}
}

// takes is the minutes of an activity, and whether they are a guess.
func (s *Schedule) takes(activity string) (minutes int, guess bool) {
	if own := s.Times[activity]; own > 0 {
		return own, false
	}
	return guesses()[activity], true
}

// hour is one line of the schedule.
type hour struct {
	what    string
	minutes int
	guess   bool
}

func (h hour) text() string {
	if h.guess {
		return "about " + count(h.minutes, "minute")
	}
	return count(h.minutes, "minute")
}

// day is the class schedule: one block of each label, step by step.
func (b *patternBuilder) day() {
	b.part("Class schedule", true)
	hours := b.hours()
	text := "In class, sew one block of each kind from start to finish, so that you can continue at home."
	if slices.ContainsFunc(hours, func(h hour) bool { return h.guess }) {
		text += b.guessed()
	}
	sessions := b.Schedule.sessions(hours)
	if len(sessions) > 1 {
		text += " The class runs over " + count(len(sessions), "session") + "."
	}
	b.add(para("%s", text))
	for i, list := range sessions {
		whole := []document.Block{sessionTable(list)}
		if len(sessions) > 1 {
			whole = append([]document.Block{heading(1, "Session "+numeral(i+1))}, whole...)
		}
		b.add(whole...)
	}
	b.atHome()
}

// guessed says what guesses rest on.
func (b *patternBuilder) guessed() string {
	text := " Times given as \"about\" are estimates"
	show, guess := b.Schedule.takes("show")
	if unit, guessed := b.Schedule.takes("unit"); guess || guessed {
		text += ": " + count(show, "minute") + " to demonstrate a step and " + count(unit, "minute") + " to sew each unit"
	}
	return text + ". Work at your own pace."
}

// sessionTable is the lines of one session.
func sessionTable(list []hour) document.Table {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Start", Kind: document.Counts}, {Title: "Activity"}, {Title: "Time", Kind: document.Counts}}}
	at := 0
	for _, h := range list {
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cell(clock(at)), cell(h.what), cell(h.text())}})
		at += h.minutes
	}
	t.Rows = append(t.Rows, document.Row{Total: true, Cells: []document.Cell{cell(clock(at)), cell("Finish (breaks not included)"), cell("")}})
	return t
}

// sessions divides the lines of a class over its sessions: a line that does not fit into what is left of one begins the next,
// and one that is longer than a session goes on in the next.
func (s *Schedule) sessions(hours []hour) [][]hour {
	if len(s.Sessions) == 0 {
		return [][]hour{hours}
	}
	list, left := [][]hour{nil}, s.Sessions[0]
	next := func() {
		left = s.Sessions[min(len(list), len(s.Sessions)-1)]
		list = append(list, nil)
	}
	add := func(h hour) {
		list[len(list)-1] = append(list[len(list)-1], h)
		left -= h.minutes
	}
	for _, h := range hours {
		if h.minutes > left && len(list[len(list)-1]) > 0 {
			next()
		}
		for h.minutes > left {
			part := h
			part.minutes = left
			add(part)
			if h.minutes -= part.minutes; !strings.HasSuffix(h.what, " (continued)") {
				h.what += " (continued)"
			}
			next()
		}
		add(h)
	}
	return list
}

// hours are the schedule's lines. They fit what kits hold: pieces that are cut, and strips for the strip sets.
func (b *patternBuilder) hours() []hour {
	var list []hour
	add := func(what, activity string, times int) {
		minutes, guess := b.Schedule.takes(activity)
		list = append(list, hour{what, minutes * times, guess})
	}
	add("Welcome and safety", "welcome", 1)
	if b.kits() {
		add("Opening the kits and sorting the pieces", "cutting", 1)
	} else {
		add("Cutting the pieces for one block of each kind", "cutting", 1)
	}
	for i := range b.Cuts.Sets {
		if len(b.Cuts.Sets[i].Runs) > 0 {
			add("Sewing one "+b.Cuts.SetName(i)+" strip set and cutting its wedges", "strip-set", 1)
		}
	}
	for i := range b.Sewing.Blocks {
		k := &b.Sewing.Blocks[i]
		for n := range k.Steps {
			s := &k.Steps[n]
			show, guess := b.Schedule.takes("show")
			unit, guessed := b.Schedule.takes("unit")
			list = append(list, hour{"Block " + k.Label + ", step " + numeral(n+1) + ": " + s.Name, show + unit*unitsOf(s), guess || guessed})
		}
	}
	add("Laying out blocks, questions, what to do at home", "layout", 1)
	return list
}

// unitsOf is how many units a step makes for one block.
func unitsOf(s *sewing.Step) int { return max(1, s.PerBlock) }

// atHome is a guess of the time for what is not sewn in class.
func (b *patternBuilder) atHome() {
	units, long := b.unitsLeft(), 0
	for i := range b.Sewing.Assembly.Stages {
		long += b.Sewing.Assembly.Stages[i].Count
	}
	unit, _ := b.Schedule.takes("unit")
	list := []string{}
	if units > 0 {
		list = append(list, count(units, "more unit")+", not counting those sewn in class (about "+count(roundHours(units*unit), "hour")+" at "+count(unit, "minute")+" each)")
	}
	if long > 0 {
		list = append(list, count(long, "long seam")+" to join "+b.laidTogether()+" (about "+count(roundHours(long*forLong), "hour")+" at "+count(forLong, "minute")+" each)")
	}
	if len(list) > 0 {
		b.add(para("To finish the top at home: %s. These times are also approximate.", strings.Join(list, " and ")))
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
