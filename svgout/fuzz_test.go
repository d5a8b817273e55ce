package svgout

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/samples"
)

// FuzzDraw draws any text that the language accepts: no panic, well-formed XML, plain
// numbers, good ids and no names but those of pictures.
func FuzzDraw(f *testing.F) {
	for _, text := range layouts() {
		f.Add(text, uint8(0))
	}
	for _, s := range samples.All() {
		f.Add(s.Text, uint8(7))
	}
	for seed := range uint64(8) {
		f.Add(invent.Layout(seed), uint8(seed))
	}
	for _, text := range nastyTexts() {
		f.Add(`title "`+text+"\"\nstrip 4\nfabric a red \""+text+"\"\nblock W web wedges a kites a\n"+grid("W W"), uint8(11))
	}
	for i, text := range invent.Printed() {
		f.Add(text, uint8(128+5*i))
	}
	for _, text := range []string{
		"", "grid\n", "side 1/4\nfabric a #000\nblock P plain piece a\ngrid\n P\n", "side 120\nfabric a #000\nblock P plain piece a\ngrid\n P . P\n",
		"side 3\nfabric a #000\nblock P plain piece a\ngrid\n . .\n", strings.Replace(fabrics, "1 3/4", "0.6", 1) + "block W web wedges shore kites navy\n" + grid("W"),
	} {
		f.Add(text, uint8(3))
	}
	f.Fuzz(func(t *testing.T, text string, choice uint8) {
		design, _, _ := layout.ReadWith(text, invent.Photo)
		if design == nil || design.Columns*design.Rows > 400 {
			return
		}
		top := quilt.Lay(design)
		if len(top.Faces) > 5000 {
			return // as many as a test has time for
		}
		options := allOptions()
		o := options[int(choice)%len(options)]
		o.Prints = choice&128 > 0
		svg := drawn(t, top, o)
		err := errors.Join(lawIDs([]string{""}, svg), lawReferences(svg))
		if !bytes.Contains(svg, []byte("<pattern ")) { // which have images and matrices, and a law of their own
			err = errors.Join(err, lawNumbers(svg), lawNames(svg))
		}
		if err != nil {
			t.Errorf("%+v: %v", o, err)
		}
	})
}
