package cutting

import (
	"fmt"
	"strings"

	"eighthturn/finishing"
	"eighthturn/measure"
)

// RoundingNote says what each fabric's length is rounded up to.
func (w Words) RoundingNote() string {
	step := (finishing.Buying{Units: w.Units}).Step()
	for i := range w.Fabrics {
		if s := w.Fabrics[i].Purchase.Step; s > 0 {
			step = s
			break
		}
	}
	return fmt.Sprintf("Each fabric is added up first and rounded once, up to the next %s; a length that is a whole number of these stays as it is.", w.Shop(step))
}

// OnHand says how the cloth that there is compares with what is needed, "" if the layout does not say what there is.
func (w Words) OnHand(h *OnHand) string {
	switch {
	case h == nil:
		return ""
	case h.Enough:
		return w.ShopExact(h.HaveCut) + ", enough"
	}
	return w.ShopExact(h.HaveCut) + ", short by " + w.AtLeast(h.ShortCut)
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
		metric := strings.HasPrefix(c.Name, "metric")
		switch size, strip := strings.CutSuffix(c.Name, " strip"); {
		case strip && size[0] >= '0' && size[0] <= '9':
			parts = append(parts, plural(c.Count, "strip")+" of "+size)
		case strip, strings.HasSuffix(c.Name, "fat quarter") && metric == (w.Units == measure.Centimetres):
			parts = append(parts, plural(c.Count, strings.TrimPrefix(c.Name, "metric ")))
		}
	}
	return strings.Join(parts, " or ")
}

// Edges says what binding, backing and batting take, a sentence each.
func (w Words) Edges() []string {
	var list []string
	if b := w.Binding; b != nil {
		list = append(list, fmt.Sprintf("Binding: %s of %s cut, joined on the slant to at least %s: the quilt's edge and %s for corners and ends.",
			plural(b.Strips*w.Copies, "strip"), w.Length(b.StripCut), w.AtLeast(b.Need), w.Length(b.Need-b.Perimeter)))
	}
	if w.Backing != nil {
		list = append(list, w.backing())
	}
	if b := w.Batting; b != nil {
		text := fmt.Sprintf("Batting: %s by %s at the least", measure.Number(w.up(b.WidthCut), w.Units), w.AtLeast(b.HeightCut))
		if len(b.Packages) > 0 {
			k := &b.Packages[0]
			text += fmt.Sprintf("; the smallest package in the lists that holds it is %s, %s", k.Name, w.By(k.Size.Width, k.Size.Height))
		}
		list = append(list, text+".")
	}
	return list
}

func (w Words) backing() string {
	b := w.Backing
	way, names := b.Ways[b.Less], [2]string{"up and down", "across"}
	text := fmt.Sprintf("Backing: %s of %s, seams %s, takes %s; with seams %s it would take %s.", plural(way.Panels, "panel"), w.AtLeast(way.PanelCut),
		names[b.Less], w.AtLeast(way.LengthCut), names[1-b.Less], w.AtLeast(b.Ways[1-b.Less].LengthCut))
	if way.Panels == 1 {
		text = fmt.Sprintf("Backing: one length of %s, with no seam.", w.AtLeast(way.PanelCut))
	}
	if way.Cliff.Costs {
		text += fmt.Sprintf(" Measure the cloth first: %s less of usable width costs another panel.", w.Length(way.Cliff.Step))
	}
	return text
}
