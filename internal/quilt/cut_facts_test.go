package quilt_test

import (
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
)

// TestCutFacts is the law that what the plans read of a top's cut facts is what its patches show.
func TestCutFacts(t *testing.T) {
	banded, turned, unused := 0, 0, 0
	for seed := range uint64(judges.Of(100, 400)) {
		d, _, faults := layout.Read(invent.Layout(seed))
		if d == nil {
			t.Fatalf("layout %d: %v", seed, faults)
		}
		top := quilt.Lay(d)
		for _, p := range top.Patches {
			if p.Set < 0 && p.Count > 1 {
				t.Fatalf("layout %d: a patch of %d faces is of strip set %d", seed, p.Count, p.Set)
			}
			if p.Set < 0 {
				continue
			}
			banded++
			if p.Reversed {
				turned++
			}
			set := top.CutFacts.Sets[p.Set]
			cut := measure.NM(0)
			for _, b := range set.BandsCut {
				cut += b - 2*top.Seam
			}
			want := top.CutFacts.StripsCut[set.Height] - 2*top.Seam
			if off := max(cut-want, want-cut); off > measure.Tolerance*measure.NM(p.Count) || len(set.BandsCut) != int(p.Count) { // equal bands are rounded each
				t.Fatalf("layout %d: set %q has %d bands of %d in all, the patch %d of %d", seed, set.Name, len(set.BandsCut), cut, p.Count, want)
			}
		}
		for i := range top.Faces {
			if slices.Contains(top.CutFacts.Unused, int(top.Faces[i].Fabric)) {
				t.Fatalf("layout %d: fabric %d is shown", seed, top.Faces[i].Fabric)
			}
		}
		unused += len(top.CutFacts.Unused)
	}
	if banded == 0 || turned == 0 || unused == 0 {
		t.Errorf("%d wedges of strip sets, %d turned, %d fabrics unused: too few to say anything", banded, turned, unused)
	}
}
