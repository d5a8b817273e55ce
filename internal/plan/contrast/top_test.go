package contrast

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// read lays out one of the layouts in testdata.
func read(t testing.TB, name string) *quilt.Top {
	t.Helper()
	text, err := os.ReadFile("../../../testdata/values/layouts/" + name + ".quilt")
	if err != nil {
		t.Fatal(err)
	}
	return lay.Top(t, string(text))
}

// kingSize is a field of 24 by 24 web blocks in wedges of three bands, with two borders.
func kingSize() string {
	var b strings.Builder
	fmt.Fprintln(&b, "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83")
	fmt.Fprintln(&b, "strip-set shore rust 1 3/4 cream 1 1/2 teal 1 3/4\nwebs shore / reversed shore")
	fmt.Fprintln(&b, "block W web kites cream\ngrid")
	for range 24 {
		fmt.Fprintln(&b, " "+strings.Repeat(" W", 24))
	}
	fmt.Fprintln(&b, "border 1 1/2 rust\nborder 4 navy")
	return b.String()
}

func BenchmarkStudyOfKingSize(b *testing.B) { besideOneBlur(b, lay.Top(b, kingSize())) }

// besideOneBlur measures a study beside its reference, one blurred picture of the same top at the size on which masses are judged.
func besideOneBlur(b *testing.B, top *quilt.Top) {
	s := newStudy(nil, top, Options{})
	size := s.newCanvas().Size
	var study, blur time.Duration
	for b.Loop() {
		start := time.Now()
		Study(top, Options{})
		between := time.Now()
		pixels.Blurred(top, size, s.squint().Sigma(), func(f int) palettes.Colour { return top.Fabrics[f].Colour })
		study, blur = study+between.Sub(start), blur+time.Since(between)
	}
	b.ReportMetric(float64(study.Milliseconds())/float64(b.N), "ms/study")
	b.ReportMetric(float64(study)/float64(blur), "blurs/study")
}

// fortyFabrics is a field of 24 by 24 web blocks from two pools of twenty scraps each, with a border that clashes.
func fortyFabrics() string {
	var b strings.Builder
	b.WriteString("strip 4\n")
	pools := [2]string{"scraps darks", "scraps lights"}
	for n := range 20 {
		fmt.Fprintf(&b, "fabric d%d #%02x%02x%02x\nfabric l%d #%02x%02x%02x\n", n, 20+3*n, 30+n, 60-2*n, n, 225+n, 215+2*n, 235-n)
		pools[0] += fmt.Sprintf(" d%d", n)
		pools[1] += fmt.Sprintf(" l%d", n)
	}
	b.WriteString(pools[0] + "\n" + pools[1] + "\nblock W web wedges darks kites lights\ngrid\n")
	for range 24 {
		fmt.Fprintln(&b, " "+strings.Repeat(" W", 24))
	}
	b.WriteString("border 4 d3\n")
	return b.String()
}

// BenchmarkStudyOfFortyFabrics: with losses, and so with ways out tried.
func BenchmarkStudyOfFortyFabrics(b *testing.B) {
	top := lay.Top(b, fortyFabrics())
	if r := Study(top, Options{}); len(r.Losses) == 0 {
		b.Fatal("nothing is lost")
	}
	besideOneBlur(b, top)
}
