package contrast

// Verdict is whether a figure reads.
type Verdict string

const (
	Reads        Verdict = "reads"
	OutlineOnly  Verdict = "outline-only"   // its edge holds, its mass does not
	FromAfarOnly Verdict = "from-afar-only" // its mass holds, its edge does not
	Faint        Verdict = "faint"          // neither holds, though most of its edge can be seen from near
	Lost         Verdict = "lost"
	RunsOn       Verdict = "runs-on" // a border of the cloth that it is sewn to, or of a cloth like the ground's: it is meant not to show
)

// Shows says whether a figure can be seen in light and dark alone.
func (v Verdict) Shows() bool { return v != Faint && v != Lost }

const (
	// readsFrom is the score from which an outline holds, or a mass by itself: of a clear step seven tenths; our choice.
	readsFrom = 70
	// besideEdge is the score from which a mass holds whose outline holds: the blur takes some of it at the edge; our choice.
	besideEdge = 55
	// goneFrom is the part of an edge that must vanish for a figure to be lost, not faint; our choice.
	goneFrom = 0.5
	// faintFrom is the score of a mass from which a figure is faint and not lost, though most of its edge vanishes; our choice.
	faintFrom = 100.0 / 3
)

// verdict draws both scores together.
func verdict(f *Figure) Verdict {
	outline := f.Outline.Length > 0 && f.Outline.Score >= readsFrom
	mass := f.Mass != nil && (f.Mass.Score >= readsFrom || outline && f.Mass.Score >= besideEdge)
	switch {
	case f.Outline.Length == 0 && f.Outline.RunsOn > 0:
		return RunsOn
	case outline && (mass || f.Mass == nil), f.Outline.Length == 0 && mass:
		return Reads
	case outline:
		return OutlineOnly
	case mass:
		return FromAfarOnly
	case f.Outline.Length > 0 && float64(f.Outline.Broken) < goneFrom*float64(f.Outline.Length), f.Mass != nil && f.Mass.Score >= faintFrom,
		f.Outline.Length == 0 && f.Mass != nil && f.Mass.Hold > 0:
		return Faint
	}
	return Lost
}
