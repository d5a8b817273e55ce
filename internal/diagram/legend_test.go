package diagram

import (
	"eighthturn/internal/measure"
	"testing"
)

// TestLegendOfArrows: an arrow round a point has an entry of its own, beside that of straight
// arrows where there are any, and none where no arrow is bent.
func TestLegendOfArrows(t *testing.T) {
	straight := Mark{Line: &Line{Points: []measure.Point{{}, {X: 1e8}}, Stroke: Pressing, End: Arrow}}
	bent := Mark{Line: &Line{Points: []measure.Point{{}, {X: 1e8}, {X: 1e8, Y: 1e8}}, Stroke: Pressing, End: Arrow}}
	for _, c := range []struct {
		marks []Mark
		bent  []bool // by entry
	}{
		{[]Mark{straight}, []bool{false}},
		{[]Mark{bent, bent}, []bool{true}},
		{[]Mark{bent, straight}, []bool{false, true}},
	} {
		key := newLegend(nil, &Figure{Marks: c.marks})
		if len(key.entries) != len(c.bent) {
			t.Fatalf("%d entries, not %d", len(key.entries), len(c.bent))
		}
		for i, e := range key.entries {
			if e.bent != c.bent[i] {
				t.Errorf("entry %d, %q: bent %v", i, e.text, e.bent)
			}
			if line := key.arc([2]measure.Vec{{}, {X: legendSample, Y: 0}}); e.bent && headOf(reversed(line), e.end, e.stroke.Pen()).size < 0.5 {
				t.Error("the head of the bow is too small to be seen")
			}
		}
	}
}
