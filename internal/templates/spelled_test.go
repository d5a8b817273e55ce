package templates

import (
	"bytes"
	"fmt"
	"image"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/golden"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/quilttest/spelled"
	"eighthturn/palettes"
)

// spelledLayouts are small layouts whose templates, plates, mats and files are spelled out.
func spelledLayouts() map[string]string {
	const colors = "fabric navy #1f3350\nfabric rust #b5532a\nfabric teal #2f7d83\nfabric cream #f4ead7\n"
	return map[string]string{
		"ring":   "strip 4\n" + colors + "block R ring wedges navy rust corners cream\ngrid\n R\nborder 2 teal\n",
		"halves": "units cm\nside 12\n" + colors + "strip-set drift navy 3 teal rest\nblock W web wedges drift kites cream\nblock F floating wedges rust reversed drift background cream\nblock H halves pieces navy cream\nblock T star wedges navy kites rust\ngrid\n W F H\n F W T\n",
		"print":  cutText,
		"narrow": "side 9\nseam 1/8\n" + colors + "block W web wedges navy kites cream\nblock T tumblers pieces teal rust line 15\ngrid\n W W T\n W W T\n",
		"huge":   strings.Replace(hugeLayout, "40", "17", 1),
	}
}

// exactly writes places in nanometers.
func exactly(list []measure.Point) string {
	var b strings.Builder
	for _, p := range list {
		fmt.Fprintf(&b, " %d,%d", p.X, p.Y)
	}
	return b.String()
}

func spellTemplates(b *spelled.Book, list []Template) {
	for i := range list {
		t := &list[i]
		finished, cut := t.Sizes()
		b.Line("%s: %s, %d of %v, by a ruler %v, finished %v, cut %v, file %s", t.Name(), t.Piece(), t.Count, t.Cloths, t.ByRuler(), finished, cut, t.FileName())
		b.Line("  finished%s", exactly(t.Finished))
		b.Line("  cut%s", exactly(t.Cut))
		b.Line("  grain%s", exactly(t.Grain[:]))
		for _, n := range t.notches() {
			b.Line("  notch%s", exactly(n[:]))
		}
		for _, l := range (laidPiece{Template: t}).labels() {
			b.Line("  label %q at%s, %d high", l.text, exactly([]measure.Point{l.middle}), l.height)
		}
		if p := t.Print; p != nil {
			b.Line("  print: place %d of fabric %d, repeat%s, turned %.4f, %q at%s", p.Place, p.Fabric, exactly([]measure.Point{p.Repeat}), p.Turn, p.Motif, exactly([]measure.Point{p.Center}))
			for _, l := range p.Lines {
				b.Line("    line%s", exactly(l[:]))
			}
		}
	}
}

func spellFoundations(b *spelled.Book, top *quilt.Top) {
	for _, f := range Foundations(top) {
		b.Line("foundation %d: %d halves, finished%s, cut%s", f.Number, f.Count, exactly(f.Finished), exactly(f.Cut))
		for i, p := range f.Pieces {
			b.Line("  %d %s%s, sewn along%v", i+1, p.What, exactly(p.Finished), f.seamsOf(i))
		}
		b.Figure("  ", f.Figure(top))
	}
}

func spellPlates(b *spelled.Book, top *quilt.Top) {
	cloths := NewCloths(top)
	var pieces []Piece
	for _, p := range usual(top) {
		pieces = append(pieces, Piece{p.Name(), p.Figure(top, cloths)})
		b.Figure("", pieces[len(pieces)-1].Figure)
	}
	for _, f := range Foundations(top) {
		pieces = append(pieces, Piece{fmt.Sprint(f.Number), f.Figure(top)})
	}
	plates, left := Plates(pieces, usualRoom, usualMost)
	for _, p := range plates {
		p.Enlarge(9)
		b.Line("plate of %v, part %d of %d", p.Shows, p.Part, p.Parts)
		b.Figure("  ", &p.Figure)
	}
	b.Line("left out are %v", left)
}

func spellMats(b *spelled.Book, top *quilt.Top) {
	for _, size := range []measure.Point{{X: 12 * measure.Inch, Y: 12 * measure.Inch}, {X: 6 * measure.Inch, Y: 7 * measure.Inch}} {
		mats, err := Mats(top, usual(top), size)
		if err != nil {
			b.Line("%v: %+v", err, err)
		}
		for i := range mats {
			b.Line("%s", mats[i].says(top))
			for _, p := range mats[i].pieces {
				b.Line("  %s at%s turned %v on a mat %v, cut%s", p.Name(), exactly([]measure.Point{p.at}), p.turned, p.onMat, exactly(p.Cut))
			}
		}
	}
}

// TestSpelled: the templates of small layouts are, corner for corner, what somebody has read, and so are their foundations, plates and mats.
func TestSpelled(t *testing.T) {
	var files []string
	for name, text := range spelledLayouts() {
		top, b := lay.Top(t, text), spelled.New()
		if name == "print" {
			top.Fabrics[1].Cloth = &quilt.Cloth{Across: 9 * measure.Inch, Down: 6 * measure.Inch, PhotoSample: palettes.PhotoSample{Tile: image.NewRGBA(image.Rect(0, 0, 3, 2))}}
		}
		b.Drawn = regexp.MustCompile("")
		spellTemplates(b, usual(top))
		spellFoundations(b, top)
		spellPlates(b, top)
		spellMats(b, top)
		files = append(files, name+".txt")
		golden.Text(t, filepath.Join("testdata", "spelled", name+".txt"), []byte(b.Page()))
	}
	golden.Unused(t, filepath.Join("testdata", "spelled"), files)
}

// TestSpelledFiles: the files for machines that cut are, number for number, what somebody has read.
func TestSpelledFiles(t *testing.T) {
	var files []string
	for _, name := range []string{"ring", "halves", "print"} {
		top := lay.Top(t, spelledLayouts()[name])
		var made bytes.Buffer
		list := usual(top)
		write := func(err error) {
			if err != nil {
				t.Fatal(err)
			}
		}
		write(DXF(&made, top, list))
		for i := range list {
			write(list[i].SVG(&made, top))
		}
		mats, err := Mats(top, list, measure.Point{X: 12 * measure.Inch, Y: 8 * measure.Inch})
		write(err)
		write(MatsDXF(&made, top, mats))
		for i := range mats {
			write(mats[i].SVG(&made, top))
		}
		files = append(files, name+".txt")
		golden.Text(t, filepath.Join("testdata", "files", name+".txt"), bytes.ReplaceAll(made.Bytes(), []byte("\r\n"), []byte("\n")))
	}
	golden.Unused(t, filepath.Join("testdata", "files"), files)
}
