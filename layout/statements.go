package layout

import (
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// Statement describes a statement of the language for help.
type Statement struct {
	Word    string
	Form    string // how it is written
	Summary string // one line, in a quilter's words
	Once    bool   // may stand once in a layout
}

// statement is a statement with what reads it; without, it is not built yet.
type statement struct {
	Statement
	parse func(p *parser, c *cursor, keyword Span)
	after string // what was expected where words are left over
}

// Statements is every statement of the language, in the order that help lists them.
func Statements() []statement {
	return []statement{
		{Statement{"title", `title "…"`, "the quilt's name", true}, parseTitle, ""},
		{Statement{"designer", `designer "…"`, "who designed it", true}, parseDesigner, ""},
		{Statement{"level", `level "…"`, "for whom it is written", true}, parseLevel, ""},
		{Statement{"copyright", `copyright "…"`, "whose it is", true}, parseCopyright, ""},
		{Statement{"note", `note [place] "…"`, "what the printed pattern says, of a block or a part of it", false}, parseNote, ""},
		{Statement{"units", "units inches | cm", "what a bare number means", true}, parseUnits, ""},
		{Statement{"seam", "seam length", "the seam allowance, 1/4 in or 0.75 cm if not given", true}, parseSeam, ""},
		{Statement{"strip", "strip length", "the cut strip that wedges come from; the block's side follows", true}, parseStrip, ""},
		{Statement{"side", "side length", "the finished side of a block; the strips follow", true}, parseSide, ""},
		{Statement{"usable-width", "usable-width length", "of the cloth between its selvages, 40 in or 100 cm if not given", true}, parseUsableWidth, ""},
		{Statement{"palette", "palette name", "brings in the fabrics of a palette", false}, parsePalette, ""},
		{Statement{"fabric", `fabric name (colour | swatch "photo" [across length]) ["print"] [on-hand length] [usable-width length]`, "a fabric and its colour, or a photo of it", false}, parseFabric, `a print name in quotes, "on-hand" or "usable-width"`},
		{Statement{"strip-set", "strip-set name fabric length fabric length …", "strips sewn together, from the wedge's wide end to its tip; one length may be the word rest", false}, parseStripSet, "a fabric"},
		{Statement{"scraps", "scraps name fabric fabric … [by piece | block | web] [deal number]", "a pool of fabrics, dealt as evenly as can be so that neighbours differ", false}, parseScraps, "a fabric"},
		{Statement{"webs", "webs value [/ value], or webs and under it indented rows of values", "the wedges round each web centre: all alike, two sorts set like a draughtboard, or web by web", true}, parseWebs, `"/" and a second value`},
		{Statement{"top-left", "top-left web | star", "which centre stands at the upper left corner", true}, parseTopLeft, ""},
		{Statement{"block", "block label kind role value …, or block label like label role value …", "a block: its label in the grid, its kind and its fabrics", false}, parseBlock, "a role"},
		{Statement{"grid", "grid, and under it indented rows of labels", "the quilt as it looks; . for nothing there; :nw :ne :se :sw turn a block", true}, parseGrid, "the rows on lines of their own below"},
		{Statement{"repeat", "repeat across number down number", "the grid's rows are a tile, laid so many times", true}, parseRepeat, ""},
		{Statement{"sash", "sash width fabric [posts fabric] [around]", "strips between the blocks, with squares where they cross, and round the outside", true}, parseSash, `"posts" or "around"`},
		{Statement{"border", "border width fabric [corners fabric] [lengthwise]", "a border, from the inside out", false}, parseBorder, `"corners" or "lengthwise"`},
		{Statement{"binding", "binding width fabric", "the binding", true}, parseBinding, ""},
		{Statement{"backing", "backing fabric", "the backing", true}, parseBacking, ""},
		{Statement{"batting", "batting", "the batting", true}, parseBatting, ""},
		{Statement{"contrast", "contrast number number", "the two steps of value that the value study judges by", true}, parseContrast, ""},
	}
}

// statementWords are the words that statements begin with.
func statementWords() []string {
	list := Statements()
	words := make([]string, len(list))
	for i, s := range list {
		words[i] = s.Word
	}
	return words
}

// exampleHints gives the messages from the one numbered on that have no hint of their own a
// statement of that sort as one could type it, but for messages about limits.
func (p *parser) exampleHints(from int, word string) {
	for i := from; i < len(p.list); i++ {
		f := &p.list[i]
		if f.Hint == "" && f.Severity == Error && !strings.Contains(f.Message, " the most") {
			f.Hint = "for example " + example(word)
			if word == "grid" {
				f.Hint = "put the labels on the lines below, with blanks before them"
			}
		}
	}
}

// example is a statement as one could type it.
func example(word string) string {
	switch word {
	case "title":
		return `title "Harbour lanterns"`
	case "designer":
		return `designer "Anna Miller"`
	case "level":
		return `level "for beginners"`
	case "copyright":
		return `copyright "2026 Anna Miller"`
	case "note":
		return `note cutting "leave the kites large"`
	case "units":
		return "units cm"
	case "seam":
		return "seam 1/4 in"
	case "strip":
		return "strip 4"
	case "side":
		return "side 7"
	case "usable-width":
		return "usable-width 42"
	case "palette":
		return "palette tidewater"
	case "fabric":
		return `fabric navy #1f3350 "night sky" on-hand 1 1/2 yd`
	case "strip-set":
		return "strip-set shore rust 1 3/4 cream 1 1/2 teal rest"
	case "scraps":
		return "scraps blues navy teal sky by block"
	case "webs":
		return "webs navy / teal"
	case "top-left":
		return "top-left star"
	case "block":
		return "block W web wedges navy kites cream"
	case "repeat":
		return "repeat across 3 down 4"
	case "sash":
		return "sash 1 1/2 navy"
	case "border":
		return "border 4 navy"
	case "binding":
		return "binding 2 1/2 navy"
	case "backing":
		return "backing navy"
	case "on-hand":
		return "on-hand 1 1/2 yd"
	case "line":
		return "line 10"
	case "about":
		return "about 4"
	case "contrast":
		return "contrast 10 25"
	}
	return word
}

// otherWord is the statement that goes by another word elsewhere, "" if there is none.
func otherWord(word string) string {
	switch strings.ToLower(word) {
	case "colour", "color", "cloth", "material":
		return "fabric"
	case "size", "block-size":
		return "side"
	case "sashing", "sashes":
		return "sash"
	case "rows", "layout":
		return "grid"
	case "name":
		return "title"
	case "author":
		return "designer"
	case "allowance", "seam-allowance":
		return "seam"
	case "wadding":
		return "batting"
	case "back":
		return "backing"
	case "wof":
		return "usable-width"
	}
	return ""
}

// ownWords are the words that options of statements are written with.
func ownWords() []string {
	return []string{
		"cut", "finished", "rest", "turned", "on-hand", "usable-width", "like", "across", "down", "posts", "around",
		"corners", "lengthwise", "by", "piece", "deal", "line", "about", "swatch", "cm", "inches",
	}
}

// reservedWords is the set of statements, roles, options and units.
func reservedWords(kinds []*blocks.Kind) map[string]bool {
	words := map[string]bool{}
	for _, list := range [][]string{ownWords(), measure.UnitWords(), statementWords(), roleWords(kinds)} {
		for _, w := range list {
			words[w] = true
		}
	}
	return words
}

// reserved says whether a word is one of the language's own.
func (s *session) reserved(word string) bool { return s.own[strings.ToLower(word)] }

// isStatement says whether a statement begins with a word. Labels may be any other word of
// the language: they stand in rows, where only a statement could be meant.
func (s *session) isStatement(word string) bool {
	return slices.Contains(statementWords(), strings.ToLower(word))
}
