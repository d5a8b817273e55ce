package longarm

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/samples"
)

// wrongFiles says what of the drawings is not as the layers are: each line of a layer is one of DXF, the outline is one of four corners,
// and SVG is well formed and has a title, a path for each layer with lines, and nothing beside.
func wrongFiles(top *quilt.Top, drawing, picture []byte) error {
	layers := Layers(top)
	text := string(drawing)
	if n := strings.Count(text, "\r\n0\r\nVERTEX\r\n8\r\nOUTLINE\r\n"); n != 4 {
		return fmt.Errorf("the outline has %d corners", n)
	}
	paths := 0
	for _, l := range layers {
		if len(l.Lines) > 0 {
			paths++
		}
		if n := strings.Count(text, "\r\n0\r\nLINE\r\n8\r\n"+strings.ToUpper(l.Name)+"\r\n"); l.Name != "outline" && n != len(l.Lines) {
			return fmt.Errorf("%d lines of %s, %d are seams", n, l.Name, len(l.Lines))
		}
	}
	if lines := strings.Count(text, "\n"); lines%2 > 0 || strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
		return fmt.Errorf("%d lines are no pairs, or a number is none", lines)
	}
	reader := xml.NewDecoder(bytes.NewReader(picture))
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return err
		}
		e, begins := token.(xml.StartElement)
		if begins && e.Name.Local == "path" {
			paths--
		} else if begins && !strings.Contains(" svg title g ", " "+e.Name.Local+" ") {
			return fmt.Errorf("an element %s", e.Name.Local)
		}
	}
	if paths != 0 || bytes.Contains(picture, []byte("NaN")) || bytes.Contains(picture, []byte("Inf")) {
		return fmt.Errorf("%d layers have no path, or a number is none", paths)
	}
	return nil
}

// FuzzLines draws the quilting lines of any text that the language accepts: each seam once, within the top, alike in both files.
func FuzzLines(f *testing.F) {
	for _, s := range samples.All()[:3] {
		f.Add(s.Text)
	}
	for seed := range uint64(6) {
		f.Add(invent.Layout(seed))
	}
	f.Fuzz(func(t *testing.T, text string) {
		design, _, _ := layout.Read(text)
		if design == nil || design.Columns*design.Rows > 300 {
			return
		}
		top := quilt.Lay(design)
		if err := wrongLines(top, Layers(top)); err != nil {
			t.Errorf("%v\n%s", err, text)
		}
		var drawing, picture bytes.Buffer
		if err := errors.Join(DXF(&drawing, top), SVG(&picture, top)); err != nil {
			t.Fatal(err)
		}
		if err := wrongFiles(top, drawing.Bytes(), picture.Bytes()); err != nil {
			t.Errorf("%v\n%s", err, text)
		}
	})
}

// TestWrongFilesAreNoticed: a line too few, a corner too many, half a pair, a path that is lost.
func TestWrongFilesAreNoticed(t *testing.T) {
	design, _, _ := layout.Read(samples.All()[0].Text)
	top := quilt.Lay(design)
	var drawing, picture bytes.Buffer
	if err := errors.Join(DXF(&drawing, top), SVG(&picture, top), wrongFiles(top, drawing.Bytes(), picture.Bytes())); err != nil {
		t.Fatal(err)
	}
	for _, change := range [][2]string{{"LINE\r\n8\r\nSEAMS", "LINE\r\n8\r\nBLOCKS"}, {"VERTEX\r\n8\r\nOUTLINE", "VERTEX\r\n8\r\nBLOCKS"}, {"\r\nEOF", "\r\nEOF\r\n"}} {
		if wrongFiles(top, bytes.Replace(drawing.Bytes(), []byte(change[0]), []byte(change[1]), 1), picture.Bytes()) == nil {
			t.Errorf("%q for %q is not noticed", change[1], change[0])
		}
	}
	for _, change := range [][2]string{{"<path", "<rect"}, {"</g>", ""}, {" 0L", " NaNL"}} {
		if wrongFiles(top, drawing.Bytes(), bytes.Replace(picture.Bytes(), []byte(change[0]), []byte(change[1]), 1)) == nil {
			t.Errorf("%q for %q is not noticed", change[1], change[0])
		}
	}
}
