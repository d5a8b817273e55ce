package cutting

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
)

func (p *Plan) text(nm measure.NM) string { return p.Units.Nearest(nm) }

// fault says what cannot be cut, once.
func (p *Plan) fault(at Place, hint, format string, args ...any) {
	if f := (Fault{at, fmt.Sprintf(format, args...), hint}); !slices.Contains(p.Faults, f) {
		p.Faults = append(p.Faults, f)
	}
}

// noSize says that a line's piece cannot be cut from its strip in any way that a chart knows.
func (p *planning) noSize(line *Line) {
	hint := "make the blocks smaller"
	if line.Piece.Shape.Description().Sized == blocks.ByColumn {
		hint += ", or the pieces of the column shorter"
	}
	p.fault(line.Place, hint, "%s of this size is larger than charts go, %s", measure.WithArticle(line.Piece.Shape.String()), p.text(sizes.MaxLength))
}

// leastLine is the least line of a wedge rule, on one of its marks, with which the narrow edge of tumblers finishes at two
// seam allowances.
func (p *planning) leastLine() measure.NM {
	return measure.RoundUp(p.top.SideFinished+2*p.Seam+times(p.Seam, 1/tan22), p.Steps.Mark)
}

// slim warns of tumblers whose narrow edge all but vanishes.
func (p *planning) slim(line *Line) {
	narrow := line.Piece.LengthFinished - times(line.Piece.SideFinished, tan22)
	p.warn(line.Place, "write line "+measure.Number(p.leastLine(), p.Units)+", or more, or a greater length",
		"the narrow edge of these tumblers finishes %s, less than two seam allowances, and their seams will lie on top of each other", p.text(narrow))
}

// warn says what should be known before cutting.
func (p *Plan) warn(at Place, hint, format string, args ...any) {
	p.Warnings = append(p.Warnings, Fault{at, fmt.Sprintf(format, args...), hint})
}
