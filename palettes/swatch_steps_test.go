package palettes_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math/rand/v2"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/stop"
	"eighthturn/palettes"
)

// maxPhotoSteps is what looking at a photo of five colors without order may take once it is decoded, in points looked at: at most
// 160,000 once, and 20,000 of them in a few rounds for each of one to four colors.
const maxPhotoSteps = 400_000

// TestStepsOfPhotos: looking at a photo takes steps in line with its pixels while it is small, and no more than a budget however large.
func TestStepsOfPhotos(t *testing.T) {
	for _, n := range []int{20, 100, 500, 2500}[:judges.Of(3, 4)] {
		dice := rand.New(rand.NewPCG(1, uint64(n)))
		picture := image.NewPaletted(image.Rect(0, 0, n, n), color.Palette{
			color.RGBA{20, 40, 120, 255}, color.RGBA{230, 220, 200, 255}, color.RGBA{160, 30, 60, 255}, color.RGBA{60, 140, 90, 255}, color.RGBA{240, 190, 20, 255},
		})
		for i := range picture.Pix {
			picture.Pix[i] = uint8(dice.IntN(5))
		}
		var file bytes.Buffer
		if err := png.Encode(&file, picture); err != nil {
			t.Fatal(err)
		}
		steps := stop.Count(func(sign *stop.Sign) {
			if _, err := palettes.ReadSwatch(sign, file.Bytes()); err != nil {
				t.Error(err)
			}
		})
		t.Logf("%4d by %4d: %d steps", n, n, steps)
		if most := min(n*n*4*40, maxPhotoSteps); steps > most || steps < n {
			t.Errorf("%d by %d pixels take %d steps, wanted %d at the most", n, n, steps, most)
		}
	}
}
