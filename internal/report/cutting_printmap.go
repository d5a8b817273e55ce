package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/palettes"
)

// fromPrint draws the strips that are lined up on a print: each sort of strip once, on as much cloth as its repeats take, strips along
// the cloth side by side.
func (d *clothMap) fromPrint(f *cutting.Fabric) {
	for i := range f.FromPrint {
		p := &f.FromPrint[i]
		if p.Lengthwise {
			d.lengths(f, p)
			continue
		}
		for _, l := range likes(p) {
			d.acrossPrint(f, p, l)
		}
	}
}

// betweenPrint draws the strips that lie between those lined up on the print.
func (d *clothMap) betweenPrint(f *cutting.Fabric) {
	for i := range f.Strips {
		if s := &f.Strips[i]; s.OnPrint {
			d.y += mapGap
			d.strip(s, 0)
			d.y += s.WidthCut
		}
	}
}

// mapGap is what lies between stretches of a map that do not follow on each other.
const mapGap = measure.Inch

// acrossPrint draws a strip from selvage to selvage, and the rest of the repeats that it lies in.
func (d *clothMap) acrossPrint(f *cutting.Fabric, p *cutting.FromPrint, l likeStrips) {
	s := l.first
	from, to := s.Min.Y, s.Max.Y
	if p.AlongCut > 0 {
		from -= s.Min.Y % p.AlongCut
		to = from + measure.RoundUp(to-from, p.AlongCut)
	}
	if d.y > 0 {
		d.y += mapGap
	}
	down := d.y - from
	d.onCloth(f, p, from, to, down)
	d.linedUpStrip(f, p, s, down)
	width := d.Units.Number(s.WidthCut)
	middle := (s.Min.Y+s.Max.Y)/2 + down
	d.beside(width, marginal{measure.Point{X: -f.UsableWidth / 100, Y: middle}, diagram.End, s.Max.Y - s.Min.Y, linesOf(s)})
	if l.times > 1 {
		d.beside(fmt.Sprintf("× %d", l.times), marginal{measure.Point{X: f.UsableWidth + f.UsableWidth/100, Y: middle}, diagram.Start, s.Max.Y - s.Min.Y, linesOf(s)})
	}
	d.y = to + down
}

// lengths draws strips along the cloth side by side.
func (d *clothMap) lengths(f *cutting.Fabric, p *cutting.FromPrint) {
	if len(p.Strips) == 0 {
		return
	}
	from := p.Strips[0].Min.Y
	if d.y > 0 {
		d.y += mapGap
	}
	down := d.y - from
	to := from
	for i := range p.Strips {
		to = max(to, p.Strips[i].Max.Y)
	}
	long := d.Units.Number(measure.RoundUp(to-from, d.Units.CutMark()))
	if most := d.mostDrawn(); to-from > most {
		to = from + most
		long = d.Units.Number(most) + " of " + long
	}
	d.onCloth(f, p, from, to, down)
	for i := range p.Strips {
		d.linedUpStrip(f, p, shortened(p, &p.Strips[i], to), down)
	}
	d.beside(long, marginal{measure.Point{X: -f.UsableWidth / 100, Y: (from+to)/2 + down}, diagram.End, to - from, p.Lines})
	if p.Times > 1 {
		d.beside(fmt.Sprintf("× %d", p.Times), marginal{measure.Point{X: f.UsableWidth + f.UsableWidth/100, Y: (from+to)/2 + down}, diagram.Start, to - from, p.Lines})
	}
	d.y = to + down
}

// mostDrawn is how much of strips along the cloth is drawn: they go on alike.
func (d *clothMap) mostDrawn() measure.NM {
	return d.Units.Usual(18*measure.Inch, 45*measure.Centimetre)
}

// shortened is as much of a strip as lies before a place along the cloth, with its whole pieces.
func shortened(p *cutting.FromPrint, s *cutting.FussyStrip, to measure.NM) *cutting.FussyStrip {
	if s.Max.Y <= to {
		return s
	}
	short := *s
	short.Max.Y = to
	short.Pieces = slices.DeleteFunc(slices.Clone(s.Pieces), func(piece cutting.FussyPiece) bool {
		return slices.ContainsFunc(p.CutOutline(piece), func(q measure.Point) bool { return q.Y > to })
	})
	return &short
}

// onCloth draws a stretch of cloth: its stripes, pale, or the grid of its repeat.
func (d *clothMap) onCloth(f *cutting.Fabric, p *cutting.FromPrint, from, to, down measure.NM) {
	whole := rectangle(0, from+down, f.UsableWidth, to-from)
	if d.print(f).Stripes != nil {
		d.striped(f, moved(whole, 0, -down), striping{down: down, pale: true})
		d.edge(whole)
		return
	}
	if d.cloth.unused != nil {
		d.mark(diagram.Mark{Area: &diagram.Area{Outline: whole, Fill: pale(d.color), Print: d.cloth.unused, Repeat: measure.Point{Y: down}}})
	}
	d.edge(whole)
	if p.AcrossCut > 0 {
		for x := p.AcrossCut; x < f.UsableWidth; x += p.AcrossCut {
			d.repeatLine(measure.Point{X: x, Y: from + down}, measure.Point{X: x, Y: to + down})
		}
	}
	if p.AlongCut > 0 {
		for y := from + p.AlongCut; y < to; y += p.AlongCut {
			d.repeatLine(measure.Point{X: 0, Y: y + down}, measure.Point{X: f.UsableWidth, Y: y + down})
		}
	}
}

// repeatLine is where a repeat of the print ends and the next begins.
func (d *clothMap) repeatLine(from, to measure.Point) {
	d.mark(diagram.Mark{Line: &diagram.Line{Points: []measure.Point{from, to}, Stroke: diagram.Repeat}})
}

// striping says how stripes are drawn: how far down from where they are on the cloth, pale or not, and what they stand for.
type striping struct {
	down measure.NM
	pale bool
	lit  []int
}

// striped draws the stripes of a part of a cloth.
func (d *clothMap) striped(f *cutting.Fabric, outline []measure.Point, how striping) {
	s := d.print(f).Stripes
	along := func(p measure.Point) measure.NM {
		if s.Crosswise {
			return p.Y
		}
		return p.X
	}
	first, last := along(outline[0]), along(outline[0])
	for _, p := range outline {
		first, last = min(first, along(p)), max(last, along(p))
	}
	for at, n := first-first%s.Repeat(), 0; at < last; n++ {
		stripe := s.List[n%len(s.List)]
		part := between(outline, along, at, at+stripe.Width)
		at += stripe.Width
		if len(part) < 3 {
			continue
		}
		fill := stripe.Colour
		if how.pale {
			fill = pale(fill)
		}
		d.mark(diagram.Mark{Lit: how.lit, Area: &diagram.Area{Outline: moved(part, 0, how.down), Fill: fill}})
	}
}

// pale is a color as cloth is drawn that is not used.
func pale(c palettes.Colour) palettes.Colour {
	lighter := func(v uint8) uint8 { return uint8(255 - (255-int(v))*2/5) }
	return palettes.Colour{R: lighter(c.R), G: lighter(c.G), B: lighter(c.B)}
}

// between is what of a convex outline lies between two places along the cloth or across it.
func between(outline []measure.Point, along func(measure.Point) measure.NM, from, to measure.NM) []measure.Point {
	behind := func(list []measure.Point, beyond func(measure.Point) measure.NM) (kept []measure.Point) {
		for i, p := range list {
			q := list[(i+1)%len(list)]
			a, b := beyond(p), beyond(q)
			if a >= 0 {
				kept = append(kept, p)
			}
			if (a > 0) != (b > 0) && a != 0 && b != 0 {
				part := float64(a) / float64(a-b)
				kept = append(kept, measure.Point{X: p.X + measure.NM(math.Round(float64(q.X-p.X)*part)), Y: p.Y + measure.NM(math.Round(float64(q.Y-p.Y)*part))})
			}
		}
		return kept
	}
	list := behind(outline, func(p measure.Point) measure.NM { return along(p) - from })
	return behind(list, func(p measure.Point) measure.NM { return to - along(p) })
}

// linedUpStrip draws a strip with its pieces, each with a cross on the middle of its motif.
func (d *clothMap) linedUpStrip(f *cutting.Fabric, p *cutting.FromPrint, s *cutting.FussyStrip, down measure.NM) {
	for _, piece := range s.Pieces {
		outline, lit := p.CutOutline(piece), []int{piece.Line}
		fill := diagram.Area{Outline: moved(outline, 0, down), Fill: d.color, Edge: diagram.Thin, Print: d.cloth.pieces, Repeat: measure.Point{Y: down}}
		if d.print(f).Stripes != nil {
			d.striped(f, outline, striping{down: down, lit: lit})
			fill.Clear, fill.Print = true, nil
		}
		d.mark(diagram.Mark{Lit: lit, Area: &fill})
		d.motif(piece, down)
	}
	d.edge(rectangle(s.Min.X, s.Min.Y+down, s.Max.X-s.Min.X, s.Max.Y-s.Min.Y))
	d.motifNames(f, p, s, down)
}

// crossArm is half of a cross on a motif.
const crossArm = measure.Inch / 4

// motif draws a cross on a motif's middle; nothing where a piece is cut from no motif.
func (d *clothMap) motif(piece cutting.FussyPiece, down measure.NM) {
	c := &d.plans.Top.Cuts[d.Lines[piece.Line].PrintPlace]
	if c.Motif == "" {
		return
	}
	at := measure.Point{X: c.Place.X + piece.By.X, Y: c.Place.Y + piece.By.Y + down}
	for _, arm := range []measure.Point{{X: crossArm}, {Y: crossArm}} {
		d.mark(diagram.Mark{Lit: []int{piece.Line}, Line: &diagram.Line{Points: []measure.Point{{X: at.X - arm.X, Y: at.Y - arm.Y}, at.Add(arm)}, Stroke: diagram.Gauge}})
	}
}

// motifNames are the names of a strip's motifs beside the first piece of each, where there is room up to the next piece.
func (d *clothMap) motifNames(f *cutting.Fabric, p *cutting.FromPrint, s *cutting.FussyStrip, down measure.NM) {
	named := map[int]bool{}
	for i, piece := range s.Pieces {
		c := &d.plans.Top.Cuts[d.Lines[piece.Line].PrintPlace]
		if c.Motif == "" || named[piece.Line] {
			continue
		}
		right, next := measure.NM(0), f.UsableWidth
		for _, q := range p.CutOutline(piece) {
			right = max(right, q.X)
		}
		for _, other := range s.Pieces[i+1:] {
			for _, q := range p.CutOutline(other) {
				next = min(next, q.X)
			}
		}
		if room := next - right - 2*crossArm; room > 0 {
			named[piece.Line] = true
			d.mark(diagram.Mark{Lit: []int{piece.Line}, Words: &diagram.Words{Text: c.Name(), At: measure.Point{X: right + crossArm, Y: c.Place.Y + piece.By.Y + down}, Points: labelPoints,
				Anchor: diagram.Start, Room: room, Across: 2 * measure.Inch, Optional: true, Plate: true}})
		}
	}
}

// printWords is the strips on a print for those who cannot see the map.
func (c *cuts) printWords(f *cutting.Fabric) []string {
	var list []string
	for i := range f.FromPrint {
		p := &f.FromPrint[i]
		var parts []string
		for _, l := range likes(p) {
			parts = append(parts, fmt.Sprintf("%s %s wide, each with %s", measure.Count(l.times, "strip"), c.length(l.first.WidthCut), c.fromStrip(p, l.first)))
		}
		list = append(list, "lined up on the print: "+strings.Join(parts, ", "))
	}
	return list
}
