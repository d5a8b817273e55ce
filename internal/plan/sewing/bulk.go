package sewing

import (
	"eighthturn/internal/measure"
)

// Grain is where edges lie off the straight grain of the cloth.
type Grain struct {
	Outside    []OutsideGrain `json:"outside"`    // edges of blocks on the outside of the field of blocks
	AtEdge     bool           `json:"at_edge"`    // there is no border, so that these are the edges of the top
	Staystitch measure.NM     `json:"staystitch"` // from the raw edge: half the seam allowance, on a ruler's mark; 0 where none is that small
}

// EdgeGrain is how one side of a block lies on the cloth, lengths finished.
type EdgeGrain struct {
	Straight measure.NM `json:"straight"`  // along or across the cloth
	OffGrain measure.NM `json:"off_grain"` // in between: it stretches
	Bias     measure.NM `json:"bias"`      // at 45 degrees: it stretches most
	Degrees  float64    `json:"degrees"`   // the most by which a part of it lies off the grain, 0 to 45
}

// OutsideGrain is the cells whose edge on one side of the field is not straight.
type OutsideGrain struct {
	Block int       `json:"block"` // index
	Edge  EdgeGrain `json:"edge"`  // of one of them
	Side  string    `json:"side"`  // of the top: "top", "right", "bottom", "left", or "inside" beside an empty place
	Cells []int     `json:"cells"` // by index
}

// Bulk is where many layers lie on each other, and where points are in danger.
type Bulk struct {
	Most    int          `json:"most"`    // layers at the thickest point
	Limit   int          `json:"limit"`   // what counts as thick: more than this
	Thick   []ThickPoint `json:"thick"`   // points with more layers, the thickest first
	Points  []Points     `json:"points"`  // whether points keep their seam allowance, by shape
	Blunted []NearPoint  `json:"blunted"` // points nearer than a seam allowance to the outside of the quilt
}

// ThickPoint is points of the top that are alike: as many pieces, as many layers.
type ThickPoint struct {
	Pieces int             `json:"pieces"`
	Layers int             `json:"layers"`
	Open   int             `json:"open"`  // layers with the last seam pressed open
	Round  int             `json:"round"` // layers with all allowances turned one way round the point, 0 where they cannot be
	Count  int             `json:"count"`
	Inside bool            `json:"inside"` // in the middle of a block
	At     []measure.Point `json:"at"`     // the first of them
}

// Points is the points of all pieces of one shape: the tips of wedges, the corners that
// point otherwise.
type Points struct {
	Shape  string `json:"shape"`
	Count  int    `json:"count"`
	Keep   int    `json:"keep"`    // of them, those with a seam allowance of cloth on all sides
	AtEdge int    `json:"at_edge"` // those that lie on the outside of the quilt, where the binding's seam runs through them
}

// NearPoint is points that the binding would blunt.
type NearPoint struct {
	Distance measure.NM      `json:"distance"` // from the outside of the quilt, finished; 0 on it
	Count    int             `json:"count"`
	At       []measure.Point `json:"at"` // the first of them
}
