package sewing

import (
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// unsewn is what no seam has taken in.
const unsewn = -1

// root is the unit that a part or unit has become part of.
func (a *assembling) root(n int) int {
	at := n
	for a.above[at] != unsewn {
		at = a.above[at]
	}
	for a.above[n] != unsewn { // the next walk is short
		n, a.above[n] = a.above[n], at
	}
	return at
}

// sew adds a seam between two units.
func (a *assembling) sew(one, other int, from, to point) *Seam {
	made := len(a.Parts) + len(a.Seams)
	a.Seams = append(a.Seams, Seam{A: one, B: other, From: from, To: to})
	a.above = append(a.above, unsewn)
	a.above[one], a.above[other] = made, made
	return &a.Seams[len(a.Seams)-1]
}

// stage begins a stage; end closes it and says how large the work then is.
func (a *assembling) stage(s Stage) *Stage {
	s.First = len(a.Seams)
	a.Stages = append(a.Stages, s)
	return &a.Stages[len(a.Stages)-1]
}

func (a *assembling) close(s *Stage, at quilt.Rect) {
	s.Count = len(a.Seams) - s.First
	s.Size = sizeOf(float64(at.Width()+2*a.Seam), float64(at.Height()+2*a.Seam))
}

// sewLines sews each row, or column, as far as its tiles touch.
func (a *assembling) sewLines() {
	a.above = slices.Repeat([]int{unsewn}, len(a.Parts)+len(a.loose)) // those of the borders too
	for len(a.loose) > 0 {
		a.border = append(a.border, a.loosePatch())
	}
	for i := range a.lines {
		a.sewLine(i)
	}
}

func (a *assembling) sewLine(number int) {
	c := &a.lines[number]
	if len(c.tiles) == 0 {
		return
	}
	stage := a.stage(Stage{Sort: LineStage, Number: c.number, After: c.after})
	whole := c.tiles[0].at
	choice := int32(-1)
	for i := 1; i < len(c.tiles); i++ {
		before, t := &c.tiles[i-1], &c.tiles[i]
		whole.Max = t.at.Max
		if a.end(before) != a.begin(t) {
			continue
		}
		if choice < 0 {
			choice = a.choose(Choice{Sort: LineChoice, Cell: -1, Stage: len(a.Stages) - 1, Seam: -1})
		}
		t.seam = len(a.Seams)
		s := a.sew(a.root(before.part), t.part, a.seamIn(t), a.seamEnd(t))
		s.choice = choice
		s.towardsA = before.sash && !t.sash
		s.beside = [2][2]int{{before.part, t.part}, {before.part, t.part}}
	}
	a.close(stage, whole)
}

// seamIn and seamEnd are where the seam before a tile of a line begins and ends: the tile
// lies to its right.
func (a *assembling) seamIn(t *tile) point {
	if a.ByColumns {
		return t.at.Min
	}
	return point{X: t.at.Min.X, Y: t.at.Max.Y}
}

func (a *assembling) seamEnd(t *tile) point {
	if a.ByColumns {
		return point{X: t.at.Max.X, Y: t.at.Min.Y}
	}
	return t.at.Min
}

// touch is a stretch along which two tiles of neighbouring lines lie on each other.
type touch struct {
	one, other int // tiles, by index
	from, to   measure.NM
}

// touches is where the tiles of two neighbouring lines touch, along them.
func (a *assembling) touches(one, other []tile) []touch {
	var list []touch
	for i, j := 0, 0; i < len(one) && j < len(other); {
		a.sign.Step(1)
		from, to := max(a.begin(&one[i]), a.begin(&other[j])), min(a.end(&one[i]), a.end(&other[j]))
		if from < to {
			list = append(list, touch{i, j, from, to})
		}
		if a.end(&one[i]) < a.end(&other[j]) {
			i++
		} else {
			j++
		}
	}
	return list
}

// joinLines joins the rows, or columns, one after the other. Where places are empty a
// line may hang together only by the next.
func (a *assembling) joinLines() {
	stage := a.stage(Stage{Sort: LinesStage})
	for i := 1; i < len(a.lines); i++ {
		one, other := a.lines[i-1].tiles, a.lines[i].tiles
		touches := a.touches(one, other)
		if len(touches) == 0 {
			continue
		}
		p := seamLine{one: one, other: other, above: !a.ByColumns}
		for n := range touches {
			t := &touches[n]
			upper, lower := a.root(one[t.one].part), a.root(other[t.other].part)
			if upper == lower {
				continue
			}
			to := t.to
			a.sign.Step(len(touches) - n)
			for _, u := range touches[n+1:] {
				if a.root(one[u.one].part) == upper && a.root(other[u.other].part) == lower {
					to = u.to
				}
			}
			p.seam = len(a.Seams)
			a.long(upper, lower, a.lineOf(&other[t.other], t.from), a.lineOf(&other[t.other], to))
		}
		a.seamLines = append(a.seamLines, p)
	}
	a.close(stage, a.top.Field)
	if stage.Count == 0 {
		a.Stages = a.Stages[:len(a.Stages)-1]
	}
}

// lineOf is a point of the line between a tile's line and the one before it.
func (a *assembling) lineOf(t *tile, along measure.NM) point {
	if a.ByColumns {
		return point{X: t.at.Min.X, Y: along}
	}
	return point{X: along, Y: t.at.Min.Y}
}

// long sews a long seam between two units: one lies above or to the left of the other.
func (a *assembling) long(one, other int, from, to point) {
	if a.ByColumns {
		from, to = to, from // the other lies to the right of a seam that goes up
	}
	a.longSeam(one, other, from, to)
}

func (a *assembling) longSeam(one, other int, from, to point) *Seam {
	n := len(a.Seams)
	s := a.sew(one, other, from, to)
	s.choice = a.choose(Choice{Sort: SeamChoice, Cell: -1, Stage: -1, Seam: n})
	return s
}
