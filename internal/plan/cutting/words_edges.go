package cutting

import (
	"fmt"

	"eighthturn/internal/measure"
)

// Edges says what binding, backing and batting take, a sentence each. Lengths are those of one quilt; where several are
// planned the sentences say so, and what all of them take.
func (w Words) Edges() []string {
	var list []string
	if w.Binding != nil {
		list = append(list, w.binding())
	}
	if w.Backing != nil {
		list = append(list, w.backing())
	}
	if w.Batting != nil {
		list = append(list, w.batting())
	}
	return list
}

// several is words for a plan of more than one quilt, "" for one.
func (w Words) several(format string, args ...any) string {
	if w.Copies == 1 {
		return ""
	}
	return fmt.Sprintf(format, args...)
}

func (w Words) binding() string {
	b := w.Binding
	return fmt.Sprintf("Binding%s: %s of %s cut, joined on the slant to at least %s: the quilt's edge and %s for corners and ends.%s",
		w.several(", for each quilt"), plural(b.Strips, "strip"), w.Length(b.StripCut), w.AtLeast(b.Need), w.Length(b.Need-b.Perimeter),
		w.several(" For all %d quilts these are %s.", w.Copies, plural(b.Strips*w.Copies, "strip")))
}

func (w Words) batting() string {
	b := w.Batting
	text := fmt.Sprintf("Batting%s: %s at the least", w.several(", for each quilt"), w.Units.ByAtLeast(b.WidthCut, b.HeightCut))
	if len(b.Packages) > 0 {
		k := &b.Packages[0]
		text += fmt.Sprintf("; the smallest package in the lists that holds it is %s, %s", k.Name, w.By(k.Size.Width, k.Size.Height))
	}
	return text + "."
}

func (w Words) backing() string {
	b := w.Backing
	way, names := b.Ways[b.Less], [2]string{"up and down", "across"}
	of := "Backing" + w.several(", for each quilt")
	text := fmt.Sprintf("%s: %s of %s, seams %s, takes %s; with seams %s it would take %s.", of, plural(way.Panels, "panel"), w.AtLeast(way.PanelCut),
		names[b.Less], w.AtLeast(way.LengthCut), names[1-b.Less], w.AtLeast(b.Ways[1-b.Less].LengthCut))
	if way.Panels == 1 {
		text = fmt.Sprintf("%s: one length of %s, with no seam.", of, w.AtLeast(way.PanelCut))
	}
	text += w.several(" For all %d quilts these are %s, and %s of cloth.", w.Copies, plural(way.Panels*w.Copies, "panel"), w.AtLeast(way.LengthCut*measure.NM(w.Copies)))
	if way.Cliff.Costs {
		text += fmt.Sprintf(" Measure the cloth first: %s less of usable width costs another panel.", w.Length(way.Cliff.Step))
	}
	return text
}
