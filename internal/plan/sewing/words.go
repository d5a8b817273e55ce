package sewing

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/measure"
)

// Words say what a plan holds in words and numbers, for whoever shows it to a person.
type Words struct{ *Plan }

// Text is a length as people read it.
func (w Words) Text(nm measure.NM) string { return w.Units.Nearest(nm) }

// Mark is what lengths are rounded to.
func (w Words) Mark() string {
	if w.Units == measure.Centimetres {
		return "millimetre"
	}
	return w.Text(w.Units.Mark())
}

// Offset is by how much one corner leads, on rulers with inches and with millimetres.
func (w Words) Offset(l Length) string { return w.Units.WithMillimetres(max(l.NM, -l.NM)) }

// UpTo is a length that may be less.
func (w Words) UpTo(l Length) string { return w.Units.AtLeast(l.NM) }

// Size is across by down of something with four square corners.
func (w Words) Size(s Size) string { return w.Units.Size(s.Across.NM, s.Down.NM) }

// UnitSize is the size of a unit of a form: of a triangle its short sides, and of what is no rectangle the rectangle into
// which it fits.
func (w Words) UnitSize(f Form, s Size) string {
	size := w.Size(s)
	each, square := strings.CutSuffix(size, " square")
	switch {
	case f == Triangle && square:
		return "short sides " + each
	case f == Triangle:
		return "short sides " + strings.Replace(size, " by ", " and ", 1)
	case f == Rectangle:
		return size
	case square:
		return "fits in a square of " + each
	}
	return "fits in a rectangle of " + size
}

// StepLines is what is to be known of a step, line by line: what to do, the ends of its
// seams, trimming, size and check. What is true of several seams is said once.
func (w Words) StepLines(b *Block, s *Step) []string {
	list := []string{s.Do}
	for _, text := range w.seamLines(b, s) {
		if !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	if s.Before != nil {
		list = append(list, fmt.Sprintf("Trim: %s It may stand out by up to %s.", s.Trim, w.UpTo(s.StandsOut)))
	}
	if !b.Column && len(s.Joins) > 0 {
		text := "Size unfinished: " + w.UnitSize(s.Form, s.Unfinished)
		if s.Before != nil && w.Size(*s.Before) != w.Size(s.Unfinished) {
			text += "; before trimming " + w.UnitSize(s.Form, *s.Before)
		}
		list = append(list, text+".")
	}
	return append(list, "Check: "+s.Check+".")
}

// RoundLine is what happens where pieces of a block meet.
func (w Words) RoundLine(r *Round) string {
	if !r.Turns {
		return fmt.Sprintf("In the middle %d pieces meet. The seams cannot all turn round it, since %s. Pressed to one side %d layers lie there at most%s.", len(r.Pieces), r.WhyNot, r.Without, r.lastOpen())
	}
	return fmt.Sprintf("In the middle %d pieces meet. Turn all allowances one way round it: %d layers lie there at most. Sewn whole and pressed to one side it would be %d%s.", len(r.Pieces), r.Layers, r.Without, r.lastOpen())
}

// lastOpen is how many layers there are with the last seam pressed open, where that makes it less.
func (r *Round) lastOpen() string {
	if r.Last >= r.Without {
		return ""
	}
	return fmt.Sprintf("; with the last seam pressed open %d", r.Last)
}

// Noun is what blocks of a label are called: block or column.
func (b *Block) Noun() string {
	if b.Column {
		return "column"
	}
	return "block"
}

// Listed joins words as a sentence does: "a", "a and b", "a, b and c"; words that hold a
// comma are parted by semicolons.
func Listed(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	for _, word := range words {
		if strings.Contains(word, ",") {
			return strings.Join(words[:last], "; ") + "; and " + words[last]
		}
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// ClothCounts is cloths with how many pieces each gives.
func ClothCounts(cloths []string) string {
	var names, list []string
	counts := map[string]int{}
	for _, c := range cloths {
		if counts[c]++; counts[c] == 1 {
			names = append(names, c)
		}
	}
	for _, c := range names {
		list = append(list, fmt.Sprintf("%d %s", counts[c], c))
	}
	return Listed(list)
}

// counted is a number of things.
func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
