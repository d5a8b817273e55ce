package preview

import (
	"encoding/json"
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/report"
)

// TestSizes: what the page says of a patch that is pointed at is what the cutting plan says of its line.
func TestSizes(t *testing.T) {
	text := "side 7\nfabric a #f00\nfabric b #00f\nblock W web wedges a kites b\ngrid\n W W\n W W\nborder 2 a\n"
	seen := saidSizes(t, text)
	if got := seen["kite"]; got.Cut != "squares of 4 1/2 in" {
		t.Errorf("a kite is cut %q, wanted squares of 4 1/2 in", got.Cut)
	}
	for name, text := range layouts(t) {
		d := draw(text, drawing{})
		if d.top == nil {
			t.Fatalf("%s: %v", name, d.faults)
		}
		plan := cutting.Build(nil, d.top, cutting.Options{})
		said := map[[2]string]bool{}
		for i := range plan.Lines {
			p := &plan.Lines[i]
			if p.Piece.Method == cutting.Joined || p.Piece.Method == cutting.Lengthwise {
				p.Piece.Method = cutting.Whole // how it is come by is no part of its size
			}
			finished, cut := report.PieceSizes(plan, p)
			said[[2]string{finished, cut}] = true
		}
		for shape, p := range saidSizes(t, text) {
			if !said[[2]string{p.Finished, p.Cut}] {
				t.Errorf("%s: a %s is said to be %q, cut %q, which no line of the plan is", name, shape, p.Finished, p.Cut)
			}
		}
	}
}

// saidSizes is what the page says of a patch of each shape.
func saidSizes(t *testing.T, text string) map[string]patchInfo {
	t.Helper()
	d := draw(text, drawing{})
	if d.top == nil {
		t.Fatal(d.faults)
	}
	n := newNumbering(1)
	newPicture(d.top, d.source, n)
	seen := map[string]patchInfo{}
	for _, raw := range n.templates {
		var made template
		if err := json.Unmarshal(raw, &made); err != nil {
			t.Fatal(err)
		}
		for _, p := range made.Patches {
			seen[p.Shape] = p
		}
	}
	return seen
}
