package booklet

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/quilttest/spelled"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/internal/templates"
	"eighthturn/palettes"
)

const sixFabrics = "fabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83\nfabric plum #4b2440\nfabric moss #5d6433\nfabric cream #f4ead7\n"

// printedPattern is a small layout whose printed pattern somebody has read from cover to back.
type printedPattern struct {
	name, text string
	cutting    cutting.Options
	Options
	foundations bool
	drawn       string // the titles of figures that are spelled out
}

func printedPatterns() []printedPattern {
	notes := ""
	for i, place := range []string{"", "cover", "fabric", "cutting", "sewing", "grid", "border", "finishing", "W"} {
		notes += fmt.Sprintf("note %s \"note %d\"\n", place, i)
	}
	many := "strip 4\n" + sixFabrics + "scraps darks navy rust teal plum moss\nblock W web wedges darks kites cream\nblock H halves pieces navy rust\ngrid\n W W W W\n W W W W\n W W W W\n W W W H\nborder 2 plum\nborder 1 teal\n"
	return []printedPattern{
		{name: "notes", foundations: true, Options: Options{ValueStudy: true}, text: "title \"Four webs\"\ndesigner \" Ada Quill \"\ncopyright \"2027 Ada Quill\"\n" + notes + "strip 4\n" + sixFabrics +
			"block W web wedges navy rust kites cream\nblock F floating wedges teal background cream\nblock V web wedges moss kites plum\ngrid\n W F V\n F W V\nborder 2 plum corners rust\nborder 1 teal\nbinding 2 1/2 moss\ncolorway night navy #3a2040 cream #908890\ncolorway day navy rust rust navy\n"},
		{name: "large", Options: Options{Name: "unnamed", Large: true, Without: []string{templatesName}}, text: many, drawn: "blocks in rows"},
		{name: "half", Options: Options{Paper: render.HalfLetter()}, text: strings.Replace(many, "grid\n", "grid\n W W W W\n", 1) + "binding 2 navy\n"},
		{name: "sashes", Options: Options{Paper: render.HalfLetter(), Without: []string{colouring}}, foundations: true, text: "side 6\n" + sixFabrics + "block R ring wedges navy corners cream\nblock P plain piece plum\nblock T halves pieces rust moss\nblock Q halves pieces teal cream\ngrid\n R P R P R P R P\n T Q P R Q T . .\n P R P R P R . .\nrepeat across 2\nsash 2 moss posts rust\nborder 3 navy\n", drawn: "blocks in rows"},
		{name: "divided", Options: Options{Large: true}, text: "side 5\n" + sixFabrics + "block Half halves pieces navy rust\nblock Ring8 ring wedges teal corners cream\ngrid\n Half Ring8\n Ring8 Half\nrepeat across 9\n"},
		{name: "borders", text: "strip 4\n" + sixFabrics + "scraps darks navy rust teal\nblock W web wedges darks kites cream\ngrid\n W W\n W W\nborder 1 moss\nborder 1 1/4 moss\nborder 1 1/2 moss\nborder 1 3/4 moss\nborder 2 moss\nborder 2 1/4 moss\nborder 2 1/2 moss\nborder 2 3/4 moss\n", drawn: "blocks in rows"},
		{name: "huge", foundations: true, Options: Options{Paper: render.HalfLetter()}, text: "side 70\n" + sixFabrics + "block W web wedges navy kites cream\nblock F floating wedges navy background cream\ngrid\n W F\n"},
		{name: "columns", cutting: cutting.Options{Copies: 3}, Options: Options{Paper: render.A4()}, text: "units cm\nside 13\n" + sixFabrics +
			"block W web wedges navy kites cream\nblock T tumblers pieces teal rust line 15\ngrid\n W W T W W\n W W T W W\n W W W W W\nborder 6 plum lengthwise\nbinding 6 navy\nbacking cream\nbatting\n"},
		{name: "tumblers", text: "strip 4\n" + sixFabrics + "block T tumblers pieces navy rust teal line 6\nblock U tumblers pieces plum cream line 6\ngrid\n T U T U\n T U T U\n T U T U\nborder 2 moss\n"},
		{name: "dealt", Options: Options{Large: true}, text: "strip 4\n" + sixFabrics + "scraps darks navy rust teal plum moss by set\nstrip-set drift darks 1 3/4 darks 1 1/2 darks 1 3/4 sets 5\nwebs drift / reversed drift\nblock W web kites cream\ngrid\n W W W W\n W W W W\n W W W W\n W W W W\n"},
		{name: "sets", Options: Options{Paper: render.A5()}, text: "strip 4\n" + sixFabrics + "fabric sky #d8e4ee on-hand 2 yd\nstrip-set shore rust 1 3/4 cream rest\nblock W web wedges shore kites cream\nblock V web wedges navy reversed shore kites sky\ngrid\n W V W V W V W V\nrepeat down 4\nborder 2 sky\n"},
		{name: "sizes", foundations: true, text: "title \"Two ways\"\nside 6\n" + sixFabrics + "block R ring wedges rust teal corners cream\nblock H halves pieces navy cream\ngrid\n H R\n R H\nborder 2 navy\nsize lap\nsize twin across 4 down 4 side 8 border 3\nsize crib border none\n"},
		{name: "grown", text: "side 3\n" + sixFabrics + "block P plain piece plum\nblock M plain piece moss\ngrid\n P M\nrepeat across 12 down 3\n"},
	}
}

// TestSpelledPatterns: printed patterns of small layouts are, block by block, what somebody has read. What the reports say is not said again.
func TestSpelledPatterns(t *testing.T) {
	var files []string
	b := spelled.New()
	for _, c := range printedPatterns() {
		p := &report.Plans{Top: lay.Top(t, c.text), Cutting: c.cutting}
		r := Of(p)
		if c.foundations {
			r.Foundations = templates.Foundations(r.Top)
		}
		d := Pattern(r, c.Options)
		lettered := *p
		lettered.Letters = fabricLetters(r)
		b.Drawn = nil
		for _, said := range []document.Document{report.Cutting(&lettered), report.Sewing(&lettered), report.Values(&lettered), report.Beginning(&lettered)} {
			b.Document(said)
		}
		b.Page()
		if c.drawn != "" {
			b.Drawn = regexp.MustCompile(c.drawn)
		}
		b.Document(d)
		files = append(files, c.name+".txt")
		golden.Text(t, filepath.Join("testdata", "spelled", c.name+".txt"), []byte(b.Page()))
	}
	files = append(files, "handouts.txt", "templates.txt", "parts.txt")
	golden.Unused(t, filepath.Join("testdata", "spelled"), files)
}

// TestSpelledHandouts: class handouts with and without kits, in one session and in several.
func TestSpelledHandouts(t *testing.T) {
	b := spelled.New()
	list := printedPatterns()
	noted := Handout(Of(&report.Plans{Top: lay.Top(t, list[0].text)}), Options{})
	noted.Sections = noted.Sections[:2]
	b.Document(noted)
	for i, o := range []Schedule{{}, {Sessions: []int{120}}, {Sessions: []int{60, 90}, Times: map[string]int{"show": 17, "unit": 6}}, {Times: map[string]int{"unit": 7, "welcome": 40}}} {
		for _, c := range []printedPattern{list[7], list[8], {text: "strip 4\n" + sixFabrics + "strip-set shore rust 1 3/4 cream rest\nblock W web wedges shore kites cream\ngrid\n W W\n W W\n"}}[i%2:] {
			p := &report.Plans{Top: lay.Top(t, c.text), Cutting: c.cutting}
			b.Document(Handout(Of(p), Options{Schedule: o}))
		}
	}
	b.Document(Handout(Of(&report.Plans{Top: lay.Top(t, "side 6\n"+sixFabrics+"block P plain piece navy\ngrid\n P\n")}), Options{}))
	golden.Text(t, filepath.Join("testdata", "spelled", "handouts.txt"), []byte(b.Page()))
}

// TestSpelledTemplates: books of templates, what is too large for one, and templates with parts.
func TestSpelledTemplates(t *testing.T) {
	b := spelled.New()
	for _, c := range []struct {
		text string
		Options
	}{
		{printedPatterns()[0].text, Options{}}, {printedPatterns()[3].text, Options{Paper: render.HalfLetter(), Name: "Rings"}},
		{"side 30\n" + sixFabrics + "block R ring wedges navy corners cream\ngrid\n R\n", Options{Large: true}},
		{"side 120\n" + sixFabrics + "block W web wedges navy kites cream\ngrid\n W\n", Options{Paper: render.HalfLetter()}},
	} {
		top := lay.Top(t, c.text)
		for _, foundations := range []bool{false, true} {
			made, err := Templates(top, cutting.Pieces(top, cutting.Options{}), c.Options, foundations)
			if err != nil {
				b.Line("%v", err)
				continue
			}
			b.Line("%d templates, %d foundations, in parts %q", made.Templates, made.Foundations, made.Tiled)
			b.Document(made.Document)
		}
	}
	for _, e := range []*tooLarge{{"template T1", mostOfPiece}, {"template T1", mostOfPiece + 1}} {
		b.Line("%v", e)
	}
	golden.Text(t, filepath.Join("testdata", "spelled", "templates.txt"), []byte(b.Page()))
}

// TestSpelledParts: letters, hours, parts of grids and words, each by itself at the edge of what it is for.
func TestSpelledParts(t *testing.T) {
	b := spelled.New()
	for _, n := range []int{0, 1, 25, 26, 27, 51, 52, 701, 702} {
		b.Line("fabric %d is %s", n, lettersOf(n))
	}
	for _, n := range []int{0, 1, 29, 30, 59, 60, 61, 89, 90, 600} {
		b.Line("%d minutes: %s, about %d hours, %s", n, clock(n), roundHours(n), hour{minutes: n, guess: n%2 > 0}.text())
	}
	for n := 1; n < 14; n++ {
		b.Line("%d in parts: %v %v %v %v", n, even(n, 1), even(n, 3), even(n, 4), even(n, 13))
	}
	for _, text := range []string{"", "a", "z", "A", "ä", "a.", " wedge ", "{", "`x", "."} {
		b.Line("%q: %q %q %q", text, capital(text), sentence(text), own(opens+text+closes+defines+bare))
	}
	for _, size := range [][2]measure.NM{{4, 4}, {4, 5}, {5, 4}, {1, 100}, {1, 10_000}} {
		b.Line("%v: %d", size, minOf(size[0]*measure.Inch, size[1]*measure.Inch))
	}
	square := []measure.Point{{X: 2, Y: 2}, {X: 4, Y: 2}, {X: 4, Y: 4}}
	for x := range measure.NM(7) {
		b.Line("%d: %v %v", x, meets(square, rect(x, 0, x+1, 6)), meets(square, rect(0, x, 6, x+1)))
	}
	b.Line("%v %v %v", meets(nil, rect(0, 0, 1, 1)), pale(palettes.Colour{R: 10, G: 100, B: 200}), turnedBack(measure.Point{X: 1, Y: 2}, 10, 3))
	for _, size := range []int{1, 40_000, 79_999, 80_000} {
		b.Line("%v", Cost{Seconds: size / 40_000}.Long())
	}
	for _, n := range []int{1000, 1001, 4000, 4001} {
		b.Line("%d patches: lines of %g", n, (&patternBuilder{Reports: Reports{Top: &quilt.Top{Patches: make([]quilt.Patch, n)}}}).hairline())
	}
	for _, labels := range []string{"A B", "T B", "T P", "T P Q", "T P Q X", "T P Q X Y", "T P Q X Y Z"} {
		text := "side 6\n" + sixFabrics
		for _, label := range strings.Fields(labels) {
			text += "block " + label + " plain piece navy\n"
		}
		top := lay.Top(t, text+"grid\n "+labels+"\n")
		book := &patternBuilder{Reports: Of(&report.Plans{Top: top})}
		b.Line("%s: %s; %+v", labels, book.templateSign(), CostOf(top))
	}
	golden.Text(t, filepath.Join("testdata", "spelled", "parts.txt"), []byte(b.Page()))
}

func rect(x, y, right, low measure.NM) quilt.Rect {
	return quilt.Rect{Min: measure.Point{X: x, Y: y}, Max: measure.Point{X: right, Y: low}}
}
