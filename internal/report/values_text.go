package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
)

// valuesText puts a study of light and dark into words.
type valuesText struct {
	*contrast.Report
	borders int  // of the top
	bound   bool // it has one more, its binding
}

// away is the distance in words.
func (w valuesText) away() string { return Away(w.Thresholds.Distance, w.Units) }

// Away is a distance from eye to quilt in words.
func Away(distance measure.NM, u measure.System) string { return u.Distance(distance) }

// length is a sum of seams, to a whole inch or centimeter: nothing is cut by it.
func (w valuesText) length(nm measure.NM) string {
	return w.Units.Nearest(measure.Nearest(nm, w.Units.Unit()))
}

// verdictOf is whether a figure reads; strips that do not are a soft pattern inside their wedge, and no loss.
func verdictOf(f *contrast.Figure) string {
	if f.Sort == contrast.Strips && !f.Verdict.Shows() {
		return "blend softly into each other"
	}
	return verdictText(f.Verdict)
}

// verdictText is whether a figure reads.
func verdictText(v contrast.Verdict) string {
	switch v {
	case contrast.OutlineOnly:
		return "reads as an outline, not as a solid shape"
	case contrast.FromAfarOnly:
		return "reads from a distance, with soft edges"
	case contrast.Faint:
		return "shows only faintly"
	case contrast.RunsOn:
		return "runs on into the quilt"
	}
	return string(v)
}

// percent is a part of a length in whole percent.
func percent(part, whole measure.NM) string {
	if whole == 0 {
		return "0%"
	}
	return fmt.Sprintf("%.0f%%", 100*float64(part)/float64(whole))
}

// figure is what a figure is.
func (w valuesText) figure(f *contrast.Figure) string {
	of, against := few(f.Of), few(f.Against)
	switch f.Sort {
	case contrast.Border:
		if f.Verdict == contrast.RunsOn {
			return w.theBorder(f.Border) + " of " + of
		}
		return w.theBorder(f.Border) + " of " + of + " against " + against
	case contrast.ByTurns:
		return of + " alternating with " + against
	case contrast.DownColumns:
		return "tumblers of " + of + ", each against the next in its column"
	case contrast.BetweenColumns:
		return "columns of tumblers of " + of + ", each against the next"
	case contrast.InBlocks:
		return "halves of " + of + ", each against the next"
	case contrast.Squares:
		return "plain blocks of " + of + ", each against the next"
	case contrast.Sashes:
		return "sashes of " + of + " against " + against
	case contrast.Alternation:
		if sameNames(f.Of, f.Against) {
			return measure.Count(f.Count, "ring") + " of " + of + ", each wedge against the next"
		}
		return measure.Count(f.Count, "ring") + ", " + of + " alternating with " + against
	case contrast.Strips:
		return "strips of " + of + ", each against the next"
	case contrast.Wheel:
		return measure.Count(f.Count, "ring") + " of " + of + " against " + against
	}
	name := measure.Count(f.Count, string(f.Sort)) + " of " + of
	if len(f.Edge) > 0 && len(f.Edge) < len(f.Of) {
		name += ", " + few(f.Edge) + " at the outer edge,"
	}
	return name + " against " + against
}

// sameNames says whether two lists have the same names, in whatever order.
func sameNames(a, b []string) bool {
	a, b = slices.Clone(a), slices.Clone(b)
	slices.Sort(a)
	slices.Sort(b)
	return slices.Equal(a, b)
}

// parts are the lines that a verdict rests on.
func (w valuesText) parts(f *contrast.Figure) []string {
	if f.Verdict == contrast.RunsOn {
		return []string{"sewn to its own fabric all around"}
	}
	var lines []string
	if f.Outline.Length > 0 {
		lines = append(lines, w.outline(f))
	}
	if m := f.Mass; m != nil {
		mass := fmt.Sprintf("figure against background: %.0f/100, separation %.2f, step %.2f, which holds %.2f", m.Score, m.Massing, m.Step, m.Hold)
		if m.Figure != 0 || m.AgainstMid != 0 {
			mass += fmt.Sprintf(" (middle L* %.0f against %.0f)", m.Figure, m.AgainstMid)
		}
		lines = append(lines, mass)
	}
	if f.Lost > 0 && f.Lost < f.Count {
		lines = append(lines, fmt.Sprintf("taken singly, %d of %d do not hold; the weakest is in %s", f.Lost, f.Count, w.placeText(f.Weakest)))
	}
	if f.Doubtful {
		lines = append(lines, "most of its edge is close to a threshold: compare the fabrics side by side before you rely on this")
	}
	return lines
}

// oneSided says whether it matters for a sort of figure that one side of its outline is lighter all around.
func oneSided(s contrast.Sort) bool {
	return s == contrast.Web || s == contrast.Star || s == contrast.Wheel || s == contrast.Alternation
}

func (w valuesText) outline(f *contrast.Figure) string {
	o := &f.Outline
	text := fmt.Sprintf("outline: %.0f/100, edge %.2f", o.Score, o.Edge)
	if oneSided(f.Sort) {
		text += fmt.Sprintf(", same side lighter %.2f", o.Polarity)
	}
	if o.Broken > 0 {
		text += fmt.Sprintf("; %s of it vanishes, the longest stretch %s", percent(o.Broken, o.Length), w.length(o.LongestGap))
	}
	return text
}

// theBorder is the n-th border in a sentence, from 1.
func (w valuesText) theBorder(n int) string {
	switch {
	case w.bound && n > w.borders:
		return "the binding"
	case w.borders == 1:
		return "the border"
	}
	return borderName(n, w.borders)
}

// placeText names the place.
func (w valuesText) placeText(p contrast.Place) string {
	switch {
	case p.Border > 0:
		return w.theBorder(p.Border)
	case p.Row > 0:
		return fmt.Sprintf("row %d, column %d", p.Row, p.Column)
	}
	return "the sashes"
}

// pairNote is what is to be said of a pair beside its numbers, "" for nothing.
func pairNote(p *contrast.Pair) string {
	switch {
	case p.Inside == p.Length:
		return "need not show"
	case p.ColourOnly:
		return "held by color only"
	case p.BreaksUp:
		return "the prints overlap"
	case p.Doubtful:
		return "close to a threshold"
	}
	return ""
}

// fabricNote is what is to be said of a fabric beside its numbers, "" for nothing.
func fabricNote(f *contrast.Fabric) string {
	switch {
	case f.Spread > 0:
		return fmt.Sprintf("print, values spread by %.0f", f.Spread)
	case f.Vivid:
		return "vivid"
	}
	return ""
}

// maxRuns is how many groups of cells are named.
const maxRuns = 6

// goneInside says how much vanishes where no line need show, "" if nothing does.
func (w valuesText) goneInside() string {
	if w.Seams.CountInside[contrast.Vanishes.String()] == 0 {
		return ""
	}
	return "Another " + w.length(w.Seams.Inside[contrast.Vanishes.String()]) + " vanishes inside a figure or its background, where no line needs to show: fabrics of the same value blend together there."
}

// cells names cells, as "rows 1-4: columns 1-4; row 5: columns 2, 4; border 1". They stand in
// order, borders last.
func (w valuesText) cells(cells []contrast.Place) string {
	var groups, edges []string
	first, last, columns := 0, 0, ""
	finish := func() {
		if columns != "" {
			groups = append(groups, counted("row", upTo(first, last))+": "+columns)
		}
	}
	for i := 0; i < len(cells); {
		if cells[i].Row == 0 {
			edges = append(edges, w.placeText(cells[i]))
			i++
			continue
		}
		list := columnsOf(cells[i:])
		if text := counted("column", list); text != columns || cells[i].Row != last+1 {
			finish()
			first, columns = cells[i].Row, text
		}
		last = cells[i].Row
		i += len(list)
	}
	finish()
	if more := len(groups) - maxRuns; more > 0 {
		noun := "groups"
		if more == 1 {
			noun = "group"
		}
		groups = append(groups[:maxRuns], fmt.Sprintf("%d more %s of cells", more, noun))
	}
	return strings.Join(append(groups, edges...), "; ")
}

// columnsOf are the columns of the cells that stand in the row of the first.
func columnsOf(cells []contrast.Place) []int {
	var list []int
	for _, c := range cells {
		if c.Row != cells[0].Row {
			break
		}
		list = append(list, c.Column)
	}
	return list
}

func upTo(first, last int) []int {
	var list []int
	for n := first; n <= last; n++ {
		list = append(list, n)
	}
	return list
}

// counted names numbers that rise: "row 1", "columns 1-3, 5".
func counted(what string, list []int) string {
	var parts []string
	for i := 0; i < len(list); {
		n := i
		for n+1 < len(list) && list[n+1] == list[n]+1 {
			n++
		}
		if list[n] == list[i] {
			parts = append(parts, strconv.Itoa(list[i]))
		} else {
			parts = append(parts, fmt.Sprintf("%d-%d", list[i], list[n]))
		}
		i = n + 1
	}
	if len(list) > 1 {
		what += "s"
	}
	return what + " " + strings.Join(parts, ", ")
}

// grounds are what the study rests on.
func (w valuesText) grounds() []string {
	t := &w.Thresholds
	soft := fmt.Sprintf("a seam vanishes below a step of %s L*: half of all viewers notice that step between patches of this size from this distance (published); prints need more", span(t.SoftLeast, t.SoftMost))
	clear := fmt.Sprintf("it is clear at or above %g, about where lettering is just legible (published for lettering, our choice for seams)", t.Clear)
	if t.Own {
		soft = fmt.Sprintf("a seam vanishes below a step of %g L*, as set", t.SoftLeast)
		clear = fmt.Sprintf("it is clear at or above %g, as set", t.Clear)
	}
	return []string{
		soft,
		clear + fmt.Sprintf(", and strong at or above %g, three times the light (derived)", t.Strong),
		fmt.Sprintf("medium begins at L* %g and light at %g (published limits, combined into three groups by us)", t.MediumFrom, t.LightFrom),
		"outline: edge is how much of it shows, 1 where every seam around the figure is clear; \"same side lighter\" is 1 where the figure is darker all around, or lighter all around",
		"where a figure is darker than some of what it meets and lighter than the rest, the shorter part of its edge counts half; a figure that lacks some of its pieces is judged only where none is complete (our choices)",
		"figure against background: how much the steps hold from every spot of one to every spot of the other, seen when you squint, on the side that is mostly lighter; separation is how surely a spot of one is darker than a spot of the other, step how much of a clear step lies between their medians, which holds as a seam of that step would",
		"a figure is faint, not lost, where half of its edge or more can still be seen from near, or a third of it parts from its background when you squint (our choices)",
		fmt.Sprintf("an outline, or a figure against its background, holds at or above %g/100, and from %g/100 a figure whose outline holds, since the squint softens every edge; the squint blurs by %s (our choices)", t.Reads, t.BesideEdge, w.Units.Nearest(t.Blur)),
		"neighboring fabrics, sheen and room light change how light a fabric looks, and a screen is not fabric: within 3 L* of a threshold, look at the fabric itself; vivid colors look lighter than their L*",
	}
}

// span is two numbers, or one where they look the same.
func span(least, most float64) string {
	a, b := fmt.Sprintf("%.1f", least), fmt.Sprintf("%.1f", most)
	if a == b {
		return a
	}
	return a + " to " + b
}
