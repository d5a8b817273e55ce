// Package report turns plans into documents. Every sentence, heading and table about a quilt stands here, once: the command
// prints it, the page shows it, the booklet binds it, files hold it. Plans hold no words, renderers add none.
//
// A report is one function from plans to a document and one line in Reports: a command, a tab of the page, and every form
// that documents are written in follow.
package report

import (
	"cmp"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/leftovers"
	"eighthturn/internal/plan/orders"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/palettes"
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
		{LightAndDark, "Value", "value study: do the figures read?", Values, func(p *Plans) any { return p.Values() }},
		{"cuts", "Cutting", "what to cut and what to buy", Cutting, func(p *Plans) any { return p.Cuts() }},
		{"sew", "Sewing", "how it goes together, step by step", Sewing, func(p *Plans) any { return p.Steps() }},
		{"leftovers", "Leftovers", "what the leftover wedges make", Leftovers, func(p *Plans) any { return p.Leftovers() }},
	}
}

// Plans are what reports are made from: a top, and the plans of it, each worked out when it is first asked for. A copy made
// by Until shares them, so that several reports may be made at a time, each in a copy of its own.
type Plans struct {
	Top      *quilt.Top
	Name     string // what titles call the layout; "" for its title
	Cutting  cutting.Options
	Sewing   sewing.Options
	Contrast contrast.Options
	Tries    []contrast.Try   // other colors to study the top with
	Exact    bool             // lengths as exactly as programs write them
	BothShop bool             // what to buy is said in yards and in meters
	Letters  []string         // of the fabrics, by index of the top's, where fabrics are called by letters; nil where not
	Line     func(at int) int // the line of the layout that a byte is in, from 1; nil for those who show faults otherwise

	// Nearby finds the nearest layouts that use strip sets both ways round; nil where the text of the layout is not at hand.
	Nearby func(sign *stop.Sign, plan *cutting.Plan, o cutting.Options) []orders.Better

	sign *stop.Sign // ends the work; nil for never
	made *made      // nil before the first is asked for
}

// made is the plans that were made.
type made struct {
	cutting   stop.Once[*cutting.Plan]
	one       stop.Once[*cutting.Plan] // for one quilt, where the cutting plan is for several
	pieces    stop.Once[*cutting.Plan] // the pieces of the cutting plan alone
	sewing    stop.Once[*sewing.Plan]
	contrast  stop.Once[studies]
	faces     stop.Once[[][]int] // by fabric
	sizes     stop.Once[[]*Plans]
	nearby    stop.Once[[]orders.Better]
	leftovers stop.Once[*leftovers.Plan]
	least     stop.Once[*cutting.Plan] // with the least cloth
}

// studies are how light and dark read.
type studies struct {
	now    *contrast.Report
	before *contrast.Report // without the colors that are tried; nil if none are
}

// Until is a copy of the plans whose work ends by a sign. What it works out, the others have too.
func (p *Plans) Until(sign *stop.Sign) *Plans {
	shared := *p
	shared.made, shared.sign = p.all(), sign
	return &shared
}

// all is the plans that were made.
func (p *Plans) all() *made {
	if p.made == nil {
		p.made = &made{}
	}
	return p.made
}

// Sign ends the work of those who make reports; nil for never.
func (p *Plans) Sign() *stop.Sign { return p.sign }

// as is the same but for the cutting plan, and with no other plan made.
func (p *Plans) as(cuts *cutting.Plan) *Plans {
	other := *p
	other.made = &made{}
	other.made.cutting.Get(nil, func() *cutting.Plan { return cuts })
	return &other
}

// named is a report's title: the layout's name and what the report is.
func (p *Plans) named(what string) string {
	if p.Name != "" {
		return inVariant(p.Name, p.Top) + ": " + what
	}
	return cmp.Or(p.Top.Title, "The quilt") + ": " + what
}

// FacesByFabric are the faces of each fabric of the top, by index.
func (p *Plans) FacesByFabric() [][]int {
	return p.all().faces.Get(p.sign, func() [][]int {
		faces := make([][]int, len(p.Top.Fabrics))
		for i := range p.Top.Faces {
			f := p.Top.Faces[i].Fabric
			faces[f] = append(faces[f], i)
		}
		return faces
	})
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
	return p.all().cutting.Get(p.sign, func() *cutting.Plan { return cutting.Build(p.sign, p.Top, p.Cutting) })
}

// One is how the top is cut for one quilt, where the cutting plan may be for several.
func (p *Plans) One() *cutting.Plan {
	if p.Cuts().Copies == 1 {
		return p.Cuts()
	}
	return p.all().one.Get(p.sign, func() *cutting.Plan {
		o := p.Cutting
		o.Copies, o.NothingOnHand = 1, true // which serve one of the quilts
		return cutting.Build(p.sign, p.Top, o)
	})
}

// Pieces is how the pieces are cut: the plan, or if that has not been worked out its pieces alone.
func (p *Plans) Pieces() *cutting.Plan {
	if plan, made := p.all().cutting.Made(); made {
		return plan
	}
	return p.all().pieces.Get(p.sign, func() *cutting.Plan { return cutting.Pieces(p.Top, p.Cutting) })
}

// bothWays are the nearest layouts that use strip sets both ways round; none where nothing is saved.
func (p *Plans) bothWays() []orders.Better {
	if p.Nearby == nil {
		return nil
	}
	return p.all().nearby.Get(p.sign, func() []orders.Better { return p.Nearby(p.sign, p.Cuts(), p.Cutting) })
}

// Suggests says whether lines of the layout have been suggested, which may be others by now.
func (p *Plans) Suggests() bool {
	list, made := p.all().nearby.Made()
	return made && len(list) > 0
}

// Cut says whether the cutting plan has been worked out.
func (p *Plans) Cut() bool {
	_, made := p.all().cutting.Made()
	return made
}

// Sewn says whether the sewing plan has been worked out.
func (p *Plans) Sewn() bool {
	_, made := p.all().sewing.Made()
	return made
}

// Steps is how the top is sewn.
func (p *Plans) Steps() *sewing.Plan {
	return p.all().sewing.Get(p.sign, func() *sewing.Plan { return sewing.Build(p.sign, p.Top, p.Pieces(), p.Sewing) })
}

// Values is how the top's light and dark read, with the colors that are tried.
func (p *Plans) Values() *contrast.Report { return p.studies().now }

func (p *Plans) studies() studies {
	return p.all().contrast.Get(p.sign, func() studies {
		o := p.Contrast
		if o.Palettes == nil {
			o.Palettes = palettes.All()
		}
		s := studies{now: contrast.StudyUntil(p.sign, contrast.Tried(p.Top, p.Tries), o)}
		if len(p.Tries) > 0 {
			s.before = contrast.StudyUntil(p.sign, p.Top, p.Contrast)
			for _, try := range p.Tries {
				s.now.Tried = append(s.now.Tried, p.Top.Fabrics[try.Fabric].Name+"="+try.Colour.Hex())
			}
		}
		return s
	})
}
