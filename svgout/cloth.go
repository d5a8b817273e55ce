package svgout

import (
	"fmt"
	"slices"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// cloth paints the fabrics so that nothing shows between them: what lies beneath the seams
// first, and then fabric after fabric.
func (p *picture) cloth() {
	shown := p.shown()
	if len(shown) == 0 {
		return
	}
	p.beneath(shown)
	for _, f := range slices.Backward(shown) {
		l := Layer{ID: fmt.Sprintf("fabric-%d", f+1), Name: p.Fabrics[f].Name, Part: Cloth, Style: Style{Fill: Fill{Kind: Fabric, Fabric: f}}}
		item := Item{Outlines: p.outlinesOf(p.faces[f])}
		if p.ByFabric {
			item.ID = fmt.Sprintf("cloth-%d", f+1)
		} else {
			item.Each = p.faceLabels(f)
		}
		l.Items = []Item{item}
		p.layer(l)
	}
}

// faceLabels name the faces of a fabric.
func (p *picture) faceLabels(f int) *Labels {
	list, name := p.faces[f], escaped(p.Fabrics[f].Name)
	return &Labels{
		ID:    func(b []byte, n int) []byte { return p.appendFaceID(b, int(list[n])) },
		Title: func(b []byte, n int) []byte { return p.appendFaceTitle(append(b, name...), int(list[n])) },
	}
}

// Seam lines are black, but white where the cloth on both sides is darker than this.
const darkCloth = 32 // CIE L*

// seamOpacity is that of seam lines.
const seamOpacity = 0.55

// stripStroke is the width of the lines within a strip set, as part of that of the others.
const stripStroke = 0.6

func black() *palettes.Colour { return &palettes.Colour{} }
func white() *palettes.Colour { return &palettes.Colour{R: 255, G: 255, B: 255} }

// seamLines draws every seam as a thin line.
func (p *picture) seamLines() {
	p.layer(Layer{ID: "seams", Name: "seam lines", Style: Style{Fill: Fill{Kind: Unfilled}, Opacity: seamOpacity, Caps: true},
		Items: append(p.seamsOf("piece-seams", p.Seams, p.stroke), p.seamsOf("strip-seams", p.StripSeams, p.stroke*stripStroke)...)})
}

// seamsOf draws seams as one path of dark and one of light lines.
func (p *picture) seamsOf(id string, seams []quilt.Seam, width float64) []Item {
	dark := make([]bool, len(p.Fabrics))
	for f := range p.Fabrics {
		dark[f] = p.Fabrics[f].Colour.Lightness() < darkCloth
	}
	byCloth := sorted(2, len(seams), func(i int) int {
		if dark[p.Faces[seams[i].A].Fabric] && dark[p.Faces[seams[i].B].Fabric] {
			return 1
		}
		return 0
	})
	var items []Item
	for i, ink := range []*palettes.Colour{black(), white()} {
		if list := byCloth[i]; len(list) > 0 {
			items = append(items, Item{ID: fmt.Sprintf("%s-%d", id, i+1), Style: Style{Line: ink, Width: width}, Open: true,
				Outlines: lines(len(list), func(n int) *quilt.Seam { return &seams[list[n]] })})
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
