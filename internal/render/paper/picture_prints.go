package paper

import (
	"bytes"
	"fmt"
	"image/png"
	"math"

	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pixels"
)

// inTile is the part of a photo's width that its tile shows.
const inTile = 0.8

// tileSize is how much cloth a fabric's tile and its mirror images show, in user units; 0 for a
// fabric that has no photo.
func tileSize(f *quilt.Fabric) xy {
	if f.Photo == nil || f.Photo.Tile == nil {
		return xy{}
	}
	size := f.Photo.Tile.Bounds().Size()
	width := 2 * inTile * userUnits(f.Photo.Across)
	return xy{width, width * float64(size.Y) / float64(size.X)}
}

// tiles are the photos of a picture's fabrics at a number of pixels a user unit, nil where
// none is shown.
func (p *Picture) tiles(across, down float64) []*pixels.Tile {
	if !p.Prints {
		return nil
	}
	var list []*pixels.Tile
	for f := range p.Top.Fabrics {
		laid := tileSize(&p.Top.Fabrics[f])
		if laid.x == 0 {
			continue
		}
		if list == nil {
			list = make([]*pixels.Tile, len(p.Top.Fabrics))
		}
		list[f] = &pixels.Tile{Picture: pixels.Mirrored(p.Top.Fabrics[f].Photo.Tile), Width: laid.x * across, Height: laid.y * down}
	}
	return list
}

// printed fills a mark's paths with the photo of a fabric: laid over and over, and cut off at
// the paths.
func (p *pdfPicture) printed(m *mark) error {
	if m.print > len(p.fabrics) || tileSize(&p.fabrics[m.print-1]).x == 0 {
		return fmt.Errorf("the picture is filled with photo %d, which is not there", m.print)
	}
	f := &p.fabrics[m.print-1]
	var file bytes.Buffer
	if err := png.Encode(&file, pixels.Mirrored(f.Photo.Tile)); err != nil {
		return err
	}
	paths := p.placed(m)
	laid := tileSize(f)
	from, to := extent(m.paths)
	p.clip(paths)
	for y := math.Floor(from.y/laid.y) * laid.y; y < to.y; y += laid.y {
		for x := math.Floor(from.x/laid.x) * laid.x; x < to.x; x += laid.x {
			p.image(fmt.Sprintf("print %d", m.print), file.Bytes(), p.at(xy{x, y}), laid.x*p.scale, laid.y*p.scale)
		}
	}
	p.unclip()
	return nil
}

// extent is the corners of what paths reach over, and a little more, for cloth that runs on
// into a bleed.
func extent(list []path) (from, to xy) {
	from, to = xy{math.Inf(1), math.Inf(1)}, xy{math.Inf(-1), math.Inf(-1)}
	for _, l := range list {
		for _, q := range l.points {
			from, to = xy{min(from.x, q.x), min(from.y, q.y)}, xy{max(to.x, q.x), max(to.y, q.y)}
		}
	}
	return from, to
}
