package templates

import (
	"math"
	"strconv"

	"eighthturn/internal/measure"
)

// notches are short lines from the raw edge inwards, along the seam lines as if they went on: each from a place on the cut outline,
// half of the way to the corner where the seam ends.
func (t *Template) notches() [][2]measure.Point {
	finished, cut := floats(t.Finished), floats(t.Cut)
	var list [][2]measure.Point
	for i, p := range finished {
		q := finished[(i+1)%len(finished)]
		for _, way := range [][2]xy{{p, q}, {q, p}} {
			out := unitOf(way[0], way[1])
			reach := rayOut(cut, way[1], out)
			ends := rounded([]xy{{way[1].x + out.x*reach, way[1].y + out.y*reach}, {way[1].x + out.x*reach/2, way[1].y + out.y*reach/2}})
			list = append(list, [2]measure.Point{ends[0], ends[1]})
		}
	}
	return list
}

// label is a line of text within a template.
type label struct {
	middle measure.Point
	height measure.NM // of its capitals; no letter is wider
	text   string
}

// labels are the template's name and, but for a piece on a mat, how many are cut, one line under the other, within the seam lines.
func (p laidPiece) labels() []label {
	at, room := p.nameplace()
	lines := []string{p.Name()}
	if !p.onMat {
		lines = append(lines, "cut "+strconv.Itoa(p.Count))
	}
	most := 0
	for _, l := range lines {
		most = max(most, len(l))
	}
	const high = 2.6 // two lines and the gap between, by the height of the capitals
	height := 2 * room / nameRoom / math.Hypot(float64(most), high)
	var list []label
	for i, l := range lines {
		y := measure.NM(math.Round(height * (high - 1) * (float64(i) - float64(len(lines)-1)/2)))
		list = append(list, label{p.point(at).Add(measure.Point{Y: y}), measure.NM(height), l})
	}
	return list
}
