package picture

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/render/pixels"
	"eighthturn/svgout"
)

// tiles are the prints of a scene's fabrics, nil where none is shown.
func tiles(s *svgout.Scene) []*pixels.Tile {
	if s.Places == nil {
		return nil
	}
	list := make([]*pixels.Tile, len(s.Paints))
	for f := range s.Paints {
		if p := s.Paints[f].Print; p != nil {
			list[f] = &pixels.Tile{Picture: p.Picture, Across: p.Across, Down: p.Down}
		}
	}
	return list
}

// lying is how cloth lies on a page, in user units: where its corner is, and which way a unit across it and one down it go.
type lying struct{ corner, across, down xy }

func lyingAs(m [6]float64) lying { return lying{xy{m[4], m[5]}, xy{m[0], m[1]}, xy{m[2], m[3]}} }

// at is the place of the page that a place of the cloth has.
func (l *lying) at(x, y float64) xy {
	return xy{l.corner.x + float64(x*l.across.x) + float64(y*l.down.x), l.corner.y + float64(x*l.across.y) + float64(y*l.down.y)}
}

// extent is the corners of what paths reach over, on the cloth.
func (l *lying) extent(list []path) (from, to xy) {
	from, to = xy{math.Inf(1), math.Inf(1)}, xy{math.Inf(-1), math.Inf(-1)}
	for _, p := range list {
		for _, q := range p.points {
			dx, dy := q.x-l.corner.x, q.y-l.corner.y
			x, y := float64(dx*l.across.x)+float64(dy*l.across.y), float64(dx*l.down.x)+float64(dy*l.down.y)
			from, to = xy{min(from.x, x), min(from.y, y)}, xy{max(to.x, x), max(to.y, y)}
		}
	}
	return from, to
}

// printed fills paths with a print as it lies there, over and over, and cut off at the paths (ISO 32000-1, 8.5.4).
func (p *page) printed(list []path, fabric int, as lying) error {
	print := p.scene.Paints[fabric].Print
	p.Operator("q")
	p.trace(list)
	p.Operator("W n")
	defer p.Operator("Q")
	from, to := as.extent(list)
	if bands := print.Bands(); bands != nil {
		p.bands(print, as, from, to)
		return nil
	}
	laid, err := p.laid(fabric, print)
	if err != nil {
		return err
	}
	for y := math.Floor(from.y/laid.size.y) * laid.size.y; y < to.y; y += laid.size.y {
		for x := math.Floor(from.x/laid.size.x) * laid.size.x; x < to.x; x += laid.size.x {
			corner := p.at(as.at(x-laid.margin.x, y-laid.margin.y))
			right := p.at(as.at(x+laid.size.x+laid.margin.x, y-laid.margin.y))
			lower := p.at(as.at(x-laid.margin.x, y+laid.size.y+laid.margin.y))
			p.ImageTurned(fmt.Sprintf("print %d%s", fabric+1, p.prefix), laid.file, corner, right, lower)
		}
	}
	return nil
}

// laidPrint is an image of one repeat or of several, and how much cloth it shows within its margin, in user units.
type laidPrint struct {
	file         []byte
	size, margin xy
}

// leastLaid is how much cloth an image shows at the least, in user units, so that few of them cover a piece.
const leastLaid = 2 * unitsPerInch

// laid is the image of a fabric's print, made once.
func (p *page) laid(fabric int, print *svgout.Print) (*laidPrint, error) {
	if l := p.prints[fabric]; l != nil {
		return l, nil
	}
	across, down := print.Size()
	timesX, timesY := max(1, math.Ceil(leastLaid/across)), max(1, math.Ceil(leastLaid/down))
	one := print.Picture.Bounds()
	whole := svgout.Print{Cloth: print.Cloth, Picture: laidOut(print.Picture, int(timesX), int(timesY))}
	var file bytes.Buffer
	if err := png.Encode(&file, whole.Margined()); err != nil {
		return nil, err
	}
	l := &laidPrint{file.Bytes(), xy{across * timesX, down * timesY}, xy{across * svgout.PrintMargin / float64(one.Dx()), down * svgout.PrintMargin / float64(one.Dy())}}
	p.prints[fabric] = l
	return l, nil
}

// laidOut is a picture so many times side by side and one below the other.
func laidOut(picture *image.RGBA, across, down int) *image.RGBA {
	b := picture.Bounds()
	if across == 1 && down == 1 {
		return picture
	}
	out := image.NewRGBA(image.Rect(0, 0, across*b.Dx(), down*b.Dy()))
	for y := range out.Rect.Dy() {
		from := picture.Pix[picture.PixOffset(b.Min.X, b.Min.Y+y%b.Dy()):][:4*b.Dx()]
		for x := range across {
			copy(out.Pix[out.PixOffset(x*b.Dx(), y):], from)
		}
	}
	return out
}

// bands fills what is to be seen of a striped cloth: each stripe goes on under those that follow it.
func (p *page) bands(print *svgout.Print, as lying, from, to xy) {
	repeat, _ := print.Size()
	along := func(q xy) float64 { return q.x }
	if print.Stripes.Crosswise {
		along = func(q xy) float64 { return q.y }
	}
	for at := math.Floor(along(from)/repeat) * repeat; at < along(to); at += repeat {
		for _, b := range print.Bands() {
			begin := at + b.Box.X + b.Box.Y
			if begin >= along(to) {
				break
			}
			corners := [4]xy{{begin, from.y}, {to.x, from.y}, to, {begin, to.y}}
			if print.Stripes.Crosswise {
				corners = [4]xy{{from.x, begin}, {to.x, begin}, to, {from.x, to.y}}
			}
			stripe := make([]measure.Vec, len(corners))
			for i, q := range corners {
				stripe[i] = p.at(as.at(q.x, q.y))
			}
			p.Colour(b.Fill.Colour, "rg")
			p.Outline(stripe, true)
			p.Operator("f")
		}
	}
}
