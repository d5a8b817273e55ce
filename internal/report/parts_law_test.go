package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
)

// windows are the grid of a top in four parts, or as few as it has rows and columns for.
func windows(rows, columns int) (list []Window) {
	for _, r := range halves(rows) {
		for _, c := range halves(columns) {
			list = append(list, Window{r[0], r[1], c[0], c[1]})
		}
	}
	return list
}

func halves(n int) [][2]int {
	if n == 1 {
		return [][2]int{{0, 1}}
	}
	return [][2]int{{0, (n + 1) / 2}, {(n + 1) / 2, n}}
}

// holds says whether a cell lies in a part.
func (w Window) holds(cell, columns int) bool {
	row, column := cell/columns, cell%columns
	return row >= w.FirstRow && row < w.EndRow && column >= w.FirstColumn && column < w.EndColumn
}

// wrongPart is what is wrong with the picture of a part: each patch of its blocks stands in it once, none of another block does, rows and
// columns have their numbers once, outside of the cloth; and how much cloth of sashes it shows.
func wrongPart(s *sewer, w Window, f *diagram.Figure) (sashes float64, err error) {
	drawn := outlinesBy(f.Marks)
	for i := range s.top.Patches {
		cell := s.top.Patches[i].Cell
		if cell < 0 || !w.holds(int(cell), s.top.Columns) {
			if drawn[i] != nil && !(Grid{s.top, s.Plan}).SomeColumns() {
				return 0, fmt.Errorf("patch %d of another part is drawn", i)
			}
			continue
		}
		if _, err := s.shiftOf(i, drawn[i]); err != nil {
			return 0, err
		}
	}
	numbers := map[string]int{}
	for _, m := range f.Marks {
		switch {
		case m.Area != nil && len(m.Lit) == 0 && len(m.Area.Outline) > 3:
			sashes += math.Abs(around2(m.Area.Outline)) / 2
			fallthrough
		case m.Area != nil:
			for _, p := range m.Area.Outline {
				if p.X < f.Min.X || p.Y < f.Min.Y || p.X > f.Max.X || p.Y > f.Max.Y {
					return 0, fmt.Errorf("the frame ends at %v to %v, and something lies at %v", f.Min, f.Max, p)
				}
			}
		case m.Words != nil && !onCloth(f, m.Words.At):
			numbers[m.Words.Text]++
		}
	}
	want := map[string]int{}
	for n := w.FirstRow; n < w.EndRow; n++ {
		if !s.Assembly.ByColumns || !(Grid{s.top, s.Plan}).SomeColumns() {
			want[strconv.Itoa(n+1)]++
		}
	}
	for n := w.FirstColumn; n < w.EndColumn; n++ {
		want[strconv.Itoa(n+1)]++
	}
	for text, n := range want {
		if numbers[text] != n {
			return 0, fmt.Errorf("the number %s stands %d times, wanted %d", text, numbers[text], n)
		}
		delete(numbers, text)
	}
	if len(numbers) > 0 {
		return 0, fmt.Errorf("there are the numbers %v too", numbers)
	}
	return sashes, nil
}

// onCloth says whether a place lies in the frame of an area of a figure.
func onCloth(f *diagram.Figure, at measure.Point) bool {
	return slices.ContainsFunc(f.Marks, func(m diagram.Mark) bool {
		if m.Area == nil {
			return false
		}
		low, high := extent(m.Area.Outline)
		return low.X <= at.X && at.X <= high.X && low.Y <= at.Y && at.Y <= high.Y
	})
}

// TestPartsAreThePicture: four pictures of parts show together what the picture of all rows shows: every block once, and all of the sashes.
func TestPartsAreThePicture(t *testing.T) {
	sashed, parted := 0, 0
	for name, s := range sewers() {
		if len(s.top.Patches) > 500 || s.hasEmpty() {
			continue
		}
		list := windows(s.top.Rows, s.top.Columns)
		sum := 0.0
		for i, f := range RowsInParts(s.plans, list) {
			sashes, err := wrongPart(s, list[i], f)
			if err != nil {
				t.Errorf("%s, %s: %v", name, list[i], err)
				break
			}
			sum += sashes
			parted++
		}
		want := 0.0
		for i := range s.top.Patches {
			if p := &s.top.Patches[i]; p.Cell < 0 && p.Border < 0 {
				want += math.Abs(around2(p.Outline)) / 2
			}
		}
		if want > 0 {
			sashed++
		}
		if math.Abs(sum-want) > float64(measure.Inch)*float64(measure.Inch)/1000 {
			t.Errorf("%s: %.0f of the sashes are shown, of %.0f", name, sum, want)
		}
	}
	if sashed < 2 || parted < 40 {
		t.Errorf("only %d tops have sashes, of %d parts", sashed, parted)
	}
}

// hasEmpty says whether some place of the grid has no block.
func (s *sewer) hasEmpty() bool {
	filled := map[int]bool{}
	for i := range s.top.Patches {
		filled[int(s.top.Patches[i].Cell)] = true
	}
	for i := range s.top.Cells {
		if !filled[i] {
			return true
		}
	}
	return false
}
