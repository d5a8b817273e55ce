package main

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/summary"
	"eighthturn/layout"
)

// formatCheck changes when what a name in the JSON of `check` means does. The names are described in check-json.md.
const formatCheck = 2

// checkJSON is what `check` says, for other programs.
type checkJSON struct {
	Errors   int              `json:"errors"`
	Warnings int              `json:"warnings"`
	Faults   []faultJSON      `json:"faults"`
	Quilt    *summary.Summary `json:"quilt"` // nil where the layout cannot be drawn
}

// faultJSON is an error or a warning with its place.
type faultJSON struct {
	Severity string `json:"severity"`
	Message  string `json:"message"`
	Hint     string `json:"hint"`
	spanJSON
	Edits []editJSON `json:"edits"`
	Notes []noteJSON `json:"notes"`
}

// editJSON is what a hint says to type in place of a stretch of the text.
type editJSON struct {
	spanJSON
	Text string `json:"text"`
}

type noteJSON struct {
	Message string `json:"message"`
	spanJSON
}

type spanJSON struct {
	placeJSON
	End placeJSON `json:"end"`
}

type placeJSON struct {
	Line   int `json:"line"`
	Column int `json:"column"`
}

// checkedJSON is what `check` found. Made is nil where the layout cannot be drawn.
func checkedJSON(name string, lines *layout.Source, list []layout.Fault, made *summary.Summary) jsonPlan {
	c := checkJSON{Faults: make([]faultJSON, 0, len(list)), Quilt: made}
	c.Errors, c.Warnings = layout.Count(list)
	for _, f := range list {
		fault := faultJSON{Severity: f.Severity.String(), Message: f.Message, Hint: f.Hint, spanJSON: spanOf(lines, f.Span), Edits: []editJSON{}}
		for _, e := range f.Edits {
			fault.Edits = append(fault.Edits, editJSON{spanOf(lines, e.Span), e.Text})
		}
		for _, n := range f.Notes {
			fault.Notes = append(fault.Notes, noteJSON{n.Message, spanOf(lines, n.Span)})
		}
		c.Faults = append(c.Faults, fault)
	}
	units := measure.Inches
	if made != nil {
		units = made.Units
	}
	return planJSON(&c, formatCheck, name, units)
}

func spanOf(lines *layout.Source, s layout.Span) spanJSON {
	place := func(at int) placeJSON {
		line, column := lines.Position(at)
		return placeJSON{line, column}
	}
	return spanJSON{place(s.Start), place(s.End)}
}
