package booklet

import (
	"slices"

	"eighthturn/measure"
	"eighthturn/pages"
	"eighthturn/palettes"
	"eighthturn/values"
)

// mostToColour is how many pieces and strips a page can have that pencils are to colour.
const mostToColour = 30_000

// colouringPart is a page of the top in line.
func (b *book) colouringPart() {
	if b.left(colouring) || len(b.Top.Patches)+len(b.Top.StripSeams) > mostToColour {
		return
	}
	b.part("A page to colour", true)
	b.add(para("%s is for pencils: copy the page and try your own fabrics before you cut into them.", see("colouring")))
	b.add(pages.Picture{Of: b.lineDrawing(), Caption: caption("colouring", "The quilt in line."), Alternative: b.described("The quilt in line, without colours"), Width: b.wholeWidth(), Least: leastOf(b.Top.Outer.Width(), b.Top.Outer.Height())})
}

// left says whether a part is left out.
func (b *book) left(part string) bool { return slices.Contains(b.Without, part) }

// wholeWidth is the width between the margins.
func (b *book) wholeWidth() measure.NM { return b.paper().Width - 2*b.paper().Margin }

// valuePart is the top in the greys of its values with what they show.
func (b *book) valuePart() {
	if b.Values == nil || b.left(greys) {
		return
	}
	b.part("Light and dark", true)
	b.add(para("%s shows the quilt in the greys of its fabrics. %s %s", see("values"), b.shown(), b.unseen()))
	b.add(pages.Picture{Of: b.picture(palettes.Colour.Grey), Caption: caption("values", "The quilt in the greys of its values."), Alternative: b.described("The quilt in greys"), Width: b.wholeWidth(), Least: leastOf(b.Top.Outer.Width(), b.Top.Outer.Height())})
}

// shown is a sentence about the figures that light and dark show.
func (b *book) shown() string {
	var list []string
	for i := range b.Values.Figures {
		f := &b.Values.Figures[i]
		if f.Verdict == values.Reads || f.Verdict == values.OutlineOnly || f.Verdict == values.FromAfarOnly {
			list = append(list, figureName(f))
		}
	}
	list = unique(list)
	const most = 4
	switch {
	case len(b.Values.Figures) == 0:
		return "The layout has no webs, stars or rings that light and dark would have to show."
	case len(list) == 0:
		return "Light and dark alone show none of its figures, so it lives by its colours."
	case len(list) > most:
		list = append(list[:most:most], "more besides")
	}
	return "Light and dark alone show " + listed(list) + "."
}

// unseen is a sentence about what light and dark do not show.
func (b *book) unseen() string {
	var lost []string
	for i := range b.Values.Figures {
		if f := &b.Values.Figures[i]; f.Verdict == values.Lost {
			lost = append(lost, figureName(f))
		}
	}
	lost = unique(lost)
	const most = 3
	if len(lost) > most {
		lost = append(lost[:most:most], "more besides")
	}
	if len(lost) > 0 {
		return "What they lose is " + listed(lost) + ": if you change a fabric, look there first."
	}
	if n := b.Values.Seams.CountBand[values.Vanishes.String()] - b.Values.Seams.CountInside[values.Vanishes.String()]; n > 0 {
		return "At " + count(n, "seam") + " where a line should show the two fabrics are so alike in value that the seam is hard to see."
	}
	return "No seam between two fabrics is lost in it."
}

// mostNamed is how many fabrics a figure's name lists.
const mostNamed = 3

// figureName is what a figure of the value study is, in words.
func figureName(f *values.Figure) string {
	of := "of " + fabricsText(f.Of)
	switch f.Sort {
	case values.Border:
		return "border " + numeral(f.Border) + " " + of
	case values.Sashes:
		return "the sashes " + of
	case values.Alternation:
		return "the rings " + of + " by turns with " + fabricsText(f.Against)
	case values.Strips:
		return "the strips " + of
	case values.Wheel:
		return "the rings " + of
	}
	return "the " + plural(string(f.Sort)) + " " + of
}

func fabricsText(names []string) string {
	if len(names) > mostNamed {
		return "many fabrics"
	}
	return listed(names)
}
