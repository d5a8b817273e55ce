//go:build judges

package svgout

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"regexp"
	"testing"
)

// A fabric that is given another color in one place has it everywhere, beneath the seams and in the legend too: no pixel of the old
// color is left, as librsvg draws it. Paints change no pixel by themselves.
func TestOnePaintRecolorsAFabric(t *testing.T) {
	top := lapTop(t)
	for _, o := range []Options{{Legend: true}, {SeamLines: SeamsLeftOut, ByFabric: true}} {
		plain := drawn(t, top, o)
		o.OnePaint = true
		svg := drawn(t, top, o)
		zoom := goldenZoom(t, svg)
		for f := range top.Fabrics {
			old := top.Fabrics[f].Colour.Hex()
			one := regexp.MustCompile(fmt.Sprintf(`(id="paint-%d"[^>]*><stop offset="0" stop-color=")#[0-9a-f]{6}`, f+1))
			other := one.ReplaceAll(svg, []byte("${1}#00ff00"))
			group := regexp.MustCompile(fmt.Sprintf(`(id="fabric-%d"[^>]*fill=")[^"]*"`, f+1))
			half := group.ReplaceAll(other, []byte(`${1}`+old+`"`))
			m := withLibrsvg(t, []job{{plain, zoom, "#ffffff"}, {svg, zoom, "#ffffff"}, {other, zoom, "#ffffff"}, {half, zoom, "#ffffff"}})
			if !bytes.Equal(m[0].Pix, m[1].Pix) {
				t.Errorf("%+v: paints change pixels", o)
			}
			law := func(picture *image.NRGBA) error {
				if n := colored(picture, old); n > 0 {
					return fmt.Errorf("%d pixels still have %s", n, old)
				}
				if colored(picture, "#00ff00") == 0 {
					return errors.New("no pixel has the new color")
				}
				return nil
			}
			if err := law(m[2]); err != nil {
				t.Errorf("%+v, %s: %v", o, top.Fabrics[f].Name, err)
			}
			if bytes.Equal(half, other) || law(m[3]) == nil {
				t.Errorf("%s: a part that keeps its color is not noticed", top.Fabrics[f].Name)
			}
		}
	}
}

// colored counts the pixels of a color.
func colored(m *image.NRGBA, hex string) int {
	n := 0
	for i := 0; i < len(m.Pix); i += 4 {
		if fmt.Sprintf("#%02x%02x%02x", m.Pix[i], m.Pix[i+1], m.Pix[i+2]) == hex {
			n++
		}
	}
	return n
}
