package templates

import (
	"io"
	"strconv"
	"strings"

	svg "github.com/ajstarks/svgo/float"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// marker stands near the beginning of every SVG template.
const marker = "<!-- template by eighthturn -->"

// svgMargin is left free round an SVG template, in nanometres.
const svgMargin = measure.Inch / 8

// SVG writes the template as plain paths of true size, for a machine that cuts or draws: the
// cut line in black, and in blue what may be drawn, the seam line, its corners and the
// grain. The width and height are given in inches or millimetres; a user unit is a 96th of
// an inch, for programs which take no notice of them.
func (t *Template) SVG(w io.Writer, top *quilt.Top) error {
	out := &remembering{w: w}
	canvas := svg.New(out)
	canvas.Decimals = 4
	_, high := bounds(t.Cut)
	width, height := high.X+2*svgMargin, high.Y+2*svgMargin
	unit, name := measure.Inch, "in"
	if top.Units == measure.Centimetres {
		unit, name = measure.Millimetre, "mm"
	}
	canvas.Startunit(float64(width)/float64(unit), float64(height)/float64(unit), name,
		`viewBox="0 0 `+userUnit(width)+" "+userUnit(height)+`"`)
	_, _ = io.WriteString(out, marker+"\n")
	canvas.Title(t.Name() + ", " + t.Shape.String() + ". Cut " + t.cloths(top))
	canvas.Path(t.outlineData(t.Cut, true), `id="cut"`, `fill="none"`, `stroke="#000000"`, `stroke-width="0.5"`, `stroke-linejoin="round"`)
	blue := []string{`fill="none"`, `stroke="#0000ff"`, `stroke-width="0.5"`, `stroke-linejoin="round"`}
	if top.Seam > 0 {
		canvas.Path(t.outlineData(t.Finished, true), append([]string{`id="sew"`}, blue...)...)
	}
	canvas.Path(t.outlineData(t.Grain[:], false), append([]string{`id="grain"`}, blue...)...)
	canvas.End()
	return out.err
}

// remembering keeps the first error of a writer, since the library drops them.
type remembering struct {
	w   io.Writer
	err error
}

func (r *remembering) Write(b []byte) (int, error) {
	if r.err == nil {
		_, r.err = r.w.Write(b)
	}
	return len(b), nil
}

// userUnit writes a length in 96ths of an inch.
func userUnit(nm measure.NM) string {
	text := strconv.FormatFloat(float64(nm)*96/float64(measure.Inch), 'f', 4, 64)
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

func (t *Template) outlineData(points []measure.Point, closed bool) string {
	var b strings.Builder
	command := "M"
	for _, p := range points {
		b.WriteString(command + userUnit(p.X+svgMargin) + " " + userUnit(p.Y+svgMargin))
		command = "L"
	}
	if closed {
		b.WriteString("Z")
	}
	return b.String()
}

// FileName is a name for the template's own file, without an ending.
func (t *Template) FileName() string {
	return strings.ToLower(strings.ReplaceAll(t.Name()+" "+t.Shape.String(), " ", "-"))
}

// cloths says how many to cut of what.
func (t *Template) cloths(top *quilt.Top) string {
	var list []string
	for _, c := range t.Cloths {
		what := ""
		if c.Fabric >= 0 {
			what = top.Fabrics[c.Fabric].Name
		} else {
			what = "strip set " + top.CutFacts.Sets[c.Set].Name
		}
		list = append(list, strconv.Itoa(c.Count)+" "+what)
	}
	return strings.Join(list, ", ")
}
