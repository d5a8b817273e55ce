package layout

import (
	"cmp"
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/palettes"
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

// roleWords are the names of all roles of the kinds, each once, and of those to come.
func roleWords(kinds []*blocks.Kind) []string {
	var words []string
	for _, k := range kinds {
		for _, r := range k.Roles {
			if !slices.Contains(words, r.Name) {
				words = append(words, r.Name)
			}
		}
	}
	return words
}

func parseTitle(p *parser, c *cursor, _ Span)    { p.tree.Title = c.onlyText("the quilt's title") }
func parseDesigner(p *parser, c *cursor, _ Span) { p.tree.Designer = c.onlyText("the designer's name") }
func parseLevel(p *parser, c *cursor, _ Span)    { p.tree.Level = c.onlyText("the level") }
func parseCopyright(p *parser, c *cursor, _ Span) {
	p.tree.Copyright = c.onlyText("the copyright notice")
}

// onlyText takes the one text of a statement; nil if there is none.
func (c *cursor) onlyText(what string) *TextNode {
	c.newField()
	t, ok := c.quoted(what)
	c.dropIfFaulty(!ok)
	if !ok {
		return nil
	}
	return &t
}

// dropIfFaulty leaves out the rest of a line whose fault was reported.
func (c *cursor) dropIfFaulty(faulty bool) {
	if faulty {
		c.dropRest()
	}
}

func parseUnits(p *parser, c *cursor, _ Span) {
	c.newField()
	p.tree.Units = c.oneOf("the units", "inches", "cm")
}

func parseTopLeft(p *parser, c *cursor, _ Span) {
	c.newField()
	p.tree.TopLeft = c.oneOf("the centre at the upper left", "web", "star")
}

// oneOf takes one of a few words.
func (c *cursor) oneOf(what string, words ...string) *WordNode {
	word := c.peek()
	for _, w := range words {
		if strings.EqualFold(word, w) {
			return &WordNode{c.word(), w}
		}
	}
	c.fault(c.here(), didYouMean(word, words), "expected %s, %s, found %s", what, strings.Join(words, " or "), c.found())
	c.dropRest()
	return nil
}

func parseSeam(p *parser, c *cursor, _ Span) { p.tree.Seam = c.onlyLength("the seam allowance") }
func parseStrip(p *parser, c *cursor, _ Span) {
	p.tree.Strip = c.onlyLength("the width of the cut strip")
}
func parseSide(p *parser, c *cursor, _ Span) {
	p.tree.Side = c.onlyLength("the finished side of a block")
}
func parseUsableWidth(p *parser, c *cursor, _ Span) {
	p.tree.UsableWidth = c.onlyLength("the width of the cloth between its selvages")
}

// onlyLength takes the one length of a statement; nil if there is none.
func (c *cursor) onlyLength(what string) *LengthNode {
	c.newField()
	l, ok := c.length(what)
	c.dropIfFaulty(!ok)
	if !ok {
		return nil
	}
	return &l
}

func parseFabric(p *parser, c *cursor, keyword Span) {
	c.newField()
	name, ok := c.newName("a fabric's name", false)
	if !ok {
		c.dropRest()
		return
	}
	f := &FabricNode{Name: name}
	p.tree.Fabrics = append(p.tree.Fabrics, f)
	c.newField()
	if c.fabricColour(f) {
		c.fabricOptions(f)
	} else {
		c.dropRest()
	}
	f.Span = keyword.To(c.last())
}

// last is the span of the last token taken.
func (c *cursor) last() Span { return c.tokens[len(c.tokens)-1].Span }

// fabricColour takes a fabric's colour and says what a name of two words comes to.
func (c *cursor) fabricColour(f *FabricNode) bool {
	at := c.here()
	word := c.text(at)
	if strings.EqualFold(word, "swatch") {
		c.word()
		return c.swatch(f)
	}
	colour, err := palettes.Parse(word)
	switch {
	case c.done():
		c.fault(at, "for example fabric "+f.Name.Text+" #1f3350", "expected the colour of %s, found the end of the line", quote(f.Name.Text))
		return false
	case c.longName(f.Name):
		return false
	case err != nil:
		c.fault(at, c.colourHint(word), "%s", err.Error())
		return false
	}
	f.Colour, f.colourWord = colour, word
	c.take(at)
	return true
}

// swatch takes the photo that stands for a fabric's colour.
func (c *cursor) swatch(f *FabricNode) bool {
	c.newField()
	t, ok := c.quotedUntil("the name of a photo", func(int) bool { return true })
	if ok {
		f.Swatch = &t
	}
	return ok
}

// colourHint is the colour that a word most likely stands for.
func (c *cursor) colourHint(word string) string {
	if len(c.list) >= mostGuesses {
		return ""
	}
	plain, odd := plainLike(word)
	if _, err := palettes.Parse(plain); err == nil && odd != "" {
		return "write " + plain + ": " + odd
	}
	for _, as := range []string{strings.Trim(word, `,;:.'"`), "#" + word} {
		if _, err := palettes.Parse(as); err == nil {
			return "write " + as
		}
	}
	return cmp.Or(c.guess(word, palettes.Names()), "write # and six digits, or a name such as navy")
}

// longName reports a fabric's name of several words: the colour stands behind another word,
// or behind another colour.
func (c *cursor) longName(first NameNode) bool {
	words := make([]Span, 0, 5)
	for at := c.at; at < c.end && len(words) < cap(words); {
		w := c.wordAt(at)
		words = append(words, w)
		rest := c.src[w.End:c.end]
		at = c.end - len(strings.TrimLeftFunc(rest, measure.IsSpace))
	}
	colour := 0
	for i, w := range words {
		if c.quoteAt(w.Start) > 0 || c.reserved(c.text(w)) {
			break
		}
		if _, err := palettes.Parse(c.text(w)); err == nil {
			colour = i
		}
	}
	if colour == 0 {
		return false
	}
	name := first.To(words[colour-1])
	c.fault(name, "write "+strings.Join(strings.FieldsFunc(c.text(name), measure.IsSpace), "-")+" "+c.text(words[colour]),
		"a fabric's name is one word, found %s before the colour %s", quote(c.text(name)), c.text(words[colour]))
	return true
}

// warnTwoColours warns of a name that is a colour's with another colour behind it: one
// colour of two words was meant, most likely.
func (c *checker) warnTwoColours(f *FabricNode) {
	if f.colourWord == "" || strings.HasPrefix(f.colourWord, "#") {
		return
	}
	named, err := palettes.Parse(f.Name.Text)
	_, joined := palettes.Parse(f.Name.Text + f.colourWord)
	if err == nil && named == f.Colour || err != nil && joined != nil {
		return
	}
	c.warn(f.Name.Span, "if "+f.Name.Text+" "+f.colourWord+" is one name, write "+f.Name.Text+"-"+f.colourWord+" and then its colour",
		"the fabric %s is drawn in %s, %s", quote(f.Name.Text), strings.ToLower(f.colourWord), f.Colour.Hex())
}

func (c *cursor) fabricOptions(f *FabricNode) {
	for !c.done() {
		switch word := strings.ToLower(c.peek()); {
		case c.atQuote() && f.Print == nil:
			c.newField()
			t, ok := c.quoted("the print's name", "on-hand", "usable-width", "across")
			if !ok {
				c.dropRest()
				return
			}
			f.Print = &t
		case word == "across" && f.Swatch != nil && f.Across == nil:
			f.Across = c.lengthOption("how much cloth the photo shows across")
		case word == "on-hand" && f.OnHand == nil:
			f.OnHand = c.lengthOption("the length on hand")
		case word == "usable-width" && f.UsableWidth == nil:
			f.UsableWidth = c.lengthOption("the width of the cloth")
		default:
			return
		}
	}
}

// lengthOption takes an option's word and its length.
func (c *cursor) lengthOption(what string) *LengthNode {
	c.newField()
	word := c.word()
	option := strings.ToLower(c.text(word))
	l, ok := c.length(what)
	if !ok {
		last := &c.list[len(c.list)-1]
		last.Hint = cmp.Or(last.Hint, "for example "+example(option))
		c.dropRest()
		return nil
	}
	if option != "about" {
		c.noFrame(&l, what)
	}
	return &l
}
