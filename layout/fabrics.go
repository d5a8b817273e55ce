package layout

import (
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

func fabricStatements() []Statement {
	return []Statement{{
		Word: "fabric", Form: `fabric name (color | swatch "photo" [across length] [repeat across length down length] | stripes color length color length … [crosswise]) ["print"] [one-way] [on-hand length] [usable-width length] [from number precuts]`,
		Summary: "a fabric and its color, a photo of it, or its stripes", Example: `fabric navy #1f3350 "night sky" on-hand 1 1/2 yd`,
		Options: []Option{
			{Word: "swatch"}, {"across", "across 6 in"}, {"repeat", "repeat across 24 down 12"}, {"stripes", "stripes navy 3/4 cream 1/2"}, {Word: "crosswise"}, {Word: "one-way"},
			{"on-hand", "on-hand 1 1/2 yd"}, {"usable-width", "usable-width 42"}, {"from", "from 3 fat-quarters"},
		},
		aliases: []string{"colour", "color", "cloth", "material"}, next: `a print name in quotes, "on-hand", "usable-width" or "from"`, defines: true,
		parse: parseFabric, check: (*checker).fabrics, after: []string{"units", "seam", "usable-width"},
	}}
}

// fabricNode is a fabric as written.
type fabricNode struct {
	Span
	Name        NameNode
	Colour      palettes.Colour
	Swatch      *TextNode   // the photo that gives the colour, nil for a colour
	Across      *LengthNode // how much cloth the photo shows from left to right
	Repeat      *repeatOfPrintNode
	Stripes     *stripesNode // nil for none
	Print       *TextNode
	OneWay      Span // the word, empty if it was not there
	OnHand      *LengthNode
	UsableWidth *LengthNode
	From        *precutNode // what it is cut from before any yardage
	colourWord  string      // the colour as written
	colourAt    Span        // and where; of a photo and of stripes, the first word
	acrossAt    Span        // the word before Across
}

// Fabric is a fabric of the quilt.
type Fabric struct {
	Name        string
	Colour      palettes.Colour
	Print       string
	OneWay      bool       // the print has a head and a foot
	Photo       *Photo     // nil if the colour was written
	Stripes     *Stripes   // nil for none
	OnHand      measure.NM // 0 if not said
	UsableWidth measure.NM // the layout's own, or the quilt's
	From        Precuts    // none if not said
	Span        Span
}

func parseFabric(p *parser, c *cursor, keyword Span) {
	c.newField()
	name, ok := c.newName("a fabric's name", false)
	if !ok {
		c.dropRest()
		return
	}
	f := &fabricNode{Name: name}
	p.tree.Fabrics = append(p.tree.Fabrics, f)
	c.newField()
	if c.fabricColour(f) {
		c.fabricOptions(f)
	} else {
		c.dropRest()
	}
	f.Span = keyword.To(c.last())
}

// fabricColour takes a fabric's colour and says what a name of two words comes to.
func (c *cursor) fabricColour(f *fabricNode) bool {
	at := c.here()
	word := c.text(at)
	if strings.EqualFold(word, "swatch") {
		f.colourAt = at
		c.word()
		return c.swatch(f)
	}
	if strings.EqualFold(word, "stripes") {
		return c.stripes(f)
	}
	colour, err := palettes.Parse(word)
	switch {
	case c.done():
		c.fault(at, "for example fabric "+f.Name.Text+" #1f3350", "expected the color of %s, found the end of the line", quote(f.Name.Text))
		return false
	case c.longName(f.Name):
		return false
	case err != nil:
		c.fault(at, "", "%s", err.Error()).suggest(c.colourHint(word))
		return false
	}
	f.Colour, f.colourWord, f.colourAt = colour, word, at
	c.take(at)
	return true
}

// swatch takes the photo that stands for a fabric's colour.
func (c *cursor) swatch(f *fabricNode) bool {
	c.newField()
	t, ok := c.quotedUntil("the name of a photo", func(int) bool { return true })
	if ok {
		f.Swatch = &t
	}
	return ok
}

// colourHint is the colour that a word most likely stands for.
func (c *cursor) colourHint(word string) hint {
	if len(c.list) >= maxGuesses {
		return hint{}
	}
	plain, odd := plainLike(word)
	if _, err := palettes.Parse(plain); err == nil && odd != "" {
		return write(plain).saying("write " + plain + ": " + odd)
	}
	for _, as := range []string{strings.Trim(word, `,;:.'"`), "#" + word} {
		if _, err := palettes.Parse(as); err == nil {
			return write(as)
		}
	}
	return c.guess(word, palettes.Names()).backed("write # and six digits, or a name such as navy")
}

// longName reports a fabric's name of several words, where the colour stands behind another word, and a colour of several,
// where that word is a colour or the words are one together.
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
		if c.quoteAt(w.Start) > 0 || c.isReserved(c.text(w)) {
			break
		}
		if _, err := palettes.Parse(c.text(w)); err == nil {
			colour = i
		}
	}
	if colour == 0 || strings.Trim(c.src[words[0].Start:words[colour-1].End], "=:,;- \t") == "" {
		return false
	}
	if c.longColour(first, words[:colour+1]) {
		return true
	}
	name := first.To(words[colour-1])
	joined := strings.Join(strings.FieldsFunc(c.text(name), measure.IsSpace), "-")
	said := c.fault(name, "", "a fabric's name is one word, found %s before the color %s", quote(c.text(name)), c.text(words[colour]))
	if isName(joined) && !c.isReserved(joined) {
		said.suggest(edit("write "+joined+" "+c.text(words[colour]), name, joined).alone())
	}
	rest := words[0].To(words[colour-1])
	said.orElse(c.leaveOut(strings.Join(strings.Fields(c.text(rest)), " "), rest).alone())
	if colour == 1 {
		said.orElse(c.leaveOut(first.Text, first.Span).alone())
	}
	return true
}

// longColour reports a colour written in several words: a colour's name that was written apart, or a second colour behind
// the first.
func (c *cursor) longColour(name NameNode, words []Span) bool {
	all := words[0].To(words[len(words)-1])
	joined := strings.Join(strings.FieldsFunc(c.text(all), measure.IsSpace), "")
	if _, err := palettes.Parse(joined); err == nil {
		c.fault(all, "", "a color's name is one word, found %s", quote(c.text(all))).suggest(write(joined))
		return true
	}
	_, named := palettes.Parse(name.Text + c.text(words[0]))
	if _, err := palettes.Parse(c.text(words[0])); err != nil || named == nil || c.src[words[len(words)-1].Start] == '#' {
		return false
	}
	rest := words[1].To(words[len(words)-1])
	c.fault(rest, "", "a fabric has one color, and %s is here already", quote(c.text(words[0]))).suggest(c.leaveOut(c.text(rest), rest))
	return true
}

func (c *cursor) fabricOptions(f *fabricNode) {
	for !c.done() {
		switch word := strings.ToLower(c.peek()); {
		case c.atQuote() && f.Print == nil:
			c.newField()
			t, ok := c.quoted("the print's name", "on-hand", "usable-width", "across", "repeat", "crosswise", "one-way", "from")
			if !ok {
				c.dropRest()
				return
			}
			f.Print = &t
		case word == "across" && f.Swatch != nil && f.Across == nil:
			f.acrossAt = c.here()
			f.Across = c.lengthOption("how much fabric the photo shows across")
		case word == "repeat" && f.Swatch != nil && f.Repeat == nil:
			f.Repeat = c.repeatOfPrint()
		case word == "crosswise" && f.Stripes != nil && f.Stripes.Crosswise.Empty():
			c.newField()
			f.Stripes.Crosswise = c.word()
		case word == "one-way" && f.OneWay.Empty():
			c.newField()
			f.OneWay = c.word()
		case word == "on-hand" && f.OnHand == nil:
			f.OnHand = c.lengthOption("the length on hand")
		case word == "usable-width" && f.UsableWidth == nil:
			f.UsableWidth = c.lengthOption("the usable width of fabric")
		case word == "from" && f.From == nil:
			if f.From = c.precutOption(); f.From == nil {
				c.dropRest()
			}
		default:
			return
		}
	}
}

func (c *checker) fabrics() {
	for _, n := range c.tree.Fabrics {
		if !c.define(n.Name, aFabric, len(c.design.Fabrics)) {
			continue
		}
		c.warnTwoColours(n)
		f := Fabric{Name: n.Name.Text, Colour: n.Colour, Span: n.Span, UsableWidth: c.design.UsableWidth}
		if n.Swatch != nil {
			c.photo(n, &f)
		}
		if n.Stripes != nil {
			f.Stripes = &Stripes{} // see striped
		}
		if n.Print != nil {
			f.Print = n.Print.Text
		}
		if f.OneWay = !n.OneWay.Empty(); f.OneWay && n.Swatch == nil && n.Stripes == nil {
			c.fault(n.OneWay, "", "only a print has a head and a foot, and %s is one color", quote(n.Name.Text)).suggest(c.leaveOut("one-way", c.withBlanks(n.OneWay)).backed("give it a photo (swatch) or stripes"))
		}
		if n.OnHand != nil {
			f.OnHand = c.within(n.OnHand, 1, 1000*measure.Yard, "the length on hand")
			c.warnInchesOnHand(n)
		}
		if n.UsableWidth != nil {
			f.UsableWidth = c.within(n.UsableWidth, measure.Inch, MaxCloth, "the usable width of fabric")
		}
		if n.From != nil {
			f.From = c.precuts(n.From)
		}
		c.design.Fabrics = append(c.design.Fabrics, f)
	}
}

// warnTwoColours warns of a name that is a colour's with another colour behind it: one
// colour of two words was meant, most likely.
func (c *checker) warnTwoColours(f *fabricNode) {
	if f.colourWord == "" || strings.HasPrefix(f.colourWord, "#") {
		return
	}
	named, err := palettes.Parse(f.Name.Text)
	_, joined := palettes.Parse(f.Name.Text + f.colourWord)
	if err == nil && named == f.Colour || err != nil && joined != nil {
		return
	}
	c.warn(f.Name.Span, "if "+f.Name.Text+" "+f.colourWord+" is one name, write "+f.Name.Text+"-"+f.colourWord+" and then its color",
		"the fabric %s is drawn in %s, %s", quote(f.Name.Text), strings.ToLower(f.colourWord), f.Colour.Hex())
}

// warnInchesOnHand warns of a short length without its unit: yards were meant, most likely.
func (c *checker) warnInchesOnHand(n *fabricNode) {
	nm := n.OnHand.In(c.design.Units).NM()
	if n.OnHand.reading.HasUnit() || c.design.Units != measure.Inches || nm <= 0 || nm >= 12*measure.Inch {
		return
	}
	written := c.src[n.OnHand.Start:n.OnHand.End]
	c.warn(n.OnHand.Span, "", "only %s of %s is on hand", c.text(nm), quote(n.Name.Text)).suggest(write(written + " yd").saying("if yards are meant, write " + written + " yd"))
}
