package preview

import (
	"bytes"
	"net/http"
	"strconv"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/stop"
)

// pageDiagram is a diagram as the page is sent it: an SVG picture, and what each of its marks highlights, by the numbers that
// stand at the mark.
type pageDiagram struct {
	SVG        string         `json:"svg"`
	Marks      map[string]int `json:"marks"` // index of Highlights
	Highlights []highlight    `json:"highlights"`
}

// diagramWidth is how wide a diagram is drawn for the panel, which sets how large its words
// are beside its lines.
const diagramWidth = 4 * measure.Inch

// serveDiagram answers with one diagram of a report.
func (s *site) serveDiagram(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
		tab, n := tabOf(r), 0
		if text := r.URL.Query().Get("number"); text != "" {
			var err error
			if n, err = strconv.Atoi(text); err != nil {
				return nil, errNothing
			}
		}
		if tab < 0 {
			return nil, errNothing
		}
		of, err := of.asked(r)
		if err != nil {
			return nil, err
		}
		made := of.tab(sign, tab)
		if n < 0 || n >= len(made.diagrams) {
			return nil, errNothing
		}
		sign.Look()
		d, err := newPageDiagram(made.diagrams[n](), made.patchesAt, of.pageNumbers(sign))
		if err != nil {
			return nil, err
		}
		return encoded(d), nil
	})
}

// newPageDiagram draws a figure for the page. What stands at its marks is patches, unless patchesAt says which they mean.
func newPageDiagram(f *diagram.Figure, patchesAt func([]int) []int, numbers *pageNumbers) (*pageDiagram, error) {
	var b bytes.Buffer
	if err := diagram.SVG(&b, f, diagram.Options{Width: diagramWidth, Inline: true}); err != nil {
		return nil, err
	}
	d := &pageDiagram{SVG: b.String(), Marks: map[string]int{}}
	var all reportTab
	known := map[string]*int{}
	for _, m := range f.Marks {
		if len(m.Lit) == 0 {
			continue
		}
		key := markKey(m.Lit)
		if _, ok := d.Marks[key]; ok {
			continue
		}
		patches := m.Lit
		if patchesAt != nil {
			patches = patchesAt(m.Lit)
		}
		if n := all.highlight(known, highlight{Faces: runLengths(numbers.facesOf(patches, nil))}); n != nil {
			d.Marks[key] = *n
		}
	}
	d.Highlights = all.Highlights
	return d, nil
}

// markKey is how the numbers at a mark are written in the SVG.
func markKey(list []int) string {
	words := make([]string, len(list))
	for i, n := range list {
		words[i] = strconv.Itoa(n)
	}
	return strings.Join(words, " ")
}
