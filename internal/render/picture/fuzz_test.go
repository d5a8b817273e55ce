package picture

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"regexp"
	"strconv"
	"testing"

	"golang.org/x/image/webp"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/samples"
	"eighthturn/svgout"
)

// FuzzPicture makes pictures of every sort of any text that the language accepts, in any frame: each is as large as was said, decodes with
// other programs' code, shows each face in its color, and is the same twice; what is too large is refused with what can be had.
func FuzzPicture(f *testing.F) {
	for i, s := range samples.All()[:3] {
		f.Add(s.Text, uint8(i), uint16(90), uint8(0), uint8(0))
	}
	for i, text := range append(invent.Printed(), "side 1/4\nfabric a #000\nblock P plain piece a\ngrid\n P P P P\n", "side 120\nfabric a #000\nblock P plain piece a\ngrid\n P .\n") {
		f.Add(text, uint8(17*i), uint16(1000*i), uint8(3*i), uint8(2*i))
	}
	for seed := range uint64(5) {
		f.Add(invent.Layout(seed), uint8(51*seed), uint16(60), uint8(seed), uint8(0))
	}
	f.Fuzz(func(t *testing.T, text string, choice uint8, size uint16, margin, bleed uint8) {
		design, _, _ := layout.ReadWith(text, invent.Photo)
		if design == nil || design.Columns*design.Rows > 200 {
			return
		}
		top := quilt.Lay(design)
		if len(top.Faces) > 3000 {
			return // as many as a test has time for
		}
		o := svgout.Options{View: svgout.View(choice) % (svgout.Line + 1), Legend: choice&32 > 0, Prints: choice&64 > 0, SeamLines: svgout.Seams(choice>>4) % 3}
		frame := Frame{Pixels: int(size), Margin: measure.NM(margin) * measure.Inch / 8, Bleed: measure.NM(bleed) * measure.Inch / 8, Clear: choice&128 > 0, TrueColour: bleed&1 > 0}
		if margin > 200 {
			frame.Margin, frame.MarginPixels = 0, int(margin)
		}
		scene := scened(t, top, o)
		if err := wrongPage(scene, frame); err != nil {
			t.Errorf("PDF: %v\n%s", err, text)
		}
		if err := wrongPixels(scene, frame, int(choice)%3); err != nil {
			t.Errorf("%+v, %+v: %v\n%s", o, frame, err, text)
		}
	})
}

// mostFuzzed is how many pixels a test has time for.
const mostFuzzed = 400_000

// wrongPixels says what of a picture in pixels, a PNG, a JPEG or a WebP, is not as the scene is.
func wrongPixels(s *svgout.Scene, f Frame, sort int) error {
	size, _, err := PNGSize(s, f)
	var large *TooLarge
	if errors.As(err, &large) {
		if large.Width*large.Height < 1_000_000 || large.Longest < 0 {
			return fmt.Errorf("refused: %+v", large)
		}
		return nil
	}
	if err != nil || size.Width*size.Height > mostFuzzed {
		return err
	}
	write, decode := PNG, png.Decode
	switch sort {
	case 1:
		write, decode = JPEG, jpeg.Decode
	case 2:
		write, decode = WebP, webp.Decode
	}
	var first, again bytes.Buffer
	if err := errors.Join(write(&first, s, f), write(&again, s, f)); err != nil {
		return err
	}
	if !bytes.Equal(first.Bytes(), again.Bytes()) {
		return errors.New("two pictures differ")
	}
	m, err := decode(&first)
	if err != nil {
		return err
	}
	if m.Bounds() != image.Rect(0, 0, size.Width, size.Height) {
		return fmt.Errorf("the picture is %v, said was %v", m.Bounds(), size)
	}
	plain := s.ClothAlone() && f.Margin == 0 && f.MarginPixels == 0 && f.Bleed == 0 && sort != 1 && s.Places == nil
	if wrong, _ := wrongMiddles(s.Top, m, func(f int) palettes.Colour { return s.Paints[f].Colour }); plain && wrong > 0 {
		return fmt.Errorf("%d faces have another color", wrong)
	}
	return nil
}

var mediaBox = regexp.MustCompile(`/MediaBox \[0\.?0? 0\.?0? ([0-9.]+) ([0-9.]+)\]`)

// wrongPage says what of a picture as PDF is not as the scene is: it is one page as large as the quilt and what is round it, within 1/100
// of a point, and the same bytes twice.
func wrongPage(s *svgout.Scene, f Frame) error {
	var first, again bytes.Buffer
	err := PDF(&first, s, f)
	round := f.Margin + f.Bleed
	wide, high := inches(s.Width+2*round)*pointsPerInch, inches(s.Height+2*round)*pointsPerInch
	var long *TooLong
	if errors.As(err, &long) {
		if max(wide, high) <= inches(MaxPage)*pointsPerInch {
			return fmt.Errorf("%g by %g points are refused", wide, high)
		}
		return nil
	}
	if err != nil {
		return err
	}
	if err := PDF(&again, s, f); err != nil || !bytes.Equal(first.Bytes(), again.Bytes()) {
		return fmt.Errorf("two PDF pictures differ, %w", err)
	}
	found := mediaBox.FindAllSubmatch(first.Bytes(), -1)
	if len(found) != 1 || !bytes.HasPrefix(first.Bytes(), []byte("%PDF-")) || !bytes.Contains(first.Bytes(), []byte("%%EOF")) {
		return fmt.Errorf("%d pages", len(found))
	}
	for i, want := range []float64{wide, high} {
		if got, err := strconv.ParseFloat(string(found[0][i+1]), 64); err != nil || got < want-0.01 || got > want+0.01 {
			return fmt.Errorf("the page is %s by %s points, wanted %g by %g", found[0][1], found[0][2], wide, high)
		}
	}
	return nil
}
