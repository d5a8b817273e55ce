package paper

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// Figure is the template as a diagram of true size: cut line, seam line, dots where seams
// begin and end, the arrow along the grain, its letter, and below it what it is and how many
// to cut of what.
func (t *Template) Figure(top *quilt.Top) *diagram.Figure {
	f := t.shapeFigure(top)
	letters := diagram.NewLettering()
	_, high := bounds(t.Cut)
	room := math.Max(float64(high.X)*diagram.TrueScale, leastCaption)
	y := float64(high.Y) + captionGap/diagram.TrueScale
	for i, text := range t.caption(top) {
		size, bold := captionSize, i == 0
		for _, line := range wrapped(letters, text, room, setting{size: size, bold: bold}) {
			y += size * 0.6 / diagram.TrueScale
			f.Marks = append(f.Marks, diagram.Mark{Words: &diagram.Words{Text: line, At: diagram.Point{Y: measure.NM(math.Round(y))}, Points: size, Anchor: diagram.Start, Bold: bold}})
			y += size * 0.6 / diagram.TrueScale
		}
	}
	return f
}

// Measures of captions and letters, in points.
const (
	captionSize  = 8.0
	captionGap   = 5.0
	leastCaption = 130.0
	largestName  = 26.0
)

// shapeFigure is the template without what stands below it.
func (t *Template) shapeFigure(top *quilt.Top) *diagram.Figure {
	low, high := bounds(t.Cut)
	f := &diagram.Figure{
		Title: "Template " + t.Name() + ": " + t.Shape.String(), TrueSize: true, Min: low, Max: high,
		Description: fmt.Sprintf("A %s at true size, right side up, with its cut line, its seam line %s within it, and an arrow along the straight grain.", t.Shape, top.Units.Nearest(top.Seam)),
	}
	add := func(m diagram.Mark) { f.Marks = append(f.Marks, m) }
	add(diagram.Mark{Area: &diagram.Area{Outline: t.Cut, Clear: true, Edge: diagram.Cut}})
	if top.Seam > 0 {
		add(diagram.Mark{Line: &diagram.Line{Points: append(append([]diagram.Point(nil), t.Finished...), t.Finished[0]), Stroke: diagram.Sew}})
	}
	for _, p := range t.Finished {
		add(diagram.Mark{Line: &diagram.Line{Points: []diagram.Point{p}, Stroke: diagram.Dimension, Start: diagram.Dot}})
	}
	add(diagram.Mark{Line: &diagram.Line{Points: t.Grain[:], Stroke: diagram.Grain, Start: diagram.Arrow, End: diagram.Arrow}})
	at, room := t.nameplace()
	add(diagram.Mark{Words: &diagram.Words{Text: t.Name(), At: at, Points: min(largestName, room*diagram.TrueScale*0.8), Anchor: diagram.Middle, Bold: true, Room: measure.NM(room), Halo: true}})
	return f
}

// nameplace is where the template's name stands and the room that it has there, in
// nanometres: beside the middle of the grain's arrow, on its wider side.
func (t *Template) nameplace() (diagram.Point, float64) {
	outline := make([]xy, len(t.Finished))
	for i, p := range t.Finished {
		outline[i] = xy{float64(p.X), float64(p.Y)}
	}
	a, b := xy{float64(t.Grain[0].X), float64(t.Grain[0].Y)}, xy{float64(t.Grain[1].X), float64(t.Grain[1].Y)}
	along := unitOf(a, b)
	best, most := middleOf(a, b), 0.0
	for _, part := range []float64{0.3, 0.4, 0.5, 0.6, 0.7} {
		on := xy{a.x + (b.x-a.x)*part, a.y + (b.y-a.y)*part}
		for _, aside := range []xy{{along.y, -along.x}, {-along.y, along.x}} {
			reach := rayOut(outline, on, aside)
			at := xy{on.x + aside.x*reach*0.5, on.y + aside.y*reach*0.5}
			if room := roomAt(outline, at, math.Inf(1)); room > most*1.001 {
				best, most = at, min(room, reach*0.5)
			}
		}
	}
	return diagram.Point{X: measure.NM(math.Round(best.x)), Y: measure.NM(math.Round(best.y))}, max(1, 1.6*most)
}

// rayOut is how far it is from a place within an outline to its edge.
func rayOut(outline []xy, from, way xy) float64 {
	least := math.Inf(1)
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		side := xy{q.x - p.x, q.y - p.y}
		cross := float64(way.x*side.y) - float64(way.y*side.x)
		if math.Abs(cross) < 1e-9 {
			continue
		}
		if t := (float64((p.x-from.x)*side.y) - float64((p.y-from.y)*side.x)) / cross; t > 0 {
			least = min(least, t)
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// roomAt is the distance from a place to the nearest side of an outline about it, no more
// than a most; 0 outside.
func roomAt(outline []xy, at xy, most float64) float64 {
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		d := unitOf(p, q)
		most = min(most, float64(d.x*(at.y-p.y))-float64(d.y*(at.x-p.x)))
	}
	return max(0, most)
}

// caption is what stands below a template: its name and shape, its size, what to cut.
func (t *Template) caption(top *quilt.Top) []string {
	lines := []string{t.Name() + ", " + t.Shape.String(), t.size(top), "Cut " + t.cloths(top) + "."}
	return lines
}

// size says how large the piece is, finished and cut.
func (t *Template) size(top *quilt.Top) string {
	low, high := bounds(t.Finished)
	_, cut := bounds(t.Cut)
	return fmt.Sprintf("Finished %s; the blunt template is %s, cut line to cut line.", top.Units.By(high.X-low.X, high.Y-low.Y), top.Units.By(cut.X, cut.Y))
}

// cloths says how many to cut of what.
func (t *Template) cloths(top *quilt.Top) string {
	var list []string
	for _, c := range t.Cloths {
		what := ""
		if c.Fabric >= 0 {
			what = top.Fabrics[c.Fabric].Name
		} else {
			what = "strip set " + top.Cloth.Sets[c.Set].Name
		}
		list = append(list, strconv.Itoa(c.Count)+" "+what)
	}
	return strings.Join(list, ", ")
}

// wrapped breaks a text into lines of a width in points; a word that is longer is broken too.
func wrapped(letters *diagram.Lettering, text string, width float64, s setting) []string {
	var list []string
	line := ""
	for _, word := range strings.Fields(text) {
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && letters.Width(longer, s.size, s.bold) > width {
			list = append(list, line)
			longer = word
		}
		line = longer
		for n := tooMany(letters, line, width, s); n > 0; n = tooMany(letters, line, width, s) {
			list, line = append(list, line[:n]), line[n:]
		}
	}
	return append(list, line)
}

// tooMany is how many bytes of a word fit into a width, where not all of them do; 0 where
// all do.
func tooMany(letters *diagram.Lettering, word string, width float64, s setting) int {
	sum := 0.0
	for at, r := range word {
		if sum += letters.Width(string(r), s.size, s.bold); sum > width && at > 0 {
			return at
		}
	}
	return 0
}
