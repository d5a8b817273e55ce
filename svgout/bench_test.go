package svgout

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	svg "github.com/ajstarks/svgo/float"

	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// field is the layout of so many web blocks a side whose wedges have three bands each.
func field(side int) string {
	row := strings.TrimSpace(strings.Repeat("W ", side))
	return fabrics + "webs shore / reversed shore\nblock W web kites cream\n" + grid(slices.Repeat([]string{row}, side)...)
}

func sides() []int { return []int{8, 24, 72, 100} }

// perOutline reports the time of one outline beside that of all.
func perOutline(b *testing.B, top *quilt.Top) {
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(top.Faces)), "ns/outline")
}

// BenchmarkTextToSVG is the whole way, and its three parts one by one.
func BenchmarkTextToSVG(b *testing.B) {
	for _, side := range sides() {
		text := field(side)
		design, _, _ := layout.Read(text)
		top := quilt.Lay(design)
		stage := func(name string, f func()) {
			b.Run(fmt.Sprintf("%s/%d", name, side), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					f()
				}
				perOutline(b, top)
			})
		}
		draw := func(o Options) func() {
			return func() { _ = Draw(io.Discard, top, o) } // nothing is refused there
		}
		stage("read", func() { layout.Read(text) })
		stage("lay", func() { quilt.Lay(design) })
		stage("draw", draw(Options{}))
		stage("draw-by-fabric", draw(Options{ByFabric: true}))
		stage("draw-line", draw(Options{View: Line}))
		stage("all", func() {
			d, _, _ := layout.Read(text)
			_ = Draw(io.Discard, quilt.Lay(d), Options{})
		})
		stage("all-by-fabric", func() {
			d, _, _ := layout.Read(text)
			_ = Draw(io.Discard, quilt.Lay(d), Options{ByFabric: true})
		})
	}
}

// coordinate is a number of a drawing's path data, in ten-thousandths, with the letter or
// the blank before it and whether its outline ends there.
type coordinate struct {
	steps  int64
	before byte
	closes bool
}

// coordinates reads all path data of a drawing.
func coordinates(b *testing.B, picture []byte) (list []coordinate, data []byte) {
	root, err := parse(picture)
	if err != nil {
		b.Fatal(err)
	}
	for n := range root.all() {
		d := n.attr("d")
		data = append(data, d...)
		for d != "" {
			end := strings.IndexAny(d[1:], "MLZ ") + 1
			c := coordinate{steps: steps(d[1:end]), before: d[0]}
			if d = d[end:]; d[0] == 'Z' {
				c.closes, d = true, d[1:]
			}
			list = append(list, c)
		}
	}
	return list, data
}

// appendByHand appends the numbers with the standard library's strconv and nothing else.
func appendByHand(b []byte, list []coordinate) []byte {
	for _, c := range list {
		b = append(b, c.before)
		b = strconv.AppendInt(b, c.steps/10_000, 10)
		if part := c.steps % 10_000; part != 0 {
			b = append(b, '.')
			for scale := int64(1000); part > 0; scale /= 10 {
				b = append(b, byte('0'+part/scale))
				part %= scale
			}
		}
		if c.closes {
			b = append(b, 'Z')
		}
	}
	return b
}

// BenchmarkAgainstHand draws and appends in turn. The yardstick is appending exactly the
// bytes of all path data of the same drawing to one slice that is large enough, from
// numbers rounded beforehand; each side's quickest time counts, since others may be at work.
func BenchmarkAgainstHand(b *testing.B) {
	for _, side := range sides() {
		top := lay(b, field(side))
		for name, o := range map[string]Options{"patches": {}, "by-fabric": {ByFabric: true}} {
			list, data := coordinates(b, drawn(b, top, o))
			b.Run(fmt.Sprintf("%s/%d", name, side), func(b *testing.B) {
				out := make([]byte, 0, len(data))
				draw, hand := time.Hour, time.Hour
				for b.Loop() {
					start := time.Now()
					_ = Draw(io.Discard, top, o) // nothing is refused there
					middle := time.Now()
					out = appendByHand(out[:0], list)
					draw, hand = min(draw, middle.Sub(start)), min(hand, time.Since(middle))
				}
				if !bytes.Equal(out, data) {
					b.Fatal("the bytes are not those of the drawing")
				}
				outlines := float64(len(top.Faces))
				b.ReportMetric(float64(draw)/float64(hand), "times-by-hand")
				b.ReportMetric(float64(draw)/outlines, "draw-ns/outline")
				b.ReportMetric(float64(hand)/outlines, "hand-ns/outline")
				b.ReportMetric(float64(len(data))/outlines, "bytes/outline")
			})
		}
	}
}

// BenchmarkPolygons is the same outlines through the library's call for polygons, without
// what lies under the seams and without ids and titles.
func BenchmarkPolygons(b *testing.B) {
	for _, side := range sides()[:3] {
		top := lay(b, field(side))
		b.Run(strconv.Itoa(side), func(b *testing.B) {
			for b.Loop() {
				canvas := svg.New(io.Discard)
				canvas.Decimals = 4
				for i := range top.Faces {
					var x, y []float64
					for _, p := range top.Faces[i].Outline {
						x, y = append(x, userUnits(p.X)), append(y, userUnits(p.Y))
					}
					canvas.Polygon(x, y)
				}
			}
			perOutline(b, top)
		})
	}
}
