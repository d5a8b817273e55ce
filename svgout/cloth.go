package svgout

import (
	"fmt"
	"slices"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// cloth paints the fabrics so that nothing shows between them: what lies beneath the seams
// first, then fabric after fabric, and the borders in a layer of their own.
func (p *picture) cloth() {
	shown := p.shown()
	p.beneath(shown)
	borders := Layer{ID: "borders", Name: "borders", Part: Cloth}
	for _, f := range slices.Backward(shown) {
		within, border := p.parted(p.faces[f])
		fill := Style{Fill: Fill{Kind: Fabric, Fabric: f}}
		if len(within) > 0 {
			item := p.pieces(within, f)
			if item.Each == nil {
				item.ID = fmt.Sprintf("cloth-%d", f+1)
			}
			p.layer(Layer{ID: fmt.Sprintf("fabric-%d", f+1), Name: p.Fabrics[f].Name, Part: Cloth, Style: fill, Items: []Item{item}})
		}
		if len(border) > 0 {
			item := p.pieces(border, f)
			item.ID, item.Style = fmt.Sprintf("border-cloth-%d", f+1), fill
			borders.Items = append(borders.Items, item)
		}
	}
	if len(borders.Items) > 0 {
		p.layer(borders)
	}
}

// parted are faces that belong to no border, and those that do, which come last.
func (p *picture) parted(faces []int32) (within, border []int32) {
	first := slices.IndexFunc(faces, func(i int32) bool { return p.Patches[p.Faces[i].Patch].Border >= 0 })
	if first < 0 {
		return faces, nil
	}
	return faces[:first], faces[first:]
}

// pieces are faces of a fabric, as one outline or each by itself.
func (p *picture) pieces(faces []int32, fabric int) Item {
	item := Item{Outlines: p.outlinesOf(faces), Faces: faces}
	if !p.ByFabric {
		item.Each = p.faceLabels(faces, fabric)
	}
	return item
}

// faceLabels name faces of a fabric.
func (p *picture) faceLabels(list []int32, fabric int) *Labels {
	name := escaped(p.Fabrics[fabric].Name)
	return &Labels{
		ID:    func(b []byte, n int) []byte { return p.appendFaceID(b, int(list[n])) },
		Title: func(b []byte, n int) []byte { return p.appendFaceTitle(append(b, name...), int(list[n])) },
	}
}

// darkCloth is the CIE L* below which the seams of a fabric are drawn lighter than it, and else darker.
const darkCloth = 42

// seamPart is how much of black or white there is in the ink of a seam; the rest is the fabric's colour.
const seamPart = 0.45

// stripStroke is the width of the lines within a strip set, as part of that of the others.
const stripStroke = 0.6

func black() *palettes.Colour { return &palettes.Colour{} }
func white() *palettes.Colour { return &palettes.Colour{R: 255, G: 255, B: 255} }

// SeamInk is the colour of seam lines on a fabric of a colour: the fabric's own, darker, or on dark fabrics lighter.
func SeamInk(fabric palettes.Colour) palettes.Colour {
	to := black()
	if fabric.Lightness() < darkCloth {
		to = white()
	}
	mixed := func(a, b uint8) uint8 { return uint8(float64(a) + float64((float64(b)-float64(a))*seamPart) + 0.5) }
	return palettes.Colour{R: mixed(fabric.R, to.R), G: mixed(fabric.G, to.G), B: mixed(fabric.B, to.B)}
}

// seamLines draws every seam as a thin line.
func (p *picture) seamLines() {
	p.layer(Layer{ID: "seams", Name: "seam lines", Style: Style{Fill: Fill{Kind: Unfilled}, Joins: true, Caps: true},
		Items: append(p.seamsOf("piece-seams", p.Seams, p.stroke), p.seamsOf("strip-seams", p.StripSeams, p.stroke*stripStroke)...)})
}

// seamsOf draws seams by the lighter of their two fabrics, each fabric's as trails of one path and in the ink that suits it.
func (p *picture) seamsOf(id string, seams []quilt.Seam, width float64) []Item {
	light := make([]float64, len(p.Fabrics))
	for f := range light {
		light[f] = p.scene.Paints[f].Colour.Lightness()
	}
	byFabric := sorted(len(p.Fabrics), len(seams), func(i int) int {
		a, b := p.Faces[seams[i].A].Fabric, p.Faces[seams[i].B].Fabric
		if light[b] > light[a] || light[b] == light[a] && b < a {
			return int(b)
		}
		return int(a)
	})
	var items []Item
	for f, list := range byFabric {
		if len(list) > 0 {
			ink := SeamInk(p.scene.Paints[f].Colour)
			items = append(items, Item{ID: fmt.Sprintf("%s-%d", id, f+1), Style: Style{Line: &ink, Width: width}, Open: true,
				Outlines: trails(len(list), func(n int) *quilt.Seam { return &seams[list[n]] })})
		}
	}
	return items
}

// Colours and measures of marks. Heavy and light ones differ by width and dashes too, so
// that they are told apart without colour; a white edge parts them from any cloth.
const (
	heavyWidth = 4.5 // in strokes of seam lines
	lightWidth = 2
	markMargin = 2.5
	markDash   = 5
)

func markColour() *palettes.Colour { return &palettes.Colour{R: 0xc2, G: 0x18, B: 0x5b} }

// marks draws the heavy marks or the light ones.
func (p *picture) marks(list []mark, heavy bool) {
	var some []mark
	for _, m := range list {
		if m.heavy == heavy {
			some = append(some, m)
		}
	}
	if len(some) == 0 {
		return
	}
	l := Layer{ID: "marked-lightly", Name: "seams marked lightly", Style: Style{Fill: Fill{Kind: Unfilled}, Caps: true}}
	width, dash := lightWidth*p.stroke, markDash*p.stroke
	if heavy {
		l.ID, l.Name, width, dash = "marked", "seams marked", heavyWidth*p.stroke, 0
	}
	seams := lines(len(some), func(i int) *quilt.Seam { return &some[i].Seam })
	l.Items = []Item{
		{Style: Style{Line: white(), Width: width + markMargin*p.stroke}, Open: true, Outlines: seams},
		{Style: Style{Line: markColour(), Width: width, Dash: dash}, Open: true, Outlines: seams},
	}
	p.layer(l)
}
