package contrast

import (
	"slices"

	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
)

// Again studies tops that are alike but for their fabrics, one after another: what lies where is found once. It is not to be used
// by two at a time.
type Again struct {
	Options
	Sign  *stop.Sign // ends the work; nil for never
	first *study
}

// Of is the study of a top without what it does not say of whether it reads: its pairs, marks and changes are left out.
func (a *Again) Of(t *quilt.Top) *Report {
	o := a.Options
	if own := t.Credits.Contrast; o.Contrast == nil && own != nil {
		o.Contrast = &Contrast{Soft: own.Soft, Clear: own.Clear}
	}
	if o.Prints == nil {
		o.Prints = photographed(t)
	}
	var s *study
	if a.first != nil && sameLie(a.first.Top, t) && slices.Equal(a.first.Prints, o.Prints) {
		s = a.first.recoloured(t)
		s.sign, s.sides, s.quick = a.Sign, s.sides.clone(), false // what verdicts are told with is wanted
	} else {
		s = newStudy(a.Sign, t, o)
		if a.first == nil {
			a.first = s
		}
	}
	r := &Report{Title: t.Title, Units: t.Units, Thresholds: s.thresholds(), Fabrics: s.fabrics()}
	r.Figures = s.figures()
	r.Stray = s.stray()
	r.Losses = losses(r.Figures, r.Stray)
	return r
}

// First takes over what another has found out of its first top.
func (a *Again) First(other *Again) { a.first = other.first }

// sameLie says whether two tops have the same fabrics, by index, in the same places.
func sameLie(a, b *quilt.Top) bool {
	if len(a.Faces) != len(b.Faces) || len(a.Fabrics) != len(b.Fabrics) || len(a.Faces) == 0 {
		return false
	}
	return &a.Faces[0] == &b.Faces[0]
}

// Better says which of two studies of like tops reads better, below 0 for the first: the one of which less is lost, then the one whose
// figures score higher.
func Better(a, b *Report) int {
	if lost, other := a.lost(), b.lost(); lost != other {
		return map[bool]int{true: -1, false: 1}[lost < other]
	}
	if score, other := a.score(), b.score(); score != other {
		return map[bool]int{true: -1, false: 1}[score > other]
	}
	return 0
}

// lost adds up the losses; one that is faint counts half.
func (r *Report) lost() float64 {
	sum := 0.0
	for i := range r.Losses {
		part := 1 + r.Losses[i].Part
		if r.Losses[i].Verdict == Faint {
			part /= 2
		}
		sum += part
	}
	return sum
}

// score is the mean of what holds of the figures' outlines and masses, 0 to 100, by how many there are; strips are a matter of taste.
func (r *Report) score() float64 {
	sum, count := 0.0, 0
	for i := range r.Figures {
		f := &r.Figures[i]
		if f.Sort == Strips || f.Verdict == RunsOn {
			continue
		}
		score := f.Outline.Score
		if f.Mass != nil {
			score = (score + f.Mass.Score) / 2
		}
		sum, count = sum+score*float64(f.Count), count+f.Count
	}
	return sum / float64(max(1, count))
}
