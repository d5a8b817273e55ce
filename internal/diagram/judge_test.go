//go:build judges

package diagram

import (
	"bytes"
	"image/png"
	"os/exec"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/palettes"
)

// TestInchIsAnInch: an inch and ten centimetres of a figure of true size are 300 and 1181
// pixels where librsvg draws 300 an inch, to within one, whatever the units of its own size.
func TestInchIsAnInch(t *testing.T) {
	convert := judges.Program(t, "Debian's librsvg2-bin", "rsvg-convert")
	for side, want := range map[measure.NM]int{measure.Inch: 300, 10 * measure.Centimetre: 1181} {
		square := []measure.Point{{}, {X: side}, {X: side, Y: side}, {Y: side}}
		f := &Figure{TrueSize: true, Max: square[2], Marks: []Mark{{Area: &Area{Outline: square, Fill: palettes.Colour{}}}, {Words: &Words{Text: "words far beyond the square, which make the picture larger"}}}}
		for _, units := range []measure.System{measure.Inches, measure.Centimetres} {
			var svg, out bytes.Buffer
			if err := SVG(&svg, f, Options{Units: units}); err != nil {
				t.Fatal(err)
			}
			c := exec.Command(convert, "--dpi-x=300", "--dpi-y=300", "--background-color=#ffffff")
			c.Stdin, c.Stdout = &svg, &out
			if err := c.Run(); err != nil {
				t.Fatal(err)
			}
			m, err := png.Decode(&out)
			if err != nil {
				t.Fatal(err)
			}
			row, dark := m.Bounds().Dy()-want/4, 0
			for x := range m.Bounds().Dx() {
				if r, _, _, _ := m.At(x, row).RGBA(); r < 0x8000 {
					dark++
				}
			}
			if dark < want-1 || dark > want+1 {
				t.Errorf("%v: the square is %d pixels wide, expected %d", units, dark, want)
			}
		}
	}
}
