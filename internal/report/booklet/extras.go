package booklet

import (
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/report"
	"eighthturn/palettes"
)

// maxToColour is how many pieces and strips a page can have that pencils are to colour.
const maxToColour = 30_000

// colouringPart is a page of the top in line.
func (b *patternBuilder) colouringPart() {
	if b.left(colouring) || len(b.Top.Patches)+len(b.Top.StripSeams) > maxToColour {
		return
	}
	b.part("Coloring page", true)
	b.add(para("Copy %s and color it to try out your own fabrics before you cut.", see("colouring")))
	b.add(document.Picture{Of: b.lineDrawing(), Caption: caption("colouring", "Coloring page."), Alternative: b.described("The quilt as a line drawing, without color"), Width: b.wholeWidth(), Least: minOf(b.Top.Outer.Width(), b.Top.Outer.Height())})
}

// left says whether a part is left out.
func (b *patternBuilder) left(part string) bool { return slices.Contains(b.Without, part) }

// wholeWidth is the width between the margins.
func (b *patternBuilder) wholeWidth() measure.NM { return b.paper().Width - 2*b.paper().Margin }

// valuePart is the top in the greys of its values with what they show.
func (b *patternBuilder) valuePart() {
	if b.Values == nil || b.left(greys) {
		return
	}
	b.part("Value study", true)
	b.add(para("%s shows the quilt in grayscale. %s %s", see("values"), b.shown(), b.unseen()))
	b.add(document.Picture{Of: b.picture(palettes.Colour.Grey), Caption: caption("values", "The quilt in grayscale."), Alternative: b.described("The quilt in grayscale"), Width: b.wholeWidth(), Least: minOf(b.Top.Outer.Width(), b.Top.Outer.Height())})
}

// shown is a sentence about the figures that light and dark show.
func (b *patternBuilder) shown() string {
	list := b.figuresWhere(showsInGrey)
	const most = 4
	switch {
	case len(b.Values.Figures) == 0:
		return "The layout has no webs, stars or rings to check."
	case len(list) == 0:
		return "In grayscale none of its figures show; the design depends on color."
	case len(list) > most:
		list = append(list[:most:most], "and more")
	}
	return "Still showing in grayscale: " + semicoloned(list) + "."
}

// unseen is a sentence about what light and dark do not show.
func (b *patternBuilder) unseen() string {
	lost := b.figuresWhere(lostInGrey)
	const most = 3
	if len(lost) > most {
		lost = append(lost[:most:most], "and more")
	}
	if len(lost) > 0 {
		return "Lost in grayscale: " + semicoloned(lost) + ". If you change a fabric, look there first."
	}
	if n := b.Values.Seams.CountBand[contrast.Vanishes.String()] - b.Values.Seams.CountInside[contrast.Vanishes.String()]; n > 0 {
		return "At " + count(n, "seam") + " where a line should show, the two fabrics are so close in value that the seam is hard to see."
	}
	return "Every seam between two fabrics still shows."
}

// showsInGrey says whether a figure shows in light and dark alone.
func showsInGrey(v contrast.Verdict) bool {
	return v == contrast.Reads || v == contrast.OutlineOnly || v == contrast.FromAfarOnly
}

func lostInGrey(v contrast.Verdict) bool { return v == contrast.Lost }

// figuresWhere are the names of the figures with a verdict, each once. Where some figures of one name show and others are lost,
// their names say how many they are and what they stand against.
func (b *patternBuilder) figuresWhere(is func(contrast.Verdict) bool) []string {
	var list []string
	for i := range b.Values.Figures {
		f := &b.Values.Figures[i]
		if !is(f.Verdict) {
			continue
		}
		list = append(list, b.figureApart(f))
	}
	return unique(list)
}

// figureApart is a figure's name, with as much more as tells those that show from those that are lost.
func (b *patternBuilder) figureApart(f *contrast.Figure) string {
	for _, name := range []func(*contrast.Figure) string{figureName, countedFigure} {
		if !b.bothWays(f, name) {
			return name(f)
		}
	}
	return countedFigure(f) + " (" + report.PlaceText(f.Weakest) + ")"
}

// bothWays says whether figures that are named as one is show, and others are lost.
func (b *patternBuilder) bothWays(like *contrast.Figure, name func(*contrast.Figure) string) bool {
	shows, lost := false, false
	for i := range b.Values.Figures {
		if f := &b.Values.Figures[i]; name(f) == name(like) {
			shows, lost = shows || showsInGrey(f.Verdict), lost || lostInGrey(f.Verdict)
		}
	}
	return shows && lost
}

// countedFigure is a figure's name with what it stands against, and of webs and stars how many there are.
func countedFigure(f *contrast.Figure) string {
	name := figureName(f)
	if f.Count > 0 && (f.Sort == contrast.Web || f.Sort == contrast.Star) {
		name = count(f.Count, string(f.Sort)) + " of " + fabricsText(f.Of)
	}
	if len(f.Against) > 0 && f.Sort != contrast.Alternation {
		name += " against " + fabricsText(f.Against)
	}
	return name
}

// semicoloned joins names as a sentence does, with semicolons where a name holds a comma or says what it stands against.
func semicoloned(names []string) string {
	last := len(names) - 1
	if last > 0 && slices.ContainsFunc(names, func(n string) bool { return strings.Contains(n, " against ") }) {
		return strings.Join(names[:last], "; ") + "; and " + names[last]
	}
	return measure.List(names)
}

// maxNamed is how many fabrics a figure's name lists.
const maxNamed = 3

// figureName is what a figure of the value study is, in words.
func figureName(f *contrast.Figure) string {
	of := "of " + fabricsText(f.Of)
	switch f.Sort {
	case contrast.Border:
		return "border " + numeral(f.Border) + " " + of
	case contrast.Sashes:
		return "the sashes " + of
	case contrast.Alternation:
		return "the rings " + of + " alternating with " + fabricsText(f.Against)
	case contrast.Strips:
		return "the strips " + of
	case contrast.Wheel:
		return "the rings " + of
	}
	return "the " + plural(string(f.Sort)) + " " + of
}

func fabricsText(names []string) string {
	if len(names) > maxNamed {
		return "many fabrics"
	}
	return listed(names)
}
