package report

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// Measures of a label, on paper.
const (
	labelWide   = 31 * measure.Inch / 10
	labelMargin = measure.Inch / 8
	labelLine   = measure.Inch / 5 // from one line of words to the next
	labelSwatch = 2 * measure.Inch / 5
	labelTitle  = 13.0 // points
	labelText   = 8.5

	mostLabelWebs = 8  // webs that a label names
	labelLetters  = 34 // of a line of words: as many as large print has room for
)

// UseLabels is what is done with the labels of sets.
const UseLabels = "Cut out the labels on their lines, and pin each to its set. Where a set is sewn more than once, copy its label."

// setLabels are labels to cut out and pin to the sets, one each.
func (c *cuts) setLabels() document.Section {
	s := section(SetLabelsID, "Labels for the sets", document.Detail)
	var g document.Gallery
	for i := range c.Dealt {
		for n := range c.Dealt[i].Sets {
			set := &c.Dealt[i].Sets[n]
			g.Pictures = append(g.Pictures, document.Figure{
				Draw: func() *diagram.Figure { return c.setLabel(set) }, Marks: c.supplied(), Width: labelWide, Least: labelWide,
				Alternative: c.labelInWords(set), About: c.patches(c.setLines(set.Set)),
			})
		}
	}
	if len(g.Pictures) == 0 {
		return s
	}
	return with(s, paragraph("The printed pattern has a label for each set, to cut out and pin to it."), g)
}

// setLabel is the label of a set: its name, its strips from the wide end, and the webs that it makes.
func (c *cuts) setLabel(set *cutting.DealtSet) *diagram.Figure {
	webs := c.websOf(set)
	if more := len(webs) - mostLabelWebs; more > 0 {
		webs = append(webs[:mostLabelWebs:mostLabelWebs], fmt.Sprintf("and %d more", more))
	}
	lines := 0
	for i := range webs {
		lines += len(labelLines(webs[i]))
	}
	f := &diagram.Figure{
		Description: c.labelInWords(set), NoLegend: true,
		Max: measure.Point{X: labelWide, Y: 2*labelMargin + labelLine*measure.NM(len(set.Fabrics)+lines+1) + labelMargin},
	}
	at := measure.Point{X: labelMargin, Y: labelMargin + labelLine/2}
	f.Marks = append(f.Marks,
		diagram.Mark{Area: &diagram.Area{Outline: rectangle(0, 0, f.Max.X, f.Max.Y), Clear: true, Edge: diagram.Thin}},
		labelWords(c.SetName(set.Set), at, labelTitle))
	at.Y += labelLine + labelMargin/2
	for _, fabric := range set.Fabrics {
		f.Marks = append(f.Marks,
			diagram.Mark{Area: &diagram.Area{Outline: rectangle(at.X, at.Y-labelLine/2, labelSwatch, labelLine), Fill: c.Fabrics[fabric].Colour, Edge: diagram.Thin}},
			labelWords(c.name(fabric), measure.Point{X: at.X + labelSwatch + labelMargin, Y: at.Y}, labelText))
		at.Y += labelLine
	}
	at.Y += labelMargin / 2
	for _, text := range webs {
		for n, line := range labelLines(text) {
			f.Marks = append(f.Marks, labelWords(line, measure.Point{X: at.X + measure.NM(min(n, 1))*labelMargin, Y: at.Y}, labelText))
			at.Y += labelLine
		}
	}
	return f
}

// labelInWords is a label for those who cannot see it.
func (c *cuts) labelInWords(set *cutting.DealtSet) string {
	return "label of " + c.setName(set.Set, false) + ": " + c.fabricNames(set.Fabrics)
}

// labelLines are the lines of a text on a label.
func labelLines(text string) (lines []string) {
	for _, word := range strings.Fields(text) {
		if last := len(lines) - 1; last >= 0 && utf8.RuneCountInString(lines[last]+" "+word) <= labelLetters {
			lines[last] += " " + word
			continue
		}
		lines = append(lines, word)
	}
	return lines
}

// labelWords are words that begin at a place and end within the label.
func labelWords(text string, at measure.Point, points float64) diagram.Mark {
	return diagram.Mark{Words: &diagram.Words{Text: text, At: at, Points: points, Bold: points == labelTitle, Anchor: diagram.Start, Room: labelWide - labelMargin - at.X}}
}
