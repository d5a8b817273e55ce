package quilt_test

import (
	"fmt"
	"image"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// TestPiecesFaceTheOutside: what is given for the edge of the quilt is seen in the pieces that lie along it and in no others, also along places
// with nothing in them; what is given for one side goes before what is given for all, and of two sides the upper or the lower one first. A wedge
// whose wide end runs from one side of its block to the next faces the outside where both do.
func TestPiecesFaceTheOutside(t *testing.T) {
	const text = "side 6\nfabric red #c22\nfabric blue #22c\nfabric green #2c2\nfabric gold #cc2\nfabric plum #626\nblock F floating wedges red background blue %s\nblock P plain piece red %s\nblock H halves pieces red blue %s\n" +
		"grid\n  F F P P F\n  F F . H F\n  P H F F P\n  F P F F H\n"
	edges := map[string]map[string]string{ // by what is written: the fabric that each side has
		"":           {},
		"edge green": {"top": "green", "bottom": "green", "left": "green", "right": "green"},
		"edge green edge-top gold edge-left plum":                {"top": "gold", "bottom": "green", "left": "plum", "right": "green"},
		"edge-bottom gold edge-right plum":                       {"bottom": "gold", "right": "plum"},
		"edge-top green edge-bottom gold edge-left plum":         {"top": "green", "bottom": "gold", "left": "plum"},
		"edge gold edge-right plum edge-left green":              {"top": "gold", "bottom": "gold", "left": "green", "right": "plum"},
		"edge-right plum edge-top gold edge green edge-left red": {"top": "gold", "bottom": "green", "left": "red", "right": "plum"},
	}
	for words, of := range edges {
		top := lay(t, fmt.Sprintf(text, words, words, words))
		facing := 0
		for i := range top.Patches {
			p := &top.Patches[i]
			want, along := "", outwardOf(top, p)
			special := func(side string) bool { // a fabric of its own, and not that of all sides
				return slices.Contains(along, side) && of[side] != "" && (of[side] != general(words) || general(words) == "")
			}
			for _, side := range []string{"top", "bottom", "left", "right"} {
				if want == "" && special(side) {
					want = of[side]
				}
			}
			if want == "" && len(along) > 0 {
				want = general(words)
			}
			got, role := top.Fabrics[top.Faces[p.First].Fabric].Name, top.Roles[p.Role].Name
			if want != "" {
				facing++
			}
			if (role == "edge") != (want != "") || want != "" && got != want || want == "" && got != "red" && got != "blue" {
				t.Errorf("%q: a %s of %s at cell %d, which lies along %v, is %s, expected %q", words, role, top.Cells[p.Cell].Label, p.Cell, along, got, want)
			}
		}
		if words != "" && facing < 10 {
			t.Errorf("%q: only %d pieces face the outside", words, facing)
		}
	}
}

// general is what words give for all sides, "" for nothing.
func general(words string) string {
	list := strings.Fields(words)
	if at := slices.Index(list, "edge"); at >= 0 {
		return list[at+1]
	}
	return ""
}

// outwardOf are the sides of a block along which a patch lies and beyond which the quilt has nothing.
func outwardOf(top *quilt.Top, p *quilt.Patch) (along []string) {
	r := top.CellRect(int(p.Cell))
	x, y := int(p.Cell)%top.Columns, int(p.Cell)/top.Columns
	outside := func(x, y int) bool {
		return x < 0 || y < 0 || x >= top.Columns || y >= top.Rows || top.Empty(y*top.Columns+x)
	}
	on := func(side string, q measure.Point) bool {
		return map[string]bool{"top": q.Y == r.Min.Y, "bottom": q.Y == r.Max.Y, "left": q.X == r.Min.X, "right": q.X == r.Max.X}[side]
	}
	out := map[string]bool{"top": outside(x, y-1), "bottom": outside(x, y+1), "left": outside(x-1, y), "right": outside(x+1, y)}
	sides, any := []string{"top", "bottom", "left", "right"}, false
	for _, side := range sides {
		for i, q := range p.Outline {
			if on(side, q) && on(side, p.Outline[(i+1)%len(p.Outline)]) {
				any = true
				if out[side] {
					along = append(along, side)
				}
			}
		}
	}
	if any || len(p.Outline) != 3 {
		return along
	}
	for _, side := range sides { // a wedge, by the two ends of its wide end
		if on(side, p.Outline[1]) || on(side, p.Outline[2]) {
			if !out[side] {
				return nil
			}
			along = append(along, side)
		}
	}
	return along
}

// TestEndPiecesFaceTheOutside: of a column of tumblers the first piece faces the outside where nothing lies above it, the last where nothing
// lies below, and no other.
func TestEndPiecesFaceTheOutside(t *testing.T) {
	top := lay(t, "side 6\nfabric red #c22\nfabric blue #22c\nfabric gold #cc2\nfabric plum #626\nblock T tumblers pieces red blue about 4 edge-top gold edge-bottom plum\nblock P plain piece blue\ngrid\n  T T P .\n  T T T T\n  P T T T\n")
	found := map[string]int{}
	for i := range top.Patches {
		p := &top.Patches[i]
		if top.Cells[p.Cell].Label != "T" {
			continue
		}
		r, want := top.CellRect(int(p.Cell)), ""
		x, y := int(p.Cell)%top.Columns, int(p.Cell)/top.Columns
		for _, q := range p.Outline {
			if q.Y == r.Min.Y && (y == 0 || top.Empty(int(p.Cell)-top.Columns)) {
				want = "gold"
			}
			if q.Y == r.Max.Y && y == top.Rows-1 {
				want = "plum"
			}
		}
		if p.Outline[0].Y != p.Outline[1].Y && p.Outline[2].Y != p.Outline[3].Y { // no end piece
			want = ""
		}
		if got := top.Fabrics[top.Faces[p.First].Fabric].Name; want != "" && got != want || want == "" && got != "red" && got != "blue" {
			t.Errorf("a piece of column %d, row %d is %s, expected %q", x, y, got, want)
		}
		found[want]++
	}
	if found["gold"] != 3 || found["plum"] != 3 {
		t.Errorf("end pieces: %v", found)
	}
}

// TestColorwaysSayWhatChanges: a colorway lists the fabrics that it changes and something shows.
func TestColorwaysSayWhatChanges(t *testing.T) {
	top := lay(t, "side 6\nfabric red #c22\nfabric blue #22c\nfabric idle #ccc\nfabric gold #cc2\nblock P plain piece red\nblock Q plain piece gold\ngrid\n  P Q\ncolorway dusk gold #333 idle #444 red #555\ncolorway dawn idle #eee\n")
	for i, want := range [][]string{{"red", "gold"}, nil} {
		var got []string
		for _, f := range top.Colorways[i].Changed {
			got = append(got, top.Fabrics[f].Name)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s changes %v, expected %v", top.Colorways[i].Name, got, want)
		}
	}
}

// TestStripesTakeTheColorsOfFabrics: stripes that are named by a fabric are in its color, whatever color that is given; others stay.
func TestStripesTakeTheColorsOfFabrics(t *testing.T) {
	top := lay(t, "side 6\nfabric sand #e8d9b0\nfabric awning stripes sand 1 #224466 1/2\nfabric deck stripes #224466 1 #ffffff 1/2\nfabric plain #123456\nblock P plain piece awning\nblock Q plain piece deck\nblock R plain piece sand\ngrid\n  P Q R\n")
	other := *top
	other.Fabrics = slices.Clone(top.Fabrics)
	other.RecolorStripes()
	if other.Fabrics[1].Cloth != top.Fabrics[1].Cloth {
		t.Error("stripes in their own colors are made anew")
	}
	red := palettes.Colour{R: 0xc0, G: 0x20, B: 0x30}
	other.Fabrics[0].Colour = red
	other.RecolorStripes()
	was, is := top.Fabrics[1].Cloth.Stripes.List, other.Fabrics[1].Cloth.Stripes.List
	if is[0].Colour != red || is[1].Colour != was[1].Colour || was[0].Colour == red || other.Fabrics[1].Cloth.Across != top.Fabrics[1].Cloth.Across {
		t.Errorf("stripes are %v, were %v", is, was)
	}
	if other.Fabrics[1].Colour != other.Fabrics[1].Cloth.Colour || other.Fabrics[1].Colour == top.Fabrics[1].Colour {
		t.Errorf("striped fabric as a whole is %s", other.Fabrics[1].Colour.Hex())
	}
	if other.Fabrics[2].Cloth != top.Fabrics[2].Cloth || other.Fabrics[3].Colour != top.Fabrics[3].Colour || other.Fabrics[3].Cloth != nil {
		t.Error("other fabrics have changed")
	}
}

// TestClothKnowsItsMirrorLines: those of stripes, those of a photo whose repeat is said, and none of a photo without one or of no cloth.
func TestClothKnowsItsMirrorLines(t *testing.T) {
	photo := foldedPrint(0.25, false)
	for fabric, none := range map[string]bool{"stripes navy 3/4 white 1/2": false, `swatch "a.jpg" across 12 repeat across 12 down 8`: false, `swatch "a.jpg" across 12`: true} {
		design, _, faults := layout.ReadWith("side 6\nfabric cloth "+fabric+"\nblock P plain piece cloth\ngrid\n  P\n", func(string) (palettes.PhotoSample, error) { return photo, nil })
		if design == nil {
			t.Fatal(faults)
		}
		lines := quilt.Lay(design).Fabrics[0].Cloth.MirrorLines()
		want := layout.MirrorLines{}
		switch f := design.Fabrics[0]; {
		case f.Stripes != nil:
			want = f.Stripes.MirrorLines()
		case f.Photo != nil:
			want = f.Photo.MirrorLines()
		}
		if lines.None() != none || fmt.Sprint(lines) != fmt.Sprint(want) {
			t.Errorf("%s: mirror lines are %v, expected %v", fabric, lines, want)
		}
	}
	if lines := (&quilt.Cloth{}).MirrorLines(); !lines.None() {
		t.Errorf("of no cloth mirror lines are %v", lines)
	}
	if picture := (&quilt.Cloth{PhotoSample: palettes.PhotoSample{}}).Picture(); picture != (*image.RGBA)(nil) {
		t.Error("a cloth without a photo has a picture")
	}
}

// TestRecoloredIsLaidAnew: a top in the fabrics of another design, which has other colors alone, is as that design laid out.
func TestRecoloredIsLaidAnew(t *testing.T) {
	const text = "side 6\nfabric red #c22\nfabric blue #22c on-hand 2\nfabric idle #ccc\nblock P plain piece red\nblock Q plain piece blue\ngrid\n  P Q\ncolorway dusk red %s idle #444\nsize large across 4\n"
	one := lay(t, fmt.Sprintf(text, "#333"))
	design, _, faults := layout.Read(strings.Replace(fmt.Sprintf(text, "#555"), "#22c", "#2c2", 1))
	if design == nil {
		t.Fatal(faults)
	}
	got, want := one.Recolored(design), quilt.Lay(design)
	if sameIn(got, want) != "" || fmt.Sprint(got.Colorways) != fmt.Sprint(want.Colorways) || fmt.Sprint(got.Fabrics) != fmt.Sprint(want.Fabrics) || len(got.Sizes) != len(want.Sizes) || got.Sizes[0].Top(nil).Fabrics[1].Colour != want.Fabrics[1].Colour {
		t.Errorf("it differs in %q: %v, expected %v", sameIn(got, want), got.Colorways, want.Colorways)
	}
	if one.Fabrics[1].Colour == got.Fabrics[1].Colour {
		t.Error("the top itself has changed")
	}
}
