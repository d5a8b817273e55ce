package preview

import (
	"encoding/json"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/costs"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// bytesAPiece is how many bytes the page may be sent for each piece, seam and fabric of a layout.
const bytesAPiece = 55

// TestStepsOfThePage: however a layout grows, telling the page of it takes no more steps than the curve of the plans that search
// for nothing, and no more bytes than its pieces.
func TestStepsOfThePage(t *testing.T) {
	for _, f := range costs.Families() {
		t.Run(f.Name, func(t *testing.T) {
			for _, n := range []int{2, 6, 18}[:judges.Of(2, 3)] {
				design, source, faults := layout.Read(f.Text(n))
				if design == nil {
					t.Fatal(faults)
				}
				top := quilt.Lay(design)
				p := newPicture(top, source, newNumbering(1))
				size := len(top.Faces) + len(top.Seams) + len(top.StripSeams) + len(top.Fabrics)
				steps := stop.Count(func(sign *stop.Sign) { p.pageNumbers(sign) })
				t.Logf("%2d: size %6d, %6d steps, %7d bytes", n, size, steps, p.bytes())
				if most := costs.Line(size); steps > most || steps < len(top.Seams) {
					t.Errorf("%d: the page's numbers take %d steps, wanted %d at the most", n, steps, most)
				}
				if most := bytesAPiece * (size + 30); p.bytes() > most {
					t.Errorf("%d: the page is sent %d bytes, wanted %d at the most", n, p.bytes(), most)
				}
			}
		})
	}
}

// bytes is how many bytes the page is sent.
func (p *picture) bytes() int {
	sum := 4 * len(p.cells)
	for _, list := range [][]json.RawMessage{p.templates, p.looks, p.joins, {p.quilt, p.fabrics, p.grid, p.loose, p.sources}} {
		for _, raw := range list {
			sum += len(raw)
		}
	}
	return sum
}
