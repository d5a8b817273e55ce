package diagram

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/palettes"
)

// outside are the corners of what is on a sheet that lie beyond its edges.
func outside(s *Sheet, letters *Lettering) []measure.Vec {
	var list []measure.Vec
	look := func(at measure.Vec, by float64) {
		if !(at.X-by >= -1e-6*(1+s.Width) && at.Y-by >= -1e-6*(1+s.Height) && at.X+by <= s.Width*(1+1e-6)+1e-6 && at.Y+by <= s.Height*(1+1e-6)+1e-6) {
			list = append(list, at)
		}
	}
	for _, i := range s.Items {
		if i.Shape != nil {
			for _, p := range i.Shape.Points {
				look(p, i.Shape.Pen.Width/2+i.Shape.Radius)
			}
			continue
		}
		wide, high := letters.Width(i.Label.Text, i.Label.Size, i.Label.Bold), capital*i.Label.Size
		cos, sin := [4]float64{1, 0, -1, 0}[i.Label.Quarters], [4]float64{0, 1, 0, -1}[i.Label.Quarters]
		look(i.Label.At, 0)
		look(measure.Vec{X: i.Label.At.X + wide*cos + high*sin, Y: i.Label.At.Y + wide*sin - high*cos}, 0)
	}
	return list
}

// TestEverythingIsOnTheSheet: whatever a figure holds, nothing of it is cut off, the sheet
// is no larger than was asked for, and its SVG is well formed and has only numbers in it.
func TestEverythingIsOnTheSheet(t *testing.T) {
	letters := NewLettering()
	for seed := range uint64(judges.Of(1000, 3000)) {
		f, o := invented(seed)
		s := Place(f, o)
		if list := outside(s, letters); len(list) > 0 {
			t.Fatalf("seed %d: %v lies beyond the sheet of %g by %g", seed, list, s.Width, s.Height)
		}
		if limit := o.limit(); !f.TrueSize && s.Width > limit.X+1e-6 {
			t.Fatalf("seed %d: the sheet is %g wide, asked were %g", seed, s.Width, limit.X)
		}
		if f.TrueSize && s.Scale != TrueScale {
			t.Fatalf("seed %d: scale %g", seed, s.Scale)
		}
		var b bytes.Buffer
		if err := SVG(&b, f, o); err != nil {
			t.Fatal(err)
		}
		if wrong := malformed(b.Bytes()); wrong != "" {
			t.Fatalf("seed %d: %s\n%s", seed, wrong, b.Bytes())
		}
	}
}

// TestWhatLiesOutsideIsNoticed: the law catches a mark that was moved after it was placed.
func TestWhatLiesOutsideIsNoticed(t *testing.T) {
	f := &Figure{Max: measure.Point{X: measure.Inch, Y: measure.Inch}, Marks: []Mark{{Words: &Words{Text: "words", At: measure.Point{}}}}}
	s := Place(f, Options{})
	s.Items[0].Label.At.X -= 10
	if len(outside(s, NewLettering())) == 0 {
		t.Error("words beyond the sheet were not noticed")
	}
	s.Items[0].Label.At.X = math.NaN()
	if len(outside(s, NewLettering())) == 0 {
		t.Error("words nowhere were not noticed")
	}
}

// malformed says what is wrong with a picture: files of their own have a white ground behind all that is drawn, and pictures within a
// page none.
func malformed(svg []byte) string {
	if bytes.HasPrefix(svg, []byte("<?xml")) {
		ground := bytes.Index(svg, []byte(Ground))
		for _, drawn := range []string{"<path", "<circle", "<text"} {
			if at := bytes.Index(svg, []byte(drawn)); ground < 0 || at >= 0 && at < ground {
				return "no ground behind " + drawn
			}
		}
		svg = bytes.Replace(svg, []byte(Ground), nil, 1)
	}
	reader := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			return ""
		}
		if err != nil {
			return err.Error()
		}
		element, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if !strings.Contains(" svg title desc path circle text ", " "+element.Name.Local+" ") {
			return "an element " + element.Name.Local
		}
		for _, a := range element.Attr {
			if wrong := badValue(a); wrong {
				return a.Name.Local + " is " + a.Value
			}
		}
	}
}

// badValue says whether an attribute that holds numbers holds anything else.
func badValue(a xml.Attr) bool {
	switch a.Name.Local {
	case "fill", "stroke":
		return a.Value != "none" && (len(a.Value) != 7 || a.Value[0] != '#')
	case "d", "viewBox", "x", "y", "r", "cx", "cy", "stroke-width", "stroke-dasharray", "font-size", "textLength":
		for _, word := range strings.FieldsFunc(a.Value, func(r rune) bool { return strings.ContainsRune("MLZ ", r) }) {
			if v, err := strconv.ParseFloat(word, 64); err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
				return true
			}
		}
	}
	return false
}

func TestMalformedIsNoticed(t *testing.T) {
	for _, text := range []string{`<svg><path d="MNaN 0"/></svg>`, `<svg>`, `<svg><script/></svg>`, `<svg><path fill="url(#a)"/></svg>`,
		`<?xml version="1.0"?><svg></svg>`, `<?xml version="1.0"?><svg><path/>` + Ground + `</svg>`, "<svg>" + Ground + "</svg>"} {
		if malformed([]byte(text)) == "" {
			t.Errorf("%s passed", text)
		}
	}
}

// TestTrueSize: an inch of the subject is an inch on the sheet, 72 points, and the SVG's own
// measures are those of its view box.
func TestTrueSize(t *testing.T) {
	f := &Figure{TrueSize: true, Max: measure.Point{X: 2 * measure.Inch, Y: measure.Inch}}
	for _, units := range []measure.System{measure.Inches, measure.Centimetres} {
		s := Place(f, Options{})
		if a, b := s.At(measure.Point{}), s.At(measure.Point{X: measure.Inch}); math.Abs(b.X-a.X-72) > 1e-9 {
			t.Errorf("an inch is %g points", b.X-a.X)
		}
		var b bytes.Buffer
		if err := s.SVG(&b, Options{Units: units}); err != nil {
			t.Fatal(err)
		}
		want := `width="2.0556in" height="1.0556in"`
		if units == measure.Centimetres {
			want = `width="52.2111mm" height="26.8111mm"`
		}
		if !strings.Contains(b.String(), want) || !strings.Contains(b.String(), `viewBox="0 0 148 76"`) {
			t.Errorf("%s is not in %s", want, b.String())
		}
	}
}

// TestWordsFitTheirRoom: words with a room are never longer than it, and not made smaller
// without need.
func TestWordsFitTheirRoom(t *testing.T) {
	for _, room := range []measure.NM{measure.Inch / 100, measure.Inch / 4, measure.Inch, 20 * measure.Inch} {
		f := &Figure{Max: measure.Point{X: 30 * measure.Inch, Y: 5 * measure.Inch}, Marks: []Mark{{Words: &Words{Text: "a long name of a fabric", At: measure.Point{X: 15 * measure.Inch, Y: measure.Inch}, Points: 9, Room: room}}}}
		s := Place(f, Options{})
		l := s.Items[0].Label
		if long := float64(room) * s.Scale; l.Width > long+1e-9 || l.Size < 9 && l.Width < long-1e-6 {
			t.Errorf("room of %g points: the words are %g long in size %g", long, l.Width, l.Size)
		}
	}
}

// TestSameBytes: a figure is written alike every time.
func TestSameBytes(t *testing.T) {
	for seed := range uint64(100) {
		f, o := invented(seed)
		var a, b bytes.Buffer
		if SVG(&a, f, o) != nil || SVG(&b, f, o) != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Fatalf("seed %d differs", seed)
		}
	}
}

// TestWordsAreReadOnTheirBacking: words on a fabric of any colour differ from it by a ratio
// of 4.5 at least, what WCAG 2.1 asks of text (1.4.3).
func TestWordsAreReadOnTheirBacking(t *testing.T) {
	for grey := range 256 {
		c := palettes.Colour{R: uint8(grey), G: uint8(grey), B: uint8(grey)}
		words := &Words{Backing: &c, Halo: true}
		ink, halo := words.ink()
		if ratio := palettes.ContrastRatio(ink, c); ratio < 4.5 {
			t.Errorf("on %s the words have a contrast of %.2f", c.Hex(), ratio)
		}
		if halo && ink == words.rim() {
			t.Errorf("on %s words and rim are of one colour", c.Hex())
		}
	}
}

func TestFontsHaveTheFractions(t *testing.T) {
	l := NewLettering()
	for _, r := range "0123456789¼½¾⅛⅜⅝⅞⁄×°″′–—é" {
		if !l.Has(r, false) || !l.Has(r, true) {
			t.Errorf("%c is missing", r)
		}
	}
	if l.Has('赤', false) {
		t.Error("a sign is found that no Go font has")
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestWriterErrors(t *testing.T) {
	if err := SVG(broken{}, &Figure{}, Options{}); !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("the error is %v", err)
	}
}

func FuzzSVG(f *testing.F) {
	f.Add(uint64(1), "text", 3.5, int64(5), int64(7), uint8(2))
	f.Fuzz(func(t *testing.T, seed uint64, words string, size float64, x, y int64, q uint8) {
		fig, o := invented(seed)
		fig.Title = words
		fig.Marks = append(fig.Marks, Mark{Words: &Words{Text: words, Points: size, At: measure.Point{X: measure.NM(x), Y: measure.NM(y)}, Quarters: int(q), Halo: true, Room: measure.NM(y)}},
			Mark{Area: &Area{Outline: []measure.Point{{X: 0, Y: 0}, {X: measure.NM(x), Y: 0}, {X: measure.NM(x), Y: measure.NM(y)}}, Hatch: true, Edge: Stroke(q)}},
			Mark{Line: &Line{Points: []measure.Point{{X: measure.NM(y), Y: 0}, {X: measure.NM(x), Y: 5}}, Stroke: Stroke(q), Start: Ending(q), End: Arrow}})
		s := Place(fig, o)
		if list := outside(s, NewLettering()); len(list) > 0 {
			t.Fatalf("%v lies beyond the sheet of %g by %g", list, s.Width, s.Height)
		}
		var b bytes.Buffer
		if err := s.SVG(&b, o); err != nil {
			t.Fatal(err)
		}
		if wrong := malformed(b.Bytes()); wrong != "" {
			t.Fatal(wrong)
		}
	})
}
