package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
)

// headline is what a teacher would say first: whether the design reads, what is lost, and the one thing to change.
func (v *values) headline() document.Section {
	s := section("headline", "Does it read?", document.Answer)
	if len(v.Tried) > 0 {
		s.Blocks = append(s.Blocks, paragraph("Tried, not saved in the layout: "+strings.Join(v.Tried, ", ")+"."))
	}
	s.Blocks = append(s.Blocks, paragraph(v.answer()+v.losses(v.toTell())))
	if advice := v.advice(); advice != "" {
		s.Blocks = append(s.Blocks, paragraph(advice))
	}
	s.Blocks = append(s.Blocks, paragraph("Judged from "+v.away()+" away."))
	return s
}

// mostLosses is how many losses the headline tells.
const mostLosses = 2

// mostNames is how many fabrics a sentence names.
const mostNames = 4

// few are names of fabrics, the first of them where they are many.
func few(names []string) string {
	if more := len(names) - mostNames; more > 1 {
		names = append(slices.Clone(names[:mostNames]), fmt.Sprintf("%d more", more))
	}
	return measure.List(names)
}

// toTell are the losses, but for frames that are lost for two fabrics of which another loss tells.
func (v *values) toTell() []*contrast.Loss {
	var list []*contrast.Loss
	known := map[[2]string]bool{}
	scraps := 0
	for i := range v.Losses {
		l := &v.Losses[i]
		lacks := v.lacksOf(l)
		if l.Of == contrast.LossOfScrap {
			if scraps++; scraps > 1 {
				continue
			}
		}
		if l.Of == contrast.LossOfFrame && len(lacks) > 0 && known[lacks[0].Names] {
			continue
		}
		if len(lacks) > 0 {
			known[lacks[0].Names] = true
		}
		list = append(list, l)
	}
	return list
}

// lacksOf are the fabrics that cost a loss.
func (v *values) lacksOf(l *contrast.Loss) []contrast.Lack {
	switch {
	case l.Figure < 0:
		return nil
	case l.Of == contrast.LossOfRim:
		return v.Figures[l.Figure].Rim.Lacks
	}
	return v.Figures[l.Figure].Lacks
}

// answer is the first word or sentence.
func (v *values) answer() string {
	if len(v.Losses) == 0 {
		return v.nothingLost()
	}
	lost, faint := 0.0, true
	shown := false
	for i := range v.Losses {
		l := &v.Losses[i]
		if l.Of == contrast.LossOfFigure {
			lost += l.Part
			faint = faint && l.Verdict == contrast.Faint
		}
	}
	for i := range v.Figures {
		f := &v.Figures[i]
		shown = shown || f.Verdict.Shows() && f.Sort != contrast.Border && f.Sort != contrast.Sashes && f.Sort != contrast.Strips
	}
	switch {
	case lost == 0 || shown && lost <= 0.5:
		return "Nearly"
	case faint:
		return "Only faintly"
	case shown:
		return "Only in part"
	}
	return "No"
}

// nothingLost is the answer where all that is meant to show does.
func (v *values) nothingLost() string {
	var names []string
	soft := false
	for i := range v.Figures {
		f := &v.Figures[i]
		if f.Sort == contrast.Border || f.Sort == contrast.Sashes || f.Sort == contrast.Strips || f.Sort == contrast.ByTurns {
			continue
		}
		if name := v.plural(f); len(names) == 0 || names[len(names)-1] != name {
			names = append(names, name)
		}
		soft = soft || f.Verdict != contrast.Reads
	}
	switch {
	case len(v.Figures) == 0:
		return "There is no figure to judge: no two fabrics are set against each other."
	case len(names) == 0:
		return "Yes."
	case soft:
		return "Yes, softly: " + measure.List(names) + " can be seen."
	}
	return "Yes: " + measure.List(names) + " read clearly."
}

// plural is what a sort of figure is called, all of them together.
func (v *values) plural(f *contrast.Figure) string {
	switch f.Sort {
	case contrast.Web:
		return "the webs"
	case contrast.Star:
		return "the stars"
	case contrast.Wheel, contrast.Alternation:
		return "the rings"
	case contrast.DownColumns, contrast.BetweenColumns:
		return "the tumblers"
	case contrast.InBlocks:
		return "the halves"
	case contrast.Squares:
		return "the plain blocks"
	case contrast.Sashes:
		return "the sashes"
	}
	return v.theBorder(f.Border)
}

// losses are what is lost, behind the first word of the headline: the first of them in one sentence, what costs them in the next.
func (v *values) losses(told []*contrast.Loss) string {
	if len(told) == 0 {
		return ""
	}
	first := told[:min(mostLosses, len(told))]
	subject, predicate := v.loss(first[0])
	text := subject + " " + predicate
	if len(first) > 1 {
		if also, same := v.loss(first[1]); same == predicate && !slices.Contains([]string{"is lost", "hardly shows"}, predicate) {
			text = subject + " and " + also + " " + predicate
		} else {
			text += ", and " + also + " " + same
		}
	}
	if more := len(told) - mostLosses; more > 0 {
		text += fmt.Sprintf("; %d more below", more)
	}
	text = ": " + text + "."
	if causes := v.causes(first); causes != "" {
		text += " " + capital(causes) + "."
	}
	return text
}

// loss is one loss as the subject and the rest of a sentence.
func (v *values) loss(l *contrast.Loss) (subject, predicate string) {
	if l.Of == contrast.LossOfScrap {
		return v.scrap(&v.Stray[l.Scrap])
	}
	f := &v.Figures[l.Figure]
	switch l.Of {
	case contrast.LossOfTurns:
		return fmt.Sprintf("the two sorts, %s and %s,", few(f.Of), few(f.Against)), "look alike in gray"
	case contrast.LossOfRim:
		how := "lose their outer edge in the border of "
		if f.Rim.Count == 1 {
			how = "loses its outer edge in the border of "
		}
		return v.some(f, f.Rim.Count), how + few(f.Rim.Against)
	}
	return v.named(f), v.becomes(f, l.Verdict)
}

// becomes is a verdict as the rest of a sentence about a figure.
func (v *values) becomes(f *contrast.Figure, verdict contrast.Verdict) string {
	switch verdict {
	case contrast.Faint:
		return "hardly " + v.verb(f, "shows", "show")
	case contrast.OutlineOnly:
		return v.verb(f, "shows", "show") + " as an outline only"
	case contrast.FromAfarOnly:
		return v.verb(f, "has", "have") + " soft edges"
	}
	return v.verb(f, "is", "are") + " lost"
}

// isOrAre is the verb for so many.
func isOrAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// strays are the scraps that leave their pools, pool by pool.
func (v *values) strays() string {
	var pools []string
	of := map[string][]string{}
	for i := range v.Stray {
		s := &v.Stray[i]
		if of[s.Pool] == nil {
			pools = append(pools, s.Pool)
		}
		of[s.Pool] = append(of[s.Pool], s.Fabric)
	}
	var parts []string
	for _, p := range pools {
		parts = append(parts, few(of[p])+" out of "+p)
	}
	return measure.List(parts)
}

// scrap is what a scrap does that fell out of its pool, as the subject and the rest of a sentence.
func (v *values) scrap(s *contrast.Stray) (subject, predicate string) {
	than := "light"
	if s.Darker {
		than = "dark"
	}
	like := few(s.Like)
	if s.LikePool != "" {
		like = "your " + s.LikePool
	}
	predicate = fmt.Sprintf("is as %s as %s and makes holes in %s at %s", than, like, s.Pool, measure.Count(s.Pieces, "piece"))
	if more := len(v.Stray) - 1; more > 0 {
		predicate += fmt.Sprintf(" (so %s %s)", isOrAre(more), measure.Count(more, "other scrap"))
	}
	return "the scrap " + s.Fabric, predicate
}

// named is a figure, as the subject of a sentence.
func (v *values) named(f *contrast.Figure) string {
	switch f.Sort {
	case contrast.Border, contrast.Sashes:
		return v.plural(f) + " of " + few(f.Of)
	case contrast.DownColumns:
		return "the tumblers down the columns"
	case contrast.BetweenColumns:
		return "the columns of tumblers"
	case contrast.InBlocks, contrast.Squares:
		return v.plural(f)
	case contrast.Alternation:
		return "the " + measure.Count(f.Count, "ring") + " of " + few(union(f.Of, f.Against))
	}
	return v.some(f, f.Count)
}

// some are so many of a figure.
func (v *values) some(f *contrast.Figure, n int) string {
	kind := strings.TrimSuffix(strings.TrimPrefix(v.plural(f), "the "), "s")
	if f.Reversed {
		kind = "reversed " + kind
	}
	text := "the " + measure.Count(n, kind)
	if !f.Reversed {
		text += " of " + few(f.Of)
	}
	return text
}

// verb is a verb for a figure.
func (v *values) verb(f *contrast.Figure, one, many string) string {
	if f.Sort == contrast.Border || f.Count == 1 && oneSided(f.Sort) {
		return one
	}
	return many
}

// causes are the fabrics that cost losses, those of each loss once.
func (v *values) causes(told []*contrast.Loss) string {
	var parts []string
	known := map[[2]string]bool{}
	for _, l := range told {
		lacks := v.lacksOf(l)
		if len(lacks) == 0 || known[lacks[0].Names] {
			continue
		}
		lack := &lacks[0]
		known[lack.Names] = true
		names := measure.List(lack.Names[:])
		switch {
		case lack.Band == contrast.Vanishes:
			parts = append(parts, names+" are one value")
		case len(parts) == 0:
			parts = append(parts, fmt.Sprintf("%s are close in value, only %.0f apart where %.0f would be clear", names, lack.Step, v.Thresholds.Clear))
		default:
			parts = append(parts, fmt.Sprintf("%s are only %.0f apart", names, lack.Step))
		}
	}
	return strings.Join(parts, "; ")
}

// advice is the one thing to change, "" where nothing is lost.
func (v *values) advice() string {
	if len(v.Losses) == 0 {
		return ""
	}
	switch {
	case len(v.Changes) > 0:
	case v.rimLost() != nil:
		return "Set a narrow border between, or choose another fabric for the border."
	case v.poolsOverlap():
		return "Sort the scraps by value, not by color: the lights in one pool, the darks in the other."
	default:
		return "No change of value in one or two of these fabrics fixes this without spoiling something else: try other fabrics."
	}
	text := v.change(&v.Changes[0])
	if second := v.alternative(); second != nil {
		text += ", or " + v.change(second)
	}
	text = capital(text) + v.spoils(&v.Changes[0])
	switch {
	case v.rimLost() == nil:
	case v.Changes[0].Whole():
		text += ", or set a narrow border between"
	default:
		text += "; a narrow border between fixes the outer edge"
	}
	return text + "."
}

// poolsOverlap says whether the darks of one pool of scraps are as dark as the lights of another are light.
func (v *values) poolsOverlap() bool {
	var spans [][2]float64
	for _, p := range v.top.Credits.Pools {
		span := [2]float64{100, 0}
		for _, f := range p.Fabrics {
			l := v.top.Fabrics[f].Colour.Lightness()
			span = [2]float64{min(span[0], l), max(span[1], l)}
		}
		for _, other := range spans {
			if span[0] < other[1] && other[0] < span[1] {
				return true
			}
		}
		spans = append(spans, span)
	}
	return false
}

// alternative is the next change of another sort that does as much as the first, nil if there is none.
func (v *values) alternative() *contrast.Change {
	for i := range v.Changes[1:] {
		c := &v.Changes[i+1]
		if c.Whole() == v.Changes[0].Whole() && len(c.Leaves) == len(v.Changes[0].Leaves) && len(c.Steps) <= 1 {
			return c
		}
	}
	return nil
}

// change is what to do.
func (v *values) change(c *contrast.Change) string {
	switch c.Of {
	case contrast.TakeOut:
		return "take " + v.strays()
	case contrast.Unreversed:
		return "delete \"reversed\""
	case contrast.SwapTwo:
		return "swap " + measure.List(c.Swap)
	}
	var parts []string
	for i := range c.Steps {
		parts = append(parts, v.step(&c.Steps[i]))
	}
	return "make " + measure.List(parts)
}

// step is another value for one fabric.
func (v *values) step(s *contrast.Step) string {
	way := "darker"
	if s.Lighter {
		way = "lighter"
	}
	if s.Quieter {
		way = "quieter, " + way
	}
	if s.Print {
		return fmt.Sprintf("%s a %s print of about L* %.0f", s.Fabric, way, s.Lightness)
	}
	return fmt.Sprintf("%s %s (for example %s)", s.Fabric, way, s.Colour)
}

// spoils is what a change leaves or spoils, as the rest of a sentence, "" for nothing.
func (v *values) spoils(c *contrast.Change) string {
	text := ""
	if len(c.Leaves) > 0 {
		text += fmt.Sprintf(", which fixes %d of %d", len(c.Clears), len(v.Losses))
	}
	if len(c.Breaks) > 0 {
		b := &c.Breaks[0]
		f := &v.Figures[b.Figure]
		text += "; but then " + v.named(f) + " " + v.becomes(f, b.To)
	}
	return text
}

// changes lists everything that would help, with a fabric of a palette where one would do.
func (v *values) changes() document.Section {
	var list document.List
	for i := range v.Changes {
		c := &v.Changes[i]
		w := item(capital(v.change(c)) + v.spoils(c) + ".")
		for n := range c.Steps {
			if o := c.Steps[n].Other; o != nil {
				p := document.Paragraph{Text: document.Plain(fmt.Sprintf("In place of %s, %s of the palette %s (%s, L* %.0f) would do as well.", c.Steps[n].Fabric, o.Name, o.Palette, o.Colour, o.Lightness))}
				w.Blocks = append(w.Blocks, p)
			}
			w.About.Faces = append(w.About.Faces, v.facesOf[v.index[c.Steps[n].Fabric]]...)
		}
		list.Items = append(list.Items, w)
	}
	if f := v.rimLost(); f != nil {
		list.Items = append(list.Items, item("Set a narrow border between, of a fabric that stands apart from "+few(union(f.Edge, f.Rim.Against))+"."))
	}
	if len(list.Items) == 0 {
		return document.Section{}
	}
	return with(section("fixes", "What would help", document.Answer), list)
}

// rimLost is the first figure that loses its outer edge in a border, nil where none does.
func (v *values) rimLost() *contrast.Figure {
	for i := range v.Losses {
		if l := &v.Losses[i]; l.Of == contrast.LossOfRim {
			return &v.Figures[l.Figure]
		}
	}
	return nil
}

// union is the names of both lists, each once.
func union(a, b []string) []string {
	list := slices.Clone(a)
	for _, name := range b {
		if !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	return list
}

// beside is what is to be said of a figure beside its verdict.
func (v *values) beside(f *contrast.Figure) []string {
	var lines []string
	if oneSided(f.Sort) && f.Closed > 0 && f.Closed < f.Count {
		lines = append(lines, fmt.Sprintf("%d complete, %d cut off at the edge", f.Closed, f.Count-f.Closed))
	}
	if r := f.Rim; r != nil && !r.Verdict.Shows() && f.Verdict.Shows() {
		lines = append(lines, fmt.Sprintf("%s of the outer edge of %d of them is lost in the border of %s", v.length(r.Lost), r.Count, few(r.Against)))
	}
	if c := f.Complement; c != nil {
		how := "show just as strongly"
		if c.Stronger {
			how = "show even more strongly"
		}
		lines = append(lines, fmt.Sprintf("the %s of %s between them %s", measure.Count(c.Count, string(c.Sort)), few(c.Of), how))
	}
	if f.Sort == contrast.DownColumns && f.Verdict.Shows() && f.Alternates >= mostlyAlternate {
		lines = append(lines, "light and dark alternate")
	}
	return lines
}

// mostlyAlternate is the part of the pieces from which a column is said to alternate.
const mostlyAlternate = 0.9
