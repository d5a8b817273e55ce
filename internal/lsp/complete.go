package lsp

import (
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/palettes"
)

func isKind(word string) bool {
	_, ok := blocks.Find(blocks.Kinds(), strings.ToLower(word))
	return ok
}

// line is the part of a line before a place.
type line struct {
	words    []string // whole ones
	part     string   // of the word at the place
	start    int      // where that word begins
	end      int      // where it ends
	indented bool
	rowsOf   string // the statement whose rows these may be, "" for none
}

// lineAt takes the line at a byte apart; ok is false within a comment or a text in quotes.
func (d *document) lineAt(offset int) (l line, ok bool) {
	number := d.text.lineOf(offset)
	start, end := d.text.line(number)
	offset = min(offset, end)
	before := d.text.string[start:offset]
	if strings.HasPrefix(strings.TrimSpace(before), "#") || strings.Contains(before, " # ") || strings.HasSuffix(before, " #") || strings.Count(before, `"`)%2 == 1 {
		return l, false
	}
	l.indented = before != "" && measure.IsSpace(rune(before[0]))
	l.words = strings.FieldsFunc(before, measure.IsSpace)
	l.start = offset
	if n := len(l.words); n > 0 && strings.HasSuffix(before, l.words[n-1]) {
		l.part, l.words = l.words[n-1], l.words[:n-1]
		l.start -= len(l.part)
	}
	l.end = offset
	for l.end < end && !measure.IsSpace(rune(d.text.string[l.end])) {
		l.end++
	}
	l.rowsOf = d.rowsAbove(number)
	return l, true
}

// rowsAbove is the statement under which the rows of a line stand.
func (d *document) rowsAbove(number int) string {
	for number--; number >= 0; number-- {
		start, end := d.text.line(number)
		text := d.text.string[start:end]
		words := strings.FieldsFunc(text, measure.IsSpace)
		switch {
		case len(words) == 0 || words[0][0] == '#':
		case strings.EqualFold(words[0], "grid") || strings.EqualFold(words[0], "webs") && (len(words) == 1 || words[1][0] == '#'):
			return strings.ToLower(words[0])
		case !measure.IsSpace(rune(text[0])):
			return ""
		}
	}
	return ""
}

// completion is the words that may stand at a place.
func (d *document) completion(p *placed) any {
	offset := d.text.offset(p.Position)
	l, ok := d.lineAt(offset)
	items := []completionItem{}
	if !ok {
		return items
	}
	c := completer{document: d, line: l}
	c.offer()
	for i := range c.items {
		c.items[i].TextEdit = textEdit{d.text.span(c.from(), l.end), c.items[i].Label}
	}
	return append(items, c.items...)
}

// completer collects what may stand at a place.
type completer struct {
	*document
	line
	items []completionItem
	turn  bool // behind the colon of a label
}

func (c *completer) from() int {
	if c.turn {
		return c.start + strings.LastIndexByte(c.part, ':') + 1
	}
	return c.start
}

func (c *completer) add(label string, kind int, detail string) {
	if !slices.ContainsFunc(c.items, func(i completionItem) bool { return i.Label == label }) {
		c.items = append(c.items, completionItem{Label: label, Kind: kind, Detail: detail})
	}
}

func (c *completer) offerWords(kind int, words ...string) {
	for _, w := range words {
		c.add(w, kind, "")
	}
}

// offer offers what may stand at the place.
func (c *completer) offer() {
	switch {
	case c.rowsOf == "grid" && c.indented:
		c.cells()
	case c.rowsOf == "webs" && c.indented:
		c.cloths(true)
		c.offerWords(itemKeyword, layout.Reversed, ".")
	case len(c.words) == 0:
		for _, s := range layout.Statements() {
			c.add(s.Word, itemKeyword, s.Summary)
		}
	default:
		c.behind(strings.ToLower(c.words[0]))
	}
}

// cells offers labels, and turns behind a colon.
func (c *completer) cells() {
	if strings.Contains(c.part, ":") {
		c.turn = true
		c.offerWords(itemProperty, blocks.CornerNames()...)
		return
	}
	c.labels()
	c.offerWords(itemKeyword, ".")
}

func (c *completer) labels() {
	kinds := map[string]string{} // by label
	for _, b := range c.written().Tree.Blocks {
		key := layout.FoldName(b.Label.Text)
		switch {
		case b.Kind != nil:
			kinds[key] = b.Kind.Name
		case b.Like != nil: // one above it
			kinds[key] = kinds[layout.FoldName(b.Like.Text)]
		}
		c.add(b.Label.Text, itemClass, kinds[key])
	}
}

// cloths offers fabrics and pools, and strip sets where they may stand.
func (c *completer) cloths(sets bool) {
	for _, m := range c.written().mentions() {
		if m.Scope == layout.Cloths && m.Defines != "" && (sets || m.Defines == "fabric") {
			c.add(m.Name(), itemVariable, m.Defines)
		}
	}
	for _, f := range c.paletteFabrics() {
		c.add(f.Name, itemVariable, f.Colour.Hex())
	}
}

// paletteFabrics is the fabrics of the palettes that the layout brings in.
func (d *document) paletteFabrics() []palettes.Swatch {
	var list []palettes.Swatch
	for _, n := range d.written().Tree.Palettes {
		if p, ok := palettes.Find(strings.ToLower(n.Name.Text)); ok {
			list = append(list, p.Fabrics...)
		}
	}
	return list
}

// behind offers what may stand behind a statement's word.
func (c *completer) behind(statement string) {
	last := strings.ToLower(c.words[len(c.words)-1])
	switch statement {
	case "units":
		c.offerWords(itemValue, "inches", "cm")
	case "top-left":
		c.offerWords(itemValue, layout.Centers()...)
	case "palette":
		for _, p := range palettes.All() {
			c.add(p.Name, itemModule, p.About)
		}
	case "fabric":
		c.behindFabric()
	case "strip-set", "scraps":
		if len(c.words) == 1 {
			return
		}
		if last == "by" {
			c.offerWords(itemValue, layout.Deals()...)
			return
		}
		c.cloths(statement == "strip-set")
		c.options(statement)
	case "motif":
		switch len(c.words) {
		case 1:
		case 2:
			c.cloths(false)
		default:
			c.options(statement)
		}
	case "colorway", "colourway":
		if len(c.words) > 1 {
			c.cloths(false)
		}
		if len(c.words) > 2 && len(c.words)%2 == 1 { // a fabric, and what takes its place
			c.cssColors()
		}
	case "block":
		c.behindBlock(last)
	case "webs":
		c.cloths(true)
		c.offerWords(itemKeyword, layout.Reversed)
	case "backing":
		c.cloths(false)
	case "sash", "border", "binding":
		c.cloths(false)
		c.options(statement)
		c.offerWords(itemKeyword, "cut", "finished")
	case "note":
		if len(c.words) == 1 {
			c.offerWords(itemValue, layout.PatternParts()...)
			c.labels()
		}
	case "size":
		if len(c.words) > 1 {
			c.options(statement)
		}
		if last == "border" {
			c.offerWords(itemValue, "none")
		}
	case "square-up", "spare":
		c.offerWords(itemValue, "none")
	case "on-hand":
		c.behindOnHand(statement)
	case "swap":
		c.nextOf(statement)
	default:
		c.options(statement)
	}
}

// nextOf offers the one word that stands next in a statement whose words have all their places; nothing where a number does.
func (c *completer) nextOf(statement string) {
	for _, s := range layout.Statements() {
		if form := strings.Fields(s.Form); s.Word == statement && len(c.words) < len(form) && layout.IsOwn(form[len(c.words)]) {
			c.offerWords(itemProperty, form[len(c.words)])
		}
	}
}

// options offers the words with which a statement goes on.
func (c *completer) options(statement string) {
	for _, s := range layout.Statements() {
		for _, o := range s.Options {
			if s.Word == statement && !c.has(o.Word) {
				c.add(o.Word, itemProperty, o.Example)
			}
		}
	}
}

func (c *completer) has(word string) bool {
	return slices.ContainsFunc(c.words, func(w string) bool { return strings.EqualFold(w, word) })
}

func (c *completer) behindFabric() {
	switch len(c.words) {
	case 1:
		return
	case 2:
		c.cssColors()
		c.offerWords(itemProperty, "swatch", "stripes")
	default:
		if c.has("stripes") {
			c.cloths(false)
			c.cssColors()
		}
		c.options("fabric")
	}
}

// cssColors offers the colors that have names.
func (c *completer) cssColors() {
	for _, name := range palettes.Names() {
		if colour, err := palettes.Parse(name); err == nil {
			c.add(name, itemColor, colour.Hex())
		}
	}
}

func (c *completer) behindOnHand(statement string) {
	switch {
	case len(c.words) == 1:
		for _, k := range blocks.KeptRoles(blocks.Kinds()) {
			c.add(k.Role, itemProperty, "")
		}
	case len(c.words) == 2 || strings.EqualFold(c.words[2], layout.Reversed) && len(c.words) == 3:
		c.cloths(true)
		c.offerWords(itemKeyword, layout.Reversed)
	default:
		c.options(statement)
	}
}

func (c *completer) behindBlock(last string) {
	switch {
	case len(c.words) == 1:
		return
	case len(c.words) == 2:
		for _, k := range blocks.Kinds() {
			c.add(k.Name, itemClass, k.Summary)
		}
		c.offerWords(itemKeyword, "like")
		return
	case last == "like" && len(c.words) == 3:
		c.labels()
		return
	}
	for _, k := range blocks.Kinds() {
		if !strings.EqualFold(c.words[2], "like") && !strings.EqualFold(c.words[2], k.Name) {
			continue
		}
		for _, r := range k.Roles {
			if !c.has(r.Name) {
				c.add(r.Name, itemProperty, r.Summary)
			}
		}
		if k.Column {
			c.offerWords(itemProperty, "line", "about")
		}
	}
	c.cloths(true)
	c.offerWords(itemKeyword, layout.Reversed, "lengthwise", "crosswise", "from")
}

// signatureHelp is how the statement goes that is being typed.
func (d *document) signatureHelp(p *placed) any {
	l, ok := d.lineAt(d.text.offset(p.Position))
	if !ok || len(l.words) == 0 || l.indented && l.rowsOf != "" {
		return nil
	}
	for _, s := range layout.Statements() {
		if !strings.EqualFold(s.Word, l.words[0]) {
			continue
		}
		g := signature{Label: s.Form, Documentation: report.StatementSummary(s), Parameters: []parameter{}}
		for _, w := range strings.Fields(s.Form)[1:] {
			g.Parameters = append(g.Parameters, parameter{w})
		}
		return signatureHelp{Signatures: []signature{g}, ActiveParameter: max(0, min(len(l.words)-1, len(g.Parameters)-1))}
	}
	return nil
}
