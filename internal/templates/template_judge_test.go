//go:build judges

package templates

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"encoding/json"
	"image"
	"math"
	"os/exec"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/samples"
)

// TestTemplateSVGIsAsLarge: opened by librsvg at 300 an inch, a template is as many pixels as
// it is large, and its black line reaches from edge to edge of the cut piece, within one.
func TestTemplateSVGIsAsLarge(t *testing.T) {
	convert := program(t, "rsvg-convert", "Debian's librsvg2-bin")
	for _, text := range []string{samples.All()[0].Text, "units cm\nside 10\nfabric a #fff\nfabric b #000\nblock W web wedges a kites b\ngrid\n W\n"} {
		top := lay.Top(t, text)
		for _, p := range usual(top) {
			var svg, out bytes.Buffer
			if err := p.SVG(&svg, top); err != nil {
				t.Fatal(err)
			}
			c := exec.Command(convert, "--dpi-x=300", "--dpi-y=300", "--background-color=#ffffff")
			c.Stdin, c.Stdout = &svg, &out
			if err := c.Run(); err != nil {
				t.Fatal(err)
			}
			low, high := darkBounds(decoded(t, out.Bytes()))
			_, size := bounds(p.Cut)
			if wide, want := high.X-low.X+1, inches(size.X)*300; math.Abs(float64(wide)-want) > 2.6 { // with half the line on either side
				t.Errorf("%s is %d pixels wide, expected %.1f", p.Name(), wide, want)
			}
			if tall, want := high.Y-low.Y+1, inches(size.Y)*300; math.Abs(float64(tall)-want) > 2.6 {
				t.Errorf("%s is %d pixels high, expected %.1f", p.Name(), tall, want)
			}
		}
	}
}

func darkBounds(m image.Image) (low, high image.Point) {
	low, high = m.Bounds().Max, m.Bounds().Min
	for y := range m.Bounds().Dy() {
		for x := range m.Bounds().Dx() {
			if r, _, b, _ := m.At(x, y).RGBA(); r < 0x9000 && b < 0x9000 {
				low = image.Pt(min(low.X, x), min(low.Y, y))
				high = image.Pt(max(high.X, x), max(high.Y, y))
			}
		}
	}
	return low, high
}

// readDXF is a program for Python with ezdxf: of each file the outlines on the layer CUT, and
// what its auditor complains of.
const readDXF = `import ezdxf, json, sys
def read(path):
  doc = ezdxf.readfile(path)
  audit = doc.audit()
  cut = [[[p.dxf.location.x, p.dxf.location.y] for p in e.vertices] for e in doc.modelspace().query('POLYLINE[layer=="CUT"]') if e.is_closed]
  return {"version": doc.dxfversion, "units": doc.header.get("$INSUNITS"), "faults": len(audit.errors) + len(audit.fixes), "cut": cut,
    "sew": len(doc.modelspace().query('POLYLINE[layer=="SEW"]')), "names": [e.dxf.text for e in doc.modelspace().query('TEXT')]}
print(json.dumps([read(path) for path in sys.argv[1:]]))
`

// dxfRead is what another reader finds in a drawing.
type dxfRead struct {
	Version            string
	Units, Faults, Sew int
	Cut                [][][2]float64
	Names              []string
}

// TestDXFAgainstAnotherReader: ezdxf (Debian's python3-ezdxf) reads the drawing without a
// complaint, and finds the same outlines.
func TestDXFAgainstAnotherReader(t *testing.T) {
	python := program(t, "python3", "Debian's python3-ezdxf")
	if exec.Command(python, "-c", "import ezdxf").Run() != nil {
		if python = "/usr/bin/python3"; exec.Command(python, "-c", "import ezdxf").Run() != nil {
			t.Fatal("ezdxf is not here: Debian's python3-ezdxf")
		}
	}
	var list []*quilt.Top
	for _, top := range tops(t) {
		list = append(list, top)
	}
	list = append(list, lay.Top(t, "units cm\nside 10\nfabric a #fff\nfabric b #000\nblock W web wedges a kites b\ngrid\n W\n"))
	arguments := []string{saved(t, "read.py", []byte(readDXF))}
	for _, top := range list {
		var b bytes.Buffer
		if err := DXF(&b, top, usual(top)); err != nil {
			t.Fatal(err)
		}
		arguments = append(arguments, saved(t, "t.dxf", b.Bytes()))
	}
	var read []dxfRead
	text := output(t, python, arguments...)
	if err := json.Unmarshal([]byte(text[strings.Index(text, `[{"version`):]), &read); err != nil || len(read) != len(list) {
		t.Fatalf("%v: %s", err, text)
	}
	for i, top := range list {
		compareDXF(t, top, &read[i])
	}
}

func compareDXF(t *testing.T, top *quilt.Top, read *dxfRead) {
	t.Helper()
	templates := usual(top)
	unit, code := measure.Inch, 1
	if top.Units == measure.Centimetres {
		unit, code = measure.Millimetre, 4
	}
	if read.Version != "AC1009" || read.Units != code || read.Faults != 0 || read.Sew != len(templates) || len(read.Cut) != len(templates) || len(read.Names) != len(templates) {
		t.Errorf("%s: %+v", top.Title, read)
		return
	}
	for i, p := range templates {
		outline := make([]xy, len(read.Cut[i]))
		for n, q := range read.Cut[i] {
			outline[n] = xy{q[0] * float64(unit), -q[1] * float64(unit)}
		}
		if !closeTo(outline, points(p.Cut), 60) || read.Names[i] != p.Name() {
			t.Errorf("%s: template %s has another outline: %v", top.Title, p.Name(), outline)
		}
	}
}

// closeTo says whether the corners of two outlines are equally far apart, in nanometres.
func closeTo(a, b []xy, slack float64) bool {
	if len(a) != len(b) || areaOf(a) <= 0 {
		return false
	}
	for i := range a {
		for j := range i {
			if math.Abs(distance(a[i], a[j])-distance(b[i], b[j])) > slack {
				return false
			}
		}
	}
	return true
}
