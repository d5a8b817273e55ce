// Package laws turns a finished top into the first thing that is wrong with it: what must
// hold for any top, whatever the layout says. It is support for tests alone and trusts
// nothing but the outlines; all comparisons are exact, but for Tolerance.
package laws

import (
	"fmt"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Tolerance is how far a point of a slanted side may lie from it: the one tolerance of the
// geometry. Sides along the grid and its diagonals have none.
const Tolerance measure.NM = 1

// Law is one of the laws.
type Law struct {
	Name  string
	Check func(*quilt.Top) error // nil where the law holds
}

// All is every law. The first and the third are what the others take for granted.
func All() []Law {
	return []Law{
		{"indices point at what they should", Indices},
		{"each role has its letter", Letters},
		{"outlines are clockwise, simple and have area", Outlines},
		{"each cell has its kind's pieces", Pieces},
		{"shapes have their angles", Angles},
		{"patches cover the top once", CoverOnce},
		{"faces cover their patch once", FacesCoverPatches},
		{"corners meet their neighbours", Corners},
		{"every inner edge is a seam", Seams},
		{"centres close", CentresClose},
		{"shares are the areas", Shares},
	}
}

// Check is the first law that a top breaks.
func Check(t *quilt.Top) error {
	for _, law := range All() {
		if err := law.Check(t); err != nil {
			return fmt.Errorf("%s: %w", law.Name, err)
		}
	}
	return nil
}
