package fit

import (
	"errors"
	"fmt"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/layout"
)

// beyond says whether sizes that nobody asked for are more than a layout may have, or leave its own out.
func beyond(r *Report, own measure.NM) bool {
	return r.To > layout.MaxStrip || r.From > own || r.To < own
}

// TestUsualSizesAreWithinLimits: where no sizes are asked for, those that are tried are sizes that a layout may have, the
// largest and the smallest blocks included.
func TestUsualSizesAreWithinLimits(t *testing.T) {
	bed, ok := supplies.FindBed("king")
	if !ok {
		t.Fatal("no list has a king's bed")
	}
	const plain, ring = "block P plain piece a\ngrid\n  P P\n", "block P ring wedges a corners a\ngrid\n  P P\n"
	tried := 0
	for _, c := range []struct{ head, rest string }{
		{"side 120", plain}, {"side 119", plain}, {"side 118 1/4", plain}, {"side 1/4", plain}, {"side 1/2", plain}, {"units cm\nside 304.8", plain}, {"units cm\nside 304", plain},
		{"strip 60", ring}, {"strip 59 7/8", ring}, {"strip 1 1/8", ring}, {"units cm\nstrip 150", ring},
	} {
		text := fmt.Sprintf("%s\nfabric a navy\n%s", c.head, c.rest)
		design, _, faults := layout.Read(text)
		if errors, _ := layout.Count(faults); errors > 0 {
			t.Errorf("%s: %v", c.head, faults)
			continue
		}
		r, err := Fit(text, Options{Wanted: ForBed(bed)})
		if err != nil {
			t.Errorf("%s: %v", c.head, err)
			continue
		}
		tried++
		own := design.SideFinished
		if r.ByStrip {
			own = r.Now.StripCut
		}
		if beyond(r, own) {
			t.Errorf("%s: from %s to %s", c.head, measure.Text(r.From, r.Units), measure.Text(r.To, r.Units))
		}
		r.To = layout.MaxStrip + 1
		if !beyond(r, own) {
			t.Errorf("%s: a size beyond the limit is not noticed", c.head)
		}
	}
	if tried < 8 {
		t.Errorf("only %d layouts", tried)
	}
}

// TestSizesErrors: what is wrong with the sizes to try can be told from what is wrong with the size that is wanted.
func TestSizesErrors(t *testing.T) {
	const text = "side 6\nfabric a navy\nblock P plain piece a\ngrid\n  P P\n"
	for _, c := range []struct {
		o     Options
		sizes bool
	}{
		{Options{Wanted: inches(60, 80), From: measure.Inch, To: 9 * measure.Inch, Step: measure.Millimetre}, true},
		{Options{Wanted: inches(60, 80), From: 9 * measure.Inch, To: measure.Inch}, true},
		{Options{Wanted: inches(60, 80), From: 9 * measure.Inch, To: layout.MaxStrip + 1}, true},
		{Options{Wanted: inches(0, 80)}, false}, {Options{Wanted: inches(20_000, 80)}, false},
	} {
		_, err := Fit(text, c.o)
		if err == nil || errors.As(err, new(SizesError)) != c.sizes {
			t.Errorf("%+v: %v", c.o, err)
		}
	}
}
