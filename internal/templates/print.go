package templates

import (
	"math"
	"slices"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Print is what a template shows of the print that its pieces are all cut from alike.
type Print struct {
	Place  int                // of the top's cuts, by index
	Fabric int                // by index
	Repeat measure.Point      // where a repeat of the cloth begins, on the template or beside it
	Turn   float64            // degrees clockwise by which the cloth lies turned there
	Motif  string             // what is cut there is called by its motif, "" of stripes that begin at one place
	Center measure.Point      // the middle of the motif
	Lines  [][2]measure.Point // the edges of stripes, where repeats begin, and through the middle of a motif along the cloth and across
}

// mostLines is up to how many lines of a print a template has: with more nobody could line it up.
const mostLines = 60

// onTemplate is a place of the cloth on a piece that is turned as its template is, by two of its corners.
type onTemplate struct {
	cloth, piece xy
	cos, sin     float64
}

func (o *onTemplate) at(x, y float64) xy {
	x, y = x-o.cloth.x, y-o.cloth.y
	return xy{o.piece.x + float64(x*o.cos) - float64(y*o.sin), o.piece.y + float64(x*o.sin) + float64(y*o.cos)}
}

// alongPrint turns the grain of pieces that are cut from a place of a print along the cloth as they lie on it.
func (g *gathered) alongPrint(top *quilt.Top) {
	if g.print < 0 {
		return
	}
	place, _ := top.PlaceSaid(g.patch)
	o := turnOf(&top.Patches[g.patch], place, g.finished)
	g.grain = xy{-o.sin, o.cos}
	if g.grain.y > 0 {
		g.grain = xy{o.sin, -o.cos}
	}
}

// turnOf is how a patch's cloth lies on its piece, whose finished outline is that of the patch corner for corner.
func turnOf(p *quilt.Patch, place quilt.ClothPlace, finished []xy) *onTemplate {
	onCloth := func(i int) (q xy) {
		q.x, q.y = place.OnCloth(float64(p.Outline[i].X), float64(p.Outline[i].Y))
		return q
	}
	a, b := unitOf(onCloth(0), onCloth(1)), unitOf(finished[0], finished[1])
	return &onTemplate{cloth: onCloth(0), piece: finished[0], cos: float64(a.x*b.x) + float64(a.y*b.y), sin: float64(a.x*b.y) - float64(a.y*b.x)}
}

// printOf is the print on a template's piece, whose finished and cut outlines lie as they will be drawn; corner for corner the
// finished one is that of a patch.
func printOf(top *quilt.Top, patch int, finished, cut []xy) *Print {
	p := &top.Patches[patch]
	place, _ := top.PlaceSaid(patch)
	o := turnOf(p, place, finished)
	c, cloth := top.CutOfPatch(patch), top.Fabrics[top.Faces[p.First].Fabric].Cloth
	made := &Print{Place: int(top.CutOf[patch]), Center: rounded([]xy{o.at(float64(place.Cloth.X), float64(place.Cloth.Y))})[0]}
	made.Motif, made.Fabric = c.Name(), int(top.Faces[p.First].Fabric)
	begins := func(at float64, again measure.NM) float64 { return math.Floor(at/float64(again)) * float64(again) }
	made.Repeat = rounded([]xy{o.at(begins(o.cloth.x, cloth.Across), begins(o.cloth.y, cloth.Down))})[0]
	made.Turn = math.Atan2(o.sin, o.cos) * 180 / math.Pi
	across, down := edgesOf(cloth)
	if cloth.Stripes == nil && c.Motif != "" {
		across, down = slices.Concat(across, edges{{at: c.Place.X}}), slices.Concat(down, edges{{at: c.Place.Y}})
	}
	grown := measure.NM(4 * (bound(cut).x + bound(cut).y))
	for _, e := range across {
		for x := range e.near(measure.NM(math.Round(o.cloth.x)), grown) {
			made.line(cut, o.at(float64(x), o.cloth.y-float64(grown)), o.at(float64(x), o.cloth.y+float64(grown)))
		}
	}
	for _, e := range down {
		for y := range e.near(measure.NM(math.Round(o.cloth.y)), grown) {
			made.line(cut, o.at(o.cloth.x-float64(grown), float64(y)), o.at(o.cloth.x+float64(grown), float64(y)))
		}
	}
	return made
}

// bound is the lower right corner of an outline's bounds.
func bound(outline []xy) (most xy) {
	for _, p := range outline {
		most = xy{max(most.x, p.x), max(most.y, p.y)}
	}
	return most
}

// edge is a line on a cloth, across or along it, and after how much cloth it comes again; 0 for never.
type edge struct{ at, again measure.NM }

type edges []edge

// near goes through where a line lies no further than so much from a place.
func (e edge) near(place, within measure.NM) func(yield func(measure.NM) bool) {
	return func(yield func(measure.NM) bool) {
		if e.again == 0 {
			yield(e.at)
			return
		}
		first := place - within
		first += ((e.at-first)%e.again + e.again) % e.again
		for at, n := first, 0; at <= place+within && n < 4*mostLines; at, n = at+e.again, n+1 {
			if !yield(at) {
				return
			}
		}
	}
}

// edgesOf are the lines of a print: of stripes their edges, else where repeats begin.
func edgesOf(c *quilt.Cloth) (across, down edges) {
	if c.Stripes == nil {
		return edges{{0, c.Across}}, edges{{0, c.Down}}
	}
	at := measure.NM(0)
	for _, s := range c.Stripes.List {
		across = append(across, edge{at, c.Stripes.Repeat()})
		at += s.Width
	}
	if c.Stripes.Crosswise {
		return nil, across
	}
	return across, nil
}

// line adds what of a line lies within the cut outline.
func (p *Print) line(cut []xy, from, to xy) {
	begin, end := 0.0, 1.0
	for i, a := range cut {
		b := cut[(i+1)%len(cut)]
		side := func(q xy) float64 { return float64((b.x-a.x)*(q.y-a.y)) - float64((b.y-a.y)*(q.x-a.x)) }
		u, v := side(from), side(to)
		switch {
		case u < 0 && v < 0:
			return
		case u < 0:
			begin = max(begin, u/(u-v))
		case v < 0:
			end = min(end, u/(u-v))
		}
	}
	if end-begin <= 0 || len(p.Lines) >= mostLines {
		return
	}
	on := func(part float64) xy {
		return xy{from.x + float64((to.x-from.x)*part), from.y + float64((to.y-from.y)*part)}
	}
	ends := rounded([]xy{on(begin), on(end)})
	p.Lines = append(p.Lines, [2]measure.Point{ends[0], ends[1]})
}

// crossArm is half of a cross on the middle of a motif.
const crossArm = measure.Inch / 8

// printLines are the lines of the print and the cross on its motif; none where pieces are cut from no place of a print.
func (t *Template) printLines() [][2]measure.Point {
	if t.Print == nil {
		return nil
	}
	list := slices.Clone(t.Print.Lines)
	if t.Print.Motif != "" {
		list = append(list, t.Print.cross()...)
	}
	return list
}

// cross is a cross on the middle of the motif.
func (p *Print) cross() [][2]measure.Point {
	c := p.Center
	return [][2]measure.Point{{{X: c.X - crossArm, Y: c.Y}, {X: c.X + crossArm, Y: c.Y}}, {{X: c.X, Y: c.Y - crossArm}, {X: c.X, Y: c.Y + crossArm}}}
}

// printMarks draws the lines of the print and the middle of its motif.
func (t *Template) printMarks(add func(diagram.Mark)) {
	if t.Print == nil {
		return
	}
	for _, l := range t.Print.Lines {
		add(diagram.Mark{Line: &diagram.Line{Points: l[:], Stroke: diagram.Repeat}})
	}
	if t.Print.Motif != "" {
		for _, l := range t.Print.cross() {
			add(diagram.Mark{Line: &diagram.Line{Points: l[:], Stroke: diagram.Cut}})
		}
	}
}
