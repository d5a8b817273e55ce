package preview

import (
	"bytes"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"sync"

	"eighthturn/internal/plan/audition"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	pictures "eighthturn/internal/render/picture"
	"eighthturn/internal/report"
	"eighthturn/internal/stop"
	"eighthturn/layout"
	"eighthturn/svgout"
)

// A page may audition alternatives for a place of the layout: it asks what there is, then for a study of each with its pictures. One that
// it shows large is asked for as other pictures are, by the same words. The layout is not changed.

// auditionList is what a page may audition.
type auditionList struct {
	Places     []auditionPlace `json:"places"`
	Candidates []candidate     `json:"candidates"`
	Least      int             `json:"least"` // alternatives at a time
	Most       int             `json:"most"`
	Deals      int             `json:"deals"` // of a pool, from 1
}

// auditionPlace is a place that alternatives are for.
type auditionPlace struct {
	Role     string `json:"role"`
	Of       string `json:"of"`
	Name     string `json:"name"`
	Fabric   int    `json:"fabric"` // that is there now, or one of them
	Plain    bool   `json:"plain"`
	Recolors bool   `json:"recolors"`
	Deal     int    `json:"deal"`
}

// candidate is something that a place may be given.
type candidate struct {
	Name    string `json:"name"` // as the layout has it
	Worn    string `json:"worn"` // as the fabric is called in the colorway that is shown
	Fabrics []int  `json:"fabrics"`
	Palette bool   `json:"palette"` // a palette brings it in
	Several bool   `json:"several"` // a strip set or a pool
}

// auditionMessage is an audition.
type auditionMessage struct {
	Heading      string        `json:"heading"`
	Why          string        `json:"why,omitempty"` // there is none
	Alternatives []alternative `json:"alternatives"`
	Left         []leftOut     `json:"left,omitempty"`
}

// alternative is one of those that are shown.
type alternative struct {
	Alternative string   `json:"alternative"` // as asked for
	Name        string   `json:"name"`
	Rank        int      `json:"rank"` // among those that read better first, from 0
	Says        string   `json:"says"`
	Lines       []string `json:"lines"`
	Written     []string `json:"written"`          // the same as they are read
	Try         string   `json:"try,omitempty"`    // as requests name a color that is tried, where it is no more than that
	Fabric      *fabric  `json:"fabric,omitempty"` // as it is then
	Color       []byte   `json:"color"`            // PNG
	Gray        []byte   `json:"gray"`
}

// leftOut is an alternative that cannot stand there.
type leftOut struct {
	Name string `json:"name"`
	Why  string `json:"why"`
}

// auditionPixels is how many pixels the longer side of an alternative's picture has: two for each that most screens show of it.
const auditionPixels = 240

// The parameters of a request that is about auditions.
const (
	auditionRole        = "role"
	auditionOf          = "of"
	auditionAlternative = "alternative"
)

// serveAuditions answers with what may be auditioned.
func (s *site) serveAuditions(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(of *study, _ *stop.Sign) ([]byte, error) {
		read, ok := s.readingOf(of)
		if !ok {
			return nil, errOvertaken
		}
		colorway := of.plans.Top.Colorway
		m := auditionList{Places: []auditionPlace{}, Least: layout.MinAuditions, Most: layout.MaxAuditions, Deals: layout.MaxAuditions}
		for _, p := range read.AuditionPlaces(colorway) {
			m.Places = append(m.Places, auditionPlace{p.Role, p.Of, layout.Visible(report.AuditionOf(p.Role, p.Of)), p.Fabric, p.Plain, p.Recolors, p.Deal})
		}
		worn := read.AuditionFabrics(colorway)
		for i, f := range read.Design.Fabrics {
			m.Candidates = append(m.Candidates, candidate{Name: f.Name, Worn: worn[i], Fabrics: []int{i}, Palette: read.OfPalette(i)})
		}
		for i, set := range read.Design.StripSets {
			m.Candidates = append(m.Candidates, candidate{Name: set.Name, Fabrics: read.Design.FabricsOf(layout.Fill{Fabric: -1, Set: i, Pool: -1}), Several: true})
		}
		for i, p := range read.Design.Pools {
			m.Candidates = append(m.Candidates, candidate{Name: p.Name, Fabrics: read.Design.FabricsOf(layout.Fill{Fabric: -1, Set: -1, Pool: i}), Several: true})
		}
		return encoded(m), nil
	})
}

// readingOf is the newest text, which must be that of the picture that is shown.
func (s *site) readingOf(of *study) (*layout.Reading, bool) {
	p := s.state.current().picture
	if p == nil {
		return nil, false
	}
	read := layout.Inspect(p.source.Text, of.from.cloth)
	return &read, read.Design != nil
}

// serveAudition answers with an audition.
func (s *site) serveAudition(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
		read, ok := s.readingOf(of)
		if !ok {
			return nil, errOvertaken
		}
		q := r.URL.Query()
		m := auditionMessage{Alternatives: []alternative{}}
		trials, err := of.trials(read, q, &m)
		var unfit *layout.Unfit
		if errors.As(err, &unfit) {
			m.Why = layout.Visible(unfit.Message)
			return encoded(m), nil
		}
		plan, err := audition.Build(of.plans.Top, trials, of.reader(), of.auditioning(sign))
		if err != nil {
			return nil, errNothing
		}
		plan.Role, plan.Of = q.Get(auditionRole), q.Get(auditionOf)
		m.Heading = layout.Visible(report.AuditionHeading(plan))
		sign.Look()
		if m.Alternatives, err = of.alternatives(plan, trials); err != nil {
			return nil, err
		}
		return encoded(m), nil
	})
}

// alternatives are those of a plan as the page shows them, drawn side by side.
func (s *study) alternatives(plan *audition.Plan, trials []layout.Trial) ([]alternative, error) {
	list, errs := make([]alternative, len(plan.Alternatives)), make([]error, len(plan.Alternatives))
	var drawn sync.WaitGroup
	for i, rank := range plan.Ranks() {
		drawn.Go(func() {
			a := &plan.Alternatives[i]
			list[i], errs[i] = s.alternative(a, trials[a.Number-1].Try)
			list[i].Rank = rank
		})
	}
	drawn.Wait()
	if i := slices.IndexFunc(errs, func(err error) bool { return err != nil }); i >= 0 {
		return nil, errs[i]
	}
	return list, nil
}

// trials are the alternatives of a request written into the layout; those with which it has errors are left out, and told.
func (s *study) trials(read *layout.Reading, q url.Values, m *auditionMessage) ([]layout.Trial, error) {
	trials, err := read.Auditions(s.auditionOf(q.Get(auditionRole), q.Get(auditionOf)), q[auditionAlternative])
	if err != nil {
		return nil, err
	}
	fits := trials[:0]
	for _, t := range trials {
		why := ""
		if t.Try == "" {
			_, _, faults := layout.ReadWith(t.Text, s.from.cloth)
			for _, f := range faults {
				if f.Severity == layout.Error {
					why = f.Message
					break
				}
			}
		}
		if why != "" {
			m.Left = append(m.Left, leftOut{layout.Visible(t.Name), layout.Visible(why)})
			continue
		}
		fits = append(fits, t)
	}
	return fits, nil
}

// reader reads a text with the photos that it names.
func (s *study) reader() func(text string) (*layout.Design, []layout.Fault) {
	return func(text string) (*layout.Design, []layout.Fault) {
		d, _, faults := layout.ReadWith(text, s.from.cloth)
		return d, faults
	}
}

// auditioning are the options of an audition in the size and the colorway of the study.
func (s *study) auditioning(sign *stop.Sign) audition.Options {
	return audition.Options{Sign: sign, Colorway: func(sign *stop.Sign, t *quilt.Top) (*quilt.Top, error) {
		return inVariant(sign, t, variant{s.plans.Top.Size, s.plans.Top.Colorway})
	}}
}

// inVariant is a top in a size and a colorway that it has.
func inVariant(sign *stop.Sign, t *quilt.Top, in variant) (*quilt.Top, error) {
	if in.size != "" {
		size, err := t.SizeNamed(in.size)
		if err != nil {
			return nil, err
		}
		t = size.Top(sign)
	}
	if in.colorway != "" {
		return t.InNamed(in.colorway)
	}
	return t, nil
}

// alternative is one of a plan as the page shows it.
func (s *study) alternative(a *audition.Alternative, try string) (m alternative, err error) {
	says := report.AuditionSays(a)
	m = alternative{Alternative: a.Name, Name: layout.Visible(report.AuditionName(a)), Says: layout.Visible(says[0]), Lines: visible(a.Lines...), Written: visible(says[1:]...)}
	if try != "" {
		tried, err := contrast.ParseTry(s.plans.Top, try)
		if err != nil {
			return m, err
		}
		b := &pictureBuilder{Top: a.Top, source: s.picture.source, lines: map[int]int{}}
		m.Try, m.Fabric = fmt.Sprintf("%d-%s", tried.Fabric, strings.ToLower(strings.TrimPrefix(tried.Colour.Hex(), "#"))), &b.listFabrics(a.Top.Share())[tried.Fabric]
	}
	if m.Color, err = auditionPicture(a.Top, svgout.Colour); err == nil {
		m.Gray, err = auditionPicture(a.Top, svgout.Value)
	}
	return m, err
}

// auditionPicture is the small picture of an alternative.
func auditionPicture(t *quilt.Top, view svgout.View) ([]byte, error) {
	scene, err := svgout.NewScene(t, svgout.Options{View: view, ByFabric: true})
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = pictures.PNG(&b, scene, pictures.Frame{Pixels: auditionPixels})
	return b.Bytes(), unlessTooLarge(err)
}

// auditioned is the top with the alternative that a request is about; ok is false where it is about none.
func (s *site) auditioned(of *study, r *http.Request, sign *stop.Sign) (t *quilt.Top, ok bool, err error) {
	q := r.URL.Query()
	if !q.Has(auditionAlternative) {
		return nil, false, nil
	}
	read, ok := s.readingOf(of)
	if !ok {
		return nil, false, errOvertaken
	}
	trial, err := read.Trial(of.auditionOf(q.Get(auditionRole), q.Get(auditionOf)), q.Get(auditionAlternative))
	if err == nil {
		t, err = audition.Laid(of.plans.Top, &trial, of.reader(), of.auditioning(sign))
	}
	if err != nil {
		return nil, false, errNothing
	}
	return t, true, nil
}

// auditionOf is a place of the layout in the colorway of the study.
func (s *study) auditionOf(role, of string) layout.AuditionOf {
	return layout.AuditionOf{Role: role, Of: of, Colorway: s.plans.Top.Colorway}
}
