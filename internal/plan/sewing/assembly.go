package sewing

import (
	"eighthturn/internal/measure"
)

// Assembly is how blocks, sashes and borders are sewn together. What is sewn are the parts
// and what earlier seams made: a number below the number of parts is a part, others are
// len(Parts) + the seam's index.
type Assembly struct {
	ByColumns bool    `json:"by_columns"` // the blocks are sewn into columns first, not rows
	Parts     []Part  `json:"parts"`
	Stages    []Stage `json:"stages"`
	Seams     []Seam  `json:"seams"` // in the order of sewing
	Loose     []int   `json:"loose"` // what is left beside the largest unit, since nothing joins it
}

// Part is a block, a column, a part of the sashes or a strip or square of a border.
type Part struct {
	Cell    int `json:"cell"`    // index; -1 for sashes and borders; of a column its upper cell
	Border  int `json:"border"`  // from the inside out, -1 for others
	Patches int `json:"patches"` // how many it has
	First   int `json:"first"`   // index of its first patch
}

// StageSort says what a stage of the work is about.
type StageSort string

const (
	LineStage   StageSort = "line"   // blocks and sashes of one row, or column, together
	LinesStage  StageSort = "lines"  // rows or columns together
	BorderStage StageSort = "border" // one border round what is there
)

// Stage is a run of seams that belong together.
type Stage struct {
	Sort   StageSort `json:"sort"`
	Number int       `json:"number"` // of the row, column or border, from 1; 0 for sashes between rows and for LinesStage
	After  int       `json:"after"`  // for sashes between rows: the row before them, 0 for those at the top
	First  int       `json:"first"`  // seam, by index
	Count  int       `json:"count"`
	Size   Size      `json:"size"` // of what is there afterwards, unfinished; of the row, of the whole
}

// Seam is one seam of the assembly, on the top.
type Seam struct {
	A     int           `json:"a"` // part or unit
	B     int           `json:"b"` // B lies to the right of the way from From to To
	From  measure.Point `json:"from"`
	To    measure.Point `json:"to"`
	Press bool          `json:"press"` // towards B; else towards A

	choice   int32
	towardsA bool      // way 0 of the choice presses it towards A
	beside   [2][2]int // at From and To: the parts on the side of A and on that of B
}
