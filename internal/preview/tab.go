package preview

import (
	"encoding/binary"
	"slices"

	"eighthturn/internal/diagram"
	"eighthturn/layout"
)

// The page shows a report as sections of rows; a row highlights patches, faces or seams. A tab is made of a document, which
// names what each part is about in the top's own numbers; the document knows nothing of the page, and the page nothing of what
// the report is about. A tab is made when a page asks for it, after the picture was sent, again only when the top has changed,
// and is read row by row with the pointer, the arrow keys or a finger. A row may have a diagram, which is drawn when the row is
// chosen, or a file, which is made when it is saved.

// reportTab is a report as the page shows it. All text is put into words and numbers already; the page does no sums.
type reportTab struct {
	Name       string       `json:"name"` // of its tab
	Intro      string       `json:"intro,omitempty"`
	Sections   []tabSection `json:"sections"`
	Marks      []seamMark   `json:"marks,omitempty"`
	Highlights []highlight  `json:"highlights,omitempty"` // what rows and marks highlight, each thing once; made of what they are about
	Page       string       `json:"page,omitempty"`       // address of a page that is shown beneath its sections

	Placed    bool                     `json:"-"` // it names lines of the layout, and is stale when they move
	diagrams  []func() *diagram.Figure // by tabRow.Diagram
	patchesAt func(marks []int) []int  // the patches that stand behind the numbers at a diagram's marks
}

// add appends sections that have rows. Their texts are made safe to show.
func (r *reportTab) add(list ...tabSection) {
	for _, s := range list {
		if len(s.Rows) == 0 {
			continue
		}
		s.Title = layout.Visible(s.Title)
		for i := range s.Rows {
			visible(s.Rows[i].Cells...)
			visible(s.Rows[i].Under...)
		}
		r.Sections = append(r.Sections, s)
	}
}

// diagram gives a report a diagram, which is drawn when it is asked for.
func (r *reportTab) diagram(draw func() *diagram.Figure) *int {
	n := len(r.diagrams)
	r.diagrams = append(r.diagrams, draw)
	return &n
}

// tabSection is rows under one heading.
type tabSection struct {
	Title string      `json:"title"`
	Heads []tabColumn `json:"heads,omitempty"` // of the cells; none for text that runs on
	Rows  []tabRow    `json:"rows"`
	More  string      `json:"more,omitempty"` // where the rest is to be read
	Why   bool        `json:"why,omitempty"`  // how it was judged: folded until it is asked for
}

// tabColumn is the head of one column of cells.
type tabColumn struct {
	Head   string `json:"head,omitempty"`
	Number bool   `json:"number,omitempty"` // its cells are set flush right
}

// tabRow is one line of a report and what it is about.
type tabRow struct {
	Swatches  []string `json:"swatches,omitempty"` // colours shown before the first cell, #rrggbb
	Cells     []string `json:"cells"`
	Under     []string `json:"under,omitempty"` // smaller lines beneath
	Head      bool     `json:"head,omitempty"`  // it names what the rows after it are about
	Tone      tone     `json:"tone,omitempty"`
	Highlight *int     `json:"highlight,omitempty"` // of the tab's; nil for nothing
	Diagram   *int     `json:"diagram,omitempty"`   // by number; nil for none
	Save      string   `json:"save,omitempty"`      // address of the file that it offers
	As        string   `json:"as,omitempty"`        // the file's name

	Patches []int `json:"-"` // by index, of the top
	Faces   []int `json:"-"`
	Seams   []int `json:"-"` // those of strip sets behind those between patches
}

// tone is how much a row asks for a look. It only adds to what the row says in words.
type tone string

const (
	wrong    tone = "wrong"
	doubtful tone = "doubtful"
)

// seamMark is seams that are marked in the view called vanishing, whether a row is pointed at or
// not.
type seamMark struct {
	Label     string `json:"label"` // for the legend
	Heavy     bool   `json:"heavy"` // a broad line, and not a thin dashed one
	Highlight *int   `json:"highlight,omitempty"`

	Seams []int `json:"-"`
}

// highlight is what may be highlighted, in the numbers that the page counts faces and seams by, run-length encoded: how many to
// skip, how many to take, and so on.
type highlight struct {
	Faces []int32 `json:"faces,omitempty"`
	Seams []int32 `json:"seams,omitempty"`
}

// fillHighlights fills in what the page needs to find what the rows and marks are about.
func (r *reportTab) fillHighlights(n *pageNumbers) {
	if r.Sections == nil {
		r.Sections = []tabSection{} // which the page goes through
	}
	known := map[string]*int{}
	for s := range r.Sections {
		for i := range r.Sections[s].Rows {
			w := &r.Sections[s].Rows[i]
			w.Highlight = r.highlight(known, highlight{runLengths(n.facesOf(w.Patches, w.Faces)), runLengths(n.seamsOf(w.Seams))})
		}
	}
	for i := range r.Marks {
		r.Marks[i].Highlight = r.highlight(known, highlight{Seams: runLengths(n.seamsOf(r.Marks[i].Seams))})
	}
}

// highlight is the number of what is to be highlighted, which is added if it is not known yet.
func (r *reportTab) highlight(known map[string]*int, l highlight) *int {
	if len(l.Faces)+len(l.Seams) == 0 {
		return nil
	}
	key := string(l.key())
	if known[key] == nil {
		number := len(r.Highlights)
		known[key] = &number
		r.Highlights = append(r.Highlights, l)
	}
	return known[key]
}

// key is the same for what highlights the same.
func (l *highlight) key() []byte {
	b := binary.AppendUvarint(nil, uint64(len(l.Faces)))
	for _, list := range [2][]int32{l.Faces, l.Seams} {
		for _, n := range list {
			b = binary.AppendUvarint(b, uint64(n))
		}
	}
	return b
}

// runLengths writes numbers, in any order, as skip, take, skip, take ….
func runLengths(numbers []int32) []int32 {
	if !slices.IsSorted(numbers) {
		slices.Sort(numbers)
	}
	var list []int32
	next := int32(0) // the first number that the list says nothing of
	for _, n := range slices.Compact(numbers) {
		if len(list) > 0 && n == next {
			list[len(list)-1]++
		} else {
			list = append(list, n-next, 1)
		}
		next = n + 1
	}
	return list
}
