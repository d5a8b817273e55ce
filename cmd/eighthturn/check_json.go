package main

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"unicode/utf16"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/summary"
	"eighthturn/layout"
)

// reportJSON is what `check` says, for other programs. Made is nil where the layout cannot be drawn.
func reportJSON(name string, lines *layout.Source, list []layout.Fault, made *summary.Summary) string {
	errors, warnings := layout.Count(list)
	r := jsonReport{Format: formatJSON, File: name, Errors: errors, Warnings: warnings, Faults: mapped(list, func(f layout.Fault) jsonFault {
		return faultJSON(lines, f)
	})}
	if made != nil {
		r.Quilt = (&sheet{Summary: made}).quiltJSON()
	}
	b, err := json.MarshalIndent(r, "", "  ")
	if err != nil {
		panic(err) // nothing in a report can fail to be written
	}
	return harmless(string(b)) + "\n"
}

// harmless is JSON with characters that steer a terminal or change the order of reading written as escapes.
func harmless(text string) string {
	var b strings.Builder
	for _, r := range text {
		if r == '\n' || layout.Visible(string(r)) == string(r) {
			b.WriteRune(r)
			continue
		}
		for _, u := range utf16.Encode([]rune{r}) {
			fmt.Fprintf(&b, `\u%04x`, u)
		}
	}
	return b.String()
}

// mapped is a list with each entry put into another form; without entries it is empty, never nil.
func mapped[A, B any](list []A, form func(A) B) []B {
	out := make([]B, len(list))
	for i, a := range list {
		out[i] = form(a)
	}
	return out
}

func placeJSON(lines *layout.Source, at int) jsonPlace {
	line, column := lines.Position(at)
	return jsonPlace{line, column}
}

func faultJSON(lines *layout.Source, f layout.Fault) jsonFault {
	start := placeJSON(lines, f.Span.Start)
	return jsonFault{
		Severity: f.Severity.String(), Message: f.Message, Hint: f.Hint,
		Line: start.Line, Column: start.Column, End: placeJSON(lines, f.Span.End),
		Notes: mapped(f.Notes, func(n layout.Note) jsonNote {
			start := placeJSON(lines, n.Span.Start)
			return jsonNote{n.Message, start.Line, start.Column, placeJSON(lines, n.Span.End)}
		}),
	}
}

func (p *sheet) lengthJSON(nm measure.NM) jsonLength { return p.Units.JSON(nm) }

func (p *sheet) sizeJSON(s summary.Size) jsonSize {
	return jsonSize{p.lengthJSON(s.Width), p.lengthJSON(s.Height)}
}

func (p *sheet) quiltJSON() *jsonQuilt {
	q := &jsonQuilt{
		Title: p.Title, Units: p.Units.String(), SeamAllowance: p.lengthJSON(p.SeamAllowance),
		Across: p.Across, Down: p.Down, EmptyPlaces: p.EmptyPlaces,
		SideFinished: p.lengthJSON(p.SideFinished), StripGiven: p.StripGiven,
		Strips: mapped(p.Strips, p.stripJSON), StripSets: mapped(p.StripSets, p.stripSetJSON),
		FieldFinished: p.sizeJSON(p.FieldFinished), TopFinished: p.sizeJSON(p.TopFinished), TopUnfinished: p.sizeJSON(p.TopUnfinished),
		Borders: mapped(p.Borders, func(b summary.Border) jsonBorder {
			return jsonBorder{b.Fabric, p.lengthJSON(b.WidthFinished), p.lengthJSON(b.WidthCut), b.Corners}
		}),
		Blocks: mapped(p.Blocks, func(b summary.Block) jsonBlock { return jsonBlock(b) }),
		Pieces: mapped(p.Pieces, func(s summary.Pieces) jsonPieces { return jsonPieces{s.Shape.String(), s.Count, s.FromSets} }),
		Webs:   centresJSON(p.Webs), Stars: centresJSON(p.Stars),
		Backing: p.Backing,
		Fabrics: mapped(p.Fabrics, fabricJSON), Hints: mapped(p.Hints, p.hint),
	}
	if e := p.Sash; e != nil {
		q.Sash = &jsonSash{e.Fabric, p.lengthJSON(e.WidthFinished), p.lengthJSON(e.WidthCut), e.Posts, e.Around}
	}
	if b := p.Binding; b != nil {
		q.Binding = &jsonBinding{b.Fabric, p.lengthJSON(b.WidthCut)}
	}
	return q
}

func (p *sheet) stripJSON(s summary.Strip) jsonStrip {
	strip := jsonStrip{Kinds: s.Kinds, WidthFinished: p.lengthJSON(s.WidthFinished), WidthCut: p.lengthJSON(s.WidthCut)}
	if n := s.Nearest; n != nil {
		strip.Nearest = &jsonNearest{p.lengthJSON(n.Mark), p.lengthJSON(n.WidthCut), p.lengthJSON(n.SideFinished), p.lengthJSON(n.RowErrorFinished)}
	}
	return strip
}

func (p *sheet) stripSetJSON(s summary.StripSet) jsonStripSet {
	return jsonStripSet{s.Name, mapped(s.Uses, func(u summary.SetUse) jsonSetUse {
		return jsonSetUse{u.Kinds, mapped(u.Bands, func(b summary.Band) jsonBand {
			return jsonBand{b.Fabric, b.Rest, p.lengthJSON(b.WidthCut), p.lengthJSON(b.WidthFinished)}
		})}
	})}
}

func centresJSON(c summary.Centres) jsonCentres {
	return jsonCentres{c.Whole, c.Closed, mapped(c.Open, func(o summary.Open) jsonOpen { return jsonOpen(o) })}
}

// fabricJSON rounds value to a hundredth and share to a millionth, so that the same layout gives the same bytes wherever
// it is read.
func fabricJSON(f summary.Fabric) jsonFabric {
	return jsonFabric{f.Name, f.Print, f.Colour.Hex(), math.Round(f.Lightness*100) / 100, math.Round(f.Share*1e6) / 1e6, f.Binds, f.Backs}
}
