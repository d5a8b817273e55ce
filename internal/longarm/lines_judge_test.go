//go:build judges

package longarm

import (
	"bytes"
	"encoding/json"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
)

const readDXF = `import ezdxf, json, sys
from ezdxf import bbox
d = ezdxf.readfile(sys.argv[1])
a, m, h = d.audit(), d.modelspace(), d.header
b = bbox.extents(m)
print(json.dumps({"faults": len(a.errors) + len(a.fixes), "drawn": [b.extmin.x, b.extmin.y, b.extmax.x, b.extmax.y], "said": [*h["$EXTMIN"][:2], *h["$EXTMAX"][:2]],
  "lines": {l.dxf.name: len(m.query('*[layer=="%s"]' % l.dxf.name)) for l in d.layers}}))`

// TestOtherProgramsReadTheLines: ezdxf (Debian's python3-ezdxf) finds every line, no fault, and a drawing as large as the top, as its
// header says; librsvg makes a picture of the SVG that is as large at 10 pixels an inch.
func TestOtherProgramsReadTheLines(t *testing.T) {
	python := judges.Program(t, "Debian's python3-ezdxf", "/usr/bin/python3", "python3")
	convert := judges.Program(t, "Debian's librsvg2-bin", "rsvg-convert")
	for _, n := range lay.Samples()[:4] {
		var drawing, picture bytes.Buffer
		if DXF(&drawing, n.Top) != nil || SVG(&picture, n.Top) != nil {
			t.Fatal(n.Name)
		}
		path := filepath.Join(t.TempDir(), "q.dxf")
		if err := os.WriteFile(path, drawing.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command(python, "-c", readDXF, path).Output()
		var read struct {
			Faults      int
			Drawn, Said [4]float64
			Lines       map[string]int
		}
		if err != nil || json.Unmarshal(out, &read) != nil {
			t.Fatalf("%v: %s", err, out)
		}
		unit := float64(measure.Inch)
		if n.Top.Units == measure.Centimetres {
			unit = float64(measure.Millimetre)
		}
		wide, high := float64(n.Top.Outer.Width())/unit, float64(n.Top.Outer.Height())/unit
		for i, want := range [4]float64{0, 0, wide, high} {
			if math.Abs(read.Drawn[i]-want) > 1e-4 || math.Abs(read.Said[i]-want) > 1e-4 {
				t.Errorf("%s: %v drawn, %v said, expected %g by %g", n.Name, read.Drawn, read.Said, wide, high)
			}
		}
		l := Layers(n.Top)
		if read.Faults != 0 || read.Lines["OUTLINE"] != 1 || read.Lines["BORDERS"] != len(l[1].Lines) || read.Lines["BLOCKS"] != len(l[2].Lines) || read.Lines["SEAMS"] != len(l[3].Lines) {
			t.Errorf("%s: %+v", n.Name, read)
		}
		c := exec.Command(convert, "--dpi-x=10", "--dpi-y=10")
		c.Stdin = &picture
		made, err := c.Output()
		if err != nil {
			t.Fatal(err)
		}
		size, err := png.DecodeConfig(bytes.NewReader(made))
		if err != nil || math.Abs(float64(size.Width)-float64(n.Top.Outer.Width())/float64(measure.Inch)*10) > 1 || math.Abs(float64(size.Height)-float64(n.Top.Outer.Height())/float64(measure.Inch)*10) > 1 {
			t.Errorf("%s: %d by %d pixels, %v", n.Name, size.Width, size.Height, err)
		}
	}
}
