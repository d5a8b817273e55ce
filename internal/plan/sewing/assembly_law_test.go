package sewing_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// Laws of the assembly: its parts, rows and columns, stages, choices of pressing and what is left loose, read off the top alone.

// around is the smallest rectangle round patches.
func around(top *quilt.Top, patches ...int32) quilt.Rect {
	r := quilt.Rect{Min: measure.Point{X: math.MaxInt64, Y: math.MaxInt64}, Max: measure.Point{X: math.MinInt64, Y: math.MinInt64}}
	for _, n := range patches {
		for _, q := range top.Patches[n].Outline {
			r.Min, r.Max = measure.Point{X: min(r.Min.X, q.X), Y: min(r.Min.Y, q.Y)}, measure.Point{X: max(r.Max.X, q.X), Y: max(r.Max.Y, q.Y)}
		}
	}
	return r
}

// together is the smallest rectangle round two.
func together(a, b quilt.Rect) quilt.Rect {
	return quilt.Rect{
		Min: measure.Point{X: min(a.Min.X, b.Min.X), Y: min(a.Min.Y, b.Min.Y)},
		Max: measure.Point{X: max(a.Max.X, b.Max.X), Y: max(a.Max.Y, b.Max.Y)},
	}
}

// placedAt is the blocks and columns by their cells.
func placedAt(p *sewing.Plan) map[int]sewing.Placed {
	placed := map[int]sewing.Placed{}
	for i := range p.Blocks {
		for _, v := range p.Blocks[i].Variants {
			for _, at := range v.Cells {
				placed[at.Cell] = at
			}
		}
	}
	return placed
}

// checkParts is the law of parts: every block, column, sash and strip is one of them, once, with its patches.
func checkParts(top *quilt.Top, p *sewing.Plan) error {
	placed, parts := placedAt(p), map[sewing.Part]bool{}
	for _, part := range p.Assembly.Parts {
		if parts[part] {
			return fmt.Errorf("%+v is there twice", part)
		}
		parts[part] = true
	}
	want := 0
	for cell, at := range placed {
		want++
		if part := (sewing.Part{Cell: cell, Border: -1, Patches: len(at.Patches), First: int(slices.Min(at.Patches))}); !parts[part] {
			return fmt.Errorf("%+v is no part", part)
		}
	}
	for i := range top.Patches {
		if top.Patches[i].Cell < 0 {
			want++
			if part := (sewing.Part{Cell: -1, Border: int(top.Patches[i].Border), Patches: 1, First: i}); !parts[part] {
				return fmt.Errorf("%+v is no part", part)
			}
		}
	}
	if want != len(parts) {
		return fmt.Errorf("%d parts, not %d", len(parts), want)
	}
	return nil
}

// partRect is the place of a part.
func partRect(top *quilt.Top, p *sewing.Plan, part int) quilt.Rect {
	if n := &p.Assembly.Parts[part]; n.Cell < 0 {
		return around(top, int32(n.First))
	}
	return boxOf(top, placedAt(p)[p.Assembly.Parts[part].Cell])
}

// checkLines is the law of rows and columns: each has its tiles in order, with the seams between those that touch; sashes have lines of
// their own, and a square of them is a post where it lies beside no block.
func checkLines(top *quilt.Top, p *sewing.Plan) error {
	byColumns, seen := false, map[int]bool{}
	for _, at := range placedAt(p) {
		byColumns = byColumns || at.Cells > 1
	}
	if p.Assembly.ByColumns != byColumns {
		return fmt.Errorf("sewn by columns is %v", p.Assembly.ByColumns)
	}
	var numbers []int
	for _, l := range p.Lines() {
		numbers = append(numbers, l.Number)
		for i, t := range l.Tiles {
			part := p.Assembly.Parts[t.Part]
			if seen[t.Part] || part.Border >= 0 || t.At != partRect(top, p, t.Part) {
				return fmt.Errorf("%+v does not lie there", t)
			}
			seen[t.Part] = true
			if t.Post != (part.Cell < 0 && !besideCells(top, t.At)) {
				return fmt.Errorf("%+v: that it is a post is %v", t, t.Post)
			}
			if part.Cell >= 0 && l.Number != map[bool]int{true: part.Cell%p.Columns + 1, false: part.Cell/p.Columns + 1}[byColumns] {
				return fmt.Errorf("%+v is no tile of line %d", t, l.Number)
			}
			if i == 0 {
				if t.Seam >= 0 {
					return fmt.Errorf("%+v has a seam before it", t)
				}
				continue
			}
			if err := checkBeside(p, l.Tiles[i-1], t); err != nil {
				return err
			}
		}
	}
	if want := lineNumbers(top, byColumns); !slices.Equal(numbers, want) {
		return fmt.Errorf("lines %v, not %v", numbers, want)
	}
	for i, part := range p.Assembly.Parts {
		if seen[i] != (part.Border < 0) {
			return fmt.Errorf("part %d stands in a line is %v", i, seen[i])
		}
	}
	return nil
}

// lineNumbers is the rows or columns, and 0 for sashes between them.
func lineNumbers(top *quilt.Top, byColumns bool) (numbers []int) {
	sash := top.CutFacts.Sash
	if byColumns {
		for x := range top.Columns {
			numbers = append(numbers, x+1)
		}
		return numbers
	}
	for y := range top.Rows {
		if sash != nil && (sash.Around || y > 0) {
			numbers = append(numbers, 0)
		}
		numbers = append(numbers, y+1)
	}
	if sash != nil && sash.Around {
		numbers = append(numbers, 0)
	}
	return numbers
}

// besideCells says whether a part of the sashes lies beside places of blocks, and does not touch them with its corners alone.
func besideCells(top *quilt.Top, at quilt.Rect) bool {
	for cell := range top.Cells {
		r := top.CellRect(cell)
		if r.Min.X < at.Max.X && at.Min.X < r.Max.X || r.Min.Y < at.Max.Y && at.Min.Y < r.Max.Y {
			return true
		}
	}
	return false
}

// checkBeside is the law of two tiles that follow each other: where they touch a seam lies along the whole of their common side.
func checkBeside(p *sewing.Plan, one, t sewing.Tile) error {
	from, to := measure.Point{X: t.At.Min.X, Y: t.At.Max.Y}, t.At.Min
	touch := one.At.Max.X == t.At.Min.X
	if p.Assembly.ByColumns {
		from, to = t.At.Min, measure.Point{X: t.At.Max.X, Y: t.At.Min.Y}
		touch = one.At.Max.Y == t.At.Min.Y
	}
	if one.At.Max.X > t.At.Min.X && one.At.Max.Y > t.At.Min.Y {
		return fmt.Errorf("%+v does not follow %+v", t, one)
	}
	if touch != (t.Seam >= 0) {
		return fmt.Errorf("%+v touches the one before is %v", t, touch)
	}
	if s := t.Seam; touch && (p.Assembly.Seams[s].From != from || p.Assembly.Seams[s].To != to || p.Assembly.Seams[s].B != t.Part) {
		return fmt.Errorf("%+v is not the seam of %+v", p.Assembly.Seams[s], t)
	}
	return nil
}

// stagesOf is what the stages have to be, by the lines and the borders.
func stagesOf(top *quilt.Top, p *sewing.Plan) (list []sewing.Stage) {
	more := 2 * top.Seam
	add := func(s sewing.Stage, at quilt.Rect, seams int) {
		if len(list) > 0 {
			s.First = list[len(list)-1].First + list[len(list)-1].Count
		}
		s.Count, s.Size = seams, sewing.Size{Across: at.Max.X - at.Min.X + more, Down: at.Max.Y - at.Min.Y + more}
		list = append(list, s)
	}
	row := 0
	for _, l := range p.Lines() {
		s := sewing.Stage{Sort: sewing.LineStage, Number: l.Number}
		if row = max(row, l.Number); l.Number == 0 {
			s.After = row
		}
		seams := 0
		for _, t := range l.Tiles {
			seams += map[bool]int{true: 1}[t.Seam >= 0]
		}
		if len(l.Tiles) > 0 {
			add(s, together(l.Tiles[0].At, l.Tiles[len(l.Tiles)-1].At), seams)
		}
	}
	borders := len(top.CutFacts.Borders)
	between := 0 // the seams that stages of borders do not have, and those of lines neither
	for i := range p.Assembly.Seams {
		c := p.Pressing.Choices[p.Choice(i)]
		if b := p.Assembly.Parts[partIn(p, p.Assembly.Seams[i].B)].Border; c.Sort == sewing.SeamChoice && b < 0 && p.Assembly.Parts[partIn(p, p.Assembly.Seams[i].A)].Border < 0 {
			between++
		}
	}
	if between > 0 {
		add(sewing.Stage{Sort: sewing.LinesStage}, top.Field, between)
	}
	whole := top.Field
	for n := range borders {
		count := 0
		for i := range p.Assembly.Seams {
			s := &p.Assembly.Seams[i]
			if max(outermost(p, s.A), outermost(p, s.B)) == n {
				count++
			}
		}
		w := top.CutFacts.Borders[n].Width
		whole.Min, whole.Max = measure.Point{X: whole.Min.X - w, Y: whole.Min.Y - w}, measure.Point{X: whole.Max.X + w, Y: whole.Max.Y + w}
		add(sewing.Stage{Sort: sewing.BorderStage, Number: n + 1}, whole, count)
	}
	return list
}

// partIn is some part of a unit.
func partIn(p *sewing.Plan, unit int) int {
	for unit >= len(p.Assembly.Parts) {
		unit = p.Assembly.Seams[unit-len(p.Assembly.Parts)].B
	}
	return unit
}

// outermost is the last border of which a unit has a part, -1 for none.
func outermost(p *sewing.Plan, unit int) int {
	if unit < len(p.Assembly.Parts) {
		return p.Assembly.Parts[unit].Border
	}
	s := &p.Assembly.Seams[unit-len(p.Assembly.Parts)]
	return max(outermost(p, s.A), outermost(p, s.B))
}

// checkStages is the law of stages: they have all seams, one after the other, and say how large the work is after each.
func checkStages(top *quilt.Top, p *sewing.Plan) error {
	want := stagesOf(top, p)
	if !slices.Equal(p.Assembly.Stages, want) {
		return fmt.Errorf("stages %+v, not %+v", p.Assembly.Stages, want)
	}
	if last := want[len(want)-1]; last.First+last.Count != len(p.Assembly.Seams) {
		return fmt.Errorf("the stages end with seam %d of %d", last.First+last.Count, len(p.Assembly.Seams))
	}
	for i := range want {
		if want[i].Sort == sewing.BorderStage {
			if err := checkStrips(top, p, &want[i]); err != nil {
				return err
			}
		}
	}
	return nil
}

// checkStrips is the law of a border's strips: left, right, top, bottom, as they are sewn on.
func checkStrips(top *quilt.Top, p *sewing.Plan, stage *sewing.Stage) error {
	n := stage.Number - 1
	border := &top.CutFacts.Borders[n]
	var all []int32
	for i := range top.Patches {
		if int(top.Patches[i].Border) == n && top.Patches[i].Cell < 0 {
			all = append(all, int32(i))
		}
	}
	whole := around(top, all...)
	var want []int
	for side := range 4 {
		for _, i := range all {
			r := around(top, i)
			square := r.Max.X-r.Min.X == border.Width && r.Max.Y-r.Min.Y == border.Width && border.Corners >= 0
			across := [2]bool{r.Max.X-r.Min.X == border.Width, r.Max.Y-r.Min.Y == border.Width}[side/2]
			lies := [4]bool{r.Min.X == whole.Min.X, r.Max.X == whole.Max.X, r.Min.Y == whole.Min.Y, r.Max.Y == whole.Max.Y}[side]
			if lies && across && !square {
				want = append(want, int(i))
			}
		}
	}
	if got := p.BorderStrips(stage); !slices.Equal(got, want) || len(want) != 4 {
		return fmt.Errorf("border %d has strips %v, not %v", n+1, got, want)
	}
	return nil
}

// checkChoices is the law of choices: those of blocks first, cell by cell; one for the seams of a row; one for each long seam; one for the
// seams beside both corner squares of a strip. All are used, and each seam is pressed as its own says: first towards sashes, away from
// posts and corner squares, and else to what lies on the right of it.
func checkChoices(top *quilt.Top, p *sewing.Plan) error {
	g := &p.Pressing
	placed, used := placedAt(p), make([]bool, len(g.Choices))
	n := int32(0)
	for cell := range top.Cells {
		for group := range len(g.Cells[cell]) {
			if at, ok := placed[cell]; !ok || at.Cell != cell || g.Cells[cell][group] != n {
				return fmt.Errorf("cell %d has choices %v", cell, g.Cells[cell])
			}
			want := sewing.Choice{Sort: sewing.BlockChoice, Cell: cell, Group: group, Stage: -1, Seam: -1, Way: g.Choices[n].Way}
			if g.Choices[n] != want {
				return fmt.Errorf("%+v is no choice of cell %d", g.Choices[n], cell)
			}
			used[n] = true
			n++
		}
		if b := p.BlockAt(cell); b >= 0 && len(g.Cells[cell]) != len(p.Blocks[b].Pressings) {
			return fmt.Errorf("cell %d has %d choices", cell, len(g.Cells[cell]))
		}
	}
	for stage := range p.Assembly.Stages {
		if err := checkStageChoices(top, p, stage, used); err != nil {
			return err
		}
	}
	if i := slices.Index(used, false); i >= 0 {
		return fmt.Errorf("choice %d is of nothing", i)
	}
	var inwards []int
	for i := range p.Assembly.Seams {
		if !p.Assembly.Seams[i].Press && g.Choices[p.Choice(i)].Sort == sewing.SeamChoice {
			inwards = append(inwards, i)
		}
	}
	if !slices.Equal(inwards, p.Inwards()) {
		return fmt.Errorf("seams %v are pressed inwards, not %v", p.Inwards(), inwards)
	}
	return nil
}

// checkStageChoices is the same for the seams of a stage.
func checkStageChoices(top *quilt.Top, p *sewing.Plan, stage int, used []bool) error {
	s := &p.Assembly.Stages[stage]
	shared := -1
	for i := s.First; i < s.First+s.Count; i++ {
		n := p.Choice(i)
		c, seam := p.Pressing.Choices[n], &p.Assembly.Seams[i]
		a, b := onSides(top, p, seam)
		square := func(i int) bool {
			patch := &top.Patches[i]
			return patch.Cell < 0 && int(patch.Border) == s.Number-1 && s.Sort == sewing.BorderStage && top.CutFacts.Borders[patch.Border].Corners >= 0 && cornerSquare(top, i)
		}
		strip := func(i int) bool {
			return top.Patches[i].Cell < 0 && top.Patches[i].Border < 0 && besideCells(top, around(top, int32(i)))
		}
		line := s.Sort == sewing.LineStage || square(a) != square(b) && seam.From.X == seam.To.X
		want := sewing.Choice{Sort: sewing.SeamChoice, Cell: -1, Stage: -1, Seam: i, Way: c.Way}
		towardsA := false
		if line {
			want.Sort, want.Stage, want.Seam = sewing.LineChoice, stage, -1
			towardsA = square(b) || strip(a) && !strip(b)
		}
		if c != want || used[n] && (!line || shared != n) {
			return fmt.Errorf("seam %d: %+v, not %+v", i, c, want)
		}
		used[n], shared = true, n
		if seam.Press != ((c.Way == 0) != towardsA) {
			return fmt.Errorf("seam %d: pressed towards what lies on its right is %v, by way %d", i, seam.Press, c.Way)
		}
	}
	return nil
}

// cornerSquare says whether a patch of a border is one of its corner squares: it reaches to two sides of it.
func cornerSquare(top *quilt.Top, patch int) bool {
	r, w := around(top, int32(patch)), top.CutFacts.Borders[top.Patches[patch].Border].Width
	return r.Max.X-r.Min.X == w && r.Max.Y-r.Min.Y == w
}

// onSides is a patch on each side of a seam of the assembly: left of its way, and right.
func onSides(top *quilt.Top, p *sewing.Plan, s *sewing.Seam) (a, b int) {
	a, b = -1, -1
	for i := range top.Seams {
		t := &top.Seams[i]
		if off(s.From, minus(s.To, s.From), t.From) > 0 || off(s.From, minus(s.To, s.From), t.To) > 0 {
			continue
		}
		from, to := along(s.From, minus(s.To, s.From), t.From), along(s.From, minus(s.To, s.From), t.To)
		if max(from, to) <= 0 || min(from, to) >= math.Hypot(float64(s.To.X-s.From.X), float64(s.To.Y-s.From.Y)) {
			continue
		}
		right, left := int(top.Faces[t.A].Patch), int(top.Faces[t.B].Patch)
		if from > to {
			right, left = left, right
		}
		return left, right
	}
	return a, b
}

// checkLoose is the law of what hangs together with nothing else: all but the unit with the most patches, the larger before the smaller.
func checkLoose(p *sewing.Plan) error {
	a := &p.Assembly
	units := map[int][]int{} // by the last seam or part that made it: its parts
	for i := range a.Parts {
		units[i] = []int{i}
	}
	for i, s := range a.Seams {
		units[len(a.Parts)+i] = slices.Concat(units[s.A], units[s.B])
		delete(units, s.A)
		delete(units, s.B)
	}
	patches := func(unit int) (sum int) {
		for _, part := range units[unit] {
			sum += a.Parts[part].Patches
		}
		return sum
	}
	var list []int
	for unit := range units {
		list = append(list, unit)
	}
	slices.SortFunc(list, func(m, n int) int { return cmp.Or(patches(n)-patches(m), m-n) })
	if !slices.Equal(list[1:], a.Loose) || (a.Loose == nil) != (len(list) == 1) {
		return fmt.Errorf("%v are loose, not %v", a.Loose, list[1:])
	}
	placed := placedAt(p)
	for n, unit := range a.Loose {
		var cells []int
		for _, part := range units[unit] {
			if cell := a.Parts[part].Cell; cell >= 0 {
				for down := range placed[cell].Cells {
					cells = append(cells, cell+down*p.Columns)
				}
			}
		}
		slices.Sort(cells)
		got := p.LooseCells(n)
		slices.Sort(got)
		if !slices.Equal(cells, got) {
			return fmt.Errorf("loose unit %d takes cells %v, not %v", unit, got, cells)
		}
	}
	return nil
}

// checkCellOf is the law of places: a point belongs to the first place of the grid that it touches, and what touches none to no place.
func checkCellOf(top *quilt.Top, p *sewing.Plan) error {
	for cell := range top.Cells {
		r := top.CellRect(cell)
		middle := measure.Point{X: (r.Min.X + r.Max.X) / 2, Y: (r.Min.Y + r.Max.Y) / 2}
		places := map[measure.Point]int{middle: cell}
		side := func(at, beyond measure.Point, x, y int) { // the middle of a side, and a nanometer beyond it
			x, y = x+cell%p.Columns, y+cell/p.Columns
			places[at], places[beyond] = cell, -1
			if n := y*p.Columns + x; x >= 0 && y >= 0 && x < p.Columns && y < p.Rows && top.CutFacts.Sash == nil {
				places[at], places[beyond] = min(cell, n), n
			}
		}
		side(measure.Point{X: r.Min.X, Y: middle.Y}, measure.Point{X: r.Min.X - 1, Y: middle.Y}, -1, 0)
		side(measure.Point{X: r.Max.X, Y: middle.Y}, measure.Point{X: r.Max.X + 1, Y: middle.Y}, 1, 0)
		side(measure.Point{X: middle.X, Y: r.Min.Y}, measure.Point{X: middle.X, Y: r.Min.Y - 1}, 0, -1)
		side(measure.Point{X: middle.X, Y: r.Max.Y}, measure.Point{X: middle.X, Y: r.Max.Y + 1}, 0, 1)
		for at, want := range places {
			if got := p.CellOf(at); got != want {
				return fmt.Errorf("%v belongs to cell %d, not %d", at, got, want)
			}
		}
	}
	return nil
}

// checkArms is the law of the two seams at a joint: each lies between its two patches, of which the first lies clockwise of it, and is
// pressed onto that or the other as its choice says.
func checkArms(pressedTo func(seam int) int, top *quilt.Top, p *sewing.Plan) error {
	ends := map[measure.Point][]int{}
	for i := range top.Seams {
		ends[top.Seams[i].From], ends[top.Seams[i].To] = append(ends[top.Seams[i].From], i), append(ends[top.Seams[i].To], i)
	}
	first := map[measure.Point]int{} // the first seam of the assembly that ends there
	for i, s := range p.Assembly.Seams {
		for _, at := range [2]measure.Point{s.From, s.To} {
			if _, ok := first[at]; !ok {
				first[at] = i
			}
		}
	}
	last := 0
	for n := range p.Pressing.Joints {
		j := &p.Pressing.Joints[n]
		if sort := p.Pressing.Choices[j.A.Choice].Sort; sort != sewing.BlockChoice {
			if first[j.At] < last {
				return fmt.Errorf("joint %d comes after that on seam %d", n, last)
			}
			last = first[j.At]
		}
		four := []int{int(j.A.Patches[0]), int(j.A.Patches[1]), int(j.B.Patches[0]), int(j.B.Patches[1])}
		if !slices.Equal(four, p.JointPatches(n)) {
			return fmt.Errorf("round joint %d lie %v, not %v", n, p.JointPatches(n), four)
		}
		for _, arm := range [2]sewing.Arm{j.A, j.B} {
			seam := slices.IndexFunc(ends[j.At], func(i int) bool {
				clockwise, other := top.Faces[top.Seams[i].A].Patch, top.Faces[top.Seams[i].B].Patch
				if top.Seams[i].From != j.At {
					clockwise, other = other, clockwise
				}
				return arm.Patches == [2]int32{clockwise, other}
			})
			if seam < 0 {
				return fmt.Errorf("no seam at joint %d has %v clockwise and anticlockwise of it", n, arm.Patches)
			}
			onto := arm.Patches[1]
			if (p.Pressing.Choices[arm.Choice].Way == 0) != arm.Turned {
				onto = arm.Patches[0]
			}
			if got := pressedTo(ends[j.At][seam]); got != int(onto) {
				return fmt.Errorf("a seam at joint %d is pressed onto %d, not %d", n, got, onto)
			}
		}
	}
	return nil
}
