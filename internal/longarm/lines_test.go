package longarm

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
)

// wrongLines says which line of some layers leaves the top, which stands there twice, and whether there are as many as seams.
func wrongLines(top *quilt.Top, layers []Layer) error {
	seen := map[[2]measure.Point]bool{}
	count := 0
	for _, l := range layers {
		for _, line := range l.Lines {
			for _, p := range line {
				if p.X < top.Outer.Min.X || p.Y < top.Outer.Min.Y || p.X > top.Outer.Max.X || p.Y > top.Outer.Max.Y {
					return fmt.Errorf("a line of %s leaves the top: %v", l.Name, line)
				}
			}
			if seen[line] || seen[[2]measure.Point{line[1], line[0]}] {
				return fmt.Errorf("%v is drawn twice", line)
			}
			seen[line] = true
			count++
		}
	}
	if want := 4 + len(top.Seams) + len(top.StripSeams); count != want {
		return fmt.Errorf("%d lines, %d sides and seams", count, want)
	}
	return nil
}

// TestLines: every seam and every side of the top is drawn once, in a layer; quilts with borders have lines of borders.
func TestLines(t *testing.T) {
	for _, n := range append(lay.Samples(), lay.Invented(4400, 20, 60)...) {
		layers := Layers(n.Top)
		if err := wrongLines(n.Top, layers); err != nil {
			t.Errorf("%s: %v", n.Name, err)
		}
		if (len(n.Top.CutFacts.Borders) > 0) != (len(layers[1].Lines) > 0) {
			t.Errorf("%s: %d lines of %d borders", n.Name, len(layers[1].Lines), len(n.Top.CutFacts.Borders))
		}
		for _, broken := range []func(){
			func() { layers[0].Lines[0][0].X -= measure.Inch }, func() { layers[0].Lines[1] = layers[0].Lines[0] }, func() { layers[0].Lines = layers[0].Lines[1:] },
		} {
			kept := layers[0].Lines
			layers[0].Lines = slices.Clone(kept)
			if broken(); wrongLines(n.Top, layers) == nil {
				t.Errorf("%s: wrong lines are not noticed", n.Name)
			}
			layers[0].Lines = kept
		}
	}
}

// TestFiles: the same bytes each time, marked, and no error of the writer is lost.
func TestFiles(t *testing.T) {
	top := lay.Samples()[0].Top
	for name, write := range map[string]func(io.Writer, *quilt.Top) error{"dxf": DXF, "svg": SVG} {
		var a, b bytes.Buffer
		if write(&a, top) != nil || write(&b, top) != nil || !bytes.Equal(a.Bytes(), b.Bytes()) || !IsOurs(a.Bytes()[:1000]) {
			t.Errorf("%s: two files differ, or they are not marked", name)
		}
		if write(failing{}, top) == nil {
			t.Errorf("%s: an error is lost", name)
		}
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }
