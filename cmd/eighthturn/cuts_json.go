package main

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// A plan as JSON. The names below are for other programs and do not change; a change of what they mean changes formatCuts.
// Lines, strip sets and fabrics are numbered from 1, patches as in a picture's ids, from 0.
const formatCuts = 1

type jsonCuts struct {
	Format        int             `json:"format"`
	File          string          `json:"file"`
	Units         string          `json:"units"`
	SeamAllowance jsonLength      `json:"seam_allowance"`
	Copies        int             `json:"copies"`
	Fabrics       []jsonCutFabric `json:"fabrics"`
	Lines         []jsonCutLine   `json:"lines"`
	StripSets     []jsonCutSet    `json:"strip_sets"`
	Binding       *jsonBindingCut `json:"binding"`
	Backing       *jsonBackingCut `json:"backing"`
	Batting       *jsonBattingCut `json:"batting"`
	Advice        []string        `json:"advice"`
	Cautions      []string        `json:"cautions"`
}

type jsonCutFabric struct {
	Name        string         `json:"name"`
	Print       string         `json:"print,omitempty"`
	UsableWidth jsonLength     `json:"usable_width"`
	StripCount  int            `json:"strip_count"`
	StripRows   int            `json:"strip_rows"`  // the same, a strip that is cut in rows counted as often as it has them
	StripBound  int            `json:"strip_bound"` // so counted, no plan with as little cloth takes fewer, of plans in which every length of a strip is cut into like pieces
	ClothCut    jsonLength     `json:"cloth_cut"`
	ClothBound  jsonLength     `json:"cloth_bound"` // no plan of that kind takes less
	BackingCut  jsonLength     `json:"backing_cut"` // for all copies, and so of what follows
	ExactCut    jsonLength     `json:"exact_cut"`
	Need        jsonLength     `json:"need"` // with what is added for squaring the end and for slips
	Buy         jsonLength     `json:"buy"`
	OnHand      *jsonOnHand    `json:"on_hand"`
	Precuts     []jsonPrecut   `json:"precuts"`
	Blocks      []jsonBlockCut `json:"lengthwise"`
	Strips      []jsonStripCut `json:"strips"`
	Joined      []jsonJoined   `json:"joined"`
	LeftOver    []jsonLeftOver `json:"left_over"`
}

// jsonJoined is strips that are sewn end to end, and what is cut from the long strip.
type jsonJoined struct {
	Times  int             `json:"times"` // so many like this one
	Words  string          `json:"words"`
	Strips []jsonStripLong `json:"strips"` // in the order in which they are sewn
	Pieces []jsonPiecesOf  `json:"pieces"` // in the order in which they are cut
	Loss   jsonLength      `json:"lost_at_each_join"`
	Spare  jsonLength      `json:"spare"`
	Scant  bool            `json:"scant"`                    // less to spare than a step of rounding
	Least  *jsonLength     `json:"shortest_piece,omitempty"` // of a strip, in the pieces that hold a join
	Short  bool            `json:"short"`                    // that is shorter than it should be
}

type jsonStripLong struct {
	Strips    int        `json:"strips"`
	LengthCut jsonLength `json:"length_cut"`
}

type jsonPiecesOf struct {
	Line      int        `json:"line"`
	Pieces    int        `json:"pieces"`
	LengthCut jsonLength `json:"length_cut"`
}

type jsonOnHand struct {
	Have   jsonLength    `json:"have"`
	Enough bool          `json:"enough"`
	Short  jsonLength    `json:"short"`
	Ways   []jsonWayToGo `json:"ways_to_fit"`
}

type jsonWayToGo struct {
	Border        int         `json:"border,omitempty"` // from 1
	WidthFinished *jsonLength `json:"width_finished,omitempty"`
	SideFinished  *jsonLength `json:"side_finished,omitempty"`
	StripCut      *jsonLength `json:"strip_cut,omitempty"`
	Need          jsonLength  `json:"need"`
}

type jsonPrecut struct {
	Name  string `json:"name"`
	Count int    `json:"count"`
}

type jsonBlockCut struct {
	LengthCut jsonLength      `json:"length_cut"`
	LeftWidth jsonLength      `json:"left_width_cut"`
	Pieces    []jsonColumnCut `json:"pieces"`
}

type jsonColumnCut struct {
	Line      int        `json:"line"`
	WidthCut  jsonLength `json:"width_cut"`
	LengthCut jsonLength `json:"length_cut"`
}

type jsonStripCut struct {
	Strips     int          `json:"strips"`
	WidthCut   jsonLength   `json:"width_cut"`
	LengthCut  jsonLength   `json:"length_cut"`
	Lengthwise int          `json:"beside_lengthwise,omitempty"` // from 1
	Cuts       []jsonCutOff `json:"cuts"`
	EndLeft    jsonLength   `json:"end_left_cut"`
}

type jsonCutOff struct {
	Lines     []int      `json:"lines"`
	StripSet  int        `json:"strip_set,omitempty"`
	Words     string     `json:"words"`
	Units     int        `json:"units"`
	Rows      int        `json:"rows"` // one above the other
	AcrossCut jsonLength `json:"across_cut"`
	AlongCut  jsonLength `json:"along_cut"`
}

type jsonLeftOver struct {
	Pieces    int        `json:"pieces"`
	AcrossCut jsonLength `json:"across_cut"`
	AlongCut  jsonLength `json:"along_cut"`
}

type jsonCutLine struct {
	Line           int         `json:"line"`
	Fabric         string      `json:"fabric,omitempty"`
	StripSet       int         `json:"strip_set,omitempty"`
	Reversed       bool        `json:"reversed,omitempty"`
	Piece          string      `json:"piece"`
	Role           string      `json:"role"`
	Border         int         `json:"border,omitempty"`
	Method         string      `json:"method"`
	Hand           string      `json:"hand"`
	SideFinished   jsonLength  `json:"side_finished"`
	LengthFinished *jsonLength `json:"length_finished,omitempty"`
	AcrossExact    jsonLength  `json:"across_exact"`
	AcrossCut      jsonLength  `json:"across_cut"`
	AlongExact     jsonLength  `json:"along_exact"`
	AlongCut       jsonLength  `json:"along_cut"`
	TrimCut        jsonLength  `json:"trim_cut"`
	WideCut        *jsonLength `json:"wide_cut,omitempty"`
	NarrowCut      *jsonLength `json:"narrow_cut,omitempty"`
	RuleCut        *jsonLength `json:"rule_cut,omitempty"`
	KitesCut       *jsonLength `json:"kites_cut,omitempty"`
	Rulers         []jsonRuler `json:"exact_sizes"`
	Pieces         int         `json:"pieces"`
	Left           int         `json:"left"`
	Right          int         `json:"right"`
	Units          int         `json:"units"`
	Spare          int         `json:"spare"`
	Patches        []int       `json:"patches"`
}

type jsonRuler struct {
	ExactCut          jsonLength  `json:"exact_cut"`
	OnMark            bool        `json:"on_mark"`
	BelowCut          jsonLength  `json:"below_cut"`
	AboveCut          jsonLength  `json:"above_cut"`
	BelowSideFinished *jsonLength `json:"below_side_finished,omitempty"`
	AboveSideFinished *jsonLength `json:"above_side_finished,omitempty"`
}

type jsonCutSet struct {
	Number   int           `json:"number"`
	Name     string        `json:"name"`
	WidthCut jsonLength    `json:"width_cut"`
	Strips   []jsonSetBand `json:"strips"`
	Sets     []jsonSetRun  `json:"sets"`
	Wanted   [2]int        `json:"wanted"`
	Given    [2]int        `json:"given"`
	LeftOver [2]int        `json:"left_over"`
}

type jsonSetBand struct {
	Fabric        string     `json:"fabric"`
	WidthCut      jsonLength `json:"width_cut"`
	WidthFinished jsonLength `json:"width_finished"`
}

type jsonSetRun struct {
	Sets          int        `json:"sets"`
	LengthCut     jsonLength `json:"length_cut"`
	Wedges        int        `json:"wedges"`
	FirstReversed int        `json:"first_reversed"`
}

type jsonBindingCut struct {
	StripCut jsonLength `json:"strip_cut"`
	Strips   int        `json:"strips"`                // for all copies; for one quilt, strips / copies
	Need     jsonLength `json:"need"`                  // for one quilt
	Comes    jsonLength `json:"comes_of_whole_strips"` // for one quilt, if every strip were as long as the cloth is wide
}

// jsonBackingCut is the backing of one quilt; cloth for all copies stands with its fabric, as backing_cut.
type jsonBackingCut struct {
	Fabric    string      `json:"fabric"`
	WidthCut  jsonLength  `json:"width_cut"`
	HeightCut jsonLength  `json:"height_cut"`
	Ways      [2]jsonWays `json:"ways"` // seams up and down, then across
	Less      int         `json:"less"` // the way that takes less, from 0
}

type jsonWays struct {
	Panels    int        `json:"panels"`
	PanelCut  jsonLength `json:"panel_cut"`
	LengthCut jsonLength `json:"length_cut"`
	NearCliff bool       `json:"near_cliff"`
}

// jsonBattingCut is the least batting for one quilt.
type jsonBattingCut struct {
	WidthCut  jsonLength `json:"width_cut"`
	HeightCut jsonLength `json:"height_cut"`
}

// cutsWriter puts a plan into JSON.
type cutsWriter struct{ *cutting.Plan }

func (w cutsWriter) length(nm measure.NM) jsonLength {
	return w.Units.JSON(nm)
}

// atLeast is a length of which more does no harm, its text rounded up.
func (w cutsWriter) atLeast(nm measure.NM) jsonLength {
	return jsonLength{NM: nm, Text: w.Units.AtLeast(nm)}
}

// atMost is a length of which less does no harm, its text rounded down.
func (w cutsWriter) atMost(nm measure.NM) jsonLength {
	return jsonLength{NM: nm, Text: w.Units.AtMost(nm)}
}

// shop is a length of cloth as shops sell it.
func (w cutsWriter) shop(nm measure.NM) jsonLength { return jsonLength{NM: nm, Text: w.Units.Shop(nm)} }

// maybe is a length that may have no part in what is said.
func (w cutsWriter) maybe(nm measure.NM) *jsonLength {
	if nm == 0 {
		return nil
	}
	l := w.length(nm)
	return &l
}
