package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/leftovers"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// Leftovers is what the pieces make that the cutting plan leaves: a table, and a section for each thing to sew.
func Leftovers(p *Plans) document.Document {
	made := p.Leftovers()
	if len(p.Cuts().Faults) > 0 {
		return document.Document{Title: p.named("what the leftovers make"), Sections: []document.Section{
			with(section("left-to-sew", "What is left", document.Answer), paragraph("What cannot be cut leaves nothing: the cutting report says what to change first."))}}
	}
	d := document.Document{Title: p.named("what the leftovers make"), Sections: []document.Section{whatIsLeft(made)}}
	if len(made.Proposals) > 0 {
		d.Sections = append(d.Sections, whatItMakes(made))
	}
	for i := range made.Proposals {
		d.Sections = append(d.Sections, proposal(made, i))
	}
	return d
}

// Leftovers is what the pieces make that the cutting plan leaves.
func (p *Plans) Leftovers() *leftovers.Plan {
	return p.all().leftovers.Get(p.sign, func() *leftovers.Plan { return leftovers.Build(p.sign, p.Top, p.Cuts()) })
}

// whatIsLeft is what is left, and whether anything can be sewn of it.
func whatIsLeft(p *leftovers.Plan) document.Section {
	s := section("left-to-sew", "What is left", document.Answer)
	var list []string
	for i := range p.Stocks {
		list = append(list, stockCount(p.Stocks[i].Pieces, &p.Stocks[i]))
	}
	switch {
	case len(list) == 0:
		return with(s, paragraph("No pieces are left: the plan cuts only what the quilt takes."))
	case len(p.Proposals) == 0:
		return with(s, para("Leftover: %s. Eight wedges from strips of one width make a ring, a web or a star; there are too few.", measure.List(list)))
	}
	return with(s, para("Leftover: %s.", measure.List(list)))
}

// whatItMakes is all that could be sewn of it.
func whatItMakes(p *leftovers.Plan) document.Section {
	t := table(counts(""), words("to sew"), words("finished"), words("blocks"), counts("pieces used"))
	for i := range p.Proposals {
		q := &p.Proposals[i]
		t.Rows = append(t.Rows, row(number(i+1), itemCount(q), p.Units.By(q.Finished.Length, q.Finished.Width), kindCounts(q), number(q.Pieces())))
	}
	return with(section("what-it-makes", "What it makes", document.Answer), t)
}

// stockCount is so many pieces of a stock.
func stockCount(n int, s *leftovers.Stock) string {
	return measure.Count(n, handCloth(s.Cloth, s.Reversed)+" "+handPieces(s.Role))
}

// itemName is what a proposal is. Common names of the trade, no source.
func itemName(i leftovers.Item) string {
	return [...]string{"table topper", "pillow", "placemat", "table runner", "wall hanging", "throw"}[i]
}

// itemCount is how many of what are sewn.
func itemCount(p *leftovers.Proposal) string {
	if p.Copies == 1 {
		return itemName(p.Item)
	}
	return measure.Count(p.Copies, itemName(p.Item))
}

// kindCounts is how many blocks of each kind one has.
func kindCounts(p *leftovers.Proposal) string {
	var list []string
	for _, k := range p.Kinds {
		list = append(list, measure.Count(k.Blocks, k.Name+" block"))
	}
	return measure.List(list)
}

// each says that something is of each of several, "" where there is one.
func each(p *leftovers.Proposal) string {
	if p.Copies == 1 {
		return ""
	}
	return "each "
}

// proposal is one thing to sew.
func proposal(p *leftovers.Plan, n int) document.Section {
	q := &p.Proposals[n]
	size := p.Units.By(q.Finished.Length, q.Finished.Width)
	s := section(fmt.Sprintf("proposal-%d", n+1), fmt.Sprintf("%d. %s, %s%s", n+1, capital(itemCount(q)), each(q), size), document.Detail)
	s.Blocks = append(s.Blocks, document.Figure{Draw: func() *diagram.Figure { return topFigure(q.Top, capital(itemName(q.Item))) }, Width: 3 * measure.Inch, Least: measure.Inch,
		Caption: document.Plain(capital(itemName(q.Item)) + " of " + kindCounts(q) + ".")})
	list := []string{
		fmt.Sprintf("%s%s: %s%s finished%s.", capital(kindCounts(q)), gridWords(q), each(q), p.Units.By(q.Field.Length, q.Field.Width), borderWords(p, q)),
		"Use " + measure.List(usedWords(p, q)) + ".",
	}
	if left := unusedWords(p, q); len(left) > 0 {
		list = append(list, "Still left: "+measure.List(left)+".")
	}
	list = append(list, addedWords(q)...)
	s.Blocks = append(s.Blocks, bullets(list...)...)
	return s
}

// gridWords says how many blocks lie across and down, "" of one block.
func gridWords(q *leftovers.Proposal) string {
	if q.Across*q.Down == 1 {
		return ""
	}
	return fmt.Sprintf(", %d across and %d down", q.Across, q.Down)
}

func borderWords(p *leftovers.Plan, q *leftovers.Proposal) string {
	if q.Border == 0 {
		return ""
	}
	return ", with a border of " + p.Units.Nearest(q.Border)
}

// usedWords are the pieces that a proposal uses.
func usedWords(p *leftovers.Plan, q *leftovers.Proposal) (list []string) {
	for _, u := range q.Used {
		s := &p.Stocks[u.Stock]
		if u.Used == s.Pieces {
			list = append(list, "all "+stockCount(u.Used, s))
		} else {
			list = append(list, fmt.Sprintf("%d of %s", u.Used, stockCount(s.Pieces, s)))
		}
	}
	return list
}

// unusedWords are the pieces that a proposal leaves.
func unusedWords(p *leftovers.Plan, q *leftovers.Proposal) (list []string) {
	for i := range p.Stocks {
		s, left := &p.Stocks[i], p.Stocks[i].Pieces
		for _, u := range q.Used {
			if u.Stock == i {
				left -= u.Used
			}
		}
		if left > 0 {
			list = append(list, stockCount(left, s))
		}
	}
	return list
}

// addedWords is what is cut besides, and how much fabric that takes.
func addedWords(q *leftovers.Proposal) []string {
	c := newCuts((&Plans{Top: q.Top}).as(q.Cuts))
	var cut, buy []string
	for i := range c.Lines {
		line := &c.Lines[i]
		text := ""
		switch n := line.Pieces - line.OnHand; {
		case n == 0:
			continue
		case line.Border >= 0:
			text = "the border of " + c.name(line.Fabric)
		default:
			text = c.plans.countedPieces(n, line) + " of " + c.name(line.Fabric)
		}
		if !slices.Contains(cut, text) {
			cut = append(cut, text)
		}
	}
	if b := q.Top.CutFacts.Binding; b != nil {
		cut = append(cut, "the binding of "+q.Top.Fabrics[b.Fabric].Name)
	}
	for i := range c.Fabrics {
		if f := &c.Fabrics[i]; f.Purchase.Buy > 0 {
			buy = append(buy, c.shop(&f.Purchase)+" of "+c.name(i))
		}
	}
	if c.BackingBuy.Buy > 0 {
		buy = append(buy, c.shop(&c.BackingBuy)+" for the backing")
	}
	return []string{"Cut besides: " + measure.List(cut) + ".", "Fabric for that, where leftover fabric is not enough: " + measure.List(buy) + "."}
}

// topFigure is a small picture of a top.
func topFigure(t *quilt.Top, title string) *diagram.Figure {
	f := &diagram.Figure{Title: title, Description: title + ", finished", Min: t.Outer.Min, Max: t.Outer.Max, NoLegend: true}
	for i := range t.Faces {
		f.Marks = append(f.Marks, diagram.Mark{Area: &diagram.Area{Outline: t.Faces[i].Outline, Fill: t.Fabrics[t.Faces[i].Fabric].Colour, Edge: diagram.Thin}})
	}
	return f
}

// LeftoversLayout is a proposal, by its number from 1, as a layout of its own.
func LeftoversLayout(p *leftovers.Plan, n int) string {
	q := &p.Proposals[n-1]
	head := "# Made of leftovers: " + measure.List(usedWords(p, q)) + ".\n"
	if q.Copies > 1 {
		head += fmt.Sprintf("# The pieces are enough for %d of these: plan them with cuts --copies %d.\n", q.Copies, q.Copies)
	}
	text, _ := layout.Tidy(head + "\ntitle \"" + leftoversTitle(p, q) + "\"\n\n" + q.Layout)
	return text
}

// leftoversTitle is the title of a proposal's layout.
func leftoversTitle(p *leftovers.Plan, q *leftovers.Proposal) string {
	name := strings.NewReplacer("\"", "'", "“", "'", "”", "'", "„", "'").Replace(p.Title)
	if name == "" || len([]rune(name)) > layout.MaxTextChars/2 {
		return capital(itemName(q.Item)) + " of leftovers"
	}
	return name + ": " + itemName(q.Item)
}
