package booklet

import (
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/report"
)

// finishingPart is backing, batting, quilting and binding.
func (b *patternBuilder) finishingPart() {
	b.part("Finishing", false)
	b.addNotes("finishing")
	b.backing(para("The top finishes at %s before quilting.", b.size(b.Top.Outer.Width(), b.Top.Outer.Height())))
	b.batting()
	b.add(heading(1, "Quilting"), para("Tape the backing down flat, wrong side up. Layer the batting on it, then the top, right side up. "+
		"Baste from the center outward with thread or pins. Quilt as desired, also from the center outward, removing pins before you reach them. Then trim the batting and backing even with the top."))
	b.binding()
}

// backing is how the backing is pieced, below what stands above it.
func (b *patternBuilder) backing(above document.Block) {
	k := b.Cuts.Backing
	head := heading(1, "Backing")
	if k == nil {
		b.keep(above, head, para("Choose a backing that is larger than the top on all sides, to allow for quilting and trimming."))
		return
	}
	way := &k.Ways[k.Less]
	b.keep(above, head, para("Cut the backing at least %s, which is %s beyond the top on each side. %s", b.sizeAtLeast(k.WidthCut, k.HeightCut), b.length(k.Overhang), b.panels(k, way)))
}

// panels says how a backing is pieced.
func (b *patternBuilder) panels(k *supplies.Backing, way *supplies.Pieced) string {
	panel := "at least " + b.atLeast(way.PanelCut)
	if way.Panels == 1 {
		return "One length of " + panel + " of fabric " + b.length(k.UsableWidth) + " wide is enough, with no seam."
	}
	text := "Cut off the selvages and cut " + count(way.Panels, "panel") + " " + panel + " long. Sew them together along the selvage sides, with a seam allowance of " +
		b.length(k.Seam) + ", to make " + report.DirectionWord(k.Less) + " seams; full widths measure " + b.length(way.Comes) + ", and " + b.noLess(way.AcrossCut) + " is needed."
	if way.Split != nil {
		text += " To avoid a seam through the center, cut one panel in half lengthwise and sew the halves to the outer sides."
	}
	return text + " Press these seams open."
}

func (b *patternBuilder) batting() {
	k := b.Cuts.Batting
	if k == nil {
		return
	}
	b.add(heading(1, "Batting"), para("Cut the batting at least %s, which is %s beyond the top on each side.", b.sizeAtLeast(k.WidthCut, k.HeightCut), b.length(k.Overhang)))
}

func (b *patternBuilder) binding() {
	k := b.Cuts.Binding
	b.add(heading(1, "Binding"))
	if k == nil {
		b.add(para("Bind as desired; fabric for binding is not included in this pattern."))
		return
	}
	join := "with straight seams"
	if k.Join == supplies.Diagonal {
		join = "with diagonal seams: cross the strip ends at a right angle, right sides together, sew corner to corner and trim the seam allowance"
	}
	b.add(document.List{Marker: document.Numbered, Items: []document.Item{
		item(document.Plain("Join the " + count(k.Strips, "strip") + ", " + b.length(k.StripCut) + " wide, end to end " + join + ". Press the seams open. The perimeter is " + b.length(k.Perimeter) +
			"; the binding takes at least " + b.atLeast(k.Need) + ", including corners and joining the ends. The strips in the cutting lists are little longer than that.")),
		item(document.Plain("Fold the binding in half lengthwise, wrong sides together, and press.")),
		item(document.Plain("Sew the binding to the front, raw edges aligned, leaving a tail at the start. At each corner stop one seam allowance from the edge, fold the binding up at 45 degrees, then down even with the next edge, and start again at the edge.")),
		item(document.Plain("Trim and join the tails to fit, then finish the seam. Fold the binding around to the back and sew it down by hand or machine.")),
	}})
	b.bindingFor(k)
}

// bindingFor says that a plan for several quilts has a binding for each.
func (b *patternBuilder) bindingFor(k *supplies.Binding) {
	if b.Cuts.Copies > 1 && k.LengthCut > measure.NM(0) {
		b.add(para("This binding is for one quilt; the cutting lists include the strips for all."))
	}
}
