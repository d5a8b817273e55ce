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
		word(`finish(?:ed|es)`, "Finished", "is the size from seam to seam, once everything is sewn."),
		word(`unfinished`, "Unfinished", "is the size of a sewn unit with the seam allowances that are still open."),
		word(`cut`, "Cut", "is the size as it lies on the cutting mat."),
		word(`usable width`, "Usable width", "is what is left of the cloth's width without its selvages, the firm woven edges."),
		word(`wedges?`, "Wedge", "is a piece of 45 degrees, an eighth of a turn: it has a wide end and two long sides, and its tip is cut off blunt."),
		word(`wedge rule`, "Wedge rule", "is a ruler in the shape of a wedge, with sides at 45 degrees and lines across it."),
		word(`kites?`, "Kite", "is a piece of four sides: two long ones that meet in a sharp tip, and two short ones that meet in a square corner."),
		word(`stop pieces?`, "Stop piece", "is a triangle of ground less one wedge, with a slanted side on which a wedge ends."),
		word(`tumblers?`, "Tumbler", "is a piece with two even sides and two slanted ones, so that one end is wide and the other narrow."),
		word(`end pieces?`, "End piece", "is what makes the end of a column of tumblers straight."),
		word(`strip sets?`, "Strip set", "is strips of several fabrics sewn together along their long edges before pieces are cut from them."),
		word(`posts?`, "Post", "is the square where sashes meet."),
		word(`nests?`, "Nest", "is what seams do whose allowances lie opposite ways: laid on each other they lock, and their joint is exact."),
		word(`dog ears?`, "Dog ear", "is a tip of a seam allowance that stands out at the end of a seam; it is cut off."),
		word(`bias`, "On the bias", "means at a slant to the threads of the cloth. Such edges stretch, so press them, do not push."),
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
		unit("in", "inch or inches"), unit("yd", "yard or yards, of 36 inches each"), unit("mm", "millimetre or millimetres"),
		unit("cm", "centimetre or centimetres"), unit("m", "metre or metres, of 100 centimetres each"),
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
	t := document.Table{Named: true, Columns: []document.Column{{Title: "Short"}, {Title: "What it stands for"}}}
	for _, a := range shortForms() {
		if a.used.MatchString(said) {
			t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(a.word)}, cell(a.meaning)}})
		}
	}
	t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Bold(b.lettersUsed())}, cell("the fabrics, as the table of fabrics names them")}})
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
