package main

import (
	"encoding/json"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sizes"
	"eighthturn/internal/render"
)

// Charts as JSON and as tables. The names below are for other programs and do not change; a change of what they mean
// changes formatChart.
const formatChart = 1

// jsonLength and jsonSize are lengths in the one dialect.
type jsonLength = measure.JSONLength

type jsonSize struct {
	Width  jsonLength `json:"width"`
	Height jsonLength `json:"height"`
}

type jsonChart struct {
	Format        int           `json:"format"`
	Units         string        `json:"units"`
	SeamAllowance jsonLength    `json:"seam_allowance"`
	UsableWidth   *jsonLength   `json:"usable_width,omitempty"`
	StripCut      *jsonLength   `json:"strip_cut,omitempty"` // of tumblers
	Strips        []jsonMade    `json:"strips,omitempty"`
	Sides         []jsonSide    `json:"sides,omitempty"`
	Tumblers      []jsonTumbler `json:"tumblers,omitempty"`
}

type jsonMade struct {
	StripCut          jsonLength   `json:"strip_cut"`
	WedgeFinished     jsonLength   `json:"wedge_finished"`
	SidesFinished     []jsonSideOf `json:"sides_finished"`
	Kite              jsonSquare   `json:"kite_square"`
	Stop              jsonSquare   `json:"stop_square"`
	Corner            jsonCorner   `json:"corner_square"`
	WedgeBaseFinished jsonLength   `json:"wedge_base_finished"`
	WedgeBaseCut      jsonLength   `json:"wedge_base_cut"`
	WedgeTipCut       jsonLength   `json:"wedge_tip_cut"`
	PitchCut          jsonLength   `json:"pitch_cut"`
	Wedges            int          `json:"wedges"`
}

type jsonSideOf struct {
	Kinds        []string   `json:"kinds"`
	SideFinished jsonLength `json:"side_finished"`
}

type jsonSquare struct {
	Need jsonLength `json:"need"`
	Cut  jsonLength `json:"cut"`
}

type jsonCorner struct {
	jsonSquare
	RuleCut  *jsonLength `json:"rule_cut"`
	KitesCut *jsonLength `json:"kites_cut"`
}

type jsonSide struct {
	SideFinished jsonLength      `json:"side_finished"`
	Strips       []jsonSideStrip `json:"strips"`
	Near         bool            `json:"near"`
}

type jsonSideStrip struct {
	Kinds             []string   `json:"kinds"`
	StripCut          jsonLength `json:"strip_cut"`
	MarkCut           jsonLength `json:"mark_cut"`
	SideErrorFinished jsonLength `json:"side_error_finished"`
}

type jsonTumbler struct {
	LineCut        jsonLength `json:"line_cut"`
	WideCut        jsonLength `json:"wide_cut"`
	NarrowCut      jsonLength `json:"narrow_cut"`
	WideFinished   jsonLength `json:"wide_finished"`
	NarrowFinished jsonLength `json:"narrow_finished"`
	MeanFinished   jsonLength `json:"mean_finished"`
	Pieces         int        `json:"pieces"`
	Slim           bool       `json:"slim"`
}

// prettyJSON is a value as JSON that steers no terminal.
func prettyJSON(value any) string {
	b, err := json.MarshalIndent(value, "", "  ")
	if err != nil {
		panic(err) // nothing that is shown can fail to be written
	}
	return render.Harmless(string(b)) + "\n"
}

// chartJSON is what all charts say first, and lengths as JSON.
func chartJSON(o sizes.Options) (jsonChart, func(measure.NM) jsonLength) {
	length := func(nm measure.NM) jsonLength { return o.Units.JSON(nm) }
	return jsonChart{Format: formatChart, Units: o.Units.String(), SeamAllowance: length(o.Seam)}, length
}

func stripChartJSON(c *sizes.StripChart) jsonChart {
	j, length := chartJSON(c.Options)
	usable := length(c.UsableWidth)
	j.UsableWidth = &usable
	maybe := func(nm measure.NM) *jsonLength {
		if nm == 0 {
			return nil
		}
		l := length(nm)
		return &l
	}
	square := func(s sizes.Square) jsonSquare { return jsonSquare{length(s.Need), length(s.Cut)} }
	j.Strips = mapped(c.Strips, func(s sizes.Strip) jsonMade {
		m := jsonMade{
			StripCut: length(s.StripCut), WedgeFinished: length(s.WedgeFinished), Kite: square(s.Kite), Stop: square(s.Stop),
			Corner:            jsonCorner{square(s.Corner.Square), maybe(s.Corner.RuleCut), maybe(s.Corner.KitesCut)},
			WedgeBaseFinished: length(s.WedgeBaseFinished), WedgeBaseCut: length(s.WedgeBaseCut), WedgeTipCut: length(s.WedgeTipCut),
			PitchCut: length(s.PitchCut), Wedges: s.Wedges,
		}
		for i, side := range s.SidesFinished {
			m.SidesFinished = append(m.SidesFinished, jsonSideOf{c.Heights[i].Kinds, length(side)})
		}
		return m
	})
	return j
}

func sideChartJSON(c *sizes.SideChart) jsonChart {
	j, length := chartJSON(c.Options)
	j.Sides = mapped(c.Sides, func(s sizes.Side) jsonSide {
		side := jsonSide{SideFinished: length(s.SideFinished), Near: s.Near}
		for i, strip := range s.Strips {
			side.Strips = append(side.Strips, jsonSideStrip{c.Heights[i].Kinds, length(strip.StripCut), length(strip.MarkCut), length(strip.SideErrorFinished)})
		}
		return side
	})
	return j
}

func tumblerChartJSON(c *sizes.TumblerChart) jsonChart {
	j, length := chartJSON(c.Options)
	usable, strip := length(c.UsableWidth), length(c.StripCut)
	j.UsableWidth, j.StripCut = &usable, &strip
	j.Tumblers = mapped(c.Tumblers, func(t sizes.Tumbler) jsonTumbler {
		return jsonTumbler{
			length(t.LineCut), length(t.WideCut), length(t.NarrowCut), length(t.WideFinished), length(t.NarrowFinished),
			length(t.MeanFinished), t.Pieces, t.Slim,
		}
	})
	return j
}

func stripTable(c *sizes.StripChart) *spreadsheet {
	s := &spreadsheet{units: c.Units}
	s.row()
	s.lengthNames("strip_cut", "wedge_finished")
	for _, h := range c.Heights {
		s.lengthNames(columnName(h.Kinds[0]) + "_side_finished")
	}
	s.lengthNames("kite_need", "kite_cut", "stop_need", "stop_cut", "corner_need", "corner_cut", "wedge_base_cut", "wedge_tip_cut", "pitch_cut")
	s.cells("wedges")
	for _, strip := range c.Strips {
		s.row()
		s.length(strip.StripCut)
		s.length(strip.WedgeFinished)
		for _, side := range strip.SidesFinished {
			s.length(side)
		}
		for _, square := range []sizes.Square{strip.Kite, strip.Stop, strip.Corner.Square} {
			s.length(square.Need)
			s.length(square.Cut)
		}
		s.length(strip.WedgeBaseCut)
		s.length(strip.WedgeTipCut)
		s.length(strip.PitchCut)
		s.number(strip.Wedges)
	}
	return s
}

func sideTable(c *sizes.SideChart) *spreadsheet {
	s := &spreadsheet{units: c.Units}
	s.row()
	s.lengthNames("side_finished")
	for _, h := range c.Heights {
		name := columnName(h.Kinds[0])
		s.lengthNames(name+"_strip_cut", name+"_mark_cut")
		s.cells(s.unitName(name + "_side_error_finished"))
	}
	s.cells("near")
	for _, side := range c.Sides {
		s.row()
		s.length(side.SideFinished)
		for _, strip := range side.Strips {
			s.length(strip.StripCut)
			s.length(strip.MarkCut)
			s.decimal(strip.SideErrorFinished)
		}
		s.text(yesOrNo(side.Near))
	}
	return s
}

func tumblerTable(c *sizes.TumblerChart) *spreadsheet {
	s := &spreadsheet{units: c.Units}
	s.row()
	s.lengthNames("line_cut", "wide_cut", "narrow_cut", "wide_finished", "narrow_finished", "mean_finished")
	s.cells("pieces", "slim")
	for _, t := range c.Tumblers {
		s.row()
		for _, nm := range []measure.NM{t.LineCut, t.WideCut, t.NarrowCut, t.WideFinished, t.NarrowFinished, t.MeanFinished} {
			s.length(nm)
		}
		s.number(t.Pieces)
		s.text(yesOrNo(t.Slim))
	}
	return s
}

func yesOrNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}
