package main

import (
	"strings"
	"testing"

	"eighthturn/internal/quilt"
)

// TestSizeNote: a large picture is said to be large, with what would make it smaller; others are not.
func TestSizeNote(t *testing.T) {
	o := &drawing{}
	if note := o.sizeNote(&quilt.Top{Faces: make([]quilt.Face, 240_000)}); !strings.Contains(note, "240000 pieces takes about 81 MB; --by-fabric") {
		t.Errorf("%q", note)
	}
	if note := o.sizeNote(&quilt.Top{Faces: make([]quilt.Face, 40_000)}); note != "" {
		t.Errorf("%q", note)
	}
	o.picture.ByFabric = true
	if note := o.sizeNote(&quilt.Top{Faces: make([]quilt.Face, 240_000)}); note != "" {
		t.Errorf("%q of one piece for each fabric", note)
	}
}
