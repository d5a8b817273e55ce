package templates

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/samples"
)

// FuzzTemplates makes the templates of any text that the language accepts, as plates, foundations, mats and drawings, and holds them to the
// laws: every piece has its template, cut lines lie the allowance beyond, nothing is on anything else, files are well formed.
func FuzzTemplates(f *testing.F) {
	f.Add(samples.All()[0].Text, uint8(12), uint8(18))
	for i, text := range invent.Printed() {
		f.Add(text, uint8(8+4*i), uint8(24))
	}
	for seed := range uint64(4) {
		f.Add(invent.Layout(seed), uint8(8+seed), uint8(12))
	}
	f.Fuzz(func(t *testing.T, text string, wide, high uint8) {
		design, _, _ := layout.ReadWith(text, invent.Photo)
		if design == nil || design.Columns*design.Rows > 60 {
			return
		}
		top := quilt.Lay(design)
		if len(top.Patches) > 500 {
			return // as many as a test has time for
		}
		list := usual(top)
		for _, wrong := range wrongTemplates(top, list) {
			t.Errorf("%s\n%s", wrong, text)
		}
		for _, f := range Foundations(top) {
			if wrong := wrongFoundation(&f); wrong != "" {
				t.Errorf("foundation %d: %s\n%s", f.Number, wrong, text)
			}
		}
		size := measure.Point{X: measure.NM(wide) * measure.Inch / 2, Y: measure.NM(high) * measure.Inch / 2}
		if err := wrongMatFiles(top, list, size); err != nil {
			t.Errorf("mats of %v: %v\n%s", size, err, text)
		}
	})
}

// wrongTemplates is which law the templates of a top break.
func wrongTemplates(top *quilt.Top, list []Template) (wrong []string) {
	say := func(name, what string) {
		if what != "" {
			wrong = append(wrong, name+": "+what)
		}
	}
	say("all", uncounted(top, list))
	for i := range list {
		p := &list[i]
		say(p.Name(), wrongAllowance(points(p.Finished), points(p.Cut), float64(top.Seam)))
		if err := wrongMarks(p); err != nil {
			say(p.Name(), err.Error())
		}
		var b bytes.Buffer
		if err := errors.Join(p.SVG(&b, top), wrongSVG(b.Bytes())); err != nil {
			say(p.Name(), err.Error())
		}
	}
	var drawing bytes.Buffer
	if err := DXF(&drawing, top, list); err != nil || strings.Count(drawing.String(), "POLYLINE\r\n8\r\n"+cutLayer+"\r\n") != len(list) || strings.Contains(drawing.String(), "NaN") {
		say("drawing", fmt.Sprint("a template is lost or a number is none ", err))
	}
	pieces := figuresOf(top)
	plates, large := Plates(pieces, usualRoom, usualMost)
	shown := map[string]bool{}
	for i := range plates {
		say("plate", wrongPlate(&plates[i]))
		for _, name := range plates[i].Shows {
			shown[name] = true
		}
	}
	if len(shown)+len(large) != len(pieces) {
		say("plates", fmt.Sprintf("%d pieces are printed, %d left out, of %d", len(shown), len(large), len(pieces)))
	}
	return wrong
}

// wrongMatFiles says what of the mats of a size is wrong, or their drawing or pictures.
func wrongMatFiles(top *quilt.Top, list []Template, size measure.Point) error {
	if min(size.X, size.Y) < 4*measure.Inch {
		return nil // no command asks for them
	}
	mats, err := Mats(top, list, size)
	if large := new(TooLarge); errors.As(err, &large) {
		if large.Size.X <= size.X && large.Size.Y <= size.Y {
			return fmt.Errorf("%v is refused", large.Size)
		}
		return nil
	}
	if err != nil || len(mats) == 0 {
		return err
	}
	var drawing, picture bytes.Buffer
	if err := errors.Join(wrongMats(list, mats), MatsDXF(&drawing, top, mats), mats[0].SVG(&picture, top)); err != nil {
		return err
	}
	foreign := false
	for i := range top.Fabrics {
		foreign = foreign || strings.ContainsFunc(top.Fabrics[i].Name, func(r rune) bool { return r > '~' })
	}
	if foreign { // letters by their numbers
		return wrongSVG(picture.Bytes())
	}
	return errors.Join(wrongDrawing(drawing.String(), mats, top), wrongSVG(picture.Bytes()))
}

// wrongSVG says what of a file is not well formed, no plain element, or no number.
func wrongSVG(file []byte) error {
	reader := xml.NewDecoder(bytes.NewReader(file))
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return err
		}
		if e, ok := token.(xml.StartElement); ok && !strings.Contains(" svg title desc g text circle path defs pattern image clipPath use ", " "+e.Name.Local+" ") {
			return fmt.Errorf("an element %s", e.Name.Local)
		}
	}
	if bytes.Contains(file, []byte("NaN")) || bytes.Contains(file, []byte("Inf")) {
		return errors.New("a number is none")
	}
	return nil
}

// TestWrongTemplatesAreNoticed: a template that is lost, a cut line that is moved, a file that is cut off.
func TestWrongTemplatesAreNoticed(t *testing.T) {
	design, _, _ := layout.Read(samples.All()[0].Text)
	top := quilt.Lay(design)
	list := usual(top)
	if wrong := wrongTemplates(top, list); len(wrong) > 0 || list[0].Shape == blocks.Strip {
		t.Fatal(wrong)
	}
	if len(wrongTemplates(top, list[1:])) == 0 {
		t.Error("a template that is lost is not noticed")
	}
	list[0].Cut[0].X += measure.Inch / 50
	if len(wrongTemplates(top, list)) == 0 {
		t.Error("a cut line that is moved is not noticed")
	}
	if wrongSVG([]byte("<svg><path/>")) == nil || wrongSVG([]byte("<svg><script/></svg>")) == nil || wrongSVG([]byte(`<svg><path d="MNaN 1"/></svg>`)) == nil {
		t.Error("a wrong file is not noticed")
	}
}
