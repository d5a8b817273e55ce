//go:build linux && judges

package picture

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// manyPatches is a quilt of 60 by 80 in with about 12,000 patches and 24,000 faces.
func manyPatches() string {
	var b strings.Builder
	fmt.Fprintln(&b, "side 1.5\nseam 1/8\nfabric cream #f4ead7\nfabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83")
	fmt.Fprintln(&b, "strip-set shore rust 3/4 teal rest\nwebs shore / reversed shore\nblock W web kites cream\ngrid")
	for range 53 {
		fmt.Fprintln(&b, strings.Repeat(" W", 40))
	}
	return b.String()
}

// BenchmarkBesideOthers times whole programs, side by side: ours from the layout to the PNG
// file, librsvg and resvg from the SVG, which is there already, to theirs. The sizes are a
// cover of 8 by 10 in at 300 an inch and a quilt of 60 by 80 in at 100, and for ours alone
// that quilt at 300; peak-MB is the most
// memory that a program held.
func BenchmarkBesideOthers(b *testing.B) {
	rsvg := judges.Program(b, "Debian's librsvg2-bin", "rsvg-convert")
	node := judges.Program(b, "Debian's nodejs", "node")
	resvg, err := filepath.Abs(filepath.Join("..", "..", "..", "testdata", "svg", "resvg.mjs"))
	if err != nil {
		b.Fatal(err)
	}
	folder := b.TempDir()
	ours, layout, svg, png := filepath.Join(folder, "eighthturn"), filepath.Join(folder, "a.quilt"), filepath.Join(folder, "a.svg"), filepath.Join(folder, "a.png")
	if out, err := exec.Command("go", "build", "-o", ours, "../../../cmd/eighthturn").CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	if err := os.WriteFile(layout, []byte(manyPatches()), 0o600); err != nil {
		b.Fatal(err)
	}
	output(b, ours, "draw", layout, "--by-fabric", "-o", svg)
	b.Run("whole/eighthturn", func(b *testing.B) { // 18,000 by 24,000 pixels
		timed(b, func() *exec.Cmd {
			return exec.Command(ours, "draw", layout, "--longest", "24000px", "-o", png, "--force")
		})
	})
	for _, size := range []struct {
		name string
		long int
	}{{"cover", 3000}, {"quilt", 8000}} {
		long := strconv.Itoa(size.long)
		jobs, err := json.Marshal([]map[string]any{{"svg": svg, "png": png, "zoom": float64(size.long) / (53 * 1.5 * unitsPerInch)}})
		if err != nil {
			b.Fatal(err)
		}
		b.Run(size.name+"/eighthturn", func(b *testing.B) {
			timed(b, func() *exec.Cmd {
				return exec.Command(ours, "draw", layout, "--longest", long+"px", "-o", png, "--force")
			})
		})
		b.Run(size.name+"/librsvg", func(b *testing.B) {
			timed(b, func() *exec.Cmd { return exec.Command(rsvg, "--unlimited", "-h", long, "-a", "-o", png, svg) })
		})
		b.Run(size.name+"/resvg", func(b *testing.B) {
			timed(b, func() *exec.Cmd {
				c := exec.Command(node, resvg)
				c.Dir, c.Stdin = filepath.Dir(resvg), strings.NewReader(string(jobs))
				return c
			})
		})
	}
}

// timed runs a program again and again.
func timed(b *testing.B, command func() *exec.Cmd) {
	peak := int64(0)
	for b.Loop() {
		c := command()
		if out, err := c.CombinedOutput(); err != nil {
			b.Fatalf("%v: %s", err, out)
		}
		if usage, ok := c.ProcessState.SysUsage().(*syscall.Rusage); ok {
			peak = max(peak, usage.Maxrss)
		}
	}
	b.ReportMetric(float64(peak)/1024, "peak-MB")
}
