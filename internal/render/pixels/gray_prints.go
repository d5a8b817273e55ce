package pixels

import (
	"image"
	"math"

	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// lit is the light of a top's faces: of its color, or place by place of its print.
type lit struct {
	top    *quilt.Top
	plain  []uint32 // by fabric, of full
	prints *cloths
	shares [3]uint64 // of the lights of the three colors in luminance, of 1 << shareBits
}

const shareBits = 20

// litOf is the light of a top at a size, with its prints as each piece shows them; nil where it shows none.
func litOf(t *quilt.Top, s Size, plain []uint32) *lit {
	tiles := tilesOf(t)
	if tiles == nil {
		return nil
	}
	whole := &Print{Top: t, Tiles: tiles, Places: t.ClothPlaces(), Size: s, Quilt: image.Rect(0, 0, s.Width, s.Height)}
	l := &lit{top: t, plain: plain, prints: whole.newCloths(len(t.Fabrics))}
	for c, one := range [3]palettes.Linear{{R: 1}, {G: 1}, {B: 1}} {
		l.shares[c] = uint64(math.Round(one.Luminance() * (1 << shareBits)))
	}
	return l
}

// tilesOf are the prints that a top shows, by fabric; nil where it shows none.
func tilesOf(t *quilt.Top) []*Tile {
	var list []*Tile
	looked := make([]bool, len(t.Fabrics))
	for i := range t.Faces {
		f := t.Faces[i].Fabric
		cloth := t.Fabrics[f].Cloth
		if cloth == nil || looked[f] {
			continue
		}
		looked[f] = true
		if picture := cloth.Picture(); picture != nil {
			if list == nil {
				list = make([]*Tile, len(t.Fabrics))
			}
			list[f] = &Tile{picture, cloth.Across, cloth.Down}
		}
	}
	return list
}

// fill fills a plane.
func (l *lit) fill(p *Plane) {
	newScanner(l.top, p.Size, planeLines).rows(planeLines, func() func(int, [][]span) {
		sums, covered := make([]uint32, p.Width), make([]uint32, p.Width)
		return func(row int, spans [][]span) {
			clear(sums)
			clear(covered)
			for _, line := range spans {
				for _, s := range line {
					l.add(sums, s, row)
					add(covered, s, 1)
				}
			}
			p.fill(row, sums, covered)
		}
	})
}

// add adds the light of a span of a row to that of its pixels, by the subpixels of each that it covers.
func (l *lit) add(sums []uint32, s span, row int) {
	cloth := &l.prints.faces[s.face]
	if cloth.sheet == nil {
		add(sums, s, l.plain[l.top.Faces[s.face].Fabric])
		return
	}
	for from := s.from; from < s.to; {
		x := from / subpixels
		to := min(s.to, (x+1)*subpixels)
		sums[x] += l.luminance(cloth.look(cloth.at(x, int32(row)))) * uint32(to-from)
		from = to
	}
}

// luminance is the relative luminance of lights, of full.
func (l *lit) luminance(of lanes) uint32 {
	sum := uint64(1 << (shareBits - 1))
	for c, light := range of.split() {
		sum += l.shares[c] * uint64(light)
	}
	return uint32(sum >> shareBits)
}
