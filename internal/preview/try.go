package preview

import (
	"encoding/hex"
	"net/http"
	"strconv"
	"strings"
	"sync"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilt"
	"eighthturn/internal/stop"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// A page may try another color for a fabric: it shows that at once, asks what the fabric's line would be, and for the study of
// the top in that color. Nothing of it is kept but the newest study, and the layout is not changed.

// triedColor is what a page is told of a color that it tries.
type triedColor struct {
	Seen  map[string]string `json:"seen"` // as in fabric
	Lines []editedLine      `json:"lines"`
}

// editedLine is a line of a layout as an edit leaves it.
type editedLine struct {
	Line int    `json:"line"` // of the layout as it is, from 1
	Text string `json:"text"`
}

// tryName is the parameter of a request that names a fabric and its color: "2-1f3350" is the third in #1f3350.
const tryName = "try"

// tryOf is the color that a request is about. No request that names none is an error, nor is one that names nothing sensible:
// that is answered as if there were no such address.
func tryOf(r *http.Request, t *quilt.Top) (try contrast.Try, given bool, err error) {
	text := r.URL.Query().Get(tryName)
	if text == "" {
		return try, false, nil
	}
	number, color, _ := strings.Cut(text, "-")
	n, err := strconv.Atoi(number)
	rgb, wrong := hex.DecodeString(color)
	if err != nil || wrong != nil || len(rgb) != 3 || n < 0 || n >= len(t.Fabrics) {
		return try, false, errNothing
	}
	return contrast.Try{Fabric: n, Colour: palettes.Colour{R: rgb[0], G: rgb[1], B: rgb[2]}}, true, nil
}

// serveColor answers with what a color that is tried would be: as others see it, and the line of the layout.
func (s *site) serveColor(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(of *study, _ *stop.Sign) ([]byte, error) {
		try, given, err := tryOf(r, of.picture.top)
		if err != nil || !given {
			return nil, errNothing
		}
		written := layout.Inspect(of.picture.source.Text, nil)
		top := of.picture.top
		edits := recolored(&written, top.Colorway, top.Fabrics[try.Fabric].Name, try.Colour)
		return encoded(triedColor{seen(try.Colour), editedLines(written.Source, edits)}), nil
	})
}

// recolored is what to type for a fabric's color, in a colorway or, where it is "", as the quilt is written.
func recolored(r *layout.Reading, colorway, fabric string, colour palettes.Colour) []layout.Edit {
	if colorway != "" {
		return r.RecoloredIn(colorway, fabric, colour)
	}
	return r.Recolored(fabric, colour)
}

// editedLines are the lines that edits leave, from the first that they touch to the last.
func editedLines(source *layout.Source, edits []layout.Edit) []editedLine {
	if len(edits) == 0 {
		return nil
	}
	first, last := source.Line(edits[0].Span.Start), source.Line(edits[len(edits)-1].Span.End)
	from, to := source.LineSpan(first).Start, source.LineSpan(last).End
	moved := make([]layout.Edit, len(edits))
	for i, e := range edits {
		moved[i] = layout.Edit{Span: layout.Span{Start: e.Span.Start - from, End: e.Span.End - from}, Text: e.Text}
	}
	var list []editedLine
	for _, line := range layout.TextLines(layout.Apply(source.Text[from:to], moved)) {
		list = append(list, editedLine{first + len(list), layout.Visible(strings.TrimPrefix(line, "\ufeff"))})
	}
	return list
}

// trying is the study of a top in a color that is tried: the newest, since a page asks for one after the other.
type trying struct {
	lock sync.Mutex
	try  contrast.Try
	of   *study
}

// asked is the study that a request is about: the picture's own, or that in the color that the page tries.
func (s *study) asked(r *http.Request) (*study, error) {
	try, given, err := tryOf(r, s.picture.top)
	if err != nil || !given {
		return s, err
	}
	s.trying.lock.Lock()
	defer s.trying.lock.Unlock()
	if s.trying.of != nil && s.trying.try == try {
		return s.trying.of, nil
	}
	if s.Err() != nil {
		return nil, errOvertaken
	}
	top := contrast.Tried(s.picture.top, []contrast.Try{try})
	next := s.in(top)
	s.trying.try, s.trying.of = try, next
	return next, nil
}
