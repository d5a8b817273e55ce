package picture

import (
	"bytes"
	"fmt"
	"image/png"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pixels"
	"eighthturn/svgout"
)

// laidSize is how much cloth a photo's tile and its mirror images show, in user units.
func laidSize(photo *quilt.Photo) xy {
	width, height := svgout.TileSize(photo)
	return xy{2 * width, 2 * height}
}

// tiles are the photos of a scene's fabrics at a number of pixels a user unit, nil where none
// is shown.
func tiles(s *svgout.Scene, across, down float64) []*pixels.Tile {
	var list []*pixels.Tile
	for f := range s.Paints {
		photo := s.Paints[f].Photo
		if photo == nil {
			continue
		}
		if list == nil {
			list = make([]*pixels.Tile, len(s.Paints))
		}
		laid := laidSize(photo)
		list[f] = &pixels.Tile{Picture: pixels.Mirrored(photo.Tile), Width: laid.x * across, Height: laid.y * down}
	}
	return list
}

// printed fills paths with the photo of a fabric: laid over and over, and cut off at the paths
// (ISO 32000-1, 8.5.4).
func (p *page) printed(list []path, photo *quilt.Photo, fabric int) error {
	var file bytes.Buffer
	if err := png.Encode(&file, pixels.Mirrored(photo.Tile)); err != nil {
		return err
	}
	laid := laidSize(photo)
	from, to := extent(list)
	p.Operator("q")
	p.trace(list)
	p.Operator("W n")
	for y := math.Floor(from.y/laid.y) * laid.y; y < to.y; y += laid.y {
		for x := math.Floor(from.x/laid.x) * laid.x; x < to.x; x += laid.x {
			at := p.at(xy{x, y})
			p.Image(fmt.Sprintf("print %d%s", fabric+1, p.prefix), file.Bytes(), measure.Vec{X: at.X, Y: at.Y}, laid.x*p.scale, laid.y*p.scale)
		}
	}
	p.Operator("Q")
	return nil
}

// extent is the corners of what paths reach over.
func extent(list []path) (from, to xy) {
	from, to = xy{math.Inf(1), math.Inf(1)}, xy{math.Inf(-1), math.Inf(-1)}
	for _, l := range list {
		for _, q := range l.points {
			from, to = xy{min(from.x, q.x), min(from.y, q.y)}, xy{max(to.x, q.x), max(to.y, q.y)}
		}
	}
	return from, to
}
