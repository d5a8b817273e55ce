package report

import (
	"regexp"
	"slices"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// explained is a word of the trade, or a short form, with what it means.
type explained struct {
	word, meaning string
	stem          string         // what stands wherever it is used
	used          *regexp.Regexp // that it is used, from a letter before the stem to some behind it
}

// behindStem is how far behind its stem it is seen whether a word is used: the longest ending, and a letter more.
const behindStem = 4

// in says whether a text uses the word. It looks at the places of the stem alone: a pattern's text has megabytes.
func (e *explained) in(text string) bool {
	for at := 0; ; at++ {
		next := strings.Index(text[at:], e.stem)
		if next < 0 {
			return false
		}
		at += next
		from, end := max(0, at-1), at+len(e.stem)
		found := e.used.FindStringIndex(text[from:min(len(text), end+behindStem)])
		if found != nil && from+found[0] <= at && from+found[1] >= end { // else it is one that is cut off
			return true
		}
	}
}

// tradeWords are all words of the trade that a pattern explains where it uses them.
func tradeWords() []explained {
	word := func(pattern, word, meaning string) explained {
		stem, _, _ := strings.Cut(pattern, "(")
		return explained{word, meaning, stem, regexp.MustCompile(`\b` + pattern + `\b`)}
	}
	return []explained{
		word(`finish(?:ed|es)`, "Finished", "is the size after sewing, without seam allowances."),
		word(`unfinished`, "Unfinished", "is the size of a sewn unit including its outer seam allowances."),
		word(`cut`, "Cut", "is the size to cut, including seam allowances."),
		word(`usable width`, "Usable width", "is the width of fabric without the selvages, its tightly woven edges."),
		word(`wedge(s)?`, "Wedge", "is a 45-degree triangle with a blunt tip; eight make a full circle."),
		word(`wedge ruler(s)?`, "Wedge ruler", "is a 45-degree ruler in the shape of a wedge, with lines across it."),
		word(`kite(s)?`, "Kite", "is a four-sided piece: two long sides meet in a sharp tip, two short sides in a square corner."),
		word(`background piece(s)?`, "Background piece", "is background fabric that squares off a wedge to make half a block."),
		word(`half-square triangle(s)?`, "Half-square triangle", "is half of a square that is cut once on the diagonal."),
		word(`tumbler(s)?`, "Tumbler", "is a piece with two parallel sides, one wide and one narrow, and two slanted sides."),
		word(`end piece(s)?`, "End piece", "is the piece that squares off the end of a column of tumblers."),
		word(`strip set(s)?`, "Strip set", "is several strips sewn together along their long edges and then subcut into pieces."),
		word(`post(s)?`, "Post", "is the square where sashes meet."),
		word(`nest(s)?`, "Nest", "means that seams pressed in opposite directions lock together at the intersection."),
		word(`dog ear(s)?`, "Dog ear", "is the tip of a seam allowance that extends past the end of a seam; trim it off."),
		word(`staystitch`, "Staystitch", "means to sew a line inside the seam allowance, through one layer, so that the edge does not stretch."),
		word(`bias`, "On the bias", "means diagonal to the threads of the fabric. Bias edges stretch: press them, do not push the iron."),
	}
}

// Terms explains the words of the trade that a text uses, and no others.
func Terms(text string) document.Section {
	var list document.List
	text = strings.ToLower(text)
	for _, w := range tradeWords() {
		if w.in(text) {
			list.Items = append(list.Items, document.Item{Text: lead(w.word, "%s", w.meaning)})
		}
	}
	return document.Section{ID: "terms", Title: "Terms", Blocks: []document.Block{list}}
}

// shortForms are all short forms that a pattern may use.
func shortForms() []explained {
	unit := func(short, long string) explained {
		return explained{short, long, " " + short, regexp.MustCompile(`[0-9] ` + short + `\b`)}
	}
	return []explained{
		unit("in", "inch or inches"), unit("ft", "foot or feet, of 12 inches each"), unit("yd", "yard or yards, of 36 inches each"), unit("mm", "millimeter or millimeters"),
		{"WOF", "width of fabric, without the selvages", "WOF", regexp.MustCompile(`\bWOF\b`)},
		{"L*", "lightness, from 0 for black to 100 for white", "L* ", regexp.MustCompile(`\bL\* [0-9]`)},
		unit("cm", "centimeter or centimeters"), unit("m", "meter or meters, of 100 centimeters each"),
	}
}

// Abbreviations explains those that a text uses, and no others, and the letters that fabrics have.
func Abbreviations(p *Plans, text string) document.Section {
	t := table(words("Abbreviation"), words("Meaning"))
	t.Named = true
	add := func(short, long string) {
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(short)}, cell(long)}})
	}
	for _, a := range shortForms() {
		if a.in(text) {
			add(a.word, a.meaning)
		}
	}
	var letters []string
	for i, letter := range p.Letters {
		if !slices.Contains(p.Top.CutFacts.Unused, i) {
			letters = append(letters, letter)
		}
	}
	if n := len(letters); n > 2 {
		letters = []string{letters[0] + " to " + letters[n-1]}
	}
	add(measure.List(letters), "the fabrics, as in the fabric table")
	return document.Section{ID: "abbreviations", Title: "Abbreviations", Blocks: []document.Block{t}}
}
