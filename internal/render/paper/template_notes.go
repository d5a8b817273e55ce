package paper

import (
	"fmt"

	"eighthturn/internal/plan/cutting"
)

// notes is the text before the templates: how to use them, what they are, and cautions.
func (b *templateBook) notes(list []Template) []pageLine {
	var text []pageLine
	add := func(size, above float64, bold bool, in float64, words string) {
		text = append(text, pageLine{setting{size: size, bold: bold, colour: black()}, words, above, in})
	}
	heading := func(words string) { add(13, 10, true, 0, words) }
	item := func(words string) { add(9.5, 3, false, 10, words) }

	add(17, 0, true, 0, b.title())
	heading("How to use them")
	for _, words := range b.advice() {
		item(words)
	}
	heading("The pieces")
	if len(list) == 0 {
		item("This quilt has only strips; a ruler cuts them.")
	}
	for i := range list {
		t := &list[i]
		item(fmt.Sprintf("%s, %s. %s Cut %d: %s.", t.Name(), t.Shape, t.size(b.top), t.Count, t.cloths(b.top)))
	}
	if b.hasStrips() {
		item("Borders and sashes are strips: cut them with a ruler, by the cutting plan.")
	}
	heading("Take care")
	for _, words := range cutting.Cautions() {
		item(words)
	}
	return text
}

// texts are all that a file of templates says in the layout's own words.
func (b *templateBook) texts(list []Template) []string {
	texts := []string{b.title()}
	for i := range list {
		texts = append(texts, list[i].caption(b.top)...)
	}
	return texts
}

func (b *templateBook) hasStrips() bool {
	for i := range b.top.Patches {
		if b.top.Patches[i].Shape.Description().Edging {
			return true
		}
	}
	return false
}

// advice is how to use templates, sentence by sentence.
func (b *templateBook) advice() []string {
	seam := b.top.Units.Nearest(b.top.Seam)
	list := []string{
		"Print these pages at 100 % and measure the two squares at the foot of each page before you cut.",
		"The templates show the right side of the cloth: lay cloth and template with their right sides up. A piece that has a mirror image has a template for the left one and one for the right one.",
		fmt.Sprintf("Cut on the solid line: the seam allowance of %s is included. Sew on the dashed line, which is as large as the piece finishes.", seam),
		"Sharp tips are cut off blunt, an allowance beyond where the seams meet, so that pieces lie edge to edge. Dots mark where seams begin and end: pin dot to dot.",
		"The arrow lies along the straight grain, as pieces cut with a ruler have it: up the middle of a wedge, whose base then lies across the grain; along a side of the square corner of kites and triangles; and across a tumbler, from one of its even sides to the other.",
		b.top.Units.AboutMeans(),
		"A template that is larger than the paper comes on several sheets: lay them over one another so that the crosses meet.",
	}
	if b.foundations {
		list = append(list, "Foundations are for sewing on paper, and are at the end. They are mirror images: cloth lies on the back of the paper, right side out, and you sew on the printed side along the lines, in the order of the numbers. The outermost dashed line is the finished edge of the half; trim on the solid line.")
	}
	if len(b.missing) > 0 {
		list = append(list, fmt.Sprintf("The letters of these pages lack some signs of the layout's names (%s): %c stands in their place.", signNames(b.missing), stand))
	}
	return list
}
