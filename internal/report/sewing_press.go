package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// pressed is which way the seams of a block are pressed, and what happens where they meet.
func (s *sewer) pressed(b *sewing.Block) []document.Block {
	var list sentences
	for group := range b.Pressings {
		ways := s.pressWays(b, group)
		for _, way := range ways {
			list.add(way.text, document.About{Patches: s.cellPatches(way.cells)})
		}
		list.add(s.pressedPlaces(b, ways), document.About{Patches: s.wholeBlock(b)})
	}
	for i := range b.Rounds {
		r := &b.Rounds[i]
		list.add(s.round(b, r), document.About{Patches: s.patchesOf(b, r.Pieces)})
	}
	return list.blocks()
}

// pressWay is blocks of a label whose seams are pressed one way.
type pressWay struct {
	placed
	words string      // which way
	count map[int]int // blocks, by variant
}

// pressWays is how the seams of a block that follow one choice are pressed, way by way, and in how many of the blocks where
// they are not all pressed alike.
func (s *sewer) pressWays(b *sewing.Block, group int) []pressWay {
	var ways []pressWay
	for i := range b.Variants {
		words := s.wayWords(b, &b.Variants[i], group)
		for _, at := range b.Variants[i].Cells {
			n := slices.IndexFunc(ways, func(w pressWay) bool { return w.words == words[s.Way(at.Cell, group)] })
			if n < 0 {
				n = len(ways)
				ways = append(ways, pressWay{words: words[s.Way(at.Cell, group)], count: map[int]int{}})
			}
			ways[n].cells = append(ways[n].cells, s.cellsOf(at)...)
			ways[n].count[i]++
		}
	}
	seams := pressedSeams(b, group)
	for i := range ways {
		w := &ways[i]
		if i > 0 {
			seams = "them"
		}
		w.text = "Press " + seams + " " + w.words
		if len(ways) > 1 {
			w.text += " in " + s.countedBlocks(b, w.count)
		}
		w.text += "."
	}
	return ways
}

// countedBlocks is a number of blocks, with that of each variant where the layout tells these apart.
func (s *sewer) countedBlocks(b *sewing.Block, count map[int]int) string {
	sum := 0
	var list []string
	for i := range b.Variants {
		if n := count[i]; n > 0 {
			sum += n
			list = append(list, fmt.Sprintf("%d of %s", n, b.VariantName(b.Variants[i].Number)))
		}
	}
	text := measure.Count(sum, noun(b))
	if HasNumber(b) && len(list) <= MaxPlacements {
		text += " (" + measure.List(list) + ")"
	}
	return text
}

// pressedPlaces says where blocks of a label go that are pressed in several ways; "" where all are pressed alike.
func (s *sewer) pressedPlaces(b *sewing.Block, ways []pressWay) string {
	if len(ways) < 2 {
		return ""
	}
	if len(ways) == 2 && s.alternate(ways) {
		first := ways[0] // the first of a label's blocks is pressed so
		return fmt.Sprintf("Lay these %ss out in checkerboard order, the one in %s pressed %s: then the seams of neighbors nest.", noun(b), cellPlaces([]int{slices.Min(first.cells)}, s.Columns), first.words)
	}
	var list []string
	for _, w := range ways[:len(ways)-1] {
		list = append(list, w.words+" in "+s.blockPlaces(b, w.cells))
	}
	return "Lay these " + noun(b) + "s out pressed " + strings.Join(list, "; ") + "; " + ways[len(ways)-1].words + " in all other places. Then the seams of neighbors nest."
}

// alternate says whether two ways alternate like the squares of a checkerboard wherever the blocks lie.
func (s *sewer) alternate(ways []pressWay) bool {
	odd := func(cell int) int { return (cell/s.Columns + cell%s.Columns) & 1 }
	first := odd(ways[0].cells[0])
	return !slices.ContainsFunc(ways[0].cells, func(cell int) bool { return odd(cell) != first }) &&
		!slices.ContainsFunc(ways[1].cells, func(cell int) bool { return odd(cell) == first })
}

// wayWords is the two ways of a block's choice: by the cloth where a seam joins two pieces of different cloth, and else as the
// block's kind says it.
func (s *sewer) wayWords(b *sewing.Block, v *sewing.FabricVariant, group int) [2]string {
	own := b.Pressings[group].Ways
	if b.Column || b.Pressings[group].Round {
		return own
	}
	for _, step := range b.Steps {
		for _, j := range step.Joins {
			switch {
			case j.Choice != group:
			case len(j.A) > 1 || len(j.B) > 1 || v.Cloths[j.A[0]] == v.Cloths[j.B[0]]:
				return own
			default:
				names := s.clothNames([]int{v.Cloths[j.B[0]], v.Cloths[j.A[0]]})
				return [2]string{"toward " + names[0], "toward " + names[1]}
			}
		}
	}
	return own
}

// pressedSeams is which seams of a block follow one choice.
func pressedSeams(b *sewing.Block, group int) string {
	if len(b.Pressings) == 1 {
		return "the seams of the " + noun(b)
	}
	var steps []int
	for i, step := range b.Steps {
		if slices.ContainsFunc(step.Joins, func(j sewing.Join) bool { return j.Choice == group }) {
			steps = append(steps, i+1)
		}
	}
	return "the seams of " + numbered("step", steps)
}

// round is what happens where pieces of a block meet.
func (s *sewer) round(b *sewing.Block, r *sewing.Round) string {
	if r.Turns {
		return fmt.Sprintf("At the center %d pieces meet. Spin the seams so all allowances go the same way.", len(r.Pieces))
	}
	why := ""
	if r.WhyNot == sewing.RunsThrough {
		why = ", because the " + s.partName(b, -1, []int{r.Through}) + " has no corner there"
	}
	return "Do not spin this center" + why + "; press the seams as described above."
}

// lastOpen is how many layers there are with the last seam pressed open, where that makes it less.
func lastOpen(r *sewing.Round) string {
	if r.Last >= r.Without {
		return ""
	}
	return fmt.Sprintf("; %d with the last seam pressed open", r.Last)
}

// lineWay is which way the seams within some rows or columns are pressed.
type lineWay struct {
	text   string
	stages []int // of the assembly, by index
}

// lineWays is which way the seams within rows or columns are pressed, and those between sashes and posts.
func (s *sewer) lineWays() []lineWay {
	var to, posts [2]lineWay
	var numbers [2][]int
	for i, stage := range s.Assembly.Stages {
		if stage.Sort != sewing.LineStage || stage.Count == 0 {
			continue
		}
		way := s.Pressing.Choices[s.Choice(stage.First)].Way
		if stage.Number == 0 {
			posts[way].stages = append(posts[way].stages, i)
			posts[way].text = "Press the seams between sashes and posts " + [2]string{"toward the sashes.", "toward the posts."}[way]
			continue
		}
		to[way].stages, numbers[way] = append(to[way].stages, i), append(numbers[way], stage.Number)
	}
	ways, between := [2]string{"to the right", "to the left"}, "blocks"
	if s.Assembly.ByColumns {
		ways = [2]string{"toward the bottom", "toward the top"}
	}
	if s.Sashed() {
		ways, between = [2]string{"toward the sashes", "toward the blocks"}, "blocks and sashes"
	}
	for way, list := range numbers {
		switch {
		case len(list) == 0:
		case len(numbers[1-way]) == 0:
			to[way].text = fmt.Sprintf("Press the seams between %s %s.", between, ways[way])
		default:
			to[way].text = fmt.Sprintf("Press the seams between %s %s in %s.", between, ways[way], everyOther(s.line(), list))
		}
	}
	return slices.DeleteFunc(slices.Concat(to[:], posts[:]), func(w lineWay) bool { return w.text == "" })
}

// line is what blocks are sewn into first.
func (s *sewer) line() string { return Grid{s.top, s.Plan}.Line() }

// longPress says which way the seams between rows or columns are pressed.
func (s *sewer) longPress(list *sentences, stage *sewing.Stage) {
	way := "down"
	if s.Assembly.ByColumns {
		way = "to the right"
	}
	between := measure.Plural(s.line())
	if s.Sashed() {
		way, between = "toward the sashes", between+" and sashes"
	}
	var as, other []int
	var names []string
	for i := stage.First; i < stage.First+stage.Count; i++ {
		if s.Pressing.Choices[s.Choice(i)].Way == 0 {
			as = append(as, i)
			continue
		}
		other = append(other, i)
		if name := s.lineBeside(i); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(as) > 0 {
		list.add(fmt.Sprintf("Press the seams between %s %s.", between, way), document.About{Seams: s.seamsOf(as)})
	}
	if len(other) > 0 {
		list.add(fmt.Sprintf("Press the other way: the seam %s.", measure.List(names)), document.About{Seams: s.seamsOf(other)})
	}
	list.add(s.nesting(), document.About{Patches: s.joints(func(j *sewing.Joint) bool { return j.Nests })})
	s.notNesting(list)
}

// lineBeside is where a long seam lies: above or below which row, or to the right of which column.
func (s *sewer) lineBeside(seam int) string {
	at := s.Assembly.Seams[seam].From
	n := 0 // rows, or columns, that begin before the seam
	if s.Assembly.ByColumns {
		for n < s.Columns && s.top.CellRect(n).Min.X < at.X {
			n++
		}
		return fmt.Sprintf("to the right of column %d", n)
	}
	for n < s.Rows && s.top.CellRect(n*s.Columns).Min.Y < at.Y {
		n++
	}
	if n > 0 && s.top.CellRect((n-1)*s.Columns).Max.Y == at.Y {
		return fmt.Sprintf("below row %d", n)
	}
	return fmt.Sprintf("above row %d", n+1)
}

// borderPress says which way the seams of a border are pressed, those of its corner squares first.
func (s *sewer) borderPress(list *sentences, stage *sewing.Stage) {
	var squares, strips [2][]int // by way: seams
	for i := stage.First; i < stage.First+stage.Count; i++ {
		c := &s.Pressing.Choices[s.Choice(i)]
		if c.Sort == sewing.LineChoice {
			squares[c.Way] = append(squares[c.Way], i)
		} else {
			strips[c.Way] = append(strips[c.Way], i)
		}
	}
	s.bothWays(list, squares, "Press the seams between corner squares and strips ", [2]string{"toward the strips", "toward the squares"})
	s.bothWays(list, strips, "Press the border's seams ", [2]string{"toward the border", "toward the quilt center"})
}

// bothWays says of seams of a border which way they are pressed, with the sides where they are not all pressed alike.
func (s *sewer) bothWays(list *sentences, seams [2][]int, text string, ways [2]string) {
	for way, some := range seams {
		if len(some) == 0 {
			continue
		}
		where := ""
		if len(seams[1-way]) > 0 {
			var sides []string
			for _, n := range some {
				if side := s.sideOf(n); !slices.Contains(sides, side) {
					sides = append(sides, side)
				}
			}
			where = " at the " + measure.List(sides)
		}
		list.add(text+ways[way]+where+".", document.About{Seams: s.seamsOf(some)})
	}
}

// sideOf is the side of the quilt at which a seam of a border lies.
func (s *sewer) sideOf(seam int) string {
	a, b, o := s.Assembly.Seams[seam].From, s.Assembly.Seams[seam].To, s.top.Outer
	corner := s.Pressing.Choices[s.Choice(seam)].Sort == sewing.LineChoice // it runs up, in a strip at the top or the bottom
	switch x, y := a.X+b.X-o.Min.X-o.Max.X, a.Y+b.Y-o.Min.Y-o.Max.Y; {
	case (a.Y == b.Y || corner) && y < 0:
		return "top"
	case a.Y == b.Y || corner:
		return "bottom"
	case x < 0:
		return "left"
	}
	return "right"
}

// nesting says that seams nest; "" where none butt together.
func (s *sewer) nesting() string {
	switch g := &s.Pressing; {
	case g.Nests == 0:
		return ""
	case g.Nests < len(g.Joints):
		return "Pressed this way, the seams nest at most places."
	}
	return "Pressed this way, the seams nest."
}

// notNesting says where seams do not nest, and what to do there.
func (s *sewer) notNesting(list *sentences) {
	left := len(s.Pressing.Joints) - s.Pressing.Nests
	if left == 0 {
		return
	}
	list.add(fmt.Sprintf("Seams do not nest at %s: press the later seam open there, or overlap the seams, and pin carefully.", measure.Count(left, "place")),
		document.About{Patches: s.joints(func(j *sewing.Joint) bool { return !j.Nests })}).Tone = document.Doubtful
	shown := s.Pressing.Cannot[:min(maxListed, len(s.Pressing.Cannot))]
	for _, spot := range s.spots(shown) {
		list.add("Seams do not nest at "+spot.text+".", document.About{Patches: spot.patches}).Tone = document.Doubtful
	}
	if left > maxListed {
		list.add(fmt.Sprintf("They also do not nest at %d more.", left-maxListed), document.About{})
	}
}

// unnested is where joints lie that are at the same place of their blocks, and the patches that meet there.
type unnested struct {
	text    string
	patches []int
}

// spots is where joints lie, those at the same place of several blocks together.
func (s *sewer) spots(list []sewing.Cannot) []unnested {
	type alike struct {
		name           string
		cells, patches []int
	}
	var found []alike
	for _, c := range list {
		at := s.Pressing.Joints[c.Joint].At
		cell, name := s.CellOf(at), ""
		if cell >= 0 {
			name = s.spot(cell, at)
		}
		n := slices.IndexFunc(found, func(a alike) bool { return a.name == name })
		if n < 0 {
			n = len(found)
			found = append(found, alike{name: name})
		}
		found[n].cells = append(found[n].cells, cell)
		found[n].patches = append(found[n].patches, s.JointPatches(c.Joint)...)
	}
	spots := make([]unnested, len(found))
	for i, a := range found {
		cells := slices.Compact(slices.Sorted(slices.Values(a.cells)))
		switch {
		case a.name == "":
			spots[i].text = "the borders or sashes"
		case len(cells) == 1:
			spots[i].text = a.name + " of the block in " + cellPlaces(cells, s.Columns)
		default:
			spots[i].text = measure.Plural(a.name) + " of the blocks in " + cellPlaces(cells, s.Columns)
		}
		spots[i].patches = slices.Compact(slices.Sorted(slices.Values(a.patches)))
	}
	return spots
}
