package preview

import (
	"encoding/binary"
	"slices"

	"eighthturn/internal/diagram"
	"eighthturn/internal/report"
	"eighthturn/layout"
)

// A report is sections of rows; a row lights up patches or seams.
//
// That is all there is to a report beside the picture. A function turns the plans of a top
// into one, and names what each row is about in the top's own numbers; it knows nothing of
// the page, and the page nothing of what the report is about. To add one, write such a
// function and put it into reporters: it gets a tab, is worked out when a page asks for it,
// after the picture was sent, again only when the top has changed, and is read row by row
// with the pointer, the arrow keys or a finger. A row may have a diagram, which is drawn when
// the row is chosen, or a file, which is made when it is saved.

// reporter turns the plans of a top into a report.
type reporter struct {
	name string // of its tab, and of the report that it makes
	make func(*plans) reportTab
}

// reporters make every report, in the order of their tabs.
func reporters() []reporter {
	var list []reporter
	for _, r := range report.Reports() {
		list = append(list, reporter{r.Title, func(p *plans) reportTab {
			tab := documentTab(r.Title, r.Make(&p.Plans))
			if r.Name == report.LightAndDark {
				tab.Marks = seamMarks(p)
			}
			return tab
		}})
	}
	return append(list, reporter{"Pattern", patternReport}, reporter{"Files", filesReport})
}

// tabs are the names of all reports.
func tabs() []string {
	var list []string
	for _, r := range reporters() {
		list = append(list, r.name)
	}
	return list
}

// report is what a plan has to say. All text is put into words and numbers here; the page
// does no sums.
type reportTab struct {
	Name     string    `json:"name"` // of its tab
	Says     string    `json:"says,omitempty"`
	Sections []section `json:"sections"`
	Marks    []mark    `json:"marks,omitempty"`
	Lit      []lit     `json:"lit,omitempty"`  // what rows and marks light up, each thing once; made of what they are about
	Page     string    `json:"page,omitempty"` // address of a page that is shown beneath its sections

	Placed   bool                     `json:"-"` // it names lines of the layout, and is stale when they move
	diagrams []func() *diagram.Figure // by row.Diagram
	litBy    func(marks []int) []int  // the patches that stand behind the numbers at a diagram's marks
}

// add appends sections that have rows. Their texts are made safe to show.
func (r *reportTab) add(list ...section) {
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

// section is rows under one heading.
type section struct {
	Title string   `json:"title"`
	Heads []column `json:"heads,omitempty"` // of the cells; none for text that runs on
	Rows  []row    `json:"rows"`
	More  string   `json:"more,omitempty"` // where the rest is to be read
	Why   bool     `json:"why,omitempty"`  // how it was judged: folded until it is asked for
}

// column is the head of one column of cells.
type column struct {
	Head   string `json:"head,omitempty"`
	Number bool   `json:"number,omitempty"` // its cells are set flush right
}

// row is one line of a report and what it is about.
type row struct {
	Swatches []string `json:"swatches,omitempty"` // colours shown before the first cell, #rrggbb
	Cells    []string `json:"cells"`
	Under    []string `json:"under,omitempty"` // smaller lines beneath
	Head     bool     `json:"head,omitempty"`  // it names what the rows after it are about
	Tone     tone     `json:"tone,omitempty"`
	Lit      *int     `json:"lit,omitempty"`     // of the report's; nil for nothing
	Diagram  *int     `json:"diagram,omitempty"` // by number; nil for none
	Save     string   `json:"save,omitempty"`    // address of the file that it offers
	As       string   `json:"as,omitempty"`      // the file's name

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

// mark is seams that are marked in the view called vanishing, whether a row is pointed at or
// not.
type mark struct {
	Says  string `json:"says"`  // for the legend
	Heavy bool   `json:"heavy"` // a broad line, and not a thin dashed one
	Lit   *int   `json:"lit,omitempty"`

	Seams []int `json:"-"`
}

// lit is what may be lit up, in the numbers that the page counts faces and seams by, as
// stretches: how many to pass over, how many to take, and so on.
type lit struct {
	Faces []int32 `json:"faces,omitempty"`
	Seams []int32 `json:"seams,omitempty"`
}

// light fills in what the page needs to find what the report is about.
func (r *reportTab) light(n *pageNumbers) {
	if r.Sections == nil {
		r.Sections = []section{} // which the page goes through
	}
	known := map[string]*int{}
	for s := range r.Sections {
		for i := range r.Sections[s].Rows {
			w := &r.Sections[s].Rows[i]
			w.Lit = r.lit(known, lit{stretches(n.facesOf(w.Patches, w.Faces)), stretches(n.seamsOf(w.Seams))})
		}
	}
	for i := range r.Marks {
		r.Marks[i].Lit = r.lit(known, lit{Seams: stretches(n.seamsOf(r.Marks[i].Seams))})
	}
}

// lit is the number of what is to be lit up, which is added if it is not known yet.
func (r *reportTab) lit(known map[string]*int, l lit) *int {
	if len(l.Faces)+len(l.Seams) == 0 {
		return nil
	}
	key := string(l.key())
	if known[key] == nil {
		number := len(r.Lit)
		known[key] = &number
		r.Lit = append(r.Lit, l)
	}
	return known[key]
}

// key is the same for what lights up the same.
func (l *lit) key() []byte {
	b := binary.AppendUvarint(nil, uint64(len(l.Faces)))
	for _, list := range [2][]int32{l.Faces, l.Seams} {
		for _, n := range list {
			b = binary.AppendUvarint(b, uint64(n))
		}
	}
	return b
}

// stretches writes numbers, in any order, as skip, take, skip, take ….
func stretches(numbers []int32) []int32 {
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
