package svgout

import (
	"encoding/base64"
	"fmt"
	"image/png"

	"eighthturn/internal/quilt"
)

// photo is the photo that a fabric is painted with, nil where it is painted in its colour.
func (p *picture) photo(fabric int) *quilt.Photo {
	photo := p.Fabrics[fabric].Photo
	if !p.Prints || p.View != Colour || photo == nil || photo.Tile == nil {
		return nil
	}
	return photo
}

// cover is what a fabric is painted with where it is seen: its colour, or its print.
func (p *picture) cover(fabric int) string {
	if p.photo(fabric) == nil {
		return p.fill(fabric)
	}
	return fmt.Sprintf("url(#%sprint-%d)", p.Prefix, fabric+1)
}

// inTile is the part of a photo's width that its tile shows.
const inTile = 0.8

// prints defines the patterns of the fabrics that are painted with their photos. Each is the
// tile and its mirror images, so that no edge shows where one ends.
func (d *document) prints(shown []int) {
	var list []int
	for _, f := range shown {
		if d.photo(f) != nil {
			list = append(list, f)
		}
	}
	if len(list) == 0 {
		return
	}
	fmt.Fprintln(d.out, "<defs>")
	for _, f := range list {
		d.pattern(f)
	}
	fmt.Fprintln(d.out, "</defs>")
}

func (d *document) pattern(f int) {
	photo := d.photo(f)
	size := photo.Tile.Bounds().Size()
	width := pixels(photo.Across) * inTile
	height := width * float64(size.Y) / float64(size.X)
	id := fmt.Sprintf("%sprint-%d", d.Prefix, f+1)
	fmt.Fprintf(d.out, `<pattern id="%s" patternUnits="userSpaceOnUse" width="%s" height="%s">`+"\n", id, rounded(2*width), rounded(2*height))
	fmt.Fprintf(d.out, `<image id="%s-tile" width="%s" height="%s" preserveAspectRatio="none" xlink:href="data:image/png;base64,`, id, rounded(width), rounded(height))
	encoder := base64.NewEncoder(base64.StdEncoding, d.out)
	_ = png.Encode(encoder, photo.Tile) // the sink keeps the error, and a tile can be encoded
	_ = encoder.Close()
	fmt.Fprintln(d.out, `"/>`)
	for _, mirror := range [][2]int{{-1, 1}, {1, -1}, {-1, -1}} {
		fmt.Fprintf(d.out, `<use xlink:href="#%s-tile" transform="matrix(%d 0 0 %d %s %s)"/>`+"\n", id, mirror[0], mirror[1],
			rounded(width*float64(1-mirror[0])), rounded(height*float64(1-mirror[1])))
	}
	fmt.Fprintln(d.out, `</pattern>`)
}
