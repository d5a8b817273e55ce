//go:build judges

package templates

import (
	"bytes"
	"eighthturn/internal/quilttest/lay"
	"encoding/json"
	"image"
	"math"
	"os/exec"
	"slices"
	"strconv"
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

// readDXF is a program for Python with ezdxf: of each file the outlines on the layer CUT with their areas, how far all that is drawn
// reaches, what the header says of that, the layers' colors, and what its auditor complains of.
const readDXF = `import ezdxf, json, sys
from ezdxf import bbox
from ezdxf.math import area
def read(path):
  doc = ezdxf.readfile(path)
  audit = doc.audit()
  m, h = doc.modelspace(), doc.header
  cut = [[[p.dxf.location.x, p.dxf.location.y] for p in e.vertices] for e in m.query('POLYLINE[layer=="CUT"]') if e.is_closed]
  box = bbox.extents(e for e in m if e.dxftype() != 'TEXT')
  return {"version": doc.dxfversion, "units": h.get("$INSUNITS"), "faults": len(audit.errors) + len(audit.fixes), "cut": cut, "areas": [abs(area(o)) for o in cut],
    "sew": len(m.query('POLYLINE[layer=="SEW"]')), "notches": len(m.query('LINE[layer=="NOTCHES"]')), "marks": len(m.query('CIRCLE[layer=="MARKS"]')),
    "names": [e.dxf.text for e in m.query('TEXT[layer=="LABELS"]')], "colors": [l.dxf.color for l in doc.layers if l.dxf.name not in ('0', 'Defpoints')],
    "drawn": [box.extmin.x, box.extmin.y, box.extmax.x, box.extmax.y], "extents": [*h["$EXTMIN"][:2], *h["$EXTMAX"][:2]], "limits": [*h["$PLIMMIN"][:2], *h["$PLIMMAX"][:2]]}
print(json.dumps([read(path) for path in sys.argv[1:]]))
`

// dxfRead is what another reader finds in a drawing.
type dxfRead struct {
	Version                            string
	Units, Faults, Sew, Notches, Marks int
	Cut                                [][][2]float64
	Areas                              []float64
	Names                              []string
	Colors                             []int
	Drawn, Extents, Limits             [4]float64
}

// wrongExtents says what of a header is not as it is drawn, and which layers look alike.
func (r *dxfRead) wrongExtents() string {
	for i, at := range r.Drawn {
		if math.Abs(at-r.Extents[i]) > 1e-4 {
			return "the header says that it reaches elsewhere than it does"
		}
		mm := 1.0 // how many a unit has
		if r.Units == 1 {
			mm = 25.4
		}
		page, least := r.Limits[i]*mm, float64(i/2) // the far corner lies beyond
		if beyond := page - at*mm; beyond < least-1e-4 || beyond > 2*least+1e-4 || math.Abs(page-math.Round(page)) > 1e-4 {
			return "the page is not a millimeter or two larger, in whole ones"
		}
	}
	for i, c := range r.Colors {
		if slices.Contains(r.Colors[:i], c) {
			return "two layers have one color"
		}
	}
	return ""
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
	for _, broken := range []func(r *dxfRead){func(r *dxfRead) { r.Extents[2]++ }, func(r *dxfRead) { r.Limits[1]-- }, func(r *dxfRead) { r.Limits[2] = r.Extents[2] + 0.01 }, func(r *dxfRead) { r.Colors[0] = r.Colors[1] }} {
		wrong := read[0]
		wrong.Colors = slices.Clone(wrong.Colors)
		if broken(&wrong); wrong.wrongExtents() == "" {
			t.Error("a wrong header is not noticed")
		}
	}
}

func compareDXF(t *testing.T, top *quilt.Top, read *dxfRead) {
	t.Helper()
	templates := usual(top)
	unit, code := measure.Inch, 1
	if top.Units == measure.Centimetres {
		unit, code = measure.Millimetre, 4
	}
	layers := 6
	if slices.ContainsFunc(usual(top), func(t Template) bool { return t.Print != nil }) {
		layers = 7 // and the lines of prints
	}
	if wrong := read.wrongExtents(); wrong != "" || len(read.Colors) != layers {
		t.Errorf("%s: %s, colors %v", top.Title, wrong, read.Colors)
	}
	corners := 0
	for i := range templates {
		corners += len(templates[i].Finished)
	}
	if read.Version != "AC1009" || read.Units != code || read.Faults != 0 || read.Sew != len(templates) || len(read.Cut) != len(templates) ||
		len(read.Names) != 2*len(templates) || read.Marks != corners || read.Notches != 2*corners {
		t.Errorf("%s: %+v", top.Title, read)
		return
	}
	for i, p := range templates {
		outline := make([]xy, len(read.Cut[i]))
		for n, q := range read.Cut[i] {
			outline[n] = xy{q[0] * float64(unit), -q[1] * float64(unit)}
		}
		raw := quilt.Area(p.Cut) * 1e12 / float64(unit) / float64(unit)
		if !closeTo(outline, points(p.Cut), 60) || read.Names[2*i] != p.Name() || read.Names[2*i+1] != "cut "+strconv.Itoa(p.Count) || math.Abs(read.Areas[i]-raw) > 1e-4*raw {
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
