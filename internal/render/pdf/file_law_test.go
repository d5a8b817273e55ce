package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/readpdf"
	"eighthturn/palettes"
)

func vec(x, y float64) measure.Vec { return measure.Vec{X: x, Y: y} }

// pixels is a PNG file.
func pixels(c color.Color) []byte {
	picture := image.NewNRGBA(image.Rect(0, 0, 2, 1))
	picture.Set(0, 0, c)
	var file bytes.Buffer
	_ = png.Encode(&file, picture) // writing to memory cannot fail
	return file.Bytes()
}

func ended(t *testing.T, f *File) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := f.End(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func begun(t *testing.T, p Properties) *File {
	t.Helper()
	f, err := New(p)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// everything draws one of all there is.
func everything(f *File) {
	red, gray := palettes.Colour{R: 200, G: 16, B: 32}, palettes.Colour{R: 85, G: 85, B: 85}
	whole := &Element{Kind: "Document"}
	f.Whole(whole)
	head, list, figure, table := whole.Add("H1"), whole.Add("L"), whole.Add("Figure"), whole.Add("Table")
	list.Numbering, figure.Alternative = "Decimal", "two pictures"
	cell := table.Add("TR").Add("TH")
	cell.Scope, cell.Span = "Column", 2
	whole.Add("P") // stays empty
	link := &Element{Kind: "Link", Later: list}
	f.Page(300, 200)
	f.Within(head)
	f.Set(Face{12.5, true, red})
	f.Text("Quilt", vec(10, 20))
	f.Within(head)
	f.Text("s", vec(50, 20))
	f.Bookmark("Quilts", 0, 8)
	f.Within(nil)
	f.Rectangle(vec(10, 24), 100, 0.5)
	f.Operator("f")
	f.Within(list)
	f.Set(Face{9, false, gray})
	f.Text("See ", vec(10, 40))
	f.Within(link)
	f.Text("Figure 1", vec(30, 40))
	f.Link(link, "Figure 1", vec(30, 32), vec(40, 12))
	f.Link(nil, "nowhere", vec(1, 2), vec(3, 4))
	f.Instead("赤")
	f.Text(string(Stand), vec(80, 40))
	f.Done()
	f.Within(nil)
	f.Instead("")
	f.Text("x", vec(90, 40))
	f.Done()
	f.Layer("Pieces")
	f.Layer("Pieces")
	f.Colour(red, "rg")
	f.Colour(gray, "RG")
	f.Outline([]measure.Vec{vec(0, 0), vec(10.25, 0), vec(10.25, 7.00004)}, true)
	f.Outline([]measure.Vec{vec(0, 0), vec(10, 0)}, false)
	f.Outline(nil, true)
	f.Operator(Painting(true, true))
	f.Layer("Words")
	f.Circle(vec(50, 60), 10)
	f.Operator(Painting(false, true))
	f.Layer("Pieces")
	f.Opacity(0.35)
	f.Operator(Painting(true, false))
	f.Page(200, 100)
	f.Bookmark("Two", 1, 50)
	f.Bookmark("Three", 3, 60)
	f.Bookmark("Four", 0, 0)
	f.Trim(9)
	f.Within(figure)
	f.Place("Figure 1", 30)
	f.Place("Figure 1", 99)
	f.Frame(figure, vec(10, 30), 50, 20)
	f.Frame(figure, vec(40, 20), 50, 20)
	f.Image("red", pixels(color.NRGBA{R: 255, A: 255}), vec(10, 30), 50, 20)
	f.Image("red", nil, vec(40, 20), 50, 20)
	f.ImageTurned("clear", pixels(color.NRGBA{R: 255, A: 100}), vec(100, 10), vec(110, 15), vec(95, 20))
	f.Within(cell)
	for quarters := range 6 {
		at := f.Turn(vec(20, 30), quarters-1)
		f.Text("up", at)
		f.Operator("Q")
	}
	f.Pen(diagram.Pen{Width: 1.5, Dashes: []float64{4, 2.5}, Colour: red}, true, true)
	f.Pen(diagram.Pen{Width: 0.5}, false, false)
	f.Sheets(2, 500, 400)
	f.On(3, vec(36, 36), 200, 300)
	f.Marks(9, 18)
	f.Within(head)
	f.Text("again", vec(1, 2))
	f.Frame(list, vec(0, 0), 10, 10)
	f.Bookmark("Five", 1, 10)
	f.Place("far", 20)
	f.Link(list, "far", vec(10, 20), vec(5, 6))
	f.On(2, vec(0, 0), 250, 400)
	f.Text("left", vec(1, 2))
	f.On(2, vec(250, 0), 250, 400)
	f.Frame(list, vec(0, 0), 10, 10)
	f.On(2, vec(0, 200), 250, 200)
}

// TestEverything: a file with one of all there is, object by object, as somebody has looked at it; its table of places is right.
func TestEverything(t *testing.T) {
	all := Properties{Title: "Title (é)", Author: "Ida", Subject: "Subject", Keywords: "a, b", Copyright: "© Ida", Language: "en-US", Marker: "made by a test"}
	for name, p := range map[string]Properties{"everything": all, "bare": {}} {
		f := begun(t, p)
		if name == "bare" {
			f.Page(100, 50)
			f.Text("a", vec(1, 1))
			f.Within(&Element{Kind: "P"}) // without a structure nothing is in it
			f.Link(&Element{Kind: "P"}, "b", vec(1, 2), vec(3, 4))
			f.Marks(3, 6)
		} else {
			everything(f)
		}
		text, err := readpdf.Text(ended(t, f))
		if err != nil {
			t.Fatal(err)
		}
		golden.Text(t, filepath.Join("testdata", name+".txt"), []byte(text))
	}
}

// TestManyObjects: a file of thousands of objects, which are packed in several streams, and of a page whose contents are long, is read back whole.
func TestManyObjects(t *testing.T) {
	f := begun(t, Properties{Title: "t"})
	f.Page(100, 100)
	const many = 2*together + 10
	for i := range many {
		f.Link(nil, strconv.Itoa(i), vec(0, 0), vec(1, 1))
	}
	line := make([]measure.Vec, 20_000)
	for i := range line {
		line[i] = vec(float64(i), 1)
	}
	f.Outline(line, false)
	f.Operator("S")
	list, err := readpdf.Objects(ended(t, f))
	if err != nil {
		t.Fatal(err)
	}
	links, lines := 0, 0
	for _, o := range list {
		if strings.Contains(o.Text, fmt.Sprintf("/Contents (%d)", links)) {
			links++
		}
		lines = max(lines, bytes.Count(o.Stream, []byte(" l\n")))
	}
	if links != many || lines != len(line)-1 {
		t.Errorf("%d links in order, expected %d; %d lines", links, many, lines)
	}
}

// TestNumbersAreShort: numbers have four decimals at the most and none that is idle, and are what was asked for.
func TestNumbersAreShort(t *testing.T) {
	f := &File{}
	for _, v := range []float64{0, 1, 10, 100, -10, 0.5, 0.25, 12.3456, 0.00004, 0.00006, 1e6, 1200.1, -0.125, 99.99996} {
		f.bytes = nil
		f.Numbers(v)
		text, _ := strings.CutSuffix(string(f.bytes), " ")
		got, err := strconv.ParseFloat(text, 64)
		if err != nil || math.Abs(got-v) > 0.00005+1e-12 || strings.Contains(text, ".") && strings.HasSuffix(text, "0") || strings.HasSuffix(text, ".") || string(f.bytes) != text+" " {
			t.Errorf("%v is written %q", v, f.bytes)
		}
	}
}

// TestColorsAreBytes: a color comes back to the same bytes, whether a program rounds or cuts off, and gray is written as gray (ISO 32000-1, 8.6.4).
func TestColorsAreBytes(t *testing.T) {
	for v := range 256 {
		for _, c := range []palettes.Colour{{R: uint8(v), G: uint8(v), B: uint8(v)}, {R: uint8(v), G: 7, B: uint8(255 - v)}, {R: 9, G: 9, B: uint8(v)}, {R: uint8(v), G: 9, B: 9}} {
			for _, operator := range []string{"rg", "RG"} {
				f := &File{}
				f.Colour(c, operator)
				words := strings.Fields(string(f.bytes))
				want, letters := []uint8{c.R, c.G, c.B}, operator
				if c.R == c.G && c.G == c.B {
					want, letters = want[:1], operator[1:]
					if operator == "RG" {
						letters = "G"
					} else {
						letters = "g"
					}
				}
				if len(words) != len(want)+1 || words[len(want)] != letters {
					t.Fatalf("%v: %q", c, f.bytes)
				}
				for i, w := range want {
					got, err := strconv.ParseFloat(words[i], 64)
					if err != nil || int(got*255) != int(w) || int(math.Round(got*255)) != int(w) || got > 1 {
						t.Fatalf("%v: %q", c, f.bytes)
					}
				}
			}
		}
	}
}

// TestCirclesAreRound: the four curves of a circle are joined, and no point of them is farther from the radius than three in ten thousand, the best
// that four such curves do (a fact of geometry, from memory: 0.00027).
func TestCirclesAreRound(t *testing.T) {
	f := &File{height: 100}
	f.Circle(vec(30, 40), 20)
	var numbers []float64
	var at [2]float64
	curves := 0
	for _, word := range strings.Fields(string(f.bytes)) {
		if v, err := strconv.ParseFloat(word, 64); err == nil {
			numbers = append(numbers, v)
			continue
		}
		switch {
		case word == "m" && len(numbers) == 2:
			at = [2]float64{numbers[0], numbers[1]}
		case word == "c" && len(numbers) == 6:
			curves++
			for part := 0.0; part <= 1; part += 0.05 {
				var p [2]float64
				for k := range p {
					a, b, c, d := at[k], numbers[k], numbers[2+k], numbers[4+k]
					rest := 1 - part
					p[k] = rest*rest*rest*a + 3*rest*rest*part*b + 3*rest*part*part*c + part*part*part*d
				}
				if off := math.Abs(math.Hypot(p[0]-30, p[1]-60)/20 - 1); off > 0.0003 {
					t.Errorf("curve %d is %.5f off at %.2f", curves, off, part)
				}
			}
			at = [2]float64{numbers[4], numbers[5]}
		}
		numbers = nil
	}
	if curves != 4 || !strings.HasSuffix(string(f.bytes), "h\n") || math.Hypot(at[0]-50, at[1]-60) > 0.001 {
		t.Errorf("%d curves, the last ends at %v", curves, at)
	}
}

type full struct{ room int }

func (f *full) Write(b []byte) (int, error) {
	if f.room -= len(b); f.room < 0 {
		return 0, errors.New("the disk is full")
	}
	return len(b), nil
}

// TestFaultsOfFilesAreTold: a picture that is none, and a disk that is full at any place, are faults; the first is told, and nothing is written behind it.
func TestFaultsOfFilesAreTold(t *testing.T) {
	f := begun(t, Properties{})
	f.Page(10, 10)
	f.Image("a", []byte("GIF89a"), vec(0, 0), 1, 1)
	first := f.Err()
	f.ImageTurned("b", []byte("nothing"), vec(0, 0), vec(1, 0), vec(0, 1))
	var out bytes.Buffer
	if err := f.End(&out); first == nil || !strings.HasPrefix(first.Error(), "the PDF cannot be written: ") || err == nil || err.Error() != first.Error() || out.Len() > 0 || strings.Contains(string(f.bytes), "Do") {
		t.Errorf("%v, then %v, %d bytes", first, err, out.Len())
	}
	for _, room := range []int{0, 30, 1000, 4000} {
		f := begun(t, Properties{Marker: "m"})
		f.Page(10, 10)
		f.Text("a", vec(1, 1))
		f.Set(Face{Bold: true})
		f.Text("b", vec(1, 1))
		if err := f.End(&full{room}); err == nil || !strings.Contains(err.Error(), "full") {
			t.Errorf("with room for %d bytes: %v", room, err)
		}
	}
}

// TestMarkedFiles: a file is told by its marker, and by nothing that only looks like it.
func TestMarkedFiles(t *testing.T) {
	f := begun(t, Properties{Marker: "by us"})
	f.Page(1, 1)
	file := ended(t, f)
	for head, want := range map[string]bool{
		string(file): true, string(file[:64]): true, string(file[:16]): true, "%PDF-1.7\n%by us": false, "%PDF-1.7\n%by us, too\n": false, "PDF\n%by us\n": false, "": false,
		"%PDF-1.7\n" + strings.Repeat("x", 48) + "%by us\n": true, "%PDF-1.7\n" + strings.Repeat("x", 49) + "%by us\n": false,
	} {
		if got := Marked([]byte(head), "by us"); got != want {
			t.Errorf("%.40q: %v", head, got)
		}
	}
}

// TestSignsThatAreShown: letters that the fonts have stand as they are, one that shows nothing is left out, and for others stands a mark; each is told of.
func TestSignsThatAreShown(t *testing.T) {
	letters := diagram.NewLettering()
	var lacks []rune
	got := Shown(letters, "a é½ ~\u00ad\u200d\ufe0f赤\U0001f9f5x\x7f", false, func(r rune) { lacks = append(lacks, r) })
	if got != "a é½ ~\ufffd\ufffdx\ufffd" || string(lacks) != "赤\U0001f9f5\x7f" {
		t.Errorf("%q, lacking %q", got, string(lacks))
	}
	for r := rune(1); r < 0x2000; r++ {
		if want := r >= ' ' && r <= '~' || letters.Has(r, false); Has(letters, r, false) != want {
			t.Errorf("%U: %v", r, !want)
		}
	}
}
