package cutting

import (
	"eighthturn/internal/quilttest/lay"
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt"
)

// scrapQuilt is a quilt of webs from so many scraps.
func scrapQuilt(t testing.TB, across, down, fabrics int) *quilt.Top {
	t.Helper()
	name, roles := "", ""
	for _, k := range blocks.Kinds() {
		if k.Height == blocks.AlongDiagonal && name == "" {
			name = k.Name
			var words []string
			for i, r := range k.Roles {
				if !r.Outer {
					words = append(words, r.Name+" "+[]string{"darks", "lights"}[i])
				}
			}
			roles = strings.Join(words, " ")
		}
	}
	var b strings.Builder
	b.WriteString("strip 4\n")
	pools := [2][]string{}
	for i := range fabrics {
		fmt.Fprintf(&b, "fabric f%d #%06x\n", i, 0x102030+i*0x050403)
		pools[i%2] = append(pools[i%2], fmt.Sprintf("f%d", i))
	}
	fmt.Fprintf(&b, "scraps darks %s\nscraps lights %s\nblock A %s %s\ngrid\n A\nrepeat across %d down %d\n", strings.Join(pools[0], " "), strings.Join(pools[1], " "), name, roles, across, down)
	b.WriteString("border 1 1/2 f0\nborder 6 f1\nbinding 2 1/2 f2\nbacking f3\nbatting\n")
	return lay.Top(t, b.String())
}

// BenchmarkKingSize plans a king-size scrap quilt of 40 fabrics, 107 by 107 inches.
func BenchmarkKingSize(b *testing.B) {
	top := scrapQuilt(b, 18, 18, 40)
	for b.Loop() {
		Build(nil, top, Options{})
	}
	b.ReportMetric(float64(len(top.Patches)), "patches")
}

// BenchmarkKingSizeForAClass plans twelve of them.
func BenchmarkKingSizeForAClass(b *testing.B) {
	top := scrapQuilt(b, 18, 18, 40)
	for b.Loop() {
		Build(nil, top, Options{Copies: 12})
	}
}

// BenchmarkGrowth plans square quilts of more and more blocks; beside each stands one walk over all its corners, which is
// linear.
func BenchmarkGrowth(b *testing.B) {
	for _, n := range []int{12, 24, 48, 100, 200} {
		top := scrapQuilt(b, n, n, 40)
		b.Run(fmt.Sprintf("plan/%d", n), func(b *testing.B) {
			for b.Loop() {
				Build(nil, top, Options{})
			}
		})
		b.Run(fmt.Sprintf("walk/%d", n), func(b *testing.B) {
			for b.Loop() {
				if top.Share()[0] < 0 {
					b.Fatal("a share below nothing")
				}
			}
		})
	}
}
