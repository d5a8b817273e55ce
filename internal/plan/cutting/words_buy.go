package cutting

import (
	"fmt"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
)

// RoundingNote says what each fabric's length is rounded up to.
func (w Words) RoundingNote() string {
	step := (supplies.Buying{Units: w.Units}).Step()
	for i := range w.Fabrics {
		if s := w.Fabrics[i].Purchase.Step; s > 0 {
			step = s
			break
		}
	}
	return fmt.Sprintf("Each fabric is added up first%s and rounded once, up to the next %s; a length that is a whole number of these stays as it is.", w.added(), w.Shop(step))
}

// added says what each fabric's length is reckoned with beside what is cut from it, "" for nothing.
func (w Words) added() string {
	end, slips := w.Length(w.SquareUp)+" for squaring its end", w.Length(w.Spare)+" for slips"
	switch {
	case w.SquareUp > 0 && w.Spare > 0:
		return fmt.Sprintf(", with %s more than is cut from it (%s and %s),", w.Length(w.SquareUp+w.Spare), end, slips)
	case w.SquareUp > 0:
		return ", with " + end + ","
	case w.Spare > 0:
		return ", with " + slips + ","
	}
	return ""
}

// OnHand says how the cloth that there is compares with what is needed, "" if the layout does not say what there is.
func (w Words) OnHand(h *OnHand) string {
	switch {
	case h == nil:
		return ""
	case h.Enough:
		return w.Shop(h.HaveCut) + ", enough"
	}
	return w.Shop(h.HaveCut) + ", short by " + w.AtLeast(h.ShortCut)
}

// WaysToFit says what would make cloth on hand suffice, "" where nothing is short.
func (w Words) WaysToFit(f *Fabric) string {
	if f.OnHand == nil || f.OnHand.Enough {
		return ""
	}
	var parts []string
	for _, y := range f.OnHand.WaysToFit {
		switch {
		case y.Border >= 0:
			parts = append(parts, fmt.Sprintf("border %d %s wide finished", y.Border+1, w.Length(y.WidthFinished)))
		case y.StripCut > 0:
			parts = append(parts, fmt.Sprintf("strips of %s cut, for blocks of %s finished", w.Length(y.StripCut), w.Length(y.SideFinished)))
		default:
			parts = append(parts, fmt.Sprintf("blocks of %s finished", w.Length(y.SideFinished)))
		}
	}
	if len(parts) == 0 {
		return "no narrower border and no smaller block of at least half the size makes what is on hand enough"
	}
	return "what is on hand would be enough with " + strings.Join(parts, ", or with ") + "; everything else as it is"
}

// PrecutWords says which precuts would do instead: fat quarters of the plan's units, and strips. "" if none would.
func (w Words) PrecutWords(f *Fabric) string {
	var parts []string
	for _, c := range f.Precuts {
		switch {
		case c.Sort == supplies.StripPrecut:
			parts = append(parts, plural(c.Count, "strip")+" of "+measure.Text(c.Usable.Height, measure.Inches))
		case c.Sort != supplies.OtherPrecut && c.SoldIn(w.Units):
			parts = append(parts, plural(c.Count, "fat quarter"))
		}
	}
	return strings.Join(parts, " or ")
}
