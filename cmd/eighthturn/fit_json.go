package main

import (
	"slices"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/plan/supplies"
)

// What comes near a size as JSON. The names below are for other programs and do not change; a change of what they mean
// changes formatFit.
const formatFit = 1

// jsonLength and jsonSize are lengths in the one dialect.
type jsonLength = measure.JSONLength

type jsonSize struct {
	Width  jsonLength `json:"width"`
	Height jsonLength `json:"height"`
}

type jsonFit struct {
	Format      int              `json:"format"`
	File        string           `json:"file"`
	Units       string           `json:"units"`
	Wanted      jsonWanted       `json:"wanted"`
	Now         jsonSuggestion   `json:"now"`
	Across      jsonGrowth       `json:"across"`
	Down        jsonGrowth       `json:"down"`
	Suggestions []jsonSuggestion `json:"suggestions"`
	Refused     []jsonRefusal    `json:"refused"`
}

type jsonWanted struct {
	Finished jsonSize        `json:"finished"`
	Bed      string          `json:"bed,omitempty"`
	Drop     *jsonLength     `json:"drop,omitempty"`
	Lists    []jsonPublished `json:"lists,omitempty"` // of quilts, or of mattresses where there is a drop
}

type jsonPublished struct {
	Least  jsonSize `json:"least"`
	Most   jsonSize `json:"most"`
	Source string   `json:"source"`
}

type jsonGrowth struct {
	Step    int    `json:"step"`
	Least   int    `json:"least"`
	Repeats bool   `json:"by_repeat"`
	Before  int    `json:"frame_before"`
	Behind  int    `json:"frame_behind"`
	Parity  string `json:"preferred"`
	Corners bool   `json:"for_the_corners"`
}

type jsonSuggestion struct {
	StripCut     *jsonLength  `json:"strip_cut,omitempty"`
	SideFinished jsonLength   `json:"side_finished"`
	Across       int          `json:"blocks_across"`
	Down         int          `json:"blocks_down"`
	Borders      string       `json:"borders"`
	Widths       []jsonLength `json:"borders_finished"`
	TopFinished  jsonSize     `json:"top_finished"`
	Over         jsonSize     `json:"over"`
	Within       bool         `json:"within_lists"`
	LaidOut      bool         `json:"laid_out"`
	MoreWarnings int          `json:"more_warnings"`
	Warnings     []string     `json:"new_warnings"`
	Changes      []jsonChange `json:"changes"`
}

type jsonChange struct {
	First int    `json:"first_line"`
	Last  int    `json:"last_line"`
	Was   string `json:"was"`
	Write string `json:"write"`
}

type jsonRefusal struct {
	Size    jsonLength `json:"size"`
	Message string     `json:"message"`
}

func (p *fitPage) lengthJSON(nm measure.NM) jsonLength { return p.Units.JSON(nm) }

func (p *fitPage) sizeJSON(s supplies.Size) jsonSize {
	return jsonSize{p.lengthJSON(s.Width), p.lengthJSON(s.Height)}
}

func fitJSON(name string, r *fit.Report, o *sizing) jsonFit {
	p := &fitPage{Report: r, sizing: o}
	j := jsonFit{
		Format: formatFit, File: name, Units: r.Units.String(), Wanted: p.wantedJSON(), Now: p.suggestionJSON(r.Now),
		Across: growthJSON(r.Across), Down: growthJSON(r.Down), Suggestions: mapped(r.Suggestions, p.suggestionJSON),
		Refused: mapped(r.Refused, func(f fit.Refusal) jsonRefusal { return jsonRefusal{p.lengthJSON(f.Size), f.Message} }),
	}
	for i := range j.Suggestions {
		j.Suggestions[i].LaidOut = i < r.LaidOut
	}
	j.Now.LaidOut = true
	return j
}

func (p *fitPage) wantedJSON() jsonWanted {
	w := jsonWanted{Finished: p.sizeJSON(p.Wanted.Finished)}
	if p.bed.bed == nil {
		return w
	}
	w.Bed = p.bed.bed.Name
	list := p.bed.bed.Quilts
	if p.drop.text != "" {
		drop := p.lengthJSON(p.drop.in(p.Units))
		w.Drop, list = &drop, p.bed.bed.Mattresses
	}
	w.Lists = mapped(list, func(l supplies.Published) jsonPublished {
		return jsonPublished{p.sizeJSON(l.Least), p.sizeJSON(l.Most), l.Source}
	})
	return w
}

func growthJSON(g fit.Growth) jsonGrowth {
	parity := [...]string{fit.Any: "any", fit.Even: "even", fit.Odd: "odd"}[g.Parity]
	return jsonGrowth{g.Step, g.Least, g.Repeats, g.Before, g.Behind, parity, g.Corners}
}

func (p *fitPage) suggestionJSON(s fit.Suggestion) jsonSuggestion {
	j := jsonSuggestion{
		SideFinished: p.lengthJSON(s.SideFinished), Across: s.Columns, Down: s.Rows,
		Borders: [...]string{fit.AsWritten: "as written", fit.Scaled: "scaled", fit.LeftOut: "left out"}[s.Borders],
		Widths:  mapped(s.BordersFinished, p.lengthJSON), TopFinished: p.sizeJSON(s.Finished), Over: p.sizeJSON(s.Over),
		Within: s.Within, MoreWarnings: s.MoreWarnings, Warnings: slices.Concat([]string{}, s.Warnings),
		Changes: mapped(s.Changes, func(c fit.Change) jsonChange { return jsonChange(c) }),
	}
	if s.StripCut != 0 {
		strip := p.lengthJSON(s.StripCut)
		j.StripCut = &strip
	}
	return j
}
