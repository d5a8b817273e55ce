package report

import (
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt"
)

// Parts of the section SewingFinishing, in their order.
const (
	FinishingTop      = "finished-top"
	FinishingBacking  = "backing"
	FinishingBatting  = "batting"
	FinishingQuilting = "quilting"
	FinishingBinding  = "binding"
	FinishingLabel    = "label"
	FinishingWashing  = "washing"
)

// finishing words what comes after the top: backing, batting, quilting and binding.
type finishing struct {
	*cutting.Plan
	top   *quilt.Top
	units measure.System
}

// finishing is the section of it.
func (s *sewer) finishing() document.Section {
	f := &finishing{s.plans.Cuts(), s.top, s.units}
	out := document.Section{ID: SewingFinishing, Title: "Finishing", Depth: document.Detail}
	for _, part := range []document.Section{f.finished(), f.backing(), f.batting(), f.quilting(), f.binding(), f.label(), f.washing()} {
		if len(part.Blocks) > 0 {
			out.Blocks = append(out.Blocks, part)
		}
	}
	return out
}

func (f *finishing) finished() document.Section {
	return document.Section{ID: FinishingTop, Blocks: []document.Block{para("The top finishes at %s before quilting.", f.units.Size(f.top.Outer.Width(), f.top.Outer.Height()))}}
}

// backing is how the backing is pieced.
func (f *finishing) backing() document.Section {
	out := document.Section{ID: FinishingBacking, Title: "Backing"}
	k := f.Backing
	if k == nil {
		out.Blocks = []document.Block{para("Choose a backing that is larger than the top on all sides, to allow for quilting and trimming.")}
		return out
	}
	chosen := ""
	if f.BackingOf < 0 {
		chosen = "Choose a backing: " + f.units.Shop(f.BackingBuy.Buy) + " of fabric with " + f.units.Nearest(k.UsableWidth) + " usable WOF. "
	}
	out.Blocks = []document.Block{para(chosen+"Make the backing at least %s, which is %s beyond the top on each side. %s", f.units.ByAtLeast(k.WidthCut, k.HeightCut), f.units.Nearest(k.Overhang), f.panels(k))}
	return out
}

// panels says how a backing is pieced.
func (f *finishing) panels(k *supplies.Backing) string {
	way := &k.Ways[k.Less]
	panel := "at least " + f.units.AtLeast(way.PanelCut)
	if way.Panels == 1 {
		return "One length of " + panel + " of fabric " + f.units.Nearest(k.UsableWidth) + " wide is enough, with no seam."
	}
	text := "Cut off the selvages and cut " + measure.Count(way.Panels, "panel") + " " + panel + " long. "
	text += "Sew the panels together along the selvage sides, with a seam allowance of " + f.units.Nearest(k.Seam) + ", to make " + BackingSeams(k, k.Less) +
		"; full widths measure " + f.units.Nearest(way.Comes) + ", and " + f.noLess(way.AcrossCut) + " is needed."
	text += panelCliff(way, f.units) + " Press " + singular(way.Panels-1, "the seam", "the seams") + " open."
	if way.Split != nil {
		text += " To avoid a seam through the center, first cut one panel in half lengthwise; sew the halves to the outer sides, which makes one seam more."
	}
	return text
}

// noLess is a length that is cut exactly where a ruler shows it, and of which else more does no harm.
func (f *finishing) noLess(nm measure.NM) string {
	if _, on := measure.On(nm, f.units.Mark()); on {
		return f.units.Nearest(nm)
	}
	return "at least " + f.units.AtLeast(nm)
}

func (f *finishing) batting() document.Section {
	out := document.Section{ID: FinishingBatting, Title: "Batting"}
	if k := f.Batting; k != nil {
		out.Blocks = []document.Block{para("Cut the batting at least %s, which is %s beyond the top on each side.", f.units.ByAtLeast(k.WidthCut, k.HeightCut), f.units.Nearest(k.Overhang))}
	}
	return out
}

func (f *finishing) quilting() document.Section {
	return document.Section{ID: FinishingQuilting, Title: "Quilting", Blocks: []document.Block{para("Tape the backing down flat, wrong side up. Layer the batting on it, then the top, right side up. " +
		"Baste from the center outward with thread or pins. Quilt as desired, also from the center outward, removing pins before you reach them. Then trim the batting and backing even with the top.")}}
}

func (f *finishing) binding() document.Section {
	out := document.Section{ID: FinishingBinding, Title: "Binding"}
	k := f.Binding
	if k == nil {
		out.Blocks = []document.Block{para("Bind as desired; fabric for binding is not included in this pattern. Binding: %s", blank)}
		return out
	}
	out.Blocks = []document.Block{document.List{Marker: document.Numbered, Items: []document.Item{
		item("Join the " + measure.Count(k.Strips, "strip") + ", " + f.units.Nearest(k.StripCut) + " wide, end to end " + joinWords(k.Join) + ". Press the seams open. The perimeter is " + f.units.Nearest(k.Perimeter) +
			"; the binding takes at least " + f.units.AtLeast(k.Need) + ", including corners and joining the ends."),
		item("Fold the binding in half lengthwise, wrong sides together, and press."),
		item("Sew the binding to the front, raw edges aligned, leaving a tail at the start. At each corner stop one seam allowance from the edge and backstitch, fold the binding up at 45 degrees, then down even with the next edge, and start again at the edge."),
		item("Trim and join the tails to fit, then finish the seam. Fold the binding around to the back and sew it down by hand or machine."),
	}}, f.bindingFigures(k.Join == supplies.Diagonal)}
	if f.Copies > 1 && k.LengthCut > 0 {
		out.Blocks = append(out.Blocks, para("This binding is for one quilt; the cutting lists include the strips for all."))
	}
	return out
}

// label and washing are hints of the trade: common practice, no source.
func (f *finishing) label() document.Section {
	return document.Section{ID: FinishingLabel, Title: "Label", Blocks: []document.Block{paragraph("Sew a label to the back with the quilt's name, your name, the place and the date.")}}
}

func (f *finishing) washing() document.Section {
	return document.Section{ID: FinishingWashing, Title: "Washing", Blocks: []document.Block{paragraph("Wash in cold water on a gentle cycle with mild detergent; a color catcher in the first wash takes up loose dye. Dry flat, or tumble on low heat.")}}
}

// joinWords says how strips of a binding are joined.
func joinWords(j supplies.Join) string {
	if j == supplies.Diagonal {
		return "with diagonal seams: cross the strip ends at a right angle, right sides together, sew corner to corner and trim the seam allowance"
	}
	return "with straight seams"
}
