package templates

import (
	"bytes"
	"image"
	"image/png"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/samples"
)

func laid(t testing.TB, text string) *quilt.Top {
	t.Helper()
	d, _, faults := layout.Read(text)
	if d == nil {
		t.Fatalf("the layout has faults: %v", faults)
	}
	return quilt.Lay(d)
}

// piecesOf is how a top's pieces are cut in the usual way.
func piecesOf(top *quilt.Top) *cutting.Plan { return cutting.Pieces(top, cutting.Options{}) }

func usual(top *quilt.Top) []Template { return Build(top, piecesOf(top)) }

// tops are the samples laid out.
func tops(t testing.TB) map[string]*quilt.Top {
	t.Helper()
	list := map[string]*quilt.Top{}
	for _, s := range samples.All() {
		list[s.Name] = laid(t, s.Text)
	}
	return list
}

func decoded(t testing.TB, file []byte) image.Image {
	t.Helper()
	m, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func inches(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }
