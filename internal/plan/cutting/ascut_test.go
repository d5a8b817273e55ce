package cutting

import (
	"eighthturn/internal/quilttest/lay"
	"testing"

	"eighthturn/samples"
)

// TestAsCut: strips that are made one are as many as before, and give as much.
func TestAsCut(t *testing.T) {
	fewer := 0
	for _, s := range samples.All() {
		plan := Build(nil, lay.Top(t, s.Text), Options{})
		for f := range plan.Fabrics {
			strips, asCut := plan.Fabrics[f].Strips, plan.Fabrics[f].AsCut()
			if a, b := counted(strips), counted(asCut); a != b {
				t.Errorf("%s, fabric %d: %v become %v", s.Name, f, a, b)
			}
			fewer += len(strips) - len(asCut)
			for i := range asCut {
				for n := range i {
					if cutAlike(&asCut[n], &asCut[i]) {
						t.Errorf("%s, fabric %d: strips %d and %d are cut alike", s.Name, f, n, i)
					}
				}
			}
		}
	}
	if fewer == 0 {
		t.Error("no sample has strips that are made one")
	}
}

// counted is how many strips and pieces there are.
func counted(list []Strip) (sum [2]int) {
	for i := range list {
		sum[0] += list[i].Times
		for _, c := range list[i].Cuts {
			sum[1] += list[i].Times * c.Units
		}
	}
	return sum
}
