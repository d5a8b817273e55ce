package svgout

import (
	"math"
	"strconv"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// linework draws the outlines of all patches with the letter of each one's role, ready to
// be printed and coloured by hand.
func (p *picture) linework() {
	for f := range p.scene.Paints {
		p.scene.Paints[f].Colour = *white()
	}
	p.layer(Layer{ID: "paper", Name: "paper", Style: Style{Fill: flat(*white())}, Items: []Item{{ID: "ground", Outlines: p.extent}}})
	l := Layer{ID: "outlines", Name: "outlines", Style: Style{Fill: Fill{Kind: Unfilled}, Line: black(), Width: p.stroke, Joins: true, Caps: true}}
	l.Items = p.rim()
	within, border := p.patchesBy()
	l.Items = append(l.Items, p.drawnPatches("patches", within))
	if len(p.StripSeams) > 0 {
		l.Items = append(l.Items, Item{ID: "strip-seams", Style: Style{Width: p.stroke * stripStroke}, Open: true,
			Outlines: trails(len(p.StripSeams), func(i int) *quilt.Seam { return &p.StripSeams[i] })})
	}
	p.layer(l)
	if len(border) > 0 {
		p.layer(Layer{ID: "borders", Name: "borders", Style: l.Style, Items: []Item{p.drawnPatches("border-patches", border)}})
	}
	p.layer(Layer{ID: "letters", Name: "letters", Style: Style{Fill: flat(palettes.Colour{R: 0x55, G: 0x55, B: 0x55}), Words: true, Middle: true},
		Items: []Item{{Texts: p.letters}}})
}

// rim draws the outside of the top just inside it, since half of a line along the edge
// would be cut off there.
func (p *picture) rim() []Item {
	if last := &p.Patches[len(p.Patches)-1]; !p.full() && last.Border < 0 {
		return nil
	}
	half := measure.NM(p.stroke / 2 * float64(measure.Inch) / PixelsPerInch)
	in := quilt.Rect{Min: p.Outer.Min.Add(measure.Point{X: half, Y: half}), Max: p.Outer.Max.Add(measure.Point{X: -half, Y: -half})}
	return []Item{{ID: "rim", Outlines: func(yield func([]measure.Point) bool) { yield(cornersOf(in)) }}}
}

// patchesBy are the patches that belong to no border, and those that do.
func (p *picture) patchesBy() (within, border []int32) {
	for i := range p.Patches {
		if p.Patches[i].Border >= 0 {
			border = append(border, int32(i))
		} else {
			within = append(within, int32(i))
		}
	}
	return within, border
}

// drawnPatches are patches as one drawing with an id, or each by itself.
func (p *picture) drawnPatches(id string, list []int32) Item {
	outlines := func(yield func([]measure.Point) bool) {
		for _, i := range list {
			if !yield(p.Patches[i].Outline) {
				return
			}
		}
	}
	if p.ByFabric {
		return Item{ID: id, Outlines: outlines}
	}
	return Item{Outlines: outlines, Each: p.patchLabels(list)}
}

// patchLabels name patches.
func (p *picture) patchLabels(list []int32) *Labels {
	names := make([]string, len(p.Fabrics))
	for f := range names {
		names[f] = escaped(p.Fabrics[f].Name)
	}
	return &Labels{
		ID: func(b []byte, n int) []byte { return p.appendPatchID(b, int(list[n])) },
		Title: func(b []byte, n int) []byte {
			patch := &p.Patches[list[n]]
			for n := range patch.Count {
				if n > 0 {
					b = append(b, ", "...)
				}
				b = append(b, names[p.Faces[patch.First+n].Fabric]...)
			}
			return p.appendPlace(b, patch)
		}}
}

// letters are the letter of each patch's role where there is room for it, and in a wedge of a
// strip set each strip's number, 1 at the wide end.
func (p *picture) letters(yield func(Text) bool) {
	largest := min(largestInBlock*float64(p.SideFinished), largestInTop*float64(max(p.Outer.Width(), p.Outer.Height())))
	bands := make([][]string, len(p.Roles))
	var in inset
	for i := range p.Faces {
		patch := &p.Patches[p.Faces[i].Patch]
		in.of(p.Faces[i].Outline)
		x, y, room := in.middle()
		text, size := p.Roles[patch.Role].Letter, min(room*letterInRoom, largest)
		if patch.Count > 1 {
			of := &bands[patch.Role]
			for n := len(*of); n <= i-int(patch.First); n++ {
				*of = append(*of, text+strconv.Itoa(n+1))
			}
			text, size = (*of)[i-int(patch.First)], min(room*pairInRoom, largest)
		}
		// A grid of a hundredth of a user unit is fine enough for letters.
		units := func(nm float64) float64 { return float64(hundredths(measure.NM(nm))) / 100 }
		if !yield(Text{X: units(math.Round(x)), Y: units(math.Round(y + float64(size*capitalHeight/2))), Size: max(0.01, units(size)), Text: text}) {
			return
		}
	}
}

// Sizes of letters.
const (
	capitalHeight  = 0.72 // of the size
	letterInRoom   = 1.1  // of the room round a letter's middle
	pairInRoom     = 0.95 // the same for a letter and a number
	largestInBlock = 0.09 // of a block's side
	largestInTop   = 0.03 // of the longer side of the top
)
