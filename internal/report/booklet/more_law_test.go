package booklet

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/render"
	"eighthturn/samples"
)

func TestAnEditorFindsNothingInSeveralQuilts(t *testing.T) {
	for _, s := range samples.All() {
		r := study(t, s.Text, cutting.Options{Copies: 12})
		for _, wrong := range edited(Pattern(r, Options{}), r) {
			t.Errorf("%s: %s", s.Name, wrong)
		}
	}
}

// A handout names no length that no report has, explains its abbreviations, and says of each time that it is a guess.
func TestAnEditorFindsNothingInHandouts(t *testing.T) {
	for _, s := range samples.All() {
		for _, copies := range []int{1, 12} {
			r := study(t, s.Text, cutting.Options{Copies: copies})
			d := Handout(r, Options{})
			for _, check := range []func(document.Document, Reports) []string{unknownLengths, wrongFigures, wrongPlurals, wrongAlternatives} {
				for _, wrong := range check(d, r) {
					t.Errorf("%s for %d: %s", s.Name, copies, wrong)
				}
			}
			text := strings.Join(ownTexts(d), "\n")
			if !strings.Contains(text, "The times are guesses") || !strings.Contains(text, "That is a guess as well") {
				t.Errorf("%s: nothing says that times are guesses", s.Name)
			}
			if kits := strings.Contains(text, "12 kits altogether"); kits != (copies > 1) {
				t.Errorf("%s for %d: kits are said to be provided: %v", s.Name, copies, kits)
			}
		}
	}
}

// The day's hours follow each other, and the last is where all their minutes together end.
func TestTheDayAddsUp(t *testing.T) {
	b := newBook(study(t, sampleText(t, "regatta"), cutting.Options{}), Options{})
	b.day()
	var rows []document.Row
	for _, block := range b.parts[0].Blocks {
		if table, ok := block.(document.Table); ok {
			rows = table.Rows
		}
	}
	sum := 0
	for i, h := range b.hours() {
		if rows[i].Cells[0].Text.String() != clock(sum) {
			t.Errorf("%q begins at %s, but %d minutes have gone", h.what, rows[i].Cells[0].Text.String(), sum)
		}
		sum += h.minutes
	}
	if end := rows[len(rows)-1].Cells[0].Text.String(); end != clock(sum) || sum < 100 {
		t.Errorf("the day ends at %s, after %d minutes", end, sum)
	}
}

var markdownPicture = regexp.MustCompile(`!\[([^\]]*)\]\(<([^>]+)>\)`)

func TestMarkdownHasItsPictures(t *testing.T) {
	t.Parallel()
	for _, s := range samples.All() {
		files, err := render.Markdown(pattern(t, s.Text), "pattern")
		if err != nil {
			t.Fatal(err)
		}
		shown := map[string]bool{}
		for _, m := range markdownPicture.FindAllSubmatch(files["pattern.md"], -1) {
			if len(m[1]) == 0 {
				t.Errorf("%s: %s has no alternative text", s.Name, m[2])
			}
			if !bytes.Contains(files[string(m[2])], []byte("<svg")) {
				t.Errorf("%s: %s is no picture", s.Name, m[2])
			}
			shown[string(m[2])] = true
		}
		if len(shown) != len(files)-1 || len(shown) < 8 {
			t.Errorf("%s: %d pictures are shown and %d are there", s.Name, len(shown), len(files)-1)
		}
	}
}

// Parts of a template that is larger than the page show all of its lines, each at its place.
func TestPartsShowTheWholeTemplate(t *testing.T) {
	outline := []diagram.Point{{}, {X: 11 * measure.Inch}, {X: 7 * measure.Inch, Y: 13 * measure.Inch}, {Y: 4 * measure.Inch}}
	f := &diagram.Figure{Max: diagram.Point{X: 11 * measure.Inch, Y: 13 * measure.Inch}, Marks: []diagram.Mark{{Area: &diagram.Area{Outline: outline, Edge: diagram.Cut}}}}
	l := &laying{room: diagram.Point{X: 4 * measure.Inch, Y: 5 * measure.Inch}}
	if missing := unseenPoints(f, l.parts(f), l); missing != 0 {
		t.Errorf("%d points of the outline are on no page", missing)
	}
	if missing := unseenPoints(f, l.parts(f)[1:], l); missing == 0 {
		t.Error("a page that is missing is not noticed")
	}
}

// unseenPoints is how many of some points along a figure's outline no page shows.
func unseenPoints(f *diagram.Figure, pages []sheet, l *laying) int {
	outline := f.Marks[0].Area.Outline
	missing := 0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		for n := range measure.NM(100) {
			at := diagram.Point{X: p.X + (q.X-p.X)*n/100, Y: p.Y + (q.Y-p.Y)*n/100}
			if !shownAnywhere(at, f, pages, l) {
				missing++
			}
		}
	}
	return missing
}

// shownAnywhere says whether a point of a figure lies on a line of one of its pages; which window a page is of is found by
// trying all.
func shownAnywhere(at diagram.Point, f *diagram.Figure, list []sheet, l *laying) bool {
	for row := range measure.NM(8) {
		for column := range measure.NM(8) {
			low := diagram.Point{X: column * (l.room.X - overlap), Y: row * (l.room.Y - overlap)}
			w := window{low, diagram.Point{X: low.X + l.room.X, Y: low.Y + l.room.Y}}
			if !w.holds(at) {
				continue
			}
			marks := w.clipped(f)
			for _, s := range list {
				if sameLines(s.marks, marks) {
					return true
				}
			}
		}
	}
	return false
}

// sameLines says whether a page begins with the lines of a window.
func sameLines(page, lines []diagram.Mark) bool {
	if len(lines) == 0 || len(page) < len(lines) {
		return false
	}
	for i, m := range lines {
		if page[i].Line == nil || page[i].Line.Points[0] != m.Line.Points[0] || page[i].Line.Points[1] != m.Line.Points[1] {
			return false
		}
	}
	return true
}

// What is larger than the page is refused, and not cut off.
func TestNoPictureIsCut(t *testing.T) {
	r := study(t, sampleText(t, "lanterns"), cutting.Options{})
	if _, err := render.PDF(Pattern(r, Options{Paper: render.Letter()}), render.Options{Paper: render.HalfLetter()}); err == nil {
		t.Error("templates for Letter pages were printed on half of one")
	}
}

func TestPlurals(t *testing.T) {
	for _, c := range []struct {
		n    int
		noun string
		want string
	}{{1, "wedge", "1 wedge"}, {2, "wedge", "2 wedges"}, {0, "seam", "0 seams"}, {3, "sash", "3 sashes"}, {2, "half", "2 halves"}, {2, "stop piece", "2 stop pieces"}} {
		if got := count(c.n, c.noun); got != c.want {
			t.Errorf("count is %q, want %q", got, c.want)
		}
	}
	if got := numbersText("row", []int{1, 2, 3, 5}); got != "rows 1 to 3 and 5" {
		t.Errorf("numbers are %q", got)
	}
}
