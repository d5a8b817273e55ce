package layout

import (
	"slices"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// stripesNode is the stripes of a fabric as written.
type stripesNode struct {
	Span
	List      []stripeNode
	Crosswise Span // the word, empty if it was not there
}

// stripeNode is one stripe: a fabric whose color it has, or a color where none has that name.
type stripeNode struct {
	Name     NameNode
	Width    LengthNode
	colour   palettes.Colour
	coloured bool // the name may be read as a color
}

// Stripes are the stripes of a fabric, over and over.
type Stripes struct {
	List      []Stripe
	Crosswise bool // they run from selvage to selvage, else along the selvages
}

// Stripe is one stripe.
type Stripe struct {
	Colour palettes.Colour
	Width  measure.NM
	of     int // the fabric whose color it has, -1 for none
}

// Recolored are stripes in the colors that fabrics have elsewhere, by their places in the design; the same ones where none is another.
func (s *Stripes) Recolored(colour func(fabric int) palettes.Colour) *Stripes {
	other := *s
	other.List = slices.Clone(s.List)
	for i := range other.List {
		if of := other.List[i].of; of >= 0 {
			other.List[i].Colour = colour(of)
		}
	}
	if slices.Equal(other.List, s.List) {
		return s
	}
	return &other
}

// Repeat is after how much cloth the stripes come again.
func (s *Stripes) Repeat() measure.NM {
	sum := measure.NM(0)
	for _, one := range s.List {
		sum += one.Width
	}
	return sum
}

// stripes takes colors with their widths, behind the word.
func (c *cursor) stripes(f *fabricNode) bool {
	f.colourAt = c.here()
	s := &stripesNode{Span: f.colourAt}
	f.Stripes = s
	c.word()
	c.newField()
	for !c.done() && !c.atQuote() && !c.isFabricOption(c.peek()) {
		ok := c.stripe(f, s)
		if s.Span = s.To(c.last()); !ok {
			return false
		}
	}
	if len(s.List) == 0 {
		c.fault(c.here(), "for example fabric "+f.Name.Text+" stripes navy 3/4 cream 1/2", "expected the colors of the stripes and their widths, found %s", c.found())
		return false
	}
	return true
}

// isFabricOption says whether a word is one of those that go on with a fabric.
func (c *cursor) isFabricOption(word string) bool {
	return slices.ContainsFunc(c.statement("fabric").Options, func(o Option) bool { return strings.EqualFold(o.Word, word) })
}

// stripe takes one color and the width of its stripe.
func (c *cursor) stripe(f *fabricNode, s *stripesNode) bool {
	if len(s.List) == MaxStripes {
		c.fault(c.here(), "", "a fabric may have at most %d stripes", MaxStripes)
		return false
	}
	at := c.here()
	word := c.text(at)
	if c.atNumber() {
		c.fault(at, "the color comes first, then the width of its stripe", "expected the color of a stripe, found %s", c.found())
		return false
	}
	n := stripeNode{Name: NameNode{at, word}}
	colour, err := palettes.Parse(word)
	switch {
	case err == nil:
		n.colour, n.coloured = colour, true
		c.take(at)
	case strings.HasPrefix(word, "#"):
		c.fault(at, "", "%s", err.Error()).suggest(c.colourHint(word))
		return false
	default:
		var ok bool
		if n.Name, ok = c.nameOf("the color of a stripe"); !ok {
			return false
		}
	}
	width, ok := c.number("the width of the stripe of " + quote(word))
	if !ok {
		return false
	}
	n.Width = width
	s.List = append(s.List, n)
	return true
}

// striped gives the fabrics with stripes their colors, once all fabrics are known.
func (c *checker) striped() {
	for _, n := range c.tree.Fabrics {
		e, known := c.names.find(n.Name)
		if n.Stripes == nil || !known || e.is != aFabric || e.span != n.Name.Span {
			continue
		}
		f := &c.design.Fabrics[e.index]
		f.Stripes = c.stripesOf(n)
		if len(f.Stripes.List) > 0 {
			f.Colour = palettes.StripesSample(f.Stripes.Parts()).Colour
		}
	}
}

// Parts are the stripes with their share of the cloth.
func (s *Stripes) Parts() []palettes.Part {
	list, whole := make([]palettes.Part, len(s.List)), float64(s.Repeat())
	for i, one := range s.List {
		list[i] = palettes.Part{Colour: one.Colour, Share: float64(one.Width) / whole}
	}
	return list
}

// Sample is what a photo of the stripes would tell of them.
func (s *Stripes) Sample() palettes.PhotoSample { return palettes.StripesSample(s.Parts()) }

// leastStripe is the narrowest stripe that is read: a pinstripe's.
const leastStripe = measure.Inch / 64

func (c *checker) stripesOf(n *fabricNode) *Stripes {
	s := &Stripes{Crosswise: !n.Stripes.Crosswise.Empty()}
	for i := range n.Stripes.List {
		one := &n.Stripes.List[i]
		if colour, of, ok := c.stripeColour(n, one); ok {
			s.List = append(s.List, Stripe{Colour: colour, of: of, Width: c.within(&one.Width, leastStripe, MaxCloth, "the width of a stripe")})
		}
	}
	if widest := c.widthOf(n); !s.Crosswise && s.Repeat() > widest {
		c.fault(n.Stripes.Span, "write the stripes of one repeat", "the stripes of %s repeat every %s, more than the width of fabric, %s", quote(n.Name.Text), c.text(s.Repeat()), c.text(widest))
	}
	return s
}

// widthOf is a fabric's usable width.
func (c *checker) widthOf(n *fabricNode) measure.NM {
	if n.UsableWidth == nil {
		return c.design.UsableWidth
	}
	return n.UsableWidth.In(c.design.Units).NM()
}

// stripeColour is the color of a stripe: a fabric's, by index, or one by itself.
func (c *checker) stripeColour(of *fabricNode, n *stripeNode) (colour palettes.Colour, fabric int, ok bool) {
	e, known := c.names.find(n.Name)
	switch {
	case known && e.poisoned():
		return palettes.Colour{}, -1, false
	case n.coloured && (!known || n.Name.key() == of.Name.key()):
		return n.colour, -1, true
	case !known:
		c.names.poison(n.Name.key())
		c.fault(n.Name.Span, "", "no color and no fabric of this layout is called %s", quote(n.Name.Text)).suggest(c.guess(n.Name.Text, append(palettes.Names(), c.names.order...)).backed("write # and six digits, or a name such as navy"))
		return palettes.Colour{}, -1, false
	case e.is != aFabric || c.isStriped(e.index):
		c.fault(n.Name.Span, "write a color, as in navy or #1f3350", "a stripe has one color, and %s is a %s", quote(n.Name.Text), c.sortOf(e)).note(e.span, "defined here")
		return palettes.Colour{}, -1, false
	}
	return c.design.Fabrics[e.index].Colour, e.index, true
}

func (c *checker) isStriped(fabric int) bool { return c.design.Fabrics[fabric].Stripes != nil }

// sortOf is what a name stands for, in words.
func (c *checker) sortOf(e *entry) string {
	switch {
	case e.is == aFabric && c.isStriped(e.index):
		return "striped fabric"
	case e.is == aFabric:
		return "fabric without stripes"
	}
	return e.is.String()
}
