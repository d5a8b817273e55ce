package samples_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/samples"
)

func TestEveryFileIsASample(t *testing.T) {
	paths, err := filepath.Glob("*.quilt")
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, p := range paths {
		want = append(want, strings.TrimSuffix(p, ".quilt"))
	}
	slices.Sort(want)
	var got []string
	for _, s := range samples.All() {
		got = append(got, s.Name)
	}
	if len(got) == 0 || !slices.Equal(got, want) {
		t.Errorf("samples are %q, files are %q", got, want)
	}
}

func TestSamplesReadWithoutAWord(t *testing.T) {
	for _, s := range samples.All() {
		t.Run(s.Name, func(t *testing.T) {
			_, source, faults := layout.Read(s.Text)
			if len(faults) > 0 {
				var b strings.Builder
				layout.Report(&b, s.Name+".quilt", source, faults)
				t.Error(b.String())
			}
		})
	}
}

func TestSamplesAreTidy(t *testing.T) {
	for _, s := range samples.All() {
		if tidy, _ := layout.Tidy(s.Text); tidy != s.Text {
			t.Errorf("%s.quilt is not tidy; tidied it reads:\n%s", s.Name, tidy)
		}
	}
}

// TestSamplesSayWhatTheyAre wants the comment that a reader meets first: what the layout
// shows, and how to make it one's own.
func TestSamplesSayWhatTheyAre(t *testing.T) {
	for _, s := range samples.All() {
		comment := 0
		for _, line := range strings.Split(s.Text, "\n") {
			if !strings.HasPrefix(line, "# ") {
				break
			}
			comment++
		}
		if comment < 2 || comment > 4 || !strings.Contains(s.Text, "Make it your own:") {
			t.Errorf("%s.quilt begins with %d lines of comment, wanted two to four with \"Make it your own:\" among them", s.Name, comment)
		}
	}
}

// TestSamplesCoverTheirTops wants the patches of a laid sample to have the top's own area:
// a seam between patches costs none, so the sum is off only by the roundings of corners.
func TestSamplesCoverTheirTops(t *testing.T) {
	for _, s := range samples.All() {
		design, _, _ := layout.Read(s.Text)
		if design == nil {
			t.Errorf("%s.quilt has no design", s.Name)
			continue
		}
		top := quilt.Lay(design)
		if len(top.Patches) == 0 {
			t.Errorf("%s.quilt has no patches", s.Name)
		}
		if off := uncovered(top); off > 1e-9 || off < -1e-9 {
			t.Errorf("%s.quilt leaves %g of its top uncovered", s.Name, off)
		}
	}
}

// uncovered is the share of a top's area that its patches leave over.
func uncovered(top *quilt.Top) float64 {
	covered := 0.0
	for i := range top.Patches {
		covered += area(top.Patches[i].Outline)
	}
	return 1 - covered/(units(top.Outer.Width())*units(top.Outer.Height()))
}

// area is an outline's area in square inches.
func area(outline []measure.Point) float64 {
	sum := 0.0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		sum += units(p.X)*units(q.Y) - units(q.X)*units(p.Y)
	}
	return sum / 2
}

func units(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }

// TestFigureStandsOutInValue wants every sample to hold a light and a dark that are at
// least 40 steps of CIE L* apart and each a twentieth of the top or more.
func TestFigureStandsOutInValue(t *testing.T) {
	for _, s := range samples.All() {
		design, _, _ := layout.Read(s.Text)
		if design == nil {
			continue
		}
		share := quilt.Lay(design).Share()
		lightest, darkest := 0.0, 100.0
		for i, f := range design.Fabrics {
			if share[i] >= 0.05 {
				lightest, darkest = max(lightest, f.Colour.Lightness()), min(darkest, f.Colour.Lightness())
			}
		}
		if lightest-darkest < 40 {
			t.Errorf("%s.quilt goes from L* %.0f to %.0f only", s.Name, darkest, lightest)
		}
	}
}

// TestSamplesUseTheWholeLanguage wants every statement and every kind of block in some
// sample.
func TestSamplesUseTheWholeLanguage(t *testing.T) {
	words, kinds := map[string]bool{}, map[string]bool{}
	for _, s := range samples.All() {
		tree, _ := layout.Parse(layout.NewSource(s.Text))
		for i := range tree.Lines {
			words[tree.Lines[i].Keyword] = true
		}
		for _, b := range tree.Blocks {
			if b.Kind != nil {
				kinds[b.Kind.Name] = true
			}
		}
	}
	for _, s := range layout.Statements() {
		if !words[s.Word] {
			t.Errorf("no sample has the statement %s", s.Word)
		}
	}
	for _, k := range blocks.Kinds() {
		if !kinds[k.Name] {
			t.Errorf("no sample has a %s block", k.Name)
		}
	}
}

// TestScrapsThatShareASeamDiffer holds flotsam to what its comment says.
func TestScrapsThatShareASeamDiffer(t *testing.T) {
	for _, s := range samples.All() {
		if s.Name != "flotsam" {
			continue
		}
		design, _, _ := layout.Read(s.Text)
		if design == nil {
			t.Fatal("flotsam.quilt has no design")
		}
		top := quilt.Lay(design)
		for _, seam := range top.Seams {
			a, b := top.Faces[seam.A], top.Faces[seam.B]
			if top.Patches[a.Patch].Cell >= 0 && top.Patches[b.Patch].Cell >= 0 && a.Fabric == b.Fabric {
				t.Errorf("two pieces of %s share a seam", top.Fabrics[a.Fabric].Name)
			}
		}
		return
	}
	t.Fatal("there is no sample flotsam")
}
