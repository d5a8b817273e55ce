package report

import (
	"fmt"
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// pressed is which way the seams of a block are pressed, and what happens where they meet.
func (s *sewer) pressed(b *sewing.Block) []document.Block {
	var list sentences
	differ := false
	for group := range b.Pressings {
		ways := s.pressWays(b, group)
		differ = differ || len(ways) > 1
		for _, way := range ways {
			list.add(way.text, document.About{Patches: s.cellPatches(way.cells)})
		}
	}
	if differ {
		list.add("Pressed this way, the seams of neighboring blocks nest.", document.About{})
	}
	for i := range b.Rounds {
		r := &b.Rounds[i]
		list.add(s.round(r), document.About{Patches: s.patchesOf(b, r.Pieces)})
	}
	return list.blocks()
}

// pressWays is how the seams of a block that follow one choice are pressed, way by way; it names the places where a block's
// places differ.
func (s *sewer) pressWays(b *sewing.Block, group int) []placed {
	var ways []placed
	for i := range b.Variants {
		words := s.wayWords(b, &b.Variants[i], group)
		for _, at := range b.Variants[i].Cells {
			text := words[s.Way(at.Cell, group)]
			n := slices.IndexFunc(ways, func(p placed) bool { return p.text == text })
			if n < 0 {
				n = len(ways)
				ways = append(ways, placed{text: text})
			}
			ways[n].cells = append(ways[n].cells, s.cellsOf(at)...)
		}
	}
	for i := range ways {
		where := ""
		if len(ways) > 1 {
			where = ": " + s.blockPlaces(b, ways[i].cells)
		}
		ways[i].text = "Press " + pressedSeams(b, group) + " " + ways[i].text + where + "."
	}
	return ways
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
		return "the seams of the block"
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
func (s *sewer) round(r *sewing.Round) string {
	if !r.Turns {
		how := "Press them to one side"
		if r.Last < r.Without {
			how += ", the last seam open"
		}
		return fmt.Sprintf("At the center %d pieces meet. The seams cannot be spun, because %s. %s.", len(r.Pieces), obstacle(r.WhyNot), how)
	}
	return fmt.Sprintf("At the center %d pieces meet. Spin the seams so all allowances go the same way.", len(r.Pieces))
}

// obstacle is why allowances cannot turn one way round a point.
func obstacle(o sewing.Obstacle) string {
	if o == sewing.RunsThrough {
		return "one piece has no corner here, and its allowance runs straight past the point"
	}
	return "not all seams here are pressed around the point"
}

// lastOpen is how many layers there are with the last seam pressed open, where that makes it less.
func lastOpen(r *sewing.Round) string {
	if r.Last >= r.Without {
		return ""
	}
	return fmt.Sprintf("; %d with the last seam pressed open", r.Last)
}

// pressing is which way the seams between blocks are pressed, and which joints nest.
func (s *sewer) pressing() document.Section {
	if len(s.Assembly.Seams) == 0 {
		return document.Section{}
	}
	var list sentences
	for _, way := range s.lineWays() {
		list.add(way.text, document.About{Seams: s.stageSeams(way.stages)})
	}
	inwards := s.Inwards()
	list.add(s.longWay(), document.About{Seams: s.longSeams(inwards)})
	list.add(s.turnedSeams(inwards), document.About{Seams: s.seamsOf(inwards)})
	list.add(s.nesting(), document.About{Patches: s.joints(func(j *sewing.Joint) bool { return j.Nests })})
	if left := len(s.Pressing.Joints) - s.Pressing.Nests; left > 0 {
		text := fmt.Sprintf("Seams do not nest at %s: press the later seam open there, or overlap the seams, and pin carefully.", measure.Count(left, "place"))
		list.add(text, document.About{Patches: s.joints(func(j *sewing.Joint) bool { return !j.Nests })}).Tone = document.Doubtful
		for _, c := range s.Pressing.Cannot[:min(maxListed, len(s.Pressing.Cannot))] {
			list.add("Seams do not nest at "+s.where(s.Pressing.Joints[c.Joint].At)+".", document.About{Patches: s.JointPatches(c.Joint)}).Tone = document.Doubtful
		}
		if left > maxListed {
			list.add(fmt.Sprintf("They also do not nest at %d more.", left-maxListed), document.About{})
		}
	}
	return document.Section{ID: SewingPressing, Title: "Pressing, so that seams nest", Depth: document.Detail, Blocks: list.blocks()}
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
	ways := [2]string{"to the right", "to the left"}
	if s.Assembly.ByColumns {
		ways = [2]string{"toward the bottom", "toward the top"}
	}
	if s.Sashed() {
		ways = [2]string{"toward the sashes", "toward the blocks"}
	}
	for way, list := range numbers {
		if len(list) > 0 {
			to[way].text = fmt.Sprintf("Press the seams between blocks %s in %s.", ways[way], numbered(s.line(), list))
		}
	}
	return slices.DeleteFunc(slices.Concat(to[:], posts[:]), func(w lineWay) bool { return w.text == "" })
}

// line is what blocks are sewn into first.
func (s *sewer) line() string { return Grid{s.top, s.Plan}.Line() }

// longWay is which way long seams are pressed, but for those that are pressed the other way; "" if there are none.
func (s *sewer) longWay() string {
	switch lines, borders := s.has(sewing.LinesStage), s.has(sewing.BorderStage); {
	case lines && borders:
		return fmt.Sprintf("Press long seams toward the later %s and border seams outward.", s.line())
	case lines:
		return fmt.Sprintf("Press long seams toward the later %s.", s.line())
	case borders:
		return "Press border seams outward."
	}
	return ""
}

func (s *sewer) has(sort sewing.StageSort) bool {
	return slices.ContainsFunc(s.Assembly.Stages, func(stage sewing.Stage) bool { return stage.Sort == sort })
}

// turnedSeams names the long seams that are pressed the other way; "" if there are none.
func (s *sewer) turnedSeams(inwards []int) string {
	var names []string
	for _, stage := range s.Assembly.Stages {
		for i := stage.First; i < stage.First+stage.Count; i++ {
			if !slices.Contains(inwards, i) {
				continue
			}
			name := fmt.Sprintf("long seam %d between the %ss", i-stage.First+1, s.line())
			if stage.Sort == sewing.BorderStage {
				name = fmt.Sprintf("border %d", stage.Number)
			}
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "Exception: press " + measure.Count(len(inwards), "seam") + " the other way: " + measure.List(names) + "."
}

// nesting is at how many places seams nest; "" where none butt together.
func (s *sewer) nesting() string {
	g := &s.Pressing
	switch total := len(g.Joints); {
	case total == 0:
		return ""
	case g.Nests < total:
		return fmt.Sprintf("Blocks meet at %s; %d of them nest.", measure.Count(total, "seam intersection"), g.Nests)
	case total == 1:
		return "The one seam intersection between blocks nests."
	default:
		return fmt.Sprintf("All %d seam intersections between blocks nest.", total)
	}
}
