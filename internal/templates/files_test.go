package templates

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"eighthturn/samples"
)

// TestTemplateFilesAreTheSameEachTime, and are marked as ours.
func TestTemplateFilesAreTheSameEachTime(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	list := usual(top)
	for name, write := range map[string]func(io.Writer) error{
		"dxf": func(w io.Writer) error { return DXF(w, top, list) },
		"svg": func(w io.Writer) error { return list[0].SVG(w, top) },
	} {
		var a, b bytes.Buffer
		if write(&a) != nil || write(&b) != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Errorf("%s: two files differ", name)
		}
		if head := a.Bytes()[:min(1000, a.Len())]; !IsOurs(head) {
			t.Errorf("%s: the file is not marked", name)
		}
		if write(failing{}) == nil {
			t.Errorf("%s: an error of the writer is lost", name)
		}
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

// TestTemplateSVGIsPlain: nothing but a title, a note, layers, labels, dots, and paths, each of straight lines.
func TestTemplateSVGIsPlain(t *testing.T) {
	top := lay.Top(t, samples.All()[0].Text)
	for _, p := range usual(top) {
		var b bytes.Buffer
		if err := p.SVG(&b, top); err != nil {
			t.Fatal(err)
		}
		reader := xml.NewDecoder(&b)
		for {
			token, err := reader.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			if e, ok := token.(xml.StartElement); ok && !strings.Contains("svg title desc g text circle path", e.Name.Local) {
				t.Errorf("an element %s", e.Name.Local)
			}
		}
	}
}

// TestEverythingPrints: whatever is laid out, its pieces are printed or said to be too large,
// and no number in the files is none.
func TestEverythingPrints(t *testing.T) {
	for n, top := range inventedTops(t, 60) {
		pieces := figuresOf(top)
		shown := map[string]bool{}
		plates, large := Plates(pieces, usualRoom, usualMost)
		for _, p := range plates {
			for _, name := range p.Shows {
				shown[name] = true
			}
		}
		if len(shown)+len(large) != len(pieces) {
			t.Errorf("layout %d: %d pieces are printed, %d left out, of %d", n, len(shown), len(large), len(pieces))
		}
		list := usual(top)
		var b bytes.Buffer
		if err := DXF(&b, top, list); err != nil {
			t.Fatal(err)
		}
		for i := range list {
			if err := list[i].SVG(&b, top); err != nil {
				t.Fatal(err)
			}
		}
		if text := b.String(); strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
			t.Errorf("layout %d: a number is none", n)
		}
	}
}
