package quilt_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// onCloth is an outline where it lies on its cloth.
func onCloth(outline []measure.Point, at *quilt.ClothPlace) []measure.Vec {
	list := make([]measure.Vec, len(outline))
	for i, p := range outline {
		list[i].X, list[i].Y = at.OnCloth(float64(p.X), float64(p.Y))
	}
	return list
}

// overlap says whether two convex outlines cover one place, by more than a hair: no line parts them that runs along a side of either.
func overlap(a, b []measure.Vec) bool {
	const hair = float64(measure.Millimetre) / 100
	parted := func(a, b []measure.Vec) bool {
		for i, p := range a {
			q := a[(i+1)%len(a)]
			dx, dy := q.X-p.X, q.Y-p.Y
			long := math.Hypot(dx, dy)
			beyond := true
			for _, r := range b {
				beyond = beyond && (dx*(r.Y-p.Y)-dy*(r.X-p.X))/long < hair
			}
			if beyond {
				return true
			}
		}
		return false
	}
	return !parted(a, b) && !parted(b, a)
}

// striped is a layout whose fabrics are all striped, so that every piece has a place on its cloth.
func striped(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		words := strings.Fields(line)
		if len(words) < 3 || !strings.EqualFold(words[0], "fabric") || strings.EqualFold(words[2], "stripes") {
			continue
		}
		lines[i] = strings.Replace(line, words[2], "stripes #123456 1 white 1/2", 1)
	}
	return strings.Join(lines, "\n")
}

// uncut is what is wrong with how a top's pieces lie on their cloths: those that do not lie within the width of their fabric, and those of
// which two lie on one place. Pieces for which the layout names a place may lie on it together: the print comes again.
func uncut(top *quilt.Top, places []quilt.ClothPlace) (faults []string, pieces int) {
	laid := make([][][]measure.Vec, len(top.Fabrics))
	for i := range top.Faces {
		f := &top.Faces[i]
		if c := top.CutOfPatch(int(f.Patch)); top.Fabrics[f.Fabric].Cloth == nil || c != nil && (c.Motif != "" || c.Alike) {
			continue
		}
		pieces++
		piece := onCloth(f.Outline, &places[i])
		width, left, right := float64(top.CutFacts.Fabrics[f.Fabric].UsableWidth), math.Inf(1), math.Inf(-1)
		for _, p := range piece {
			left, right = min(left, p.X), max(right, p.X)
		}
		for _, p := range piece {
			if right-left < width-4*float64(top.Seam) && (p.X < 0 || p.X > width) { // what is wider is joined, or cannot be cut at all
				faults = append(faults, fmt.Sprintf("face %d lies at %.2f in of %.2f across", i, p.X/25.4e6, width/25.4e6))
				break
			}
		}
		for n, other := range laid[f.Fabric] {
			if overlap(piece, other) {
				faults = append(faults, fmt.Sprintf("face %d, a %s, lies on piece %d of %s", i, top.Patches[f.Patch].Shape, n, top.Fabrics[f.Fabric].Name))
				break
			}
		}
		laid[f.Fabric] = append(laid[f.Fabric], piece)
	}
	return faults, pieces
}

// TestPiecesCanBeCut: in samples and invented layouts whose fabrics are all striped, no two pieces of a fabric lie on one place of it, and
// each lies within its width; pieces of which one is moved onto another are noticed.
func TestPiecesCanBeCut(t *testing.T) {
	var texts []string
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(judges.Of(30, 120)) {
		texts = append(texts, invent.Layout(seed))
	}
	tried, pieces, noticed := 0, 0, 0
	for _, text := range texts {
		design, _, _ := layout.Read(striped(text))
		if design == nil {
			continue
		}
		top := quilt.Lay(design)
		places := top.ClothPlaces()
		if places == nil || len(top.Faces) > 1500 {
			continue
		}
		faults, n := uncut(top, places)
		tried, pieces = tried+1, pieces+n
		if len(faults) > 0 {
			t.Errorf("%d of %d pieces: %s\n%s", len(faults), n, faults[0], striped(text))
		}
		for i := range places[1:] {
			if top.Faces[i].Fabric == top.Faces[i+1].Fabric && top.CutOf == nil {
				places[i+1].Cloth = places[i].Cloth
				if faults, _ := uncut(top, places); len(faults) > 0 {
					noticed++
				}
				break
			}
		}
	}
	if t.Logf("%d layouts, %d pieces, %d noticed", tried, pieces, noticed); tried < 10 || noticed < tried/2 {
		t.Errorf("%d layouts were tried, %d pieces, and a piece on another was noticed in %d", tried, pieces, noticed)
	}
}
