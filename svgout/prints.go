package svgout

import (
	"bytes"
	"fmt"
	"image/png"

	"eighthturn/internal/quilt"
)

// inTile is the part of a photo's width that its tile shows.
const inTile = 0.8

// TileSize is the width and height of cloth that a photo's tile shows, in user units.
func TileSize(photo *quilt.Photo) (width, height float64) {
	size := photo.Tile.Bounds().Size()
	width = userUnits(photo.Across) * inTile
	return width, width * float64(size.Y) / float64(size.X)
}

// prints defines the patterns of the fabrics that are painted with their photos. Each is the
// tile and its mirror images, so that no edge shows where one ends.
func (d *document) prints() {
	var list []int
	for f := range d.Paints {
		if d.Paints[f].Photo != nil {
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
	photo := d.Paints[f].Photo
	width, height := TileSize(photo)
	id := fmt.Sprintf("%sprint-%d", d.prefix, f+1)
	fmt.Fprintf(d.out, `<pattern id="%s" patternUnits="userSpaceOnUse" width="%s" height="%s">`+"\n", id, rounded(2*width), rounded(2*height))
	fmt.Fprintf(d.out, `<image id="%s-tile" width="%s" height="%s" preserveAspectRatio="none" xlink:href="`, id, rounded(width), rounded(height))
	var tile bytes.Buffer
	_ = png.Encode(&tile, photo.Tile) // a tile can be encoded, and memory takes it
	d.data(tile.Bytes())
	fmt.Fprintln(d.out, `"/>`)
	for _, mirror := range [][2]int{{-1, 1}, {1, -1}, {-1, -1}} {
		fmt.Fprintf(d.out, `<use xlink:href="#%s-tile" transform="matrix(%d 0 0 %d %s %s)"/>`+"\n", id, mirror[0], mirror[1],
			rounded(width*float64(1-mirror[0])), rounded(height*float64(1-mirror[1])))
	}
	fmt.Fprintln(d.out, `</pattern>`)
}
