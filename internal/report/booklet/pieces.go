package booklet

import (
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/report"
)

// counted is a number of a line's pieces with their name.
func (b *patternBuilder) counted(n int, line *cutting.Line) string {
	noun, of := report.PieceNoun(line)
	return count(n, noun) + of
}

// pieces is a line's pieces without a number.
func (b *patternBuilder) pieces(line *cutting.Line) string {
	noun, of := report.PieceNoun(line)
	return plural(noun) + of
}

// fabricName is a fabric of the cutting plan with its letter.
func (b *patternBuilder) fabricName(f *cutting.Fabric) string {
	return b.letters[f.Index] + " " + f.Name
}
