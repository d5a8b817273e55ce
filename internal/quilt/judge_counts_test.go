package quilt_test

import (
	"maps"
	"testing"

	"eighthturn/internal/blocks"
)

// count is how many patches of each shape a layout has, and how many faces and seams.
type count struct {
	shapes             map[blocks.Shape]int
	faces, strips, all int
}

// TestJudgeCounts holds the patches of some layouts against counts worked out by hand, block
// by block, from what a quilter knows of each block.
func TestJudgeCounts(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want count
	}{
		// 3 x 3 = 9 web blocks. A web block is two halves of two wedges and a kite: 4 wedges
		// and 2 kites. 9 x 4 = 36 wedges, 9 x 2 = 18 kites, 54 patches.
		// Two borders of four strips: 8. Nothing is cut from a strip set: a face a patch.
		"webs": {`
strip 4
fabric a #123
fabric b #dde
block W web wedges a kites b
grid
 W W W
 W W W
 W W W
border 1 a
border 3 b
`, count{map[blocks.Shape]int{blocks.Wedge: 36, blocks.Kite: 18, blocks.Strip: 8}, 62, 0, 62}},

		// A frame of 4 x 4: 16 - 4 = 12 floating blocks, each 2 wedges and 2 grounds, and
		// 4 web blocks in the middle. Wedges: 12 x 2 + 4 x 4 = 40. Grounds: 12 x 2 = 24.
		// Kites: 4 x 2 = 8. 72 patches. All 40 wedges have three bands, so there are
		// 40 x 3 + 32 = 152 faces, and two strip seams a wedge: 80.
		"frame": {`
strip 4
fabric a #123
fabric b #dde
strip-set s a 1 3/4 b 1 1/2 a 1 3/4
webs s / reversed s
block F floating background b
block W web kites a
grid
 F F F F
 F W W F
 F W W F
 F F F F
`, count{map[blocks.Shape]int{blocks.Wedge: 40, blocks.Background: 24, blocks.Kite: 8}, 152, 80, 72}},

		// Rings at the 5 places of a draughtboard of 3 x 3, each 8 wedges and 4 corners: 40
		// and 20. Plain squares at 3 places; the ninth is empty. One border: 4 strips.
		// Every other wedge, 20 in all, has two bands: 67 + 20 faces, 20 strip seams.
		"rings": {`
side 6
fabric a #123
fabric b #dde
strip-set s a 1 3/4 b rest
block R ring wedges a s corners b
block P plain piece a
grid
 R P R
 P R .
 R P R
border 2 a
`, count{map[blocks.Shape]int{blocks.Wedge: 40, blocks.RingCorner: 20, blocks.Square: 3, blocks.Strip: 4}, 87, 20, 67}},

		// 2 x 2 floating stars: a full half of 2 wedges and a kite, and a half-square
		// triangle each: 8 wedges, 4 kites, 4 triangles. 2 star blocks more on the right:
		// 2 x 4 = 8 wedges, 2 x 2 = 4 kites. 28 patches and as many faces.
		"stars": {`
side 10 cm
fabric a #123
fabric b #dde
block T floating-star kites a wedges b background b
block S star wedges b kites a
grid
 T T S
 T T S
`, count{map[blocks.Shape]int{blocks.Wedge: 16, blocks.Kite: 8, blocks.HalfSquare: 4}, 28, 0, 28}},

		// 3 x 2 places: 4 plain squares and 2 of two triangles. Sashes go round: 4 upright
		// ones in each of 2 rows, 3 lying ones in each of 3 lines, 17 strips, with 4 x 3 = 12
		// posts. The border has 4 strips and 4 corner squares. Squares: 4 + 12 + 4 = 20,
		// strips 17 + 4 = 21, triangles 4: 45 patches of one face.
		"sashes": {`
side 6
fabric a #123
fabric b #dde
block P plain piece a
block H halves pieces a b
grid
 P H P
 H P P
sash 1 a posts b around
border 2 a corners b
`, count{map[blocks.Shape]int{blocks.Square: 20, blocks.Strip: 21, blocks.HalfSquare: 4}, 45, 0, 45}},

		// 3 columns of 3 cells of 4 in are 12 in long: 4 pieces of 3 in, of which one is the
		// two end pieces: 3 whole ones and 2 ends a column, 9 and 6 in all.
		"columns": {`
side 4
fabric a #123
fabric b #dde
block C tumblers pieces a b about 3
grid
 C C C
 C C C
 C C C
`, count{map[blocks.Shape]int{blocks.Tumbler: 9, blocks.HalfTumbler: 6}, 15, 0, 15}},

		// The same with sashes, which part the columns: 9 columns of 4 in, where 3 in goes
		// once, so that the two end pieces are all there is: 18. 2 upright sashes in each of
		// 3 rows and 2 long ones between the rows: 8 strips.
		"parted columns": {`
side 4
fabric a #123
fabric b #dde
block C tumblers pieces a b about 3
grid
 C C C
 C C C
 C C C
sash 1 b
`, count{map[blocks.Shape]int{blocks.HalfTumbler: 18, blocks.Strip: 8}, 26, 0, 26}},
	} {
		top := lay(t, c.text)
		got := map[blocks.Shape]int{}
		for i := range top.Patches {
			got[top.Patches[i].Shape]++
		}
		if !maps.Equal(got, c.want.shapes) {
			t.Errorf("%s: %v, want %v", name, got, c.want.shapes)
		}
		if len(top.Faces) != c.want.faces || len(top.StripSeams) != c.want.strips || len(top.Patches) != c.want.all {
			t.Errorf("%s: %d patches, %d faces, %d strip seams, want %d, %d, %d", name, len(top.Patches), len(top.Faces), len(top.StripSeams), c.want.all, c.want.faces, c.want.strips)
		}
	}
}
