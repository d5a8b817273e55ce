package main

import "eighthturn/internal/measure"

// The names below are for other programs and do not change; a change of what they mean changes formatJSON. They are
// described in check-json.md.
const formatJSON = 1

type jsonReport struct {
	Format   int         `json:"format"`
	File     string      `json:"file"`
	Errors   int         `json:"errors"`
	Warnings int         `json:"warnings"`
	Faults   []jsonFault `json:"faults"`
	Quilt    *jsonQuilt  `json:"quilt"`
}

type jsonFault struct {
	Severity string     `json:"severity"`
	Message  string     `json:"message"`
	Hint     string     `json:"hint"`
	Line     int        `json:"line"`
	Column   int        `json:"column"`
	End      jsonPlace  `json:"end"`
	Notes    []jsonNote `json:"notes"`
}

type jsonNote struct {
	Message string    `json:"message"`
	Line    int       `json:"line"`
	Column  int       `json:"column"`
	End     jsonPlace `json:"end"`
}

type jsonPlace struct {
	Line   int `json:"line"`
	Column int `json:"column"`
}

type jsonLength = measure.JSONLength

type jsonSize struct {
	Width  jsonLength `json:"width"`
	Height jsonLength `json:"height"`
}

type jsonQuilt struct {
	Title         string         `json:"title"`
	Units         string         `json:"units"`
	SeamAllowance jsonLength     `json:"seam_allowance"`
	Across        int            `json:"blocks_across"`
	Down          int            `json:"blocks_down"`
	EmptyPlaces   int            `json:"empty_places"`
	SideFinished  jsonLength     `json:"side_finished"`
	StripGiven    bool           `json:"strip_given"`
	Strips        []jsonStrip    `json:"strips"`
	StripSets     []jsonStripSet `json:"strip_sets"`
	FieldFinished jsonSize       `json:"field_finished"`
	TopFinished   jsonSize       `json:"top_finished"`
	TopUnfinished jsonSize       `json:"top_unfinished"`
	Sash          *jsonSash      `json:"sash"`
	Borders       []jsonBorder   `json:"borders"`
	Binding       *jsonBinding   `json:"binding"`
	Backing       string         `json:"backing"`
	Blocks        []jsonBlock    `json:"blocks"`
	Pieces        []jsonPieces   `json:"pieces"`
	Webs          jsonCentres    `json:"web_centres"`
	Stars         jsonCentres    `json:"star_centres"`
	Fabrics       []jsonFabric   `json:"fabrics"`
	Hints         []string       `json:"hints"`
}

type jsonStrip struct {
	Kinds         []string     `json:"kinds"`
	WidthFinished jsonLength   `json:"width_finished"`
	WidthCut      jsonLength   `json:"width_cut"`
	Nearest       *jsonNearest `json:"nearest"`
}

type jsonNearest struct {
	Mark             jsonLength `json:"mark"`
	WidthCut         jsonLength `json:"width_cut"`
	SideFinished     jsonLength `json:"side_finished"`
	RowErrorFinished jsonLength `json:"row_error_finished"`
}

type jsonStripSet struct {
	Name string       `json:"name"`
	Uses []jsonSetUse `json:"uses"`
}

type jsonSetUse struct {
	Kinds []string   `json:"kinds"`
	Bands []jsonBand `json:"bands"`
}

type jsonBand struct {
	Fabric        string     `json:"fabric"`
	Rest          bool       `json:"rest"`
	WidthCut      jsonLength `json:"width_cut"`
	WidthFinished jsonLength `json:"width_finished"`
}

type jsonSash struct {
	Fabric        string     `json:"fabric"`
	WidthFinished jsonLength `json:"width_finished"`
	WidthCut      jsonLength `json:"width_cut"`
	Posts         string     `json:"posts"`
	Around        bool       `json:"around"`
}

type jsonBorder struct {
	Fabric        string     `json:"fabric"`
	WidthFinished jsonLength `json:"width_finished"`
	WidthCut      jsonLength `json:"width_cut"`
	Corners       string     `json:"corners"`
}

type jsonBinding struct {
	Fabric   string     `json:"fabric"`
	WidthCut jsonLength `json:"width_cut"`
}

type jsonBlock struct {
	Label string `json:"label"`
	Kind  string `json:"kind"`
	Count int    `json:"count"`
}

type jsonPieces struct {
	Shape    string `json:"shape"`
	Count    int    `json:"count"`
	FromSets int    `json:"from_strip_sets"`
}

type jsonCentres struct {
	Whole  int        `json:"whole"`
	Closed int        `json:"closed"`
	Open   []jsonOpen `json:"open"`
}

type jsonOpen struct {
	Row    int `json:"row"`
	Column int `json:"column"`
	Has    int `json:"has"`
}

type jsonFabric struct {
	Name   string  `json:"name"`
	Print  string  `json:"print"`
	Colour string  `json:"colour"`
	Value  float64 `json:"value"`
	Share  float64 `json:"share"`
	Binds  bool    `json:"binding"`
	Backs  bool    `json:"backing"`
}
