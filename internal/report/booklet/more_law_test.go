package booklet

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilttest/judges"
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
			if !strings.Contains(text, `Times given as "about" are estimates`) || !strings.Contains(text, "These times are also approximate") {
				t.Errorf("%s: nothing says that times are approximate", s.Name)
			}
			if kits := strings.Contains(text, "12 kits in all"); kits != (copies > 1) {
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
	for _, s := range judges.Some(samples.All(), 4) {
		files, err := render.Markdown(pattern(t, s.Text), "pattern", render.Options{})
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
		plates := 0
		for _, f := range figuresIn(pattern(t, s.Text).Print().Sections) {
			if f.Of.TrueSize {
				plates++
			}
		}
		if named := bytes.Count(files["pattern.md"], []byte("`"+render.TrueSizeFile+"`\n")); named != plates || (plates > 0) != (files[render.TrueSizeFile] != nil) {
			t.Errorf("%s: %d figures are of true size, and %d are referred to; they have %d bytes", s.Name, plates, named, len(files[render.TrueSizeFile]))
		}
		if links := bytes.Count(files["pattern.md"], []byte("](")) - len(markdownPicture.FindAll(files["pattern.md"], -1)); links != 0 {
			t.Errorf("%s: %d links lead nowhere in a book made of the pattern", s.Name, links)
		}
		if beside := min(plates, 1) + 1; len(shown) != len(files)-beside || len(shown) < 8 {
			t.Errorf("%s: %d pictures are shown and %d are there", s.Name, len(shown), len(files)-beside)
		}
	}
}

// TestLargePrintHasFewParts: large print on A5 leaves templates the room that captions do not take: those of a strip of four inches come on
// fourteen pages at the most, where room for ten lines of caption makes eighteen.
func TestLargePrintHasFewParts(t *testing.T) {
	d := Pattern(study(t, sampleText(t, "tide"), cutting.Options{}), Options{Paper: render.A5(), Large: true})
	plates := 0
	for _, f := range figuresIn(d.Print().Sections) {
		if f.Of.TrueSize {
			plates++
		}
	}
	if plates == 0 || plates > 14 {
		t.Errorf("the templates come on %d pages", plates)
	}
}

// TestAReaderBuysAllFabric: what the designer has of a fabric is no word of the pattern, in any print, whether it is enough or not.
func TestAReaderBuysAllFabric(t *testing.T) {
	for _, has := range []string{"3 yd", "1/8 yd"} {
		for _, large := range []bool{false, true} {
			r := study(t, strings.Replace(sampleText(t, "jetty"), "on-hand 3 yd", "on-hand "+has, 1), cutting.Options{})
			files, err := render.Markdown(Pattern(r, Options{Paper: render.Letter(), Large: large}), "pattern", render.Options{})
			if err != nil {
				t.Fatal(err)
			}
			text := string(files["pattern.md"])
			if !regexp.MustCompile(`salt \| 1⅜ yd \|`).MatchString(text) {
				t.Errorf("%s: what to buy is not told", has)
			}
			if said := regexp.MustCompile(`(?i)on hand|enough:|short by`).FindString(text); said != "" || r.Cuts.Fabrics[len(r.Cuts.Fabrics)-1].OnHand == nil {
				t.Errorf("%s: %q is said to a reader", has, said)
			}
		}
	}
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
	}{{1, "wedge", "1 wedge"}, {2, "wedge", "2 wedges"}, {0, "seam", "no seams"}, {3, "sash", "3 sashes"}, {2, "half", "2 halves"}, {2, "background piece", "2 background pieces"}} {
		if got := count(c.n, c.noun); got != c.want {
			t.Errorf("count is %q, want %q", got, c.want)
		}
	}
}
