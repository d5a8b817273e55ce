// Package report turns plans into documents. Every sentence, heading and table about a quilt stands here, once: the command
// prints it, the page shows it, the booklet binds it, files hold it. Plans hold no words, renderers add none.
//
// A report is one function from plans to a document and one line in Reports.
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
	Make  func(*Plans) document.Document
}

// Reports are all reports that the page shows in tabs, in their order.
func Reports() []Report {
	return []Report{}
}

// Plans are what reports are made from: a top, and the plans of it, each worked out when it is first asked for. They are not
// to be used by two at a time.
type Plans struct {
	Top      *quilt.Top
	Name     string // of the layout's file, without folder and ending; "" for none
	Cutting  cutting.Options
	Sewing   sewing.Options
	Contrast contrast.Options
	Exact    bool // lengths with their decimals

	cutting  *cutting.Plan
	sewing   *sewing.Plan
	contrast *contrast.Report
}

// Cuts is how the top is cut.
func (p *Plans) Cuts() *cutting.Plan {
	if p.cutting == nil {
		p.cutting = cutting.Build(p.Top, p.Cutting)
	}
	return p.cutting
}

// Steps is how the top is sewn.
func (p *Plans) Steps() *sewing.Plan {
	if p.sewing == nil {
		p.sewing = sewing.Build(p.Top, p.Sewing)
	}
	return p.sewing
}

// Values is how the top's light and dark read.
func (p *Plans) Values() *contrast.Report {
	if p.contrast == nil {
		p.contrast = contrast.Study(p.Top, p.Contrast)
	}
	return p.contrast
}
