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
	Most    int             `json:"most"`    // layers at the thickest point
	Limit   int             `json:"limit"`   // what counts as thick: more than this
	Meeting []MeetingPoints `json:"meeting"` // all points at which seams meet, by sort and by pieces
	Thick   []ThickPoint    `json:"thick"`   // points with more layers, by pieces, the most first
	Points  []Points        `json:"points"`  // whether points keep their seam allowance, by shape
	Blunted []NearPoint     `json:"blunted"` // points nearer than a seam allowance to the outside of the quilt
}

// PointSort says where on a top a point lies at which seams meet.
type PointSort string

const (
	AtCorners PointSort = "block corner" // on a seam between blocks, at a corner of one of them
	AtEdges   PointSort = "block edge"   // on a seam between blocks, elsewhere
	AtSashes  PointSort = "sash"         // on a seam of a sash
	AtBorders PointSort = "border"       // on a seam of a border
	InBlocks  PointSort = "inside"       // inside a block
)

// MeetingPoints is how many points there are of one sort at which so many pieces meet, thick or not.
type MeetingPoints struct {
	Sort   PointSort `json:"sort"`
	Pieces int       `json:"pieces"`
	Count  int       `json:"count"`
}

// ThickPoint is points of the top at which as many pieces meet, and which have more layers than Bulk.Limit, or would have them
// if the seams there were pressed as at others of the same shape.
type ThickPoint struct {
	Pieces int             `json:"pieces"`
	Inside bool            `json:"inside"` // inside blocks
	Layers int             `json:"layers"` // at the thickest of them, pressed as the plan presses
	Open   int             `json:"open"`   // layers there with the last seam pressed open
	Count  int             `json:"count"`
	Sorts  []MeetingPoints `json:"sorts"` // where they lie
	At     []measure.Point `json:"at"`    // the first of them
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
