//go:build judges

package svgout

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// job is a picture to be turned into pixels: a user unit is zoom pixels.
type job struct {
	svg    []byte
	zoom   float64
	ground string // #rrggbb
}

// renderer is one of the programs that turn pictures into pixels.
type renderer struct {
	name   string
	levels float64 // how far mixtures of two colours come out from the line between them
	render func(t *testing.T, jobs []job) []*image.NRGBA
}

// renderers are two that have no code in common: librsvg, which draws with Cairo (Debian's
// librsvg2-bin), and resvg, which draws with a rasteriser of its own (npm's
// @resvg/resvg-js 2.6.2, to be installed with npm ci in testdata/svg). Both round to eight
// bits each time that a shape covers a pixel in part; resvg always rounds a little up, and
// near the middle of a web that happens a dozen times.
func renderers() []renderer {
	return []renderer{{"librsvg", 3, withLibrsvg}, {"resvg", 5, withResvg}}
}

// asked are pictures that are turned into pixels together, since a program takes long to begin, and what is asked of each few.
type asked struct {
	jobs []job
	laws []func()
	made []*image.NRGBA
}

// ask has some pictures turned into pixels, which the law is given later.
func (a *asked) ask(law func([]*image.NRGBA), jobs ...job) {
	from := len(a.jobs)
	a.jobs = append(a.jobs, jobs...)
	a.laws = append(a.laws, func() { law(a.made[from : from+len(jobs)]) })
}

func (a *asked) judge(t *testing.T, r renderer) {
	a.made = r.render(t, a.jobs)
	for _, law := range a.laws {
		law()
	}
}

func withLibrsvg(t *testing.T, jobs []job) []*image.NRGBA {
	convert := judges.Program(t, "Debian's librsvg2-bin", "rsvg-convert")
	list := make([]*image.NRGBA, len(jobs))
	for i, j := range jobs {
		c := exec.Command(convert, "--dpi-x=96", "--dpi-y=96", "--zoom="+strconv.FormatFloat(j.zoom, 'g', -1, 64), "--background-color="+j.ground, "--unlimited")
		c.Stdin = bytes.NewReader(j.svg)
		var out, problems bytes.Buffer
		c.Stdout, c.Stderr = &out, &problems
		if err := c.Run(); err != nil {
			t.Fatalf("rsvg-convert: %v\n%s", err, problems.Bytes())
		}
		list[i] = decoded(t, out.Bytes())
	}
	return list
}

func withResvg(t *testing.T, jobs []job) []*image.NRGBA {
	node := judges.Program(t, "Debian's nodejs", "node")
	folder := filepath.Join("..", "testdata", "svg")
	if _, err := os.Stat(filepath.Join(folder, "node_modules", "@resvg")); err != nil {
		t.Fatal("resvg is not here: npm ci in testdata/svg")
	}
	dir := t.TempDir()
	var list []map[string]any
	for i, j := range jobs {
		name := filepath.Join(dir, fmt.Sprint(i))
		if err := os.WriteFile(name+".svg", j.svg, 0o600); err != nil {
			t.Fatal(err)
		}
		list = append(list, map[string]any{"svg": name + ".svg", "png": name + ".png", "zoom": j.zoom, "background": j.ground})
	}
	c := exec.Command(node, "resvg.mjs")
	c.Dir = folder
	text, err := json.Marshal(list)
	if err != nil {
		t.Fatal(err)
	}
	c.Stdin = bytes.NewReader(text)
	if out, err := c.CombinedOutput(); err != nil {
		t.Fatalf("resvg: %v\n%s", err, out)
	}
	images := make([]*image.NRGBA, len(jobs))
	for i := range jobs {
		file, err := os.ReadFile(filepath.Join(dir, fmt.Sprint(i)+".png"))
		if err != nil {
			t.Fatal(err)
		}
		images[i] = decoded(t, file)
	}
	return images
}

func decoded(t *testing.T, file []byte) *image.NRGBA {
	t.Helper()
	m, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	switch m := m.(type) {
	case *image.NRGBA:
		return m
	case *image.RGBA: // without a channel of coverage both hold the same bytes
		return &image.NRGBA{Pix: m.Pix, Stride: m.Stride, Rect: m.Rect}
	}
	t.Fatalf("a picture of another kind, %T", m)
	return nil
}
