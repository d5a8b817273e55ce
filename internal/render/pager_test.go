package render

import (
	"math"
	"testing"
)

// TestIllustrationsMakeRoom: where an illustration does not fit on what is left of a page, all on the page come lower by the same part
// of what they may, and none lower than it may; the next page begins where that is not enough, and text alone makes none lower.
func TestIllustrationsMakeRoom(t *testing.T) {
	const room = 100
	picture := func(height, least float64) slice {
		return slice{height: height, flex: &flex{least: least, at: func(float64) []mark { return nil }}}
	}
	for _, c := range []struct {
		what    string
		list    []slice
		heights [][]float64 // page by page
	}{
		{"both lower", []slice{picture(60, 40), picture(60, 50)}, [][]float64{{60 - 20*20./30, 60 - 20*10./30}}},
		{"neither is enough", []slice{picture(60, 55), picture(60, 50)}, [][]float64{{60}, {60}}},
		{"text between", []slice{picture(60, 40), {height: 20}, picture(40, 30)}, [][]float64{{60 - 20*20./30, 20, 40 - 20*10./30}}},
		{"text alone", []slice{picture(90, 40), {height: 20}}, [][]float64{{90}, {20}}},
		{"one that may not", []slice{picture(60, 40), {height: 30, flex: nil}, picture(20, 20)}, [][]float64{{60, 30}, {20}}},
	} {
		pages := paginate(c.list, look{top: 0, bottom: room})
		if len(pages) != len(c.heights) {
			t.Errorf("%s: %d pages, expected %d", c.what, len(pages), len(c.heights))
			continue
		}
		for i, p := range pages {
			y := 0.0
			for k, s := range p.placed {
				if math.Abs(s.height-c.heights[i][k]) > 1e-9 || math.Abs(s.y-y) > 1e-9 {
					t.Errorf("%s: page %d: %g high at %g, expected %g at %g", c.what, i+1, s.height, s.y, c.heights[i][k], y)
				}
				y += s.height
			}
			if y > room+1e-9 {
				t.Errorf("%s: page %d holds %g", c.what, i+1, y)
			}
		}
	}
}
