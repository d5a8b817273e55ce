package sewing

import (
	"fmt"
	"slices"
)

// BlockHead is how many blocks of a label are to be made.
func (w Words) BlockHead(b *Block) string {
	return fmt.Sprintf("%s, %s: make %s", b.Label, b.Kind, counted(b.Count, b.Noun()))
}

// StepHead is how many units a step makes.
func (w Words) StepHead(b *Block, step int) string {
	s := &b.Steps[step]
	return fmt.Sprintf("%d. %s: make %d", step+1, s.Name, s.Make)
}

// LongestLine is how long the longest column of a label is.
func (w Words) LongestLine(b *Block) string {
	return "The longest are " + w.Size(b.Unfinished) + " unfinished."
}

// VariantName is a block's label and, where blocks of it differ in cloth, the number.
func (b *Block) VariantName(c *FabricVariant) string {
	if len(b.Variants) == 1 {
		return b.Label
	}
	return fmt.Sprintf("%s%d", b.Label, c.Number)
}

// VariantLine is what blocks are sewn of; of a column, in which order.
func (w Words) VariantLine(b *Block, c *FabricVariant) string {
	return b.VariantName(c) + ": " + w.VariantText(b, c)
}

// VariantText is VariantLine without the name.
func (w Words) VariantText(b *Block, c *FabricVariant) string {
	if b.Column {
		return columnText(b, c)
	}
	each := ""
	if len(c.Cells) > 1 {
		each = " each"
	}
	return fmt.Sprintf("%s of %s%s", counted(len(c.Cells), b.Noun()), ClothCounts(c.Cloths), each)
}

func columnText(b *Block, c *FabricVariant) string {
	text := fmt.Sprintf("%s of ", counted(len(c.Cells), b.Noun()))
	if len(c.Longer) < 2 {
		return text + "one piece of " + c.Cloths[0]
	}
	if whole := len(c.Cloths) - 2; whole > 0 {
		text += counted(whole, "tumbler") + " and "
	}
	return text + fmt.Sprintf("2 end pieces; the longer side of the end piece at the top lies on the %s, of that at the bottom on the %s. From the top: %s",
		c.Longer[0], c.Longer[1], Listed(c.Cloths))
}

// PlaceLines is where blocks of one variant go, turn by turn, with up to so many groups of
// places each; 0 is for no limit.
func (w Words) PlaceLines(b *Block, c *FabricVariant, most int) []Said {
	var list []Said
	for turns := range 4 {
		var cells []int
		for _, at := range c.Cells {
			if at.Turns == turns {
				cells = append(cells, w.cellsOf(at)...)
			}
		}
		if len(cells) == 0 {
			continue
		}
		text := w.TurnText(b, c, turns)
		n := slices.IndexFunc(list, func(s Said) bool { return s.Text == text })
		if n < 0 {
			n = len(list)
			list = append(list, Said{Text: text})
		}
		list[n].Cells = append(list[n].Cells, cells...)
	}
	for i := range list {
		text := "in " + w.blockCells(b, list[i].Cells, most)
		if list[i].Text != "" {
			text = list[i].Text + " " + text
		}
		list[i].Text = text
	}
	return list
}

// cellsOf is the cells that a block takes, or a column.
func (w Words) cellsOf(at Placed) []int {
	cells := make([]int, max(1, at.Cells))
	for down := range cells {
		cells[down] = at.Cell + down*w.Columns
	}
	return cells
}

// blockCells names the places of blocks; columns from the top of the layout to its bottom by
// their numbers alone.
func (w Words) blockCells(b *Block, cells []int, most int) string {
	byColumn := make([]int, w.Columns)
	var columns []int
	for _, cell := range cells {
		if byColumn[cell%w.Columns]++; byColumn[cell%w.Columns] == w.Rows {
			columns = append(columns, cell%w.Columns+1)
		}
	}
	if b.Column && len(columns)*w.Rows == len(cells) {
		slices.Sort(columns)
		return numbered("column", columns)
	}
	return w.Cells(cells, most)
}
