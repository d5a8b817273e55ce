package report

import (
	"regexp"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// explained is a word of the trade, or a short form, with what it means.
type explained struct {
	word, meaning string
	used          *regexp.Regexp
}

// tradeWords are all words of the trade that a pattern explains where it uses them.
func tradeWords() []explained {
	word := func(pattern, word, meaning string) explained {
		return explained{word, meaning, regexp.MustCompile(`(?i)\b` + pattern + `\b`)}
	}
	return []explained{
		word(`finish(?:ed|es)`, "Finished", "is the size after sewing, without seam allowances."),
		word(`unfinished`, "Unfinished", "is the size of a sewn unit including its outer seam allowances."),
		word(`cut`, "Cut", "is the size to cut, including seam allowances."),
		word(`usable width`, "Usable width", "is the width of fabric without the selvages, its tightly woven edges."),
		word(`wedges?`, "Wedge", "is a 45-degree triangle with a blunt tip; eight make a full circle."),
		word(`wedge rulers?`, "Wedge ruler", "is a 45-degree ruler in the shape of a wedge, with lines across it."),
		word(`kites?`, "Kite", "is a four-sided piece: two long sides meet in a sharp tip, two short sides in a square corner."),
		word(`background pieces?`, "Background piece", "is background fabric that squares off a wedge to make half a block."),
		word(`half-square triangles?`, "Half-square triangle", "is half of a square that is cut once on the diagonal."),
		word(`tumblers?`, "Tumbler", "is a piece with two parallel sides, one wide and one narrow, and two slanted sides."),
		word(`end pieces?`, "End piece", "is the piece that squares off the end of a column of tumblers."),
		word(`strip sets?`, "Strip set", "is several strips sewn together along their long edges and then subcut into pieces."),
		word(`posts?`, "Post", "is the square where sashes meet."),
		word(`nests?`, "Nest", "means that seams pressed in opposite directions lock together at the intersection."),
		word(`dog ears?`, "Dog ear", "is the tip of a seam allowance that extends past the end of a seam; trim it off."),
		word(`staystitch`, "Staystitch", "means to sew a line inside the seam allowance, through one layer, so that the edge does not stretch."),
		word(`bias`, "On the bias", "means diagonal to the threads of the fabric. Bias edges stretch: press them, do not push the iron."),
	}
}

// Terms explains the words of the trade that a text uses, and no others.
func Terms(text string) document.Section {
	var list document.List
	for _, w := range tradeWords() {
		if w.used.MatchString(text) {
			list.Items = append(list.Items, document.Item{Text: lead(w.word, "%s", w.meaning)})
		}
	}
	return document.Section{ID: "terms", Title: "Terms", Blocks: []document.Block{list}}
}

// shortForms are all short forms that a pattern may use.
func shortForms() []explained {
	unit := func(short, long string) explained {
		return explained{short, long, regexp.MustCompile(`[0-9] ` + short + `\b`)}
	}
	return []explained{
		unit("in", "inch or inches"), unit("ft", "foot or feet, of 12 inches each"), unit("yd", "yard or yards, of 36 inches each"), unit("mm", "millimeter or millimeters"),
		{"WOF", "width of fabric, without the selvages", regexp.MustCompile(`\bWOF\b`)},
		{"L*", "lightness, from 0 for black to 100 for white", regexp.MustCompile(`\bL\* [0-9]`)},
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
		if a.used.MatchString(text) {
			add(a.word, a.meaning)
		}
	}
	if n := len(p.Letters); n > 2 {
		add(p.Letters[0]+" to "+p.Letters[n-1], "the fabrics, as in the fabric table")
	} else {
		add(measure.List(p.Letters), "the fabrics, as in the fabric table")
	}
	return document.Section{ID: "abbreviations", Title: "Abbreviations", Blocks: []document.Block{t}}
}
