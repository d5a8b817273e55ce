package main

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/layout"
	"eighthturn/measure"
	"eighthturn/sewing"
)

// sewPage is a sewing plan put into lines for a terminal.
type sewPage struct {
	strings.Builder
	*sewing.Plan
}

// sewText is what `sew` says.
func sewText(name string, plan *sewing.Plan) string {
	p := &sewPage{Plan: plan}
	fmt.Fprintf(p, "%s: how it goes together, with seams of %s\n", name, p.text(plan.Seam))
	p.write("", "Sizes are unfinished, from raw edge to raw edge, where nothing else is said, to the nearest "+p.mark()+". Places are named by row and column: r2c5 is row 2, column 5. Clockwise is as the right side shows it; on the wrong side, where you press, it looks anticlockwise.")
	for i := range plan.Blocks {
		p.block(i)
	}
	p.assembly()
	p.pressing()
	p.grain()
	p.bulk()
	p.heading("Take care")
	for _, c := range plan.Cautions {
		p.item(c)
	}
	return p.String()
}

func (p *sewPage) heading(text string) { p.WriteString("\n" + layout.Visible(text) + "\n") }

// write writes a sentence, wrapped.
func (p *sewPage) write(indent, text string) { p.WriteString(wrapped(layout.Visible(text), indent)) }

// item writes a sentence behind a dash.
func (p *sewPage) item(text string) {
	p.WriteString("  - " + strings.TrimPrefix(wrapped(layout.Visible(text), "    "), "    "))
}

// detail writes a sentence that belongs to a step.
func (p *sewPage) detail(text string) { p.write("     ", text) }

func (p *sewPage) text(nm measure.NM) string { return measure.Text(nm, p.Units) }

// mark is what lengths are rounded to.
func (p *sewPage) mark() string {
	if p.Units == measure.Centimetres {
		return "millimetre"
	}
	return p.text(p.Step)
}

// near is a length by the nearest mark.
func (p *sewPage) near(l sewing.Length) string { return p.text(max(l.Nearest, -l.Nearest)) }

// exact is a length to a thousandth, and by the nearest mark.
func (p *sewPage) exact(l sewing.Length) string {
	unit := "in"
	if p.Units == measure.Centimetres {
		unit = "cm"
	}
	text := measure.Decimal(max(l.NM, -l.NM), p.Units, 3) + " " + unit
	switch near := p.near(l); {
	case l.NM == l.Nearest:
		return near
	case l.Nearest == 0:
		return text + " (a hair)"
	case p.Units == measure.Centimetres:
		return fmt.Sprintf("%s (about %d mm)", text, max(l.Millimetres, -l.Millimetres))
	default:
		return fmt.Sprintf("%s (about %s or %d mm)", text, near, max(l.Millimetres, -l.Millimetres))
	}
}

// size is across by down.
func (p *sewPage) size(s sewing.Size) string {
	if s.Across.Nearest == s.Down.Nearest {
		return p.text(s.Across.Nearest) + " square"
	}
	return measure.Number(s.Across.Nearest, p.Units) + " by " + p.text(s.Down.Nearest)
}

// mostPlaces is how many places a text lists; the pictures and the JSON have them all.
const mostPlaces = 400

// places is cells by row and column, neighbours of a row in one: r1c2-5.
func (p *sewPage) places(cells []int) string {
	if len(cells) > mostPlaces {
		return fmt.Sprintf("%d places, %s first", len(cells), p.place(cells[0]))
	}
	cells = slices.Clone(cells)
	slices.Sort(cells)
	var list []string
	for i := 0; i < len(cells); {
		j := i + 1
		for j < len(cells) && cells[j] == cells[j-1]+1 && cells[j]%p.Columns != 0 {
			j++
		}
		text := p.place(cells[i])
		if j > i+1 {
			text += fmt.Sprintf("-%d", cells[j-1]%p.Columns+1)
		}
		list = append(list, text)
		i = j
	}
	return strings.Join(list, " ")
}

func (p *sewPage) place(cell int) string {
	return fmt.Sprintf("r%dc%d", cell/p.Columns+1, cell%p.Columns+1)
}

// turnWords say how a block is turned from the way its pictures show it.
func turnWords(turns int) string {
	return [4]string{"as its pictures show it", "turned a quarter clockwise", "turned by half a turn", "turned a quarter anticlockwise"}[turns&3]
}
