package report

import (
	"fmt"

	"eighthturn/internal/plan/motifs"
)

// NoMotifs says why a fabric gives no centers, and what would help.
func NoMotifs(fabric string, u *motifs.Unfit) (why, hint string) {
	quoted := `"` + fabric + `"`
	switch u.Why {
	case motifs.OneColor:
		return quoted + " is one color, and a center is a place of a print", "give it a photo with its repeat, or stripes: " + PrintExample(fabric)
	case motifs.NoRepeat:
		return "the layout does not say after how much fabric the print of " + quoted + " comes again", "add its repeat: " + PrintExample(fabric)
	case motifs.NoMirror:
		return "the print of " + quoted + " has no mirror line, so no two places of it are each other's mirror image", "leave out --mirrored"
	case motifs.NoWedges:
		return "no block of this layout has wedges, and a center is eight of them", "put a block with wedges into the grid, for example block R ring wedges " + fabric + " corners " + fabric
	}
	return fmt.Sprintf("the photo of %s is too small: a wedge is %d pixels high on it", quoted, u.Pixels), fmt.Sprintf("take a photo on which one repeat has at least %d by %d pixels", u.NeededAcross, u.NeededDown)
}

// PrintExample says how a print is written.
func PrintExample(name string) string {
	return `for example fabric ` + name + ` swatch "` + name + `.jpg" across 24 repeat across 24 down 12`
}
