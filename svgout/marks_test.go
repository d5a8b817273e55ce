package svgout

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// TestMarkedColours: the picture holds the colours that were asked for, of the fabrics that
// the top shows, and none of the fabrics' own.
func TestMarkedColours(t *testing.T) {
	top := markedTop(t)
	grey := func(f int) palettes.Colour { return top.Fabrics[f].Colour.Grey() }
	text := drawnMarked(t, marks{colours: palettes.Colour.Grey})
	for f := range top.Fabrics {
		if !strings.Contains(text, grey(f).Hex()) {
			t.Errorf("%s is missing", grey(f).Hex())
		}
		if own := top.Fabrics[f].Colour; own != own.Grey() && strings.Contains(text, own.Hex()) {
			t.Errorf("%s stands in a picture of greys", own.Hex())
		}
	}
}

// TestMarkedSeams: each marked seam is drawn twice, its white edge and its line, and no
// other is.
func TestMarkedSeams(t *testing.T) {
	top := markedTop(t)
	var list []mark
	for i, s := range top.Seams[:9] {
		list = append(list, mark{s, i%3 == 0})
	}
	plain, some := drawnMarked(t, marks{}), drawnMarked(t, marks{seams: list})
	for _, m := range list {
		stretch := string(appendLine(nil, []measure.Point{m.From, m.To}, true))
		if n := strings.Count(some, stretch) - strings.Count(plain, stretch); n != 2 {
			t.Errorf("%s comes %d times, expected 2", stretch, n)
		}
	}
	if strings.Count(some, markColour().Hex()) != 2 || strings.Contains(plain, markColour().Hex()) {
		t.Error("expected one path of heavy marks and one of light ones")
	}
	if again := drawnMarked(t, marks{seams: list}); again != some {
		t.Error("two pictures of one top differ")
	}
}

// TestPixelsInSVG: the picture comes back byte for byte, at the top's own size.
func TestPixelsInSVG(t *testing.T) {
	top := markedTop(t)
	picture := bytes.Repeat([]byte("\x89PNG and so on \x00\xff"), 9000)
	var b bytes.Buffer
	if err := inPixels(top, Options{}, picture, "as half-shut eyes see it").SVG(&b); err != nil {
		t.Fatal(err)
	}
	wellFormed(t, b.String())
	_, rest, _ := strings.Cut(b.String(), "base64,")
	data, _, _ := strings.Cut(rest, `"`)
	if got, err := base64.StdEncoding.DecodeString(data); err != nil || !bytes.Equal(got, picture) {
		t.Errorf("%d bytes came back of %d: %v", len(got), len(picture), err)
	}
}

func TestMarksThatAreRefused(t *testing.T) {
	if err := Draw(io.Discard, markedTop(t), Options{View: Vanishing, Prefix: "1x"}); err == nil {
		t.Error("a prefix that begins with a digit was taken")
	}
}

func drawnMarked(t *testing.T, m marks) string {
	t.Helper()
	if m.colours == nil {
		m.colours = func(c palettes.Colour) palettes.Colour { return c }
	}
	m.View = Protan
	var b bytes.Buffer
	if err := marked(markedTop(t), m).SVG(&b); err != nil {
		t.Fatal(err)
	}
	wellFormed(t, b.String())
	return b.String()
}

func wellFormed(t *testing.T, text string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := d.Token(); err == io.EOF {
			return
		} else if err != nil {
			t.Fatal(err)
		}
	}
}

func markedTop(t *testing.T) *quilt.Top {
	t.Helper()
	return lay(t, layouts()["lap"])
}

// TestMarksAreHeavyOrLight: the heavy marks lie in a layer of their own, without dashes, over the light ones.
func TestMarksAreHeavyOrLight(t *testing.T) {
	top := markedTop(t)
	var list []mark
	for i, s := range top.Seams[:9] {
		list = append(list, mark{s, i%3 == 0})
	}
	var got []string
	s := marked(top, marks{Options: Options{View: Protan}, colours: palettes.Colour.Grey, seams: list})
	for _, l := range s.Layers[len(s.Layers)-2:] {
		got = append(got, l.ID)
		for _, item := range l.Items {
			n := 0
			for stretch := range item.Outlines {
				for list[n].heavy != (l.ID == "marked") {
					n++
				}
				if stretch[0] != list[n].From || stretch[1] != list[n].To || l.ID == "marked" && item.Style.Dash != 0 {
					t.Errorf("%s marks %v, expected %v", l.ID, stretch, list[n].Seam)
				}
				n++
			}
		}
	}
	if len(got) != 2 || got[0] != "marked-lightly" || got[1] != "marked" {
		t.Errorf("the layers on top are %v", got)
	}
}
