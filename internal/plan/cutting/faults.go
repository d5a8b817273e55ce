package cutting

import (
	"fmt"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
)

func (p *Plan) text(nm measure.NM) string { return p.Units.Nearest(nm) }

// fault says what cannot be cut.
func (p *Plan) fault(at Place, hint, format string, args ...any) {
	p.Faults = append(p.Faults, Fault{at, fmt.Sprintf(format, args...), hint})
}

// noSize says that a line's piece cannot be cut from its strip in any way that a chart knows.
func (p *planning) noSize(line *Line) {
	if line.Piece.Shape.Description().Sized == blocks.ByColumn {
		p.fault(line.Place, "write line "+measure.Number(p.leastLine(), p.Units)+", or more", "no wedge ruler cuts tumblers of this size from strips of %s: their narrow edge vanishes, or they are longer than %s",
			p.text(p.top.SideFinished+2*p.Seam), p.text(sizes.MaxLength))
		return
	}
	p.fault(line.Place, "make the blocks smaller", "a %s of this size is larger than charts go, %s", line.Piece.Shape, p.text(sizes.MaxLength))
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
