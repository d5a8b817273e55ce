package sewing

import (
	"fmt"
	"slices"
)

// Said is a sentence, and the cells of the grid that it is about.
type Said struct {
	Text  string
	Cells []int
}

// mostGroups is how many groups of places a sentence names.
const mostGroups = 24

// PressLines is how the seams of a block that follow one choice are pressed, way by way; it
// names the places where a block's places differ.
func (w Words) PressLines(b *Block, group int) []Said {
	var ways []Said
	for i := range b.Variants {
		words := w.wayWords(b, &b.Variants[i], group)
		for _, at := range b.Variants[i].Cells {
			text := words[w.Way(at.Cell, group)]
			n := slices.IndexFunc(ways, func(s Said) bool { return s.Text == text })
			if n < 0 {
				n = len(ways)
				ways = append(ways, Said{Text: text})
			}
			ways[n].Cells = append(ways[n].Cells, w.cellsOf(at)...)
		}
	}
	for i := range ways {
		where := ""
		if len(ways) > 1 {
			where = ": " + w.blockCells(b, ways[i].Cells, mostGroups)
		}
		ways[i].Text = "Press " + w.pressedSeams(b, group) + " " + ways[i].Text + where + "."
	}
	return ways
}

// wayWords is the two ways of a block's choice: by the cloth where a seam joins two pieces of
// different cloth, and else as the block's kind says it.
func (w Words) wayWords(b *Block, c *FabricVariant, group int) [2]string {
	if b.Column || b.Round(group) {
		return b.Ways[group]
	}
	for _, s := range b.Steps {
		for _, j := range s.Joins {
			switch {
			case j.Choice != group:
			case len(j.A) > 1 || len(j.B) > 1 || c.Cloths[j.A[0]] == c.Cloths[j.B[0]]:
				return b.Ways[group]
			default:
				return [2]string{"towards " + c.Cloths[j.B[0]], "towards " + c.Cloths[j.A[0]]}
			}
		}
	}
	return b.Ways[group]
}

// pressedSeams is which seams of a block follow one choice.
func (w Words) pressedSeams(b *Block, group int) string {
	if len(b.Ways) == 1 {
		return "its seams"
	}
	var steps []int
	for i, s := range b.Steps {
		if slices.ContainsFunc(s.Joins, func(j Join) bool { return j.Choice == group }) {
			steps = append(steps, i+1)
		}
	}
	return "the seams of " + numbered("step", steps)
}

// LineWay is which way the seams within some rows or columns are pressed.
type LineWay struct {
	Text   string
	Stages []int // of the assembly, by index
}

// LineWays is which way the seams within rows or columns are pressed, and those between
// sashes and posts.
func (w Words) LineWays() []LineWay {
	var to, posts [2]LineWay
	var numbers [2][]int
	for i, s := range w.Assembly.Stages {
		if s.Sort != LineStage || s.Count == 0 {
			continue
		}
		way := w.Pressing.Choices[w.Choice(s.First)].Way
		if s.Number == 0 {
			posts[way].Stages = append(posts[way].Stages, i)
			posts[way].Text = "Press the seams between sashes and posts " + [2]string{"towards the sashes.", "towards the posts."}[way]
			continue
		}
		to[way].Stages, numbers[way] = append(to[way].Stages, i), append(numbers[way], s.Number)
	}
	ways := [2]string{"to the right", "to the left"}
	if w.Assembly.ByColumns {
		ways = [2]string{"downwards", "upwards"}
	}
	if w.Sashed() {
		ways = [2]string{"towards the sashes", "towards the blocks"}
	}
	for way, list := range numbers {
		if len(list) > 0 {
			to[way].Text = fmt.Sprintf("Press the seams between blocks %s in %s.", ways[way], numbered(w.Line(), list))
		}
	}
	return slices.DeleteFunc(slices.Concat(to[:], posts[:]), func(c LineWay) bool { return c.Text == "" })
}

// LongLine is which way long seams are pressed, but for those in Inwards; "" if there are none.
func (w Words) LongLine() string {
	var lines, borders bool
	for _, s := range w.Assembly.Stages {
		lines = lines || s.Sort == LinesStage
		borders = borders || s.Sort == BorderStage
	}
	switch {
	case lines && borders:
		return fmt.Sprintf("Press long seams towards the later %s, and those of borders outwards.", w.Line())
	case lines:
		return fmt.Sprintf("Press long seams towards the later %s.", w.Line())
	case borders:
		return "Press the seams of borders outwards."
	}
	return ""
}

// Inwards is the long seams, by index, that are pressed the other way than LongLine says, and
// names them; "" if there are none.
func (w Words) Inwards() (text string, seams []int) {
	var names []string
	for _, s := range w.Assembly.Stages {
		for i := s.First; i < s.First+s.Count; i++ {
			if w.Pressing.Choices[w.Choice(i)].Sort != SeamChoice || w.Assembly.Seams[i].Press {
				continue
			}
			seams = append(seams, i)
			name := fmt.Sprintf("long seam %d between the %ss", i-s.First+1, w.Line())
			if s.Sort == BorderStage {
				name = fmt.Sprintf("border %d", s.Number)
			}
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if len(seams) == 0 {
		return "", nil
	}
	return "But press " + counted(len(seams), "seam") + " the other way: of " + Listed(names) + ".", seams
}

// JointsLine is at how many places seams nest; "" where none butt together.
func (w Words) JointsLine() string {
	g := &w.Pressing
	switch total := len(g.Joints); {
	case total == 0:
		return ""
	case g.Nests < total:
		return fmt.Sprintf("Seams butt together at %s where blocks meet: at %d of them their allowances lie opposite ways and nest.", counted(total, "place"), g.Nests)
	default:
		return fmt.Sprintf("Seams butt together at %s where blocks meet, and at all of them their allowances lie opposite ways and nest.", counted(total, "place"))
	}
}

// InsideLine is the same of the joints within blocks; "" where there are none.
func (w Words) InsideLine() string {
	if w.Pressing.Inside == 0 {
		return ""
	}
	return fmt.Sprintf("Within blocks seams butt together at %s, and all of them nest.", counted(w.Pressing.Inside, "place"))
}

// ProofLine says whether more joints could nest.
func (w Words) ProofLine() string {
	if w.Pressing.Proved {
		return "No other way of pressing lets more of them nest: that is proved."
	}
	return fmt.Sprintf("No way of pressing can let more than %d of them nest: that is proved. A better one than this may exist, but the quilt is too large to try them all.", w.Pressing.AtMost)
}
