package booklet

import (
	"slices"

	"eighthturn/pages"
	"eighthturn/sewing"
)

// pressing says which way the allowances of a block lie.
func (b *book) pressing(n int) {
	k := &b.Sewing.Blocks[n]
	var items []pages.Item
	for group, ways := range k.Ways {
		items = append(items, item(pages.Text{{Text: "Press", Bold: true}, {Text: b.pressedSteps(n, group) + " " + b.wayText(n, group, ways)}}))
	}
	for _, r := range k.Rounds {
		if r.Turns {
			items = append(items, item(lead("Where "+count(r.Seams, "seam")+" meet,", "open the stitches within the seam allowances of the last seam, turn all allowances one way round the point and press them flat: no more than %s of cloth then lie on each other.", count(r.Layers, "layer"))))
		}
	}
	if slices.ContainsFunc(k.Rounds, func(r sewing.Round) bool { return r.Turns }) {
		items = append(items, item(pages.Plain("Clockwise is as the right side shows it. On the wrong side, where you press, it is anticlockwise; the arrows in the pictures show it as you see it there.")))
	}
	if len(items) > 0 {
		b.add(heading(2, "Pressing"), pages.List{Items: items})
	}
}

// pressedSteps names the steps whose seams follow a choice, "" where they all follow the same one.
func (b *book) pressedSteps(n, group int) string {
	k := &b.Sewing.Blocks[n]
	if len(k.Ways) == 1 {
		return ""
	}
	var steps []int
	for i, s := range k.Steps {
		if slices.ContainsFunc(s.Joins, func(j sewing.Join) bool { return j.Choice == group }) {
			steps = append(steps, i+1)
		}
	}
	return " the seams of " + numbersText("step", steps)
}

// wayText says which way a choice goes in the blocks of a label.
func (b *book) wayText(n, group int, ways [2]string) string {
	var cells [2][]place
	for _, c := range b.Sewing.Blocks[n].Colourings {
		for _, at := range c.Cells {
			choices := b.Sewing.Pressing.Cells[at.Cell]
			if group < len(choices) {
				way := b.Sewing.Pressing.Choices[choices[group]].Way
				cells[way] = append(cells[way], place{at.Row, at.Col})
			}
		}
	}
	switch {
	case len(cells[1]) == 0:
		return ways[0] + "."
	case len(cells[0]) == 0:
		return ways[1] + "."
	}
	if b.Sewing.Blocks[n].Column && b.Sewing.Assembly.ByColumns {
		return ways[0] + " in " + columnsText(cells[0]) + ", " + ways[1] + " in " + columnsText(cells[1]) + ". Then the allowances of neighbours lie opposite ways and nest."
	}
	less := 0
	if len(cells[1]) < len(cells[0]) {
		less = 1
	}
	return ways[1-less] + ", but " + ways[less] + " in " + verb(len(cells[less]), "this block", "these "+count(len(cells[less]), "block")) + ": " + placesText(cells[less]) + ". Then the allowances of neighbours lie opposite ways and nest."
}
