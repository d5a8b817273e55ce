package booklet

import (
	"slices"

	"eighthturn/internal/plan/cutting"
)

// pieceNoun is what a line's piece is called, and what stands behind its plural.
func (b *book) pieceNoun(line *cutting.Line) (noun, of string) {
	edging := b.Top.Patches[line.Patches[0]].Cell < 0
	switch {
	case line.Border >= 0 && !line.Piece.Shape.Description().Edging:
		return "corner square", " for " + b.borderName(line.Border)
	case line.Border >= 0:
		return "strip", " for " + b.borderName(line.Border)
	case edging && !line.Piece.Shape.Description().Edging:
		return "post", ""
	case edging:
		return "sash", ""
	}
	return line.Piece.Shape.String(), ""
}

// borderName names a border, from the inside out, as the cutting maps do.
func (b *book) borderName(n int) string { return "border " + numeral(n+1) }

// counted is a number of a line's pieces with their name.
func (b *book) counted(n int, line *cutting.Line) string {
	noun, of := b.pieceNoun(line)
	return count(n, noun) + of
}

// pieces is a line's pieces without a number.
func (b *book) pieces(line *cutting.Line) string {
	noun, of := b.pieceNoun(line)
	return plural(noun) + of
}

// setName names a strip set as the maps do.
func (b *book) setName(n int) string { return "strip set " + b.Cuts.SetName(n) }

// fabricName is a fabric of the cutting plan with its letter.
func (b *book) fabricName(f *cutting.Fabric) string { return b.letters[f.Index] + " " + f.Name }

// uses is what a fabric is for, each thing once.
func (b *book) uses(n int) []string {
	f := &b.Cuts.Fabrics[n]
	var list []string
	say := func(text string) {
		if !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	for _, at := range f.Lines {
		say(b.pieces(&b.Cuts.Lines[at]))
	}
	if slices.ContainsFunc(b.Cuts.Sets, func(s cutting.StripSet) bool { return inSet(&s, n) }) {
		say("strip sets")
	}
	if c := b.Top.CutFacts.Binding; c != nil && c.Fabric == f.Index {
		say("binding")
	}
	if b.Cuts.BackingOf == f.Index {
		say("backing")
	}
	return list
}

func inSet(s *cutting.StripSet, fabric int) bool {
	return slices.ContainsFunc(s.Bands, func(band cutting.Band) bool { return band.Fabric == fabric })
}
