package invent

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	"image/png"
	"strings"
	"sync"

	"eighthturn/palettes"
)

// Photo is a photo of a print, 36 by 24 pixels that hold its repeat of 18 by 12 twice each way, by any name but those of photos that are not there.
func Photo(name string) (palettes.PhotoSample, error) {
	if strings.HasPrefix(name, "missing") {
		return palettes.PhotoSample{}, errors.New("there is no such photo beside the layout")
	}
	return photo()
}

var photo = sync.OnceValues(func() (palettes.PhotoSample, error) {
	m := image.NewRGBA(image.Rect(0, 0, 36, 24))
	for y := range 24 {
		for x := range 36 {
			away := min(x%18, 17-x%18) // from the edge of a repeat, so that it has mirror lines
			m.SetRGBA(x, y, color.RGBA{uint8(60 + 20*away), uint8(40 + 7*(y%12)), uint8(200 - 12*(y%12)), 255})
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		return palettes.PhotoSample{}, err
	}
	return palettes.ReadSwatch(nil, b.Bytes())
})

// Printed are layouts with photos and stripes, to be read with Photo.
func Printed() []string {
	const fabrics = "fabric sand #e8d9b0\nfabric rose swatch \"rose.png\" across 12 repeat across 6 down 4\n"
	return []string{
		"strip 4\n" + fabrics + "motif flower rose across 2 down 2\nblock W web wedges flower kites sand\ngrid\n W W\n W W\n",
		"strip 3\n" + fabrics + "motif bud rose across 1 down 3 pointing 90 mirrored\nblock R ring wedges bud corners rose\ngrid\n R R\nborder 4 rose corners bud\nbacking rose\n",
		"units cm\nstrip 9\nfabric sea swatch \"sea.png\" across 50\nfabric sand #e8d9b0\nfabric awning stripes navy 2 white 1 sand 3 crosswise\nblock W web wedges sea kites awning\ngrid\n W W\n W W\nborder 5 awning\nbinding 6 cut sand\n",
		"strip 4\n" + fabrics + "fabric awning stripes navy 3/4 white 1/2 #c9503c 1\nstrip-set shore rose 1 3/4 awning rest\nwebs shore / reversed shore\nblock W web kites awning\ngrid\n W W\n W W\nborder 2 rose\n",
	}
}
