package pixels

import (
	"image"
	"math"
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// Tile is one repeat of a cloth, which comes over and over.
type Tile struct {
	Picture      *image.RGBA // opaque, with at least one pixel
	Across, Down measure.NM  // of cloth that it shows, above 0
}

// sheet is a tile at about the size of the print's own pixels, in linear light.
type sheet struct {
	width, height int
	light         []lanes // of full
	across, down  float64 // its pixels for a nanometer of cloth
}

// newSheet makes a tile's pixels as coarse as those of a print, which has so many for a nanometer of the top: each is the mean of
// those that it covers.
func newSheet(t *Tile, perNM float64) *sheet {
	b := t.Picture.Bounds()
	s := &sheet{width: coarser(b.Dx(), float64(t.Across)*perNM), height: coarser(b.Dy(), float64(t.Down)*perNM)}
	s.across, s.down = float64(s.width)/float64(t.Across), float64(s.height)/float64(t.Down)
	s.light = make([]lanes, s.width*s.height)
	var bytes [256]uint32
	for i := range bytes {
		bytes[i] = light(palettes.Colour{R: uint8(i)}.Linear().R)
	}
	columns, rows := sharesOf(b.Dx(), s.width), sharesOf(b.Dy(), s.height)
	for y := range s.height {
		for x := range s.width {
			var sum [3]float64
			for _, down := range rows[y] {
				at := t.Picture.PixOffset(b.Min.X+columns[x][0].pixel, b.Min.Y+down.pixel)
				for _, across := range columns[x] {
					pixel, part := t.Picture.Pix[at:at+3:at+3], float64(down.part*across.part)
					for c := range sum {
						sum[c] += float64(part * float64(bytes[pixel[c]]))
					}
					at += 4
				}
			}
			for c := range sum {
				s.light[y*s.width+x] |= lanes(math.Round(min(sum[c], full))) << (laneBits * c)
			}
		}
	}
	return s
}

// coarser is how many pixels a sheet has where its tile has some and the print shows it over others.
func coarser(pixels int, shown float64) int {
	return max(1, min(pixels, int(math.Ceil(shown))))
}

// partOf is by what part a pixel makes up a coarser one.
type partOf struct {
	pixel int
	part  float64
}

// sharesOf is what each of fewer pixels is made of.
func sharesOf(pixels, fewer int) [][]partOf {
	list := make([][]partOf, fewer)
	each := float64(pixels) / float64(fewer)
	for i := range list {
		from, to := float64(float64(i)*each), float64(float64(i+1)*each)
		for p := int(from); p < pixels && float64(p) < to; p++ {
			part := (math.Min(to, float64(p+1)) - math.Max(from, float64(p))) / each
			if part > 0 {
				list[i] = append(list[i], partOf{p, part})
			}
		}
	}
	return list
}

// shownCloth is a face that a sheet is seen in: where its pixels lie on the sheet.
type shownCloth struct {
	*sheet
	x, y           float64 // of the picture's corner, on the sheet
	xAcross, yDown float64 // what a pixel to the right, and one below, adds
	xDown, yAcross float64
}

// shownIn is a sheet as a face shows it.
func (p *Print) shownIn(s *sheet, at *quilt.ClothPlace) shownCloth {
	across := float64(p.Top.Outer.Width()) / float64(p.Quilt.Dx())
	down := float64(p.Top.Outer.Height()) / float64(p.Quilt.Dy())
	cos, sin := at.Directions()
	c := shownCloth{
		sheet: s, xAcross: float64(across*cos) * s.across, xDown: float64(down*sin) * s.across,
		yAcross: -float64(across*sin) * s.down, yDown: float64(down*cos) * s.down,
	}
	x, y := at.OnCloth(float64(p.Top.Outer.Min.X)-float64(float64(p.Quilt.Min.X)*across), float64(p.Top.Outer.Min.Y)-float64(float64(p.Quilt.Min.Y)*down))
	c.x, c.y = float64(x*s.across), float64(y*s.down)
	return c
}

// at is where on the sheet the middle of a pixel lies, counted from the middle of the sheet's first pixel and within it.
func (c *shownCloth) at(x, y int32) (across, down float64) {
	px, py := float64(x)+0.5, float64(y)+0.5
	across = c.x + float64(px*c.xAcross) + float64(py*c.xDown) - 0.5
	down = c.y + float64(px*c.yAcross) + float64(py*c.yDown) - 0.5
	return within(across, c.width), within(down, c.height)
}

// within is a place brought to the first repeat.
func within(v float64, size int) float64 {
	v -= float64(math.Floor(v/float64(size)) * float64(size))
	if v >= float64(size) || v < 0 { // by rounding alone
		return 0
	}
	return v
}

// lanes are the lights of the three colors side by side in one number, so that they are mixed at once. Each has room for a light, of
// full, times blends.
type lanes uint64

const (
	laneBits = 21
	lane     = lanes(full)
	allLanes = lane | lane<<laneBits | lane<<(2*laneBits)
)

// blends is how finely a place between two pixels of a sheet is known.
const (
	blendBits = 5
	blends    = 1 << blendBits
)

// mixedWith is the mixture with so many parts of another, of blends.
func (a lanes) mixedWith(b, parts lanes) lanes {
	return (a*(blends-parts) + b*parts) >> blendBits & allLanes
}

// split is the lights one by one.
func (a lanes) split() [3]uint32 {
	return [3]uint32{uint32(a & lane), uint32(a >> laneBits & lane), uint32(a >> (2 * laneBits) & lane)}
}

// look is the light at a place of the sheet: of the four pixels around it.
func (s *sheet) look(across, down float64) lanes {
	x, y := int(across), int(down)
	fx, fy := lanes((across-float64(x))*blends), lanes((down-float64(y))*blends)
	right, row := x+1, s.light[y*s.width:][:s.width]
	if right == s.width {
		right = 0
	}
	lower := y + 1
	if lower == s.height {
		lower = 0
	}
	below := s.light[lower*s.width:][:s.width]
	return row[x].mixedWith(row[right], fx).mixedWith(below[x].mixedWith(below[right], fx), fy)
}

// cloths is what a print's faces show where they are no plain colors.
type cloths struct {
	first int32 // paints from this one on are faces, by index
	faces []shownCloth
}

// newCloths looks where on its cloth each face lies; nil where all fabrics are plain.
func (p *Print) newCloths(first int) *cloths {
	if len(p.Tiles) == 0 || p.Image != nil {
		return nil
	}
	perNM := float64(p.Quilt.Dx()) / float64(p.Top.Outer.Width())
	sheets := make([]*sheet, len(p.Tiles))
	for f, t := range p.Tiles {
		if t != nil {
			sheets[f] = newSheet(t, perNM)
		}
	}
	k := &cloths{first: int32(first), faces: make([]shownCloth, len(p.Top.Faces))}
	for i := range p.Top.Faces {
		if s := sheets[p.Top.Faces[i].Fabric]; s != nil {
			k.faces[i] = p.shownIn(s, &p.Places[i])
		}
	}
	return k
}

// photos says whether some faces show more than stripes.
func (k *cloths) photos() bool {
	return k != nil && slices.ContainsFunc(k.faces, func(c shownCloth) bool { return c.sheet != nil && c.width > 1 && c.height > 1 })
}

// paint is the paint of a face.
func (k *cloths) paint(face int, fabric int32) int32 {
	if k == nil || k.faces[face].sheet == nil {
		return fabric
	}
	return k.first + int32(face)
}

// shows says whether some of what covers a pixel shows its cloth.
func (k *cloths) shows(list shares) bool {
	for _, s := range list {
		if s.paint >= k.first {
			return true
		}
	}
	return false
}

// clothRun paints a run of pixels of a row of which all are covered alike, by faces of which one at least shows its cloth.
func (b *brush) clothRun(line []byte, from, to int32, list shares, y int32) {
	size := b.depth.bytes()
	if len(list) == 1 && list[0].cover >= whole-hairline {
		b.oneCloth(line[int(from)*size:int(to)*size], from, y, &b.cloths.faces[list[0].paint-b.cloths.first])
		return
	}
	list = b.inks.completed(list)
	for x := from; x < to; x++ {
		copy(line[int(x)*size:], b.pixel(b.mixedCloth(list, x, y)))
	}
}

// mixedCloth is the color of what covers a pixel, in linear light, and how opaque it is.
func (b *brush) mixedCloth(list shares, x, y int32) (palettes.Colour, uint8) {
	var sum [3]uint64
	covered, all := uint64(0), uint64(0)
	for _, s := range list {
		all += uint64(s.cover)
		if b.inks.clear && s.paint == b.inks.background() {
			continue
		}
		covered += uint64(s.cover)
		var own [3]uint32
		if s.paint >= b.cloths.first {
			c := &b.cloths.faces[s.paint-b.cloths.first]
			own = c.look(c.at(x, y)).split()
		} else {
			own = b.inks.linear[s.paint]
		}
		for c := range sum {
			sum[c] += uint64(s.cover) * uint64(own[c])
		}
	}
	return b.inks.colourOf(sum, covered, all)
}

// oneCloth paints pixels that one face covers.
func (b *brush) oneCloth(line []byte, x, y int32, c *shownCloth) {
	size, encode := b.depth.bytes(), b.inks.encode
	across, down := c.at(x, y)
	width, height := float64(c.width), float64(c.height)
	stepX, stepY := within(c.xAcross, c.width), within(c.yAcross, c.height)
	for at := 0; at < len(line); at += size {
		l := c.look(across, down)
		line[at], line[at+1], line[at+2] = encode[l&lane], encode[l>>laneBits&lane], encode[l>>(2*laneBits)&lane]
		if size == 4 {
			line[at+3] = 255
		}
		if across += stepX; across >= width {
			across -= width
		}
		if down += stepY; down >= height {
			down -= height
		}
	}
}
