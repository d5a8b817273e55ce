package report

import (
	"maps"
	"regexp"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

var leftWedge = regexp.MustCompile(`tips pointing down, the (.+) wedge is always on the left`)

// onTheLeft is which of two wedges that share their tip lies on the left where the tip points down, right side up.
func onTheLeft(one, other []measure.Point) bool {
	middle := func(o []measure.Point) (x, y float64) {
		for _, q := range o {
			x, y = x+float64(q.X-o[0].X)/float64(len(o)), y+float64(q.Y-o[0].Y)/float64(len(o))
		}
		return x, y
	}
	ax, ay := middle(one)
	bx, by := middle(other)
	return ax*(ay+by)-ay*(ax+bx) > 0 // y points down
}

// wrongLeft is how many pairs of wedges of a block have another fabric on the left than a text says, and how many pairs there are.
func wrongLeft(s *sewer, b *sewing.Block, name string) (wrong, pairs int) {
	for _, v := range b.Variants {
		for _, at := range v.Cells {
			for _, j := range b.Steps[0].Joins {
				one, other := j.A[0], j.B[0]
				if !onTheLeft(s.top.Patches[at.Patches[one]].Outline, s.top.Patches[at.Patches[other]].Outline) {
					one, other = other, one
				}
				if pairs++; s.clothNames([]int{v.Cloths[one]})[0] != name || s.clothNames([]int{v.Cloths[other]})[0] == name {
					wrong++
				}
			}
		}
	}
	return wrong, pairs
}

// TestNamedWedges: where a step names the wedge on the left by its fabric, that fabric lies there in every pair of the top, and
// no step names pieces by words of its own where it could by a fabric.
func TestNamedWedges(t *testing.T) {
	named := 0
	list := maps.Clone(sewers())
	list["two fabrics"] = sewerOf(t, "strip 4\nfabric rust #b5532a\nfabric teal #2f7d83\nfabric cream #f4ead7\nblock R ring wedges rust teal corners cream\nblock S ring wedges teal rust corners cream\ngrid\n R S\n S R\n")
	for name, s := range list {
		for i := range s.Blocks {
			b := &s.Blocks[i]
			for n := range b.Steps {
				said := s.named(b, &b.Steps[n])
				m := leftWedge.FindStringSubmatch(said)
				if m == nil || m[1] == "" || len(b.Steps[n].Named) == 0 || n > 0 {
					continue
				}
				if cloth := s.onlyCloth(b, b.Steps[n].Named[0].Pieces, b.Steps[n].Named[0].Others); cloth != m[1] {
					continue // told by the way round
				}
				named++
				if wrong, pairs := wrongLeft(s, b, m[1]); wrong > 0 {
					t.Errorf("%s, block %s: %q, but %d of %d pairs have another fabric there", name, b.Label, m[0], wrong, pairs)
				}
				if wrong, pairs := wrongLeft(s, b, "no such fabric"); wrong != pairs {
					t.Errorf("%s, block %s: a fabric that is not there goes unnoticed", name, b.Label)
				}
			}
		}
	}
	if named < 4 {
		t.Errorf("only %d blocks name their wedges", named)
	}
}

// TestHalfBlockIsANumber: no step leaves the reader to work out how far an edge lies from the center.
func TestHalfBlockIsANumber(t *testing.T) {
	for name, s := range sewers() {
		for i := range s.Blocks {
			for n := range s.Blocks[i].Steps {
				for _, line := range s.stepLines(&s.Blocks[i], &s.Blocks[i].Steps[n]) {
					if regexp.MustCompile(regexp.QuoteMeta(blocks.HalfBlock)).MatchString(line.String()) {
						t.Errorf("%s, block %s: %s", name, s.Blocks[i].Label, line)
					}
				}
			}
		}
	}
}
