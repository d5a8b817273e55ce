package booklet

import (
	"regexp"
	"slices"
	"strings"

	"eighthturn/internal/document"
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
		word(`stop pieces?`, "Stop piece", "is the background piece that fills the rest of the half-block."),
		word(`tumblers?`, "Tumbler", "is a piece with two parallel sides, one wide and one narrow, and two slanted sides."),
		word(`end pieces?`, "End piece", "is the piece that squares off the end of a column of tumblers."),
		word(`strip sets?`, "Strip set", "is several strips sewn together along their long edges and then subcut into pieces."),
		word(`posts?`, "Post", "is the square where sashes meet."),
		word(`nests?`, "Nest", "means that seams pressed in opposite directions lock together at the intersection."),
		word(`dog ears?`, "Dog ear", "is the tip of a seam allowance that extends past the end of a seam; trim it off."),
		word(`bias`, "On the bias", "means diagonal to the threads of the fabric. Bias edges stretch: press them, do not push the iron."),
	}
}

// glossary explains the words of the trade that the rest of the pattern uses, and no others.
func glossary(text string) []document.Item {
	var items []document.Item
	for _, w := range tradeWords() {
		if w.used.MatchString(text) {
			items = append(items, item(lead(w.word, "%s", w.meaning)))
		}
	}
	return items
}

// shortForms are all short forms that a pattern may use.
func shortForms() []explained {
	unit := func(short, long string) explained {
		return explained{short, long, regexp.MustCompile(`[0-9] ` + short + `\b`)}
	}
	return []explained{
		unit("in", "inch or inches"), unit("yd", "yard or yards, of 36 inches each"), unit("mm", "millimeter or millimeters"),
		{"WOF", "width of fabric, without the selvages", regexp.MustCompile(`\bWOF\b`)},
		unit("cm", "centimeter or centimeters"), unit("m", "meter or meters, of 100 centimeters each"),
	}
}

// saidIn is all that the parts so far and those to come say.
func (b *patternBuilder) saidIn(rest []document.Section) string {
	var all strings.Builder
	d := document.Document{Cover: b.cover(), Sections: append(slices.Clone(b.parts), rest...)}
	for _, text := range textsOf(d) {
		all.WriteString(text)
		all.WriteString("\n")
	}
	return all.String()
}

// abbreviations explains those that the pattern uses, and no others.
func (b *patternBuilder) abbreviations(said string) {
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Abbreviation"}, {Title: "Meaning"}}}
	for _, a := range shortForms() {
		if a.used.MatchString(said) {
			t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(a.word)}, cell(a.meaning)}})
		}
	}
	t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(b.lettersUsed())}, cell("the fabrics, as in the fabric table")}})
	b.keep(heading(1, "Abbreviations"), t)
}

// lettersUsed is the letters of the fabrics, the first and the last, and which between them name blocks.
func (b *patternBuilder) lettersUsed() string {
	n := len(b.letters)
	if n < 3 {
		return listed(b.letters)
	}
	var not []string
	begun := false
	for i := 0; lettersOf(i) != b.letters[n-1]; i++ {
		is := slices.Contains(b.letters, lettersOf(i))
		if begun = begun || is; begun && !is {
			not = append(not, lettersOf(i))
		}
	}
	text := b.letters[0] + " to " + b.letters[n-1]
	if len(not) > 0 {
		text += ", but not " + listed(not)
	}
	return text
}
