package preview

import (
	"bytes"
	"net/http"
	"strconv"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
)

// sketch is a diagram as the page is sent it: an SVG picture, and what each of its marks lights
// up, by the numbers that stand at the mark.
type sketch struct {
	SVG string         `json:"svg"`
	By  map[string]int `json:"by"`
	Lit []lit          `json:"lit"`
}

// diagramWidth is how wide a diagram is drawn for the panel, which sets how large its words
// are beside its lines.
const diagramWidth = 4 * measure.Inch

// giveDiagram answers with one diagram of a report.
func (s *site) giveDiagram(w http.ResponseWriter, r *http.Request) {
	s.study(w, r, func(p *picture) ([]byte, error) {
		tab, n := tabOf(r), 0
		if text := r.URL.Query().Get("number"); text != "" {
			var err error
			if n, err = strconv.Atoi(text); err != nil {
				return nil, errNothing
			}
		} else if r.URL.Query().Get("tab") == "" {
			tab = firstDrawn
		}
		if tab < 0 {
			return nil, errNothing
		}
		made := s.studies.reported(p, tab)
		if n < 0 || n >= len(made.diagrams) {
			return nil, errNothing
		}
		d, err := sketched(made.diagrams[n](), made.litBy, s.studies.numbers)
		if err != nil {
			return nil, err
		}
		return encoded(d), nil
	})
}

// firstDrawn is the first tab that has diagrams, which a request means that names none.
const firstDrawn = 1

// sketched draws a figure for the page. What stands at its marks is patches, unless litBy says which they mean.
func sketched(f *diagram.Figure, litBy func([]int) []int, numbers *pageNumbers) (*sketch, error) {
	var b bytes.Buffer
	if err := diagram.SVG(&b, f, diagram.Options{Width: diagramWidth, Inline: true}); err != nil {
		return nil, err
	}
	d := &sketch{SVG: b.String(), By: map[string]int{}}
	var all reportTab
	known := map[string]*int{}
	for _, m := range f.Marks {
		if len(m.Lit) == 0 {
			continue
		}
		key := marked(m.Lit)
		if _, ok := d.By[key]; ok {
			continue
		}
		patches := m.Lit
		if litBy != nil {
			patches = litBy(m.Lit)
		}
		if n := all.lit(known, lit{Faces: stretches(numbers.facesOf(patches, nil))}); n != nil {
			d.By[key] = *n
		}
	}
	d.Lit = all.Lit
	return d, nil
}

// marked is how the numbers at a mark are written in the SVG.
func marked(list []int) string {
	words := make([]string, len(list))
	for i, n := range list {
		words[i] = strconv.Itoa(n)
	}
	return strings.Join(words, " ")
}
