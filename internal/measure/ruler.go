package measure

// Tolerance is how far a corner may lie from where exact arithmetic puts it: outlines are rounded to whole nanometres once.
// What compares corners or sides that were rounded several times allows a small multiple of it, and says how many roundings.
const Tolerance NM = 1

// Slack is how far a length may lie from a ruler's mark and still be meant to lie on it: sums of rounded lengths, such as a
// third of an inch taken three times, come to a few nanometres beside it.
const Slack = 20 * Tolerance

// The marks of rulers, finest first. Common practice, no source.

// Fine is the finest part of a length that is written exactly: a sixty-fourth of an inch, a tenth of a millimetre.
func (s System) Fine() NM { return s.Usual(Inch/64, Millimetre/10) }

// Mark is what rulers show, and what lengths are read to: a sixteenth of an inch, a millimetre.
func (s System) Mark() NM { return s.Usual(Inch/16, Millimetre) }

// CutMark is what lengths go up or down to of which more or less does no harm: an eighth of an inch, a millimetre.
func (s System) CutMark() NM { return s.Usual(Inch/8, Millimetre) }

// SlantMark is what the ends of a slanted cut are marked by: half of a mark in inches, which some rulers show.
func (s System) SlantMark() NM { return s.Usual(Inch/32, Millimetre) }

// ShopStep is what shops cut cloth by: an eighth of a yard, a tenth of a metre.
func (s System) ShopStep() NM { return s.Usual(Yard/8, Metre/10) }

// Usual is the one of two lengths that is usual in the system.
func (s System) Usual(inches, centimetres NM) NM {
	if s == Centimetres {
		return centimetres
	}
	return inches
}

// On says whether nm is meant to lie on a whole number of marks, and is that number of them.
func On(nm, mark NM) (NM, bool) {
	at := Nearest(nm, mark)
	return at, at-nm <= Slack && nm-at <= Slack
}

// RoundUp is the next whole number of steps at or above nm; step must be above 0.
func RoundUp(nm, step NM) NM {
	n := nm / step
	if n*step < nm {
		n++
	}
	return n * step
}

// roundDown is the next whole number of steps at or below nm; step must be above 0.
func roundDown(nm, step NM) NM { return -RoundUp(-nm, step) }

// Nearest is the whole number of steps nearest to nm, halves up; step must be above 0.
func Nearest(nm, step NM) NM {
	return RoundUp(nm-(step-1)/2, step)
}

// upToMark is the least length to measure out where nm is needed: nm itself where a ruler's mark shows it, and else the
// next CutMark above it.
func (s System) upToMark(nm NM) NM {
	if at, on := On(nm, s.Mark()); on {
		return at
	}
	return RoundUp(nm, s.CutMark())
}

// downToMark is the greatest length to measure out where there is nm: nm itself where a ruler's mark shows it, and else
// the next CutMark below it.
func (s System) downToMark(nm NM) NM {
	if at, on := On(nm, s.Mark()); on {
		return at
	}
	return roundDown(nm, s.CutMark())
}
