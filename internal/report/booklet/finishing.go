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
	b.backing(para("The top finishes at %s, before quilting draws it in.", b.size(b.Top.Outer.Width(), b.Top.Outer.Height())))
	b.batting()
	b.add(heading(1, "Quilting"), para("Lay the backing wrong side up and tape it down flat, the batting on it, and the top right side up on both. "+
		"Baste from the middle outwards with thread or pins. Quilt as you like, from the middle outwards as well, and take the pins out before you come to them. Then trim batting and backing even with the top."))
	b.binding()
}

// backing is how the backing is pieced, below what stands above it.
func (b *patternBuilder) backing(above document.Block) {
	k := b.Cuts.Backing
	head := heading(1, "Backing")
	if k == nil {
		b.keep(above, head, para("Choose a backing that is larger than the top on all sides, so that quilting and trimming have something to spare."))
		return
	}
	way := &k.Ways[k.Less]
	b.keep(above, head, para("The backing is cut at least %s, which is %s beyond the top on each side. %s", b.sizeAtLeast(k.WidthCut, k.HeightCut), b.length(k.Overhang), b.panels(k, way)))
}

// panels says how a backing is pieced.
func (b *patternBuilder) panels(k *supplies.Backing, way *supplies.Pieced) string {
	panel := "at least " + b.atLeast(way.PanelCut)
	if way.Panels == 1 {
		return "One length of " + panel + " of cloth " + b.length(k.UsableWidth) + " wide is enough, with no seam."
	}
	text := "Cut off the selvages and cut " + count(way.Panels, "panel") + " " + panel + " long. Sew them together along the sides where the selvages were, with a seam allowance of " +
		b.length(k.Seam) + ", so that the seams run " + report.DirectionWord(k.Less) + "; whole widths come to " + b.length(way.Comes) + ", and " + b.noLess(way.AcrossCut) + " is needed."
	if way.Split != nil {
		text += " So that no seam runs through the middle, cut one panel in two along its length and sew the halves to the outer sides."
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
		b.add(para("Bind the quilt as you like: this pattern has no cloth for it in its lists."))
		return
	}
	join := "edge to edge"
	if k.Join == supplies.Diagonal {
		join = "on the slant, each strip across the next at a right angle, and cut the corners off"
	}
	b.add(document.List{Marker: document.Numbered, Items: []document.Item{
		item(document.Plain("Sew the " + count(k.Strips, "strip") + ", " + b.length(k.StripCut) + " wide, end to end " + join + ". Press the seams open. The quilt is " + b.length(k.Perimeter) +
			" round, and the binding takes at least " + b.atLeast(k.Need) + " with its corners and its joint; the strips in the cutting lists come to that and little more.")),
		item(document.Plain("Press the binding in half along its length, wrong sides together.")),
		item(document.Plain("Sew it to the front, cut edges together, and leave a tail at the beginning. At a corner stop a seam allowance before the edge, fold the binding up and down again on itself, and begin at the edge.")),
		item(document.Plain("Join the two tails to the length of the gap, sew the gap, fold the binding round to the back and sew it down by hand or machine.")),
	}})
	b.bindingFor(k)
}

// bindingFor says that a plan for several quilts has a binding for each.
func (b *patternBuilder) bindingFor(k *supplies.Binding) {
	if b.Cuts.Copies > 1 && k.LengthCut > measure.NM(0) {
		b.add(para("This is the binding of one quilt; the cutting lists have the strips of all."))
	}
}
