//go:build judges

package svgout

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/palettes"
)

// colourAt is a pixel's colour.
func colourAt(m *image.NRGBA, x, y int) palettes.Colour {
	c := m.NRGBAAt(x, y)
	if c.A != 255 {
		return palettes.Colour{R: 1, G: 2, B: 3} // no colour that these tests use
	}
	return palettes.Colour{R: c.R, G: c.G, B: c.B}
}

// lawMiddles says that the pixel in the middle of every face has the colour of its fabric.
func lawMiddles(top *quilt.Top, view View, m *image.NRGBA, zoom float64) error {
	for i := range top.Faces {
		f := &top.Faces[i]
		want := top.Fabrics[f.Fabric].Colour
		if view == Value {
			want = want.Grey()
		}
		x, y := mean(f.Outline)
		if got := colourAt(m, int(x*zoom), int(y*zoom)); got != want {
			return fmt.Errorf("face %d is %s in its middle, expected %s", i, got.Hex(), want.Hex())
		}
	}
	return nil
}

// away is how far a place lies from the nearest side of an outline, but for sides along a
// line.
func away(outline []measure.Point, x, y float64, but ...measure.Point) float64 {
	nearest := math.Inf(1)
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		px, py, dx, dy := userUnits(p.X), userUnits(p.Y), userUnits(q.X-p.X), userUnits(q.Y-p.Y)
		length := math.Hypot(dx, dy)
		off := func(x, y float64) float64 { return (dx*(y-py) - dy*(x-px)) / length }
		along := len(but) == 2
		for _, b := range but {
			along = along && math.Abs(off(userUnits(b.X), userUnits(b.Y))) < 1e-3
		}
		if !along {
			nearest = min(nearest, off(x, y))
		}
	}
	return nearest
}

// zoomForAll is a zoom at which the pixel in the middle of each face lies inside it.
func zoomForAll(top *quilt.Top) float64 {
	room := math.Inf(1)
	for i := range top.Faces {
		x, y := mean(top.Faces[i].Outline)
		room = min(room, away(top.Faces[i].Outline, x, y))
	}
	return max(1.6/room, 300/userUnits(top.Outer.Width()))
}

func TestEveryFaceHasItsColour(t *testing.T) {
	pairs := [2][]Options{{bare, {ByFabric: true, View: Value}}, {{View: Value}, {ByFabric: true, SeamLines: SeamsLeftOut}}} // in turn
	for _, r := range renderers() {
		t.Run(r.name, func(t *testing.T) {
			var all asked
			for n, top := range tops(t) {
				options, zoom := pairs[n%2], zoomForAll(top.Top)
				for _, o := range options {
					all.ask(func(m []*image.NRGBA) {
						if err := lawMiddles(top.Top, o.View, m[0], zoom); err != nil {
							t.Errorf("%s, %+v: %v", top.name, o, err)
						}
					}, job{drawn(t, top.Top, o), zoom, "#ffffff"})
				}
			}
			all.judge(t, r)
			top := lapTop(t)
			zoom := zoomForAll(top)
			law := func(bad []byte) error {
				return lawMiddles(top, Colour, r.render(t, []job{{bad, zoom, "#ffffff"}})[0], zoom)
			}
			svg := drawn(t, top, bare)
			broken(t, law, svg, `(id="fabric-2"[^>]*fill="#b55)3`, "${1}4")
			broken(t, law, svg, `(<path id="r2c2p3b2" )d="[^"]*"`, "${1}d=\"M0 0L3000 0L3000 3000Z\"")
		})
	}
}

// zooms are a third to four times a size in which the longer side of a top has a number of
// pixels that is not whole; tops beyond the first few have one of them.
func (n *named) zooms() []float64 {
	base := 187.3 / userUnits(max(n.Outer.Width(), n.Outer.Height()))
	if !slices.Contains([]string{"lap", "one", "holes", "mixed"}, n.name) {
		return []float64{1.5 * base}
	}
	return []float64{0.33 * base, 0.5 * base, base, 1.5 * base, 4 * base}
}

// inside says whether a pixel lies in the top with a pixel to spare on each side.
func inside(top *quilt.Top, x, y int, zoom float64) bool {
	for _, dx := range []int{-1, 2} {
		for _, dy := range []int{-1, 2} {
			if !there(top, float64(x+dx)/zoom, float64(y+dy)/zoom) {
				return false
			}
		}
	}
	return true
}

// there says whether something is at a place.
func there(top *quilt.Top, x, y float64) bool {
	if x <= 0 || y <= 0 || x >= userUnits(top.Outer.Max.X) || y >= userUnits(top.Outer.Max.Y) {
		return false
	}
	for i := range top.Cells {
		if r := top.CellRect(i); top.Empty(i) && x > userUnits(r.Min.X) && x < userUnits(r.Max.X) && y > userUnits(r.Min.Y) && y < userUnits(r.Max.Y) {
			return false
		}
	}
	return true
}

// lawBetween says that all pixels inside have a mixture of two colours, to so many levels.
func lawBetween(top *quilt.Top, a, b palettes.Colour, levels float64, m *image.NRGBA, zoom float64) error {
	for y := range m.Bounds().Dy() {
		for x := range m.Bounds().Dx() {
			if c := colourAt(m, x, y); c != a && c != b && offLine(a, b, c) > levels && inside(top, x, y, zoom) {
				return fmt.Errorf("the pixel %d, %d is %s, no mixture of %s and %s", x, y, c.Hex(), a.Hex(), b.Hex())
			}
		}
	}
	return nil
}

// offLine is how far a colour lies from the nearest mixture of two others, in levels of the
// channel that is farthest off.
func offLine(a, b, c palettes.Colour) float64 {
	vector := func(from, to palettes.Colour) [3]float64 {
		return [3]float64{float64(to.R) - float64(from.R), float64(to.G) - float64(from.G), float64(to.B) - float64(from.B)}
	}
	ab, ac := vector(a, b), vector(a, c)
	dot, square := 0.0, 0.0
	for i := range ab {
		dot, square = dot+ab[i]*ac[i], square+ab[i]*ab[i]
	}
	t := 0.0
	if square > 0 {
		t = max(0, min(dot/square, 1))
	}
	off := 0.0
	for i := range ab {
		off = max(off, math.Abs(ac[i]-t*ab[i]))
	}
	return off
}

// recoloured is a top whose fabrics have the given colours in turn.
func recoloured(top *quilt.Top, colours ...palettes.Colour) *quilt.Top {
	other := *top
	other.Fabrics = slices.Clone(top.Fabrics)
	for i := range other.Fabrics {
		other.Fabrics[i].Colour = colours[i%len(colours)]
	}
	return &other
}

// withoutBeneath is a picture without what lies under the seams.
func withoutBeneath(svg []byte) []byte {
	return regexp.MustCompile(`(?s)<g id="beneath".*?</g>\n`).ReplaceAll(svg, nil)
}

// lawPage says that no pixel inside depends on the page that a picture is drawn on.
func lawPage(top *quilt.Top, onWhite, onBlack *image.NRGBA, zoom float64) error {
	for y := range onWhite.Bounds().Dy() {
		for x := range onWhite.Bounds().Dx() {
			if c, d := colourAt(onWhite, x, y), colourAt(onBlack, x, y); c != d && inside(top, x, y, zoom) {
				return fmt.Errorf("the pixel %d, %d is %s on a white page and %s on a black one", x, y, c.Hex(), d.Hex())
			}
		}
	}
	return nil
}

// Colours that show the ground where it shines through. Painting a colour over itself is
// exact in eight bits only where a channel is empty or full; other colours may come out a
// level lower, which is no ground showing through.
func green() palettes.Colour    { return palettes.Colour{G: 0xff} }
func darkRed() palettes.Colour  { return palettes.Colour{R: 0x70, G: 0x10, B: 0x18} }
func darkBlue() palettes.Colour { return palettes.Colour{R: 0x14, G: 0x1c, B: 0x60} }

// gaps tries one drawing of a top in one colour on magenta and in two on white and black; the law is given their pixels.
func gaps(t *testing.T, r renderer, top named, finish func([]byte) []byte, o Options) (law func(images []*image.NRGBA) error, jobs []job) {
	one, two := recoloured(top.Top, green()), recoloured(top.Top, darkRed(), darkBlue())
	plain, mixed := finish(drawn(t, one, o)), finish(drawn(t, two, o))
	for _, zoom := range top.zooms() {
		jobs = append(jobs, job{plain, zoom, "#ff00ff"}, job{mixed, zoom, "#ffffff"})
	}
	last := jobs[len(jobs)-1]
	jobs = append(jobs, job{mixed, last.zoom, "#000000"})
	return func(images []*image.NRGBA) error {
		for i := 0; i+1 < len(jobs); i += 2 {
			err := errors.Join(
				lawBetween(top.Top, green(), green(), 0, images[i], jobs[i].zoom),
				lawBetween(top.Top, darkRed(), darkBlue(), r.levels, images[i+1], jobs[i].zoom),
			)
			if i+3 == len(jobs) {
				err = errors.Join(err, lawPage(top.Top, images[i+1], images[i+2], last.zoom))
			}
			if err != nil {
				return fmt.Errorf("%+v, zoom %.4f: %w", o, jobs[i].zoom, err)
			}
		}
		return nil
	}, jobs
}

func TestNothingShowsBetweenPatches(t *testing.T) {
	for _, r := range renderers() {
		t.Run(r.name, func(t *testing.T) {
			same := func(svg []byte) []byte { return svg }
			var all asked
			for n, top := range tops(t) {
				law, jobs := gaps(t, r, top, same, Options{ByFabric: n%2 == 0, SeamLines: SeamsLeftOut}) // in turn
				all.ask(func(m []*image.NRGBA) {
					if err := law(m); err != nil {
						t.Errorf("%s: %v", top.name, err)
					}
				}, jobs...)
			}
			law, jobs := gaps(t, r, named{"", lapTop(t)}, withoutBeneath, bare)
			all.ask(func(m []*image.NRGBA) {
				if err := law(m); err == nil || strings.Count(err.Error(), "\n") != 2 {
					t.Errorf("patches with nothing beneath them were not caught by all three laws: %v", err)
				}
			}, jobs...)
			all.judge(t, r)
		})
	}
}

// lawTwoAtASeam says that pixels on a seam that are well away from all other seams show
// the two fabrics of the seam and no third one; tried is how many there are.
func lawTwoAtASeam(top *quilt.Top, m *image.NRGBA, zoom float64) (tried int, err error) {
	for _, s := range slices.Concat(top.Seams, top.StripSeams) {
		a, b := &top.Faces[s.A], &top.Faces[s.B]
		one, other := top.Fabrics[a.Fabric].Colour, top.Fabrics[b.Fabric].Colour
		fx, fy, dx, dy := userUnits(s.From.X), userUnits(s.From.Y), userUnits(s.To.X-s.From.X), userUnits(s.To.Y-s.From.Y)
		length := math.Hypot(dx, dy) * zoom
		for along := 2.0; along < length-2; along += 3 {
			x, y := fx+dx*along/length, fy+dy*along/length
			if zoom*min(away(a.Outline, x, y, s.From, s.To), away(b.Outline, x, y, s.From, s.To)) < 2.5 {
				continue
			}
			tried++
			if c := colourAt(m, int(x*zoom), int(y*zoom)); offLine(one, other, c) > 4 {
				return tried, fmt.Errorf("the pixel %d, %d is %s, on a seam of %s and %s", int(x*zoom), int(y*zoom), c.Hex(), one.Hex(), other.Hex())
			}
		}
	}
	return tried, nil
}

func TestASeamShowsItsTwoFabricsOnly(t *testing.T) {
	colours := []palettes.Colour{{R: 0xff, G: 0xf0}, {R: 0x60}, {B: 0x60}, {G: 0x50, B: 0x10}, {R: 0xf0, G: 0xf0, B: 0xff}}
	for _, r := range renderers() {
		t.Run(r.name, func(t *testing.T) {
			total := 0
			var all asked
			for _, top := range tops(t) {
				zooms := top.zooms()
				zoom := zooms[len(zooms)-1]
				top.Top = recoloured(top.Top, colours...)
				for _, o := range []Options{bare, {ByFabric: true, SeamLines: SeamsLeftOut}} {
					all.ask(func(m []*image.NRGBA) {
						tried, err := lawTwoAtASeam(top.Top, m[0], zoom)
						total += tried
						if err != nil {
							t.Errorf("%s, zoom %.4f: %v", top.name, zoom, err)
						}
					}, job{drawn(t, top.Top, o), zoom, "#ff00ff"})
				}
			}
			all.judge(t, r)
			t.Logf("%d pixels tried", total)
			top := recoloured(lapTop(t), colours...)
			zoom := (&named{"lap", top}).zooms()[4]
			bad := regexp.MustCompile(`(?s)(<g id="beneath"[^>]*>\n<path [^>]*>\n).*?</g>\n`).ReplaceAll(drawn(t, top, bare), []byte("$1</g>\n"))
			if _, err := lawTwoAtASeam(top, r.render(t, []job{{bad, zoom, "#ff00ff"}})[0], zoom); err == nil {
				t.Error("seams with one colour beneath all of them were not caught")
			}
		})
	}
}

// TestPhysicalSize asks librsvg how many pixels a picture has where an inch has 96 and 300.
func TestPhysicalSize(t *testing.T) {
	convert := judges.Program(t, "Debian's librsvg2-bin", "rsvg-convert")
	size := func(svg []byte, dpi int) image.Point {
		c := exec.Command(convert, fmt.Sprintf("--dpi-x=%d", dpi), fmt.Sprintf("--dpi-y=%d", dpi))
		c.Stdin = bytes.NewReader(svg)
		out, err := c.Output()
		if err != nil {
			t.Fatal(err)
		}
		header, err := png.DecodeConfig(bytes.NewReader(out))
		if err != nil {
			t.Fatal(err)
		}
		return image.Pt(header.Width, header.Height)
	}
	law := func(top *quilt.Top, svg []byte) error {
		for _, dpi := range []int{96, 300} {
			got := size(svg, dpi)
			for i, side := range []measure.NM{top.Outer.Width(), top.Outer.Height()} {
				want := float64(side) / float64(measure.Inch) * float64(dpi)
				if has := []int{got.X, got.Y}[i]; math.Abs(float64(has)-want) > 1 {
					return fmt.Errorf("%d pixels at %d dots an inch, expected %.2f", has, dpi, want)
				}
			}
		}
		return nil
	}
	inches := layouts()["one"]
	for name, text := range map[string]string{"inches": inches, "centimeters": strings.Replace(inches, "strip 4", "units cm\nside 16.3 cm", 1)} {
		text = regexp.MustCompile("strip-set .*\n").ReplaceAllString(text, "") // one of the two would have to be in centimeters
		top := lay(t, text)
		svg := drawn(t, top, Options{ByFabric: true, SeamLines: SeamsLeftOut})
		if err := law(top, svg); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		broken(t, func(bad []byte) error { return law(top, bad) }, svg, `(width="[\d.]+)(in|mm)`, "${1}px")
	}
}

// TestPrintsAsRendered is judged by librsvg: a stripe is an inch wide where ten inches of
// cloth lie across 200 pixels, and the patch of the other fabric shows none of it.
func TestPrintsAsRendered(t *testing.T) {
	picture := withLibrsvg(t, []job{{drawn(t, printed(t), Options{Prints: true, SeamLines: SeamsLeftOut}), 1, "#808080"}})[0]
	const y = 96 * 3
	changes := 0
	for x := 12; x < 96*6-12; x++ {
		if lightAt(picture, x, y) != lightAt(picture, x-1, y) {
			changes++
		}
	}
	if changes < 5 || changes > 7 {
		t.Errorf("%d edges of stripes in six inches of cloth", changes)
	}
	if c := picture.NRGBAAt(96*9, y); c != (color.NRGBA{255, 255, 255, 255}) {
		t.Errorf("the plain cloth is %v", c)
	}
	if strings.Contains(string(drawn(t, printed(t), Options{})), "url(") {
		t.Error("the plain picture speaks of a print")
	}
}

func lightAt(picture *image.NRGBA, x, y int) bool { return picture.NRGBAAt(x, y).R > 120 }
