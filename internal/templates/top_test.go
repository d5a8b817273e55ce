package templates

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"image"
	"image/png"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
	"eighthturn/samples"
)

// piecesOf is how a top's pieces are cut in the usual way.
func piecesOf(top *quilt.Top) *cutting.Plan { return cutting.Pieces(top, cutting.Options{}) }

func usual(top *quilt.Top) []Template { return Build(top, piecesOf(top)) }

// tops are the samples laid out.
func tops(t testing.TB) map[string]*quilt.Top {
	t.Helper()
	list := map[string]*quilt.Top{}
	for _, s := range samples.All() {
		list[s.Name] = lay.Top(t, s.Text)
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
