// Package report turns plans into documents. Every sentence, heading and table about a quilt stands here, once: the command
// prints it, the page shows it, the booklet binds it, files hold it. Plans hold no words, renderers add none.
//
// A report is one function from plans to a document and one line in Reports: a command, a tab of the page, and every form
// that documents are written in follow.
package report

import (
	"eighthturn/internal/document"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// Report is one report of a top.
type Report struct {
	Name  string // of its command
	Title string // of its tab on the page
	Short string // what it tells, for the list of commands
	Make  func(*Plans) document.Document
	Plan  func(*Plans) any // its data, which is written as JSON; nil for none
}

// LightAndDark is the name of the report of light and dark, whose seams the page marks.
const LightAndDark = "values"

// Reports are all reports that the page shows in tabs, in their order.
func Reports() []Report {
	return []Report{
		{LightAndDark, "Value study", "value study: do the figures read?", Values, func(p *Plans) any { return p.Values() }},
		{"cuts", "Cutting", "what to cut and what to buy", Cutting, func(p *Plans) any { return p.Cuts() }},
		{"sew", "Sewing", "how it goes together, step by step", Sewing, func(p *Plans) any { return p.Steps() }},
	}
}

// Plans are what reports are made from: a top, and the plans of it, each worked out when it is first asked for. They are not
// to be used by two at a time.
type Plans struct {
	Top      *quilt.Top
	Name     string // what titles call the layout; "" for its title
	Cutting  cutting.Options
	Sewing   sewing.Options
	Contrast contrast.Options
	Tries    []contrast.Try   // other colors to study the top with
	Exact    bool             // lengths as exactly as programs write them
	Letters  []string         // of the fabrics, by index of the top's, where fabrics are called by letters; nil where not
	Line     func(at int) int // the line of the layout that a byte is in, from 1; nil for those who show faults otherwise

	cutting  *cutting.Plan
	one      *cutting.Plan // for one quilt, where the cutting plan is for several
	pieces   *cutting.Plan // the pieces of the cutting plan alone
	sewing   *sewing.Plan
	contrast *contrast.Report
	before   *contrast.Report // without the colors that are tried; nil if none are
	faces    [][]int          // by fabric
}

// Planned are the plans of a top whose cutting plan is made already.
func Planned(top *quilt.Top, cuts *cutting.Plan) *Plans { return &Plans{Top: top, cutting: cuts} }

// named is a report's title: the layout's name and what the report is.
func (p *Plans) named(what string) string {
	switch {
	case p.Name != "":
		return p.Name + ": " + what
	case p.Top.Title != "":
		return p.Top.Title + ": " + what
	}
	return "The quilt: " + what
}

// FacesByFabric are the faces of each fabric of the top, by index.
func (p *Plans) FacesByFabric() [][]int {
	if p.faces == nil {
		p.faces = make([][]int, len(p.Top.Fabrics))
		for i := range p.Top.Faces {
			f := p.Top.Faces[i].Fabric
			p.faces[f] = append(p.faces[f], i)
		}
	}
	return p.faces
}

// swatch is a fabric's color with its letter, if it has one.
func (p *Plans) swatch(fabric int) []document.Swatch {
	s := document.Swatch{Colour: p.Top.Fabrics[fabric].Colour}
	if p.Letters != nil {
		s.Letter = p.Letters[fabric]
	}
	return []document.Swatch{s}
}

// called is a fabric's name, with its letter where fabrics have letters.
func (p *Plans) called(fabric int) string {
	if p.Letters == nil {
		return p.Top.Fabrics[fabric].Name
	}
	return p.Letters[fabric] + " " + p.Top.Fabrics[fabric].Name
}

// Cuts is how the top is cut.
func (p *Plans) Cuts() *cutting.Plan {
	if p.cutting == nil {
		p.cutting = cutting.Build(p.Top, p.Cutting)
	}
	return p.cutting
}

// One is how the top is cut for one quilt, where the cutting plan may be for several.
func (p *Plans) One() *cutting.Plan {
	if p.Cuts().Copies == 1 {
		return p.Cuts()
	}
	if p.one == nil {
		o := p.Cutting
		o.Copies = 1
		p.one = cutting.Build(p.Top, o)
	}
	return p.one
}

// Pieces is how the pieces are cut: the plan, or if that has not been worked out its pieces alone.
func (p *Plans) Pieces() *cutting.Plan {
	if p.cutting != nil {
		return p.cutting
	}
	if p.pieces == nil {
		p.pieces = cutting.Pieces(p.Top, p.Cutting)
	}
	return p.pieces
}

// Cut says whether the cutting plan has been worked out.
func (p *Plans) Cut() bool { return p.cutting != nil }

// Sewn says whether the sewing plan has been worked out.
func (p *Plans) Sewn() bool { return p.sewing != nil }

// Steps is how the top is sewn.
func (p *Plans) Steps() *sewing.Plan {
	if p.sewing == nil {
		p.sewing = sewing.Build(p.Top, p.Pieces(), p.Sewing)
	}
	return p.sewing
}

// Values is how the top's light and dark read, with the colors that are tried.
func (p *Plans) Values() *contrast.Report {
	if p.contrast == nil {
		p.contrast = contrast.Study(contrast.Tried(p.Top, p.Tries), p.Contrast)
		if len(p.Tries) > 0 {
			p.before = contrast.Study(p.Top, p.Contrast)
			for _, try := range p.Tries {
				p.contrast.Tried = append(p.contrast.Tried, p.Top.Fabrics[try.Fabric].Name+"="+try.Colour.Hex())
			}
		}
	}
	return p.contrast
}
