package layout

import (
	"cmp"
	"strings"
	"sync"

	"github.com/rivo/uniseg"

	"eighthturn/internal/measure"
	"eighthturn/palettes"
)

// Tidy writes a layout with its columns in line. Comments, the order of lines and the
// writer's own spelling of lengths are kept; runs of blank lines become one. A layout with
// errors comes back as it was, with its faults.
func Tidy(text string) (string, []Fault) { return tidied(text, false) }

// Modernize is Tidy with today's words in place of those of older layouts.
func Modernize(text string) (string, []Fault) { return tidied(text, true) }

func tidied(text string, modern bool) (string, []Fault) {
	_, source, list := ReadWith(text, unseen)
	if errors, _ := Count(list); errors > 0 {
		return text, list
	}
	tree, _ := Parse(source)
	t := tidier{src: text, today: tree.former, lines: tree.Lines, end: "\n", like: sharedColumns()}
	if !modern {
		t.today = nil
	}
	t.findRows()
	if i := strings.IndexAny(text, "\r\n"); i >= 0 && strings.HasPrefix(text[i:], "\r\n") {
		t.end = "\r\n"
	}
	return t.write(), list
}

// unseen stands for every photo: columns are put in line without looking at any.
func unseen(string) (palettes.PhotoSample, error) { return palettes.PhotoSample{}, nil }

// tidier writes the lines of one layout.
type tidier struct {
	src   string
	today map[int]string // what to write in place of the word that begins there
	lines []Line
	end   string            // of a line
	like  map[string]string // statements that share the columns of another
	table []int             // for every line the number of the table in whose rows it stands, or -1
	wide  []int             // for every table its widest word
}

// findRows finds the tables of rows, and the comments that stand among them: with a row
// before and after.
func (t *tidier) findRows() {
	t.table = make([]int, len(t.lines))
	last := -1 // the row before, in the same table
	for i := range t.lines {
		l := &t.lines[i]
		t.table[i] = -1
		switch {
		case len(l.Tokens) == 0:
			continue
		case !l.Row:
			last = -1
			continue
		case last < 0:
			t.wide, last = append(t.wide, 0), i
		}
		n := len(t.wide) - 1
		for j := last; j <= i; j++ {
			if !t.lines[j].blank() {
				t.table[j] = n
			}
		}
		for _, text := range t.fields(l) {
			t.wide[n] = max(t.wide[n], uniseg.StringWidth(text))
		}
		last = i
	}
}

// written is a line in tidy columns, its comment apart.
type written struct{ code, comment string }

func (t *tidier) write() string {
	var b strings.Builder
	blank := true // nothing written yet, or a blank line was due
	due := false
	for i := 0; i < len(t.lines); {
		n := t.paragraph(i)
		if n == 0 {
			due = !blank
			i++
			continue
		}
		if due {
			b.WriteString(t.end)
		}
		blank, due = false, false
		for _, w := range t.columns(i, i+n) {
			b.WriteString(w)
			b.WriteString(t.end)
		}
		i += n
	}
	return b.String()
}

// paragraph is how many lines from the one given stand together: up to a blank line, and a
// grid's rows apart from what comes before and after; 0 for a blank line.
func (t *tidier) paragraph(i int) int {
	n := 0
	for ; i+n < len(t.lines); n++ {
		l := &t.lines[i+n]
		if l.blank() || n > 0 && t.breaksBefore(i+n) {
			break
		}
	}
	return n
}

func (l *Line) blank() bool { return len(l.Tokens) == 0 && l.Comment.Empty() }

// breaksBefore says whether a line begins other columns than the line before it.
func (t *tidier) breaksBefore(i int) bool {
	return t.inRows(i) != t.inRows(i-1)
}

// inRows says whether a line stands among the rows of a table.
func (t *tidier) inRows(i int) bool { return t.table[i] >= 0 }

// columns writes the lines from i up to end in common columns.
func (t *tidier) columns(i, end int) []string {
	lines := t.lines[i:end]
	rows := t.inRows(i)
	list := make([]written, len(lines))
	widths := t.widths(i, end, rows)
	commentAt := 0
	for n := range lines {
		list[n] = t.code(&lines[n], widths, rows)
		if list[n].comment != "" && list[n].code != "" {
			commentAt = max(commentAt, uniseg.StringWidth(list[n].code)+2)
		}
	}
	text := make([]string, len(list))
	for n, w := range list {
		text[n] = w.join(commentAt, rows)
	}
	return text
}

// join puts a line's comment behind its code, or alone where there is none.
func (w written) join(commentAt int, rows bool) string {
	switch {
	case w.comment == "":
		return w.code
	case w.code == "" && rows && !strings.HasPrefix(w.comment, "# ") && w.comment != "#":
		return "  # " + w.comment[1:]
	case w.code == "" && rows:
		return "  " + w.comment
	case w.code == "":
		return w.comment
	}
	return pad(w.code, commentAt) + w.comment
}

// pad fills text up with blanks to a width.
func pad(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-uniseg.StringWidth(text)))
}

// columnKey is a column that lines of one statement share; rows of a grid are one
// statement, and the statements' own words are one column.
type columnKey struct {
	word  string
	field int
}

// widths finds how wide each column is, where another follows it; all columns of a table
// are alike, so that a grid looks like the quilt.
func (t *tidier) widths(i, end int, rows bool) map[columnKey]int {
	widths := map[columnKey]int{}
	if rows {
		return map[columnKey]int{{}: t.wide[t.table[i]]}
	}
	for n := i; n < end; n++ {
		l := &t.lines[n]
		fields := t.fields(l)
		for f, text := range fields {
			if f+1 < len(fields) {
				key := t.key(l, f)
				widths[key] = max(widths[key], uniseg.StringWidth(text))
			}
		}
	}
	return widths
}

func (t *tidier) key(l *Line, field int) columnKey {
	switch {
	case l.Row:
		return columnKey{}
	case field == 0:
		return columnKey{"", 0}
	}
	return columnKey{cmp.Or(t.like[l.Keyword], l.Keyword), field}
}

// sharedColumns is the statements that share the columns of another.
var sharedColumns = sync.OnceValue(func() map[string]string {
	like := map[string]string{}
	for i := range everyStatement() {
		if s := &everyStatement()[i]; s.like != "" {
			like[s.Word] = s.like
		}
	}
	return like
})

// fields is a line's columns, the words of each with one blank between them.
func (t *tidier) fields(l *Line) []string {
	var fields []string
	for n, token := range l.Tokens {
		text := t.token(token)
		if n == 0 && !l.Row {
			text = strings.ToLower(text)
		}
		if token.Field == len(fields) {
			fields = append(fields, text)
		} else {
			fields[len(fields)-1] += " " + text
		}
	}
	return fields
}

// token is a token's text, with single blanks inside unless it is text in quotes.
func (t *tidier) token(token token) string {
	if now, ok := t.today[token.Start]; ok {
		return now
	}
	text := t.src[token.Start:token.End]
	for _, q := range quoteMarks {
		if strings.HasPrefix(text, q) {
			return text
		}
	}
	return strings.Join(strings.FieldsFunc(text, measure.IsSpace), " ")
}

// code writes a line's columns.
func (t *tidier) code(l *Line, widths map[columnKey]int, rows bool) written {
	w := written{comment: strings.TrimRightFunc(t.src[l.Comment.Start:l.Comment.End], measure.IsSpace)}
	fields := t.fields(l)
	var b strings.Builder
	gap := "  "
	if rows && len(fields) > 0 {
		b.WriteString(gap)
		gap = " "
	}
	for f, text := range fields {
		if f+1 < len(fields) {
			text = pad(text, widths[t.key(l, f)]) + gap
		}
		b.WriteString(text)
	}
	w.code = b.String()
	return w
}
