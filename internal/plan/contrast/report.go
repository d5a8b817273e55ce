// Package contrast turns a top into a study of light and dark: how light each fabric is, which
// seams vanish, whether the figures that the layout means to show are seen, and which other
// cloth would mend what is not.
//
// What rests on published figures and what is a choice of this program is said beside each
// threshold, and stands in every report.
package contrast

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/palettes"
)

// Report is the whole study. Lengths are finished, in whole nanometres; steps of value are
// in CIE L*, 0 to 100; shares run from 0 to 1.
type Report struct {
	Title      string         `json:"title"`
	Units      measure.System `json:"-"`
	Thresholds Thresholds     `json:"thresholds"`
	Fabrics    []Fabric       `json:"fabrics"` // those that the top shows, the darkest first
	Seams      Totals         `json:"seams"`
	Pairs      []Pair         `json:"pairs"`           // fabrics that meet; what asks most for a look first
	Figures    []Figure       `json:"figures"`         // in the order web, star, wheel, alternation, strips, sashes, border
	Stray      []Stray        `json:"stray"`           // scraps that look like what their pool stands against
	Losses     []Loss         `json:"losses"`          // what does not show, the most important first; empty where all does
	Changes    []Change       `json:"changes"`         // what would help, the best first
	Tried      []string       `json:"tried,omitempty"` // other colours that the study was made with, "fabric=#rrggbb"
	Marks      []Mark         `json:"-"`               // seams that vanish or are soft, in the order of the top
}

// Thresholds are the figures that a report rests on.
type Thresholds struct {
	Own           bool       `json:"own"` // the layout or the command line gave soft and clear
	SoftLeast     float64    `json:"soft_least"`
	SoftMost      float64    `json:"soft_most"` // soft steps of this top's seams run from SoftLeast to SoftMost
	Clear         float64    `json:"clear"`
	Strong        float64    `json:"strong"`
	ColourOnly    float64    `json:"colour_only_ciede2000"`
	Reads         float64    `json:"reads_from"`             // score, 0 to 100, from which an outline or a mass counts as holding
	BesideEdge    float64    `json:"reads_beside_edge_from"` // score from which a mass counts as holding whose outline holds
	Distance      measure.NM `json:"distance"`
	Blur          measure.NM `json:"blur"` // standard deviation of the squint's blur on the quilt
	MediumFrom    float64    `json:"medium_from"`
	LightFrom     float64    `json:"light_from"`
	NearThreshold float64    `json:"near"` // within so much of a threshold a step is in doubt
}

// Fabric is what a report says about a fabric.
type Fabric struct {
	Index     int     `json:"-"` // in the top
	Name      string  `json:"name"`
	Colour    string  `json:"colour"` // #rrggbb
	Lightness float64 `json:"lightness"`
	Munsell   float64 `json:"munsell_value"` // 0 to 10
	Family    string  `json:"family"`        // by itself: dark, medium or light
	Here      string  `json:"family_here"`   // among the fabrics of this quilt
	Share     float64 `json:"share"`         // of the top
	Spread    float64 `json:"spread"`        // standard deviation of L* over the cloth
	Vivid     bool    `json:"vivid"`         // so colourful that it looks lighter than its L*
}

// Totals are sums over all seams of the top.
type Totals struct {
	Count      int                   `json:"count"`
	Length     measure.NM            `json:"length"`
	OneFabric  measure.NM            `json:"one_fabric"` // seams with one fabric on both sides
	ByBand     map[string]measure.NM `json:"by_band"`    // the other seams
	CountBand  map[string]int        `json:"by_band_count"`
	ColourOnly measure.NM            `json:"colour_only"` // of those that vanish
	// What of the bands lies inside one figure or its ground, where no line need show.
	Inside      map[string]measure.NM `json:"inside_by_band"`
	CountInside map[string]int        `json:"inside_by_band_count"`
}

// Pair is two fabrics that meet along seams.
type Pair struct {
	A, B       int                   `json:"-"`       // indices into the top's fabrics
	Names      [2]string             `json:"fabrics"` // the darker one first
	Count      int                   `json:"count"`
	Length     measure.NM            `json:"length"`
	ByBand     map[string]measure.NM `json:"by_band"`
	Inside     measure.NM            `json:"inside"`        // of its length, what lies inside one figure or its ground, where no line need show
	GoneInside measure.NM            `json:"vanish_inside"` // of that, what vanishes
	Step       float64               `json:"step"`          // of value, CIE L*
	Soft       float64               `json:"soft"`          // mean step below which its seams vanish, by length
	Colour     float64               `json:"ciede2000"`     // colour difference
	Band       Band                  `json:"band"`
	ColourOnly bool                  `json:"colour_only"` // it vanishes, and colour alone holds it
	Doubtful   bool                  `json:"doubtful"`    // near the soft or the clear threshold
	BreaksUp   bool                  `json:"breaks_up"`   // two prints whose darks and lights overlap
	Cells      []Place               `json:"cells"`       // where its seams vanish, those inside a figure or its ground left out
	Sight      []Sight               `json:"sight"`       // in the order protan, deutan, tritan
}

// Place is a cell of the grid, rows and columns from 1, or a border, from the inside out.
type Place struct {
	Row    int `json:"row,omitempty"`
	Column int `json:"column,omitempty"`
	Border int `json:"border,omitempty"`
}

// Sight is how a pair looks to someone whose sight for colours differs.
type Sight struct {
	Deficiency string  `json:"deficiency"`
	Step       float64 `json:"step"`
	Band       Band    `json:"band"`
}

// Mark is a seam to be marked in a picture.
type Mark struct {
	Seam       quilt.Seam
	Band       Band
	ColourOnly bool
	Inside     bool // of one figure or its ground, where no line need show
}

// Study studies a top. The options must have passed Check. Thresholds that they leave out
// are the layout's, where it has any.
func Study(t *quilt.Top, o Options) *Report { return StudyUntil(nil, t, o) }

// StudyUntil is Study until a sign ends it.
func StudyUntil(sign *stop.Sign, t *quilt.Top, o Options) *Report {
	if own := t.Credits.Contrast; o.Contrast == nil && own != nil {
		o.Contrast = &Contrast{Soft: own.Soft, Clear: own.Clear}
	}
	if o.Prints == nil {
		o.Prints = photographed(t)
	}
	s := newStudy(sign, t, o)
	r := &Report{Title: t.Title, Units: t.Units, Thresholds: s.thresholds(), Fabrics: s.fabrics()}
	r.Figures = s.figures()
	r.Stray = s.stray()
	r.Losses = losses(r.Figures, r.Stray)
	s.sign.Look()
	r.Seams = s.totals()
	pairs := s.pairs()
	r.Pairs = pairs
	r.Marks = s.marks()
	r.Changes = s.changes(r)
	return r
}

func (s *study) thresholds() Thresholds {
	th := Thresholds{
		Own: s.Contrast != nil, Clear: s.clear(), Strong: s.strong(), ColourOnly: screamStep, Reads: readsFrom, BesideEdge: besideEdge,
		Distance: s.distance(), Blur: s.squint().Sigma(), MediumFrom: palettes.MediumFrom, LightFrom: palettes.LightFrom,
		NearThreshold: nearStep,
	}
	for i := range s.seams {
		if i == 0 {
			th.SoftLeast, th.SoftMost = s.seams[i].soft, s.seams[i].soft
		}
		th.SoftLeast = min(th.SoftLeast, s.seams[i].soft)
		th.SoftMost = max(th.SoftMost, s.seams[i].soft)
	}
	return th
}
