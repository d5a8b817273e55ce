package dxf

import (
	"bytes"
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

// TestDrawing: y goes upwards from 0, circles reach as far as they do, and an empty drawing is one too. The values are worked out by hand.
func TestDrawing(t *testing.T) {
	d := &Drawing{Comment: "by hand", Layers: []Layer{{"CUT", 7}}}
	d.Line("CUT", measure.Point{X: measure.Inch, Y: 2 * measure.Inch}, measure.Point{X: 3 * measure.Inch, Y: 6 * measure.Inch})
	d.Circle("CUT", measure.Point{X: measure.Inch, Y: 2 * measure.Inch}, measure.Inch/2)
	var b bytes.Buffer
	if err := d.Write(&b); err != nil {
		t.Fatal(err)
	}
	text := strings.ReplaceAll(b.String(), "\r\n", " ")
	for _, want := range []string{
		"$EXTMIN 10 0.000000 20 0.000000 30 0.000000", "$EXTMAX 10 2.500000 20 4.500000", "$PLIMMAX 10 2.559055 20 4.566929", "$INSUNITS 70 1",
		"LINE 8 CUT 10 0.500000 20 4.000000 11 2.500000 21 0.000000", "CIRCLE 8 CUT 10 0.500000 20 4.000000 40 0.500000",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing: %s", want, text)
		}
	}
	b.Reset()
	if err := (&Drawing{Units: measure.Centimetres}).Write(&b); err != nil || !strings.HasSuffix(b.String(), "EOF\r\n") || !strings.Contains(b.String(), "$INSUNITS\r\n70\r\n4\r\n") {
		t.Errorf("%v, %s", err, b.String())
	}
}

// TestPlain: letters beyond ASCII stand by their numbers, and no sign breaks a line.
func TestPlain(t *testing.T) {
	for text, want := range map[string]string{"T1 left": "T1 left", "grün": `gr\U+00FCn`, "a\r\nb": "a  b", "🧵": "?"} {
		if got := plain(text); got != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
}
