//go:build judges

package svgout

import (
	"fmt"
	"path/filepath"
	"testing"

	"eighthturn/internal/quilttest/golden"
)

const goldenFolder = "../testdata/golden"

// look is a picture whose looks are kept.
type look struct {
	layout string // of layouts
	Options
}

// looks are few, for one of each look: the laws and judges say what a picture must be,
// these only that it still looks as it did when somebody looked at it.
func looks() map[string]look {
	return map[string]look{
		"lap-colour":  {"lap", Options{Legend: true}},
		"lap-bare":    {"lap", Options{Legend: true, SeamLines: SeamsLeftOut, ByFabric: true}},
		"lap-line":    {"lap", Options{View: Line, Legend: true}},
		"holes-value": {"holes", Options{View: Value, Legend: true}},
		"mixed-line":  {"mixed", Options{View: Line, Legend: true, ByFabric: true}},
		"tall-colour": {"tall", Options{Legend: true, ByFabric: true}},
		"one-line":    {"one", Options{View: Line, Legend: true}},
	}
}

func TestLooks(t *testing.T) {
	list := looks()
	var files []string
	for name, g := range list {
		files = append(files, name+".png")
		t.Run(name, func(t *testing.T) {
			top := lay(t, layouts()[g.layout])
			svg := drawn(t, top, g.Options)
			golden.Picture(t, filepath.Join(goldenFolder, name+".png"), withLibrsvg(t, []job{{svg, goldenZoom(t, svg), "#ffffff"}})[0], slack())
		})
	}
	golden.Unused(t, goldenFolder, files)
}

// goldenZoom is the zoom at which the longer side of a picture has some 420 pixels.
func goldenZoom(t *testing.T, svg []byte) float64 {
	root, err := parse(svg)
	if err != nil {
		t.Fatal(err)
	}
	var width, height float64
	if _, err := fmt.Sscanf(root.attr("viewBox"), "0 0 %g %g", &width, &height); err != nil {
		t.Fatal(err)
	}
	return 420 / max(width, height)
}

// Releases of a renderer differ in how they smooth edges, and machines in the face that
// stands for Helvetica: another plain face changes up to half a percent of the pixels here
// strongly, a legend that is missing seven tenths.
func slack() golden.Slack { return golden.Slack{StrongShare: 0.006, MeanLevels: 1.6} }

func TestPicturesThatDifferAreNotAlike(t *testing.T) {
	top := lapTop(t)
	svg := drawn(t, top, Options{Legend: true})
	zoom := goldenZoom(t, svg)
	law := func(bad []byte) error {
		m := withLibrsvg(t, []job{{svg, zoom, "#ffffff"}, {bad, zoom, "#ffffff"}})
		return golden.Alike(m[0], m[1], slack())
	}
	if err := law(svg); err != nil {
		t.Fatal(err)
	}
	broken(t, law, svg, `(fabric-2"[^>]*fill="#)b5`, "${1}20")
	broken(t, law, svg, `(viewBox="0 0 )31`, "${1}30")
	broken(t, law, svg, `(?s)<g id="legend".*</g>`, "")
}
