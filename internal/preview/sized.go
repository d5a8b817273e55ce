package preview

import (
	"fmt"
	"net/http"
	"net/url"
	"sync"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// A page shows the quilt in the size that it chooses, and asks for all that is worked out in that one. Each size that pages chose has
// pictures, a numbering and studies of its own, made when they are first asked for; other pages show what they choose.

// sizeName is the parameter of a request that names a size; with nothing behind it the quilt is meant as it is written.
const sizeName = "size"

// quiltSize is a size as the page lists it.
type quiltSize struct {
	Name string `json:"name"` // "" for as it is written, where no size of the layout is that
	Own  bool   `json:"own"`  // it is the quilt as it is written
}

// listSizes lists the sizes of a layout whose quilt, as it is written, is given; none where it has none.
func listSizes(base *quilt.Top) []quiltSize {
	list := []quiltSize{}
	if base == nil || len(base.Sizes) == 0 {
		return list
	}
	own := false
	for _, s := range base.Sizes {
		own = own || s.Own
		list = append(list, quiltSize{s.Name, s.Own})
	}
	if !own {
		list = append([]quiltSize{{"", true}}, list...)
	}
	return list
}

// sizes are the sizes that pages chose.
type sizes struct {
	from *studies
	lock sync.Mutex // held while a picture is made
	of   map[string]*sized
}

// sized is the quilt in one size.
type sized struct {
	numbers *numbering
	recent  []*picture // newest last
	studies *studies
}

// picture is a picture in a size by its name; ok is false where the layout has none of it.
func (s *sizes) picture(p *picture, name string) (of *sized, made *picture, ok bool) {
	top := p.base
	if top == nil {
		return nil, nil, false
	}
	if name != "" {
		size, err := top.SizeNamed(name)
		if err != nil {
			return nil, nil, false
		}
		name, top = size.Name, nil
	}
	s.lock.Lock()
	defer s.lock.Unlock()
	of = s.of[name]
	if of == nil {
		of = &sized{studies: &studies{name: s.from.name, cutting: s.from.cutting, cloth: s.from.cloth, worn: []string{sizeName + "=" + url.QueryEscape(name)}}}
		of.begin(1, s.from.cutting)
		s.of[name] = of
	}
	if last := len(of.recent) - 1; last >= 0 && of.recent[last].revision == p.revision {
		return of, of.recent[last], true
	}
	if top == nil {
		size, _ := p.base.SizeNamed(name) // it is there
		top = size.Top(nil)
	}
	made = of.prepare(p, top)
	of.studies.follow(made)
	return of, made, true
}

// begin begins a numbering.
func (of *sized) begin(epoch int, cut func(*quilt.Top) cutting.Options) {
	of.numbers = newNumbering(epoch)
	of.numbers.cutting = cut
}

// prepare makes the picture of a top in the size, in the colorway and the colors that another is in.
func (of *sized) prepare(p *picture, written *quilt.Top) *picture {
	top := written
	if p.top.Colorway != "" {
		if in, err := written.InNamed(p.top.Colorway); err == nil {
			top = in
		}
	}
	top = contrast.Tried(top, p.tries)
	made := newPicture(top, p.source, of.numbers)
	if of.numbers.spent(distinct(made.cells)) {
		of.begin(of.numbers.epoch+1, of.numbers.cutting)
		made = newPicture(top, p.source, of.numbers)
	}
	made.revision, made.base, made.tries = p.revision, p.base, p.tries
	made.listColorways(written)
	if last := len(of.recent) - 1; last >= 0 {
		of.recent[last] = of.recent[last].sent()
	}
	of.recent = append(of.recent, made)
	of.recent = of.recent[max(0, len(of.recent)-kept):]
	return made
}

// pictureOf is the picture of a revision that pages may have, nil for none.
func (of *sized) pictureOf(revision int) *picture {
	for _, p := range of.recent {
		if p.revision == revision {
			return p
		}
	}
	return nil
}

// serveState answers with what the page lacks.
func (s *site) serveState(w http.ResponseWriter, r *http.Request) {
	q := r.URL.Query()
	have := 0
	if q.Get("instance") == s.state.instance {
		_, _ = fmt.Sscanf(q.Get("have"), "%d", &have) // what is no number has no picture
	}
	n := s.state.current()
	if q.Has(sizeName) && n.picture != nil {
		of, p, ok := s.sizes.picture(n.picture, q.Get(sizeName))
		if ok {
			s.sizes.lock.Lock()
			base := of.pictureOf(have)
			s.sizes.lock.Unlock()
			respond(w, encoded(s.state.message(n, p, base)))
			return
		}
		have = 0 // that was in the size
	}
	respond(w, s.state.answer(have))
}

// studyOf is the study that a request is about: that of the picture, or of the same in the size that the page shows.
func (s *site) studyOf(p *picture, r *http.Request) (*study, error) {
	of := s.studies.study(p)
	if of == nil {
		return nil, errOvertaken
	}
	q := r.URL.Query()
	if !q.Has(sizeName) || layout.FoldName(q.Get(sizeName)) == layout.FoldName(p.top.Size) {
		return of, nil
	}
	in, made, ok := s.sizes.picture(p, q.Get(sizeName))
	if !ok {
		return nil, errNothing
	}
	if of = in.studies.study(made); of == nil {
		return nil, errOvertaken
	}
	return of, nil
}
