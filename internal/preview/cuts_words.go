package preview

import (
	"fmt"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// cutWords puts a cutting plan into words.
type cutWords struct{ *cutting.Plan }

func (p cutWords) words() cutting.Words { return cutting.Words{Plan: p.Plan} }

func (p cutWords) shop(nm measure.NM) string { return p.words().Shop(nm) }

func (p cutWords) piece(line *cutting.Line) string { return p.words().PieceName(line) }

func (p cutWords) length(nm measure.NM) string { return p.words().Length(nm) }

// more is what else there is to say of a line, in small letters.
func (p cutWords) more(line *cutting.Line) string {
	w := p.words()
	parts := []string{"from " + w.Cloth(line)}
	piece := &line.Piece
	if piece.AlongExact != piece.AlongCut {
		parts = append(parts, "exactly "+w.Exact(piece.AlongExact)+" cut")
	}
	if piece.TrimCut > 0 {
		parts = append(parts, w.Length(piece.TrimCut)+" to trim after sewing")
	}
	if hands := w.Hands(line); hands != "" {
		parts = append(parts, hands)
	}
	if piece.RuleCut > 0 {
		parts = append(parts, "the rule of thumb says squares of "+w.Length(piece.RuleCut))
	}
	if kites := piece.KitesCut; kites > 0 && kites != piece.AlongCut {
		parts = append(parts, "by custom squares of "+w.Length(kites)+", with more to trim")
	}
	return strings.Join(parts, "; ")
}

// unit is the unit's short name behind a decimal.
func unitName(u measure.System) string {
	if u == measure.Centimetres {
		return "cm"
	}
	return "in"
}

// unbroken keeps numbers and their unit on one line.
func unbroken(size string) string {
	return strings.NewReplacer(" by ", " by ", " in", "\u00a0in", " cm", "\u00a0cm", " 1/", "\u00a01/", " 3/", "\u00a03/", " 5/", "\u00a05/", " 7/", "\u00a07/").Replace(size)
}

// plural is a number with its noun.
func plural(n int, noun string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case strings.HasSuffix(noun, "sh"), strings.HasSuffix(noun, "ch"):
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// lineNumbers are lines as people count them.
func lineNumbers(list []int) string { return cutting.LineNumbers(list, ", ") }
