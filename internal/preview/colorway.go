package preview

import (
	"net/http"
	"net/url"
	"slices"
	"strings"
	"sync"

	"eighthturn/internal/quilt"
)

// A page shows the quilt in the colorway that it chooses, and asks for all that is worked out in that one: a picture is sent with the
// fabrics of every colorway, and a study has one more for each that is asked for. Other pages show what they choose.

// colorway is the quilt in other fabrics, as the page lists it. The first of a list is as the quilt is written.
type colorway struct {
	Name    string   `json:"name"` // "" for as it is written
	Title   string   `json:"title"`
	Fabrics []fabric `json:"fabrics"`
}

// listColorways lists the colorways of a layout whose quilt, as it is written, is given; none where it has none.
func (p *picture) listColorways(written *quilt.Top) {
	p.written = written
	list := []colorway{}
	if written != nil && len(written.Colorways) > 0 {
		share := written.Share()
		add := func(t *quilt.Top) {
			b := &pictureBuilder{Top: t, source: p.source, lines: map[int]int{}}
			list = append(list, colorway{t.Colorway, t.Title, b.listFabrics(share)})
		}
		add(written)
		for i := range written.Colorways {
			add(written.In(i))
		}
	}
	p.colorways = encoded(list)
}

// sameColorways says whether two pictures, whose tops are alike, have the same colorways; a top in one of them does not say.
func sameColorways(a, b *picture) bool {
	return a.written == a.top && b.written == b.top || alike(a.written, b.written)
}

// colorwayName is the parameter of a request that names a colorway; with nothing behind it the quilt is meant as it is written.
const colorwayName = "colorway"

// dressed are the studies of a top in the colorways that pages asked for.
type dressed struct {
	lock sync.Mutex
	in   map[string]*study // by the colorway's name as it is written
}

// wearing is the study that a request is about: the picture's own, or that in the colorway that the page shows.
func (s *study) wearing(r *http.Request) (*study, error) {
	q := r.URL.Query()
	if !q.Has(colorwayName) {
		return s, nil
	}
	top, name := s.picture.written, q.Get(colorwayName)
	if name != "" && top != nil {
		var err error
		if top, err = top.InNamed(name); err != nil {
			return nil, errNothing
		}
	}
	if top == nil || top.Colorway == s.picture.top.Colorway {
		return s, nil
	}
	s.dressed.lock.Lock()
	defer s.dressed.lock.Unlock()
	if of := s.dressed.in[top.Colorway]; of != nil {
		return of, nil
	}
	next := s.in(top)
	next.plans.worn = append(slices.Clip(s.plans.worn), colorwayName+"="+url.QueryEscape(top.Colorway))
	if s.dressed.in == nil {
		s.dressed.in = map[string]*study{}
	}
	s.dressed.in[top.Colorway] = next
	return next, nil
}

// in is the study of the same picture in other fabrics. What of it is at work ends with this one.
func (s *study) in(top *quilt.Top) *study {
	next := newStudy(s.picture.recoloured(top, s.picture.source, s.picture.revision), s.from)
	next.plans.worn = s.plans.worn
	handOn(&s.numbers, &next.numbers)
	return next
}

// addressOf is an address of the page with what it is asked for, in the size and the colorway that the page chose.
func (p *plans) addressOf(path string, more ...string) string {
	more = append(more, p.worn...)
	path = strings.TrimPrefix(path, "/")
	if len(more) > 0 {
		path += "?" + strings.Join(more, "&")
	}
	return path
}

// dash is what names of files go on with where a page chose a size or a colorway.
func (p *plans) dash() (dash string) {
	for _, worn := range p.worn {
		of := map[bool]string{true: p.Top.Size, false: p.Top.Colorway}[strings.HasPrefix(worn, sizeName+"=")]
		if of != "" {
			dash += "-" + of
		}
	}
	return dash
}
