package sewing

import (
	"eighthturn/internal/measure"
)

// Pressing is which way every allowance lies. What can be chosen are the choices: a
// direction of turning for each block, one way for the seams of a step that are pressed
// alike, one for the seams of a row, one for each long seam.
type Pressing struct {
	Choices []Choice  `json:"choices"`
	Cells   [][]int32 `json:"cells"`  // by cell: its choices, by index, in the order of its block's ways; nil where there are none
	Joints  []Joint   `json:"joints"` // places where seams butt, on the lines of seams that are sewn later
	Inside  int       `json:"inside"` // joints within blocks; they all nest
	Nests   int       `json:"nests"`  // of Joints
	Proved  bool      `json:"proved"` // no way of pressing lets more joints nest
	AtMost  int       `json:"at_most"`
	Cannot  []Cannot  `json:"cannot"` // what does not nest, the first Options.MaxOddCycles of it
}

// ChoiceSort says what a choice is about.
type ChoiceSort string

const (
	BlockChoice ChoiceSort = "block"
	LineChoice  ChoiceSort = "line" // the seams between the parts of a row or column
	SeamChoice  ChoiceSort = "seam" // one long seam
)

// Choice is one choice between two ways of pressing.
type Choice struct {
	Sort  ChoiceSort `json:"sort"`
	Cell  int        `json:"cell"`  // of a block, -1 for others; of a column its upper cell
	Group int        `json:"group"` // of the block's ways, by index
	Stage int        `json:"stage"` // of a line, -1 for others
	Seam  int        `json:"seam"`  // of the assembly, -1 for others
	Way   int        `json:"way"`   // what the plan chose: 0 or 1, by Block.Pressings; of a line 0 is towards sashes and away from posts, without them towards the later parts; of a seam 0 is towards B
}

// Joint is a place where two seams butt together from the two sides of a later seam, mirror
// images in its line. They nest where their allowances turn the same way round the joint.
type Joint struct {
	At    measure.Point `json:"at"`
	A     Arm           `json:"a"`
	B     Arm           `json:"b"`
	Nests bool          `json:"nests"`
}

// Arm is a seam that runs to a joint.
type Arm struct {
	Choice  int32    `json:"choice"`  // index
	Turned  bool     `json:"turned"`  // the choice's way 0 turns it anticlockwise round the joint
	Patches [2]int32 `json:"patches"` // on its two sides: clockwise of it and anticlockwise, as seen from the joint
}

// Cannot is a joint that does not nest, with the reason: a cycle of joints, each of which
// shares a choice with the next, that ask for an odd number of changes in all. Whichever way
// the choices go, one joint of the cycle does not nest.
type Cannot struct {
	Joint    int   `json:"joint"`     // index
	OddCycle []int `json:"odd_cycle"` // joints, by index, Joint first; nil where none was found
}
