package main

import "testing"

// TestReached: what a profile says was run, once a stretch, and what one has beyond another.
func TestReached(t *testing.T) {
	a, err := profiled("mode: set\neighthturn/palettes/ase.go:1.2,3.4 2 1\neighthturn/palettes/ase.go:5.2,6.4 3 0\neighthturn/palettes/ase.go:1.2,3.4 2 1\neighthturn/internal/quilttest/invent/invent.go:1.2,3.4 9 1\n")
	if err != nil || a.statements() != 2 {
		t.Fatal(a, err)
	}
	b, err := profiled("mode: set\neighthturn/palettes/ase.go:5.2,6.4 3 1\neighthturn/palettes/ase.go:1.2,3.4 2 1\n")
	if err != nil || b.beyond(a) != 3 || a.beyond(b) != 0 {
		t.Error(a, b, err)
	}
	if a.add(b); a.statements() != 5 || b.beyond(a) != 0 {
		t.Error(a)
	}
	for _, wrong := range []string{"", "a.go:1 2", "a.go:1 x 1"} {
		if _, err := profiled(wrong); err == nil {
			t.Errorf("%q goes through", wrong)
		}
	}
}
