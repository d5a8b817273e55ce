//go:build judges

package preview

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	pictures "eighthturn/internal/render/picture"
	"eighthturn/svgout"
)

// cutAlike is a quilt whose wedges, kites and corners are cut from places of a print, and of a photo without a repeat.
const cutAlike = `side 8
fabric garden swatch "garden.png" across 24 repeat across 24 down 12
fabric bed    swatch "garden.png" across 20
fabric linen  #efe6d2
motif star garden across 4 down 4
motif leaf garden across 8 down 3 pointing 30
motif root bed across 9 down 5
block R ring wedges star corners leaf
block S ring wedges root corners linen
block W web wedges linen kites leaf
grid
  R S W W
  S R W W
`

// shownCenter is what the page draws of a motif's pieces: the canvas, and where each copy of the piece lies on it.
type shownCenter struct {
	PNG      string
	Finished []float64
	Matrices [][6]float64 // from the piece to the canvas
}

// centerShown is the center that the page shows of a motif, by its number among those of the fabric, and a piece.
const centerShown = `(async (fabric, motif, shape) => {
	const { Round } = await import('/cloth.js'), canvas = document.querySelector('#fussy .center canvas');
	const { motifs } = await (await fetch('fussy?fabric=' + fabric)).json(), piece = motifs[motif].pieces.find((p) => p.shape === shape), round = new Round(piece, canvas.width);
	const matrices = Array.from({ length: piece.round }, (_, n) => { const { a, b, c, d, e, f } = round.matrix(n); return [a, b, c, d, e, f]; });
	return { PNG: canvas.toDataURL('image/png').split(',')[1], Finished: piece.finished, Matrices: matrices };
})`

// TestCentersAreThoseOfTheQuilt: dragged and turned by hand somewhere on the print, the center beside it is that of the quilt whose layout
// has the line that the window writes, pixel by pixel but for what drawing pixels anew costs; a quilt whose motif lies 1/8 in aside, or
// is turned by 2 degrees, is told apart.
func TestCentersAreThoseOfTheQuilt(t *testing.T) {
	r := startGarden(t, Options{Edit: true})
	put(t, filepath.Join(filepath.Dir(r.file), "garden.quilt"), cutAlike)
	for r.next().picture.top.Patches == nil || !strings.Contains(r.says(), "root") {
	}
	p := newTab(t)
	p.load(r.address)
	for _, c := range []struct {
		fabric, motif, shape string
		number               int
		dx, dy               float64 // of the field, 0 to 1, by which it is dragged
		keys                 string
	}{
		{"garden", "star", "wedge", 0, 0.31, 0.2, "]]}}}"},
		{"garden", "star", "wedge", 0, -0.55, -0.3, "["}, // over the edge of the repeat
		{"garden", "leaf", "corner triangle", 1, 0.2, 0.1, "{"},
		{"garden", "leaf", "kite", 1, 0.1, 0.25, "]]]"},
		{"bed", "root", "wedge", 0, -0.1, 0.04, "]}"},
	} {
		p.openPrint(c.fabric)
		eval[bool](p, fmt.Sprintf(`(() => { const s = document.querySelector('#fussy select'); s.value = %q; s.dispatchEvent(new Event('change')); [...document.querySelectorAll('#fussy .segmented button')].find((b) => b.textContent === %q)?.click(); return true; })()`, c.motif, c.shape))
		p.dragPiece(c.dx, c.dy)
		eval[bool](p, `(document.querySelector('#fussy .field').focus(), true)`)
		p.key(c.keys)
		p.until(`!document.querySelector('#fussy .main').disabled`)
		line := eval[string](p, `document.querySelector('#fussy code').textContent`)
		fabric := slices.IndexFunc([]string{"garden", "bed"}, func(f string) bool { return f == c.fabric })
		if c.keys == "]]}}}" && !strings.HasSuffix(line, " pointing 33") {
			t.Errorf("turned by keys twice by 15 degrees and three times by 1, the line is %q", line)
		}
		shown := eval[shownCenter](p, fmt.Sprintf(`%s(%d, %d, %q)`, centerShown, fabric, c.number, c.shape))
		p.picture("fussy-law-" + c.motif + "-" + strings.ReplaceAll(c.shape, " ", "-"))
		eval[bool](p, `(document.querySelector('#fussy .main').click(), true)`)
		top := r.next().picture.top
		if !strings.Contains(r.says(), "\n"+line+"\n") {
			t.Fatalf("%q is not written:\n%s", line, r.says())
		}
		mean, worst := shown.apart(t, top, c.motif, c.shape, nil)
		t.Logf("%s, %s: %.2f levels apart in the mean, 99 of 100 pixels within %.0f", line, c.shape, mean, worst)
		if mean > 4 || worst > 40 {
			t.Errorf("%s, %s: %.2f levels apart in the mean, 99 of 100 pixels within %.0f", line, c.shape, mean, worst)
		}
		if c.shape == "kite" || c.number == 0 && c.dx > 0 {
			continue // one of each print and of each way to lie round a corner is enough
		}
		for name, broken := range map[string]func(*quilt.Cut){
			"1/8 in aside": func(cut *quilt.Cut) { cut.Place.X += measure.Inch / 8 }, "turned by 2 degrees": func(cut *quilt.Cut) { cut.Pointing += 2 },
		} {
			if mean, worst := shown.apart(t, top, c.motif, c.shape, broken); mean <= 4 && worst <= 40 {
				t.Errorf("not noticed: %s, %s: %.2f and %.0f levels", c.shape, name, mean, worst)
			}
		}
		p.key("\x1b")
	}
}

// dragPiece drags the piece by parts of the field, in a few steps.
func (p *tab) dragPiece(dx, dy float64) {
	p.t.Helper()
	at := eval[[]float64](p, `(() => { const b = document.querySelector('.field canvas').getBoundingClientRect(), m = new DOMMatrix(getComputedStyle(document.querySelector('.field svg > g:nth-of-type(2)')).transform); return [b.left + m.e, b.top + m.f, b.width, b.height]; })()`)
	p.mouse(pressed, at[0], at[1], left)
	for part := 0.25; part <= 1; part += 0.25 {
		p.mouse(moved, at[0]+part*dx*at[2], at[1]+part*dy*at[3], left)
	}
	p.mouse(released, at[0]+dx*at[2], at[1]+dy*at[3], left)
	p.frames()
}

// apart is how far a center is from the picture of a quilt, in levels of a channel: in the mean, and but for 1 of 100 pixels. What a
// pixel's width from a seam shows is left out. Broken changes where the motif lies in the quilt, nil for nothing.
func (s *shownCenter) apart(t *testing.T, top *quilt.Top, motif, shape string, broken func(*quilt.Cut)) (mean, worst float64) {
	t.Helper()
	if broken != nil {
		other := *top
		other.Cuts = slices.Clone(top.Cuts)
		for i := range other.Cuts {
			if other.Cuts[i].Motif == motif {
				broken(&other.Cuts[i])
			}
		}
		top = &other
	}
	file, err := base64.StdEncoding.DecodeString(s.PNG)
	must(t, err)
	center, err := png.Decode(bytes.NewReader(file))
	must(t, err)
	perInch := math.Hypot(s.Matrices[0][0], s.Matrices[0][1]) * float64(measure.Inch)
	scene, err := svgout.NewScene(top, svgout.Options{ByFabric: true, Prints: true, SeamLines: svgout.SeamsLeftOut})
	must(t, err)
	var b bytes.Buffer
	must(t, pictures.PNG(&b, scene, pictures.Frame{PerInch: perInch}))
	whole, err := png.Decode(&b)
	must(t, err)
	patch := slices.IndexFunc(top.Patches, func(p quilt.Patch) bool {
		c := top.CutOfPatch(int(p.First)) // faces and patches are one here
		return c != nil && c.Motif == motif && p.Shape.String() == shape
	})
	if patch < 0 {
		t.Fatalf("no %s is cut from %s", shape, motif)
	}
	var list []float64
	for _, m := range s.Matrices {
		list = append(list, s.copyApart(center, m, whole, top.Patches[patch].Outline, perInch)...)
	}
	if len(list) < 3000 {
		t.Fatalf("only %d levels are compared", len(list))
	}
	for _, v := range list {
		mean += v / float64(len(list))
	}
	slices.Sort(list)
	return mean, list[len(list)*99/100]
}

// copyApart is how far each channel is of the pixels of a copy, by a matrix, from those of a patch.
func (s *shownCenter) copyApart(center image.Image, m [6]float64, whole image.Image, outline []measure.Point, perInch float64) (list []float64) {
	n := len(s.Finished) / 2
	corners := make([]measure.Vec, n) // on the canvas
	for i := range n {
		x, y := s.Finished[2*i], s.Finished[2*i+1]
		corners[i] = measure.Vec{X: m[0]*x + m[2]*y + m[4], Y: m[1]*x + m[3]*y + m[5]}
	}
	pixel := func(p measure.Point) measure.Vec {
		return measure.Vec{X: float64(p.X) / float64(measure.Inch) * perInch, Y: float64(p.Y) / float64(measure.Inch) * perInch}
	}
	// The motion from the canvas to the picture takes corner for corner.
	a, b, c, d := corners[0], corners[1], pixel(outline[0]), pixel(outline[1])
	turn := math.Atan2(d.Y-c.Y, d.X-c.X) - math.Atan2(b.Y-a.Y, b.X-a.X)
	cos, sin := math.Cos(turn), math.Sin(turn)
	size := center.Bounds()
	for y := range size.Dy() {
		for x := range size.Dx() {
			q := measure.Vec{X: float64(x) + 0.5, Y: float64(y) + 0.5}
			if !wellInside(corners, q, 1.5) {
				continue
			}
			dx, dy := q.X-a.X, q.Y-a.Y
			want := colorBetween(whole, c.X+dx*cos-dy*sin, c.Y+dx*sin+dy*cos)
			r, g, b, _ := center.At(x, y).RGBA()
			for i, v := range [3]uint32{r, g, b} {
				list = append(list, math.Abs(float64(v)/257-want[i]))
			}
		}
	}
	return list
}

// wellInside says whether a place lies within a convex outline, clockwise on screen, at least so far from its sides.
func wellInside(outline []measure.Vec, q measure.Vec, away float64) bool {
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if ((b.X-a.X)*(q.Y-a.Y)-(b.Y-a.Y)*(q.X-a.X))/math.Hypot(b.X-a.X, b.Y-a.Y) < away {
			return false
		}
	}
	return true
}

// colorBetween is a picture's color between pixels.
func colorBetween(m image.Image, x, y float64) (c [3]float64) {
	left, upper := math.Floor(x-0.5), math.Floor(y-0.5)
	for i := range 4 {
		px, py := left+float64(i%2), upper+float64(i/2)
		part := (1 - math.Abs(x-0.5-px)) * (1 - math.Abs(y-0.5-py))
		r, g, b, _ := m.At(int(px), int(py)).RGBA()
		for n, v := range [3]uint32{r, g, b} {
			c[n] += part * float64(v) / 257
		}
	}
	return c
}

// says is the text of the file.
func (r *running) says() string {
	r.t.Helper()
	b, err := os.ReadFile(r.file)
	must(r.t, err)
	return string(b)
}
