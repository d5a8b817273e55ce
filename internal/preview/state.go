package preview

import (
	"encoding/json"
	"fmt"
	"strings"
	"sync"
	"time"

	"eighthturn/layout"
)

// snapshot is what the preview shows from one publication to the next. It never changes.
type snapshot struct {
	revision int
	picture  *picture // the last good one, nil before there is one
	faults   []faultText
	more     int // faults beyond those
	errors   int
	warnings int
	problem  string // why there is no text, or what broke inside the program; "" if neither
	inside   bool   // the problem is the program's own
	mark     string // of the text, "" where there is none
}

// pictureRevision is the revision of the picture, 0 for none.
func (n *snapshot) pictureRevision() int {
	if n.picture == nil {
		return 0
	}
	return n.picture.revision
}

// faultText is a fault exactly as the terminal shows it.
type faultText struct {
	Severity string `json:"severity"`
	Line     int    `json:"line"`
	Text     string `json:"text"`

	Fix   []editedLine  `json:"fix,omitempty"` // the lines with what the hint says to type
	edits []layout.Edit // which is this
}

// message is what a page is sent: always the faults, and of the picture what it lacks.
type message struct {
	Instance string `json:"instance"`
	Layout   string `json:"layout"` // tells files apart, without their names
	Assets   string `json:"assets"` // tells versions of the page apart
	File     string `json:"file"`
	Editor   string `json:"editor,omitempty"` // address that opens the file in an editor, with {line}
	Revision int    `json:"revision"`
	Picture  int    `json:"picture"` // revision of the picture, 0 for none
	Base     int    `json:"base"`    // revision of the picture that the parts below are added to, 0 for none

	Faults   []faultText `json:"faults"`
	More     int         `json:"more"`
	Errors   int         `json:"errors"`
	Warnings int         `json:"warnings"`
	Problem  string      `json:"problem"`
	Inside   bool        `json:"inside"`
	Mark     string      `json:"mark"`           // of the newest text; see editRequest
	Edit     string      `json:"edit,omitempty"` // the token with which the page may write

	Quilt     json.RawMessage   `json:"quilt,omitempty"`
	Fabrics   json.RawMessage   `json:"fabrics,omitempty"`
	Colorways json.RawMessage   `json:"colorways,omitempty"`
	Colorway  string            `json:"colorway,omitempty"` // that the picture is in, "" for as it is written
	Size      string            `json:"size,omitempty"`     // likewise
	Begun     string            `json:"begun,omitempty"`    // the size that is shown where a page chose none
	Sizes     []quiltSize       `json:"sizes,omitempty"`
	Plain     string            `json:"plain,omitempty"` // the title of the quilt as it is written
	Grid      json.RawMessage   `json:"grid,omitempty"`
	Templates []json.RawMessage `json:"templates,omitempty"`
	Looks     []json.RawMessage `json:"looks,omitempty"`
	Joins     []json.RawMessage `json:"joins,omitempty"`
	Cells     []int32           `json:"cells,omitempty"`
	Changed   []int32           `json:"changed,omitempty"`
	Loose     json.RawMessage   `json:"loose,omitempty"`
	Sources   json.RawMessage   `json:"sources,omitempty"`
}

// kept is how many pictures are kept, so that a page which missed some saves is still sent
// only what it lacks.
const kept = 4

// state is the newest snapshot and those who wait for the next.
type state struct {
	mu       sync.Mutex
	instance string
	file     string
	layout   string
	editor   string // address that opens the file in an editor
	edit     string // the token of the page's requests to write, "" if it may not
	now      *snapshot
	recent   []*picture // newest last; of the others only what pages were sent
	numbers  *numbering
	waiting  map[chan struct{}]bool
	answers  map[int][]byte // to pages, by the picture that they have; for `now` alone

	beforeShown func(*picture) // is told of a new picture; nil for nobody
}

func newState(instance, file, layout string) *state {
	return &state{
		instance: instance, file: file, layout: layout, now: &snapshot{faults: []faultText{}},
		numbers: newNumbering(1), waiting: map[chan struct{}]bool{}, answers: map[int][]byte{},
	}
}

// publish makes a drawing the newest. A drawing without a top leaves the last good picture.
func (s *state) publish(r reading, d drawing) *snapshot {
	snap := &snapshot{revision: s.current().revision + 1, picture: s.current().picture, problem: r.problem}
	if d.top != nil {
		snap.picture = s.prepare(d, snap.revision)
		snap.picture.listColorways(d.sized)
		snap.picture.base, snap.picture.tries = d.written, d.tries
	}
	if d.broke != "" {
		snap.problem, snap.inside = layoutVisible(d.broke), true
	}
	if r.problem == "" {
		snap.mark = markOf(r.text)
	}
	snap.errors, snap.warnings = layout.Count(d.faults)
	snap.faults, snap.more = faultTexts(s.file, d)
	if d.top != nil && s.beforeShown != nil {
		s.beforeShown(snap.picture)
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if snap.picture != s.now.picture {
		if last := len(s.recent) - 1; last >= 0 {
			s.recent[last] = s.recent[last].sent()
		}
		s.recent = append(s.recent, snap.picture)
		s.recent = s.recent[max(0, len(s.recent)-kept):]
	}
	s.now = snap
	clear(s.answers)
	for w := range s.waiting {
		select {
		case w <- struct{}{}:
		default: // it has not read the last one yet, and will find this one then
		}
	}
	return snap
}

// prepare makes a picture, in a new numbering if the old one is mostly waste.
func (s *state) prepare(d drawing, revision int) *picture {
	if last := s.current().picture; last != nil && d.like == last.top {
		return last.recoloured(d.top, d.source, revision)
	}
	p := newPicture(d.top, d.source, s.numbers)
	if used := distinct(p.cells); s.numbers.spent(used) {
		cut := s.numbers.cutting
		s.numbers = newNumbering(s.numbers.epoch + 1)
		s.numbers.cutting = cut
		p = newPicture(d.top, d.source, s.numbers)
	}
	p.revision = revision
	return p
}

func distinct(list []int32) int {
	seen := map[int32]bool{}
	for _, v := range list {
		seen[v] = true
	}
	return len(seen)
}

func (s *state) current() *snapshot {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.now
}

// answer is the message for a page that has the picture of a revision, 0 for none.
func (s *state) answer(have int) []byte {
	s.mu.Lock()
	defer s.mu.Unlock()
	base := s.pictureOf(have)
	if base == nil {
		have = 0
	}
	if a, ok := s.answers[have]; ok {
		return a
	}
	s.answers[have] = encoded(s.message(s.now, s.now.picture, base))
	return s.answers[have]
}

// message is what a page is sent of a snapshot in one of the layout's sizes, that has a picture of it already, nil for none.
func (s *state) message(n *snapshot, p, base *picture) *message {
	m := &message{
		Instance: s.instance, Layout: s.layout, Assets: assetsKey(), File: s.file, Editor: s.editor, Revision: n.revision,
		Faults: n.faults, More: n.more, Errors: n.errors, Warnings: n.warnings, Problem: n.problem, Inside: n.inside,
		Mark: n.mark, Edit: s.edit,
	}
	if p != nil {
		p.fill(m, base)
		m.Colorway, m.Size, m.Begun = p.top.Colorway, p.top.Size, n.picture.top.Size
		m.Sizes = listSizes(p.base)
	}
	if p != nil && p.base != nil {
		m.Plain = p.base.Title
	}
	return m
}

func (s *state) pictureOf(revision int) *picture {
	for _, p := range s.recent {
		if p.revision == revision {
			return p
		}
	}
	return nil
}

// wait registers for a sign at every publication; end gives it back.
func (s *state) wait() (sign chan struct{}, end func()) {
	sign = make(chan struct{}, 1)
	s.mu.Lock()
	defer s.mu.Unlock()
	s.waiting[sign] = true
	return sign, func() {
		s.mu.Lock()
		defer s.mu.Unlock()
		delete(s.waiting, sign)
	}
}

// faultTexts are the faults as the terminal shows them, as many as it shows.
func faultTexts(file string, d drawing) (list []faultText, more int) {
	list = []faultText{}
	for i, f := range d.faults {
		if i == layout.MaxShown {
			return list, len(d.faults) - layout.MaxShown
		}
		var b strings.Builder
		_ = layout.Report(&b, file, d.source, d.faults[i:i+1]) // writing to memory cannot fail
		line, _ := d.source.Position(f.Span.Start)
		list = append(list, faultText{Severity: f.Severity.String(), Line: line, Text: b.String(), Fix: editedLines(d.source, f.Edits), edits: f.Edits})
	}
	return list, 0
}

// layoutVisible makes text of several lines safe to show, line by line.
func layoutVisible(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = layout.Visible(lines[i])
	}
	return strings.Join(lines, "\n")
}

// line is what the terminal says of a publication.
func (n *snapshot) line(t timings) string {
	took := t.total.Round(100 * time.Microsecond)
	var what string
	switch {
	case n.inside:
		first, _, _ := strings.Cut(n.problem, "\n")
		what = "something broke inside eighthturn, please report it: " + first
	case n.problem != "":
		what = n.problem
	case n.errors > 0:
		what = faultCount(n.errors, n.warnings)
	default:
		what = fmt.Sprintf("%d pieces", len(n.picture.top.Patches))
		if n.warnings > 0 {
			what += ", " + faultCount(0, n.warnings)
		}
	}
	if (n.problem != "" || n.errors > 0) && n.picture != nil {
		what += fmt.Sprintf("; still showing picture %d", n.picture.revision)
	}
	return fmt.Sprintf("picture %d: %s, %.0f ms", n.revision, layout.Visible(what), float64(took.Microseconds())/1000)
}

func faultCount(errors, warnings int) string {
	count := func(n int, word string) string {
		if n == 1 {
			return "1 " + word
		}
		return fmt.Sprintf("%d %ss", n, word)
	}
	switch {
	case errors == 0:
		return count(warnings, "warning")
	case warnings == 0:
		return count(errors, "error")
	}
	return count(errors, "error") + ", " + count(warnings, "warning")
}
