package preview

import (
	"bytes"
	"net/http"
	"slices"
	"strconv"

	pictures "eighthturn/internal/render/picture"
	"eighthturn/internal/stop"
	"eighthturn/svgout"
)

// printSizes are the pixels that the longer side of a picture of prints may have: a page asks for as many as it shows, and the last is as
// fine as photos of cloth are kept.
func printSizes() []int { return []int{1000, 2000, 4000} }

// printed is a PNG file, or why there is none.
type printed struct {
	png []byte
	err error
}

// servePrints answers with the newest picture's fabrics as they are printed and woven, each piece as it is cut, and nothing over them:
// in color or by value.
func (s *site) servePrints(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
		size, view := 0, svgout.Colour
		if text := r.URL.Query().Get("pixels"); text != "" {
			asked, _ := strconv.Atoi(text)
			if size = slices.Index(printSizes(), asked); size < 0 {
				return nil, errNothing
			}
		}
		kept := size
		if r.URL.Query().Get("view") == svgout.Views()[svgout.Value] {
			kept, view = size+len(printSizes()), svgout.Value
		}
		made := of.prints[kept].Get(sign, func() printed {
			png, err := of.picture.prints(sign, view, printSizes()[size])
			return printed{png, err}
		})
		return made.png, made.err
	})
}

// prints is the picture with its prints in a view, see-through where the layout has nothing.
func (p *picture) prints(sign *stop.Sign, view svgout.View, pixels int) ([]byte, error) {
	scene, err := svgout.NewScene(p.top, svgout.Options{View: view, ByFabric: true, Prints: true, SeamLines: svgout.SeamsLeftOut})
	if err != nil {
		return nil, err
	}
	sign.Look()
	var b bytes.Buffer
	err = pictures.PNG(sign.Writer(&b), scene, pictures.Frame{Pixels: pixels, Clear: true})
	return b.Bytes(), err
}
