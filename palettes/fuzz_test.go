package palettes

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

func FuzzParse(f *testing.F) {
	for _, text := range []string{"#fff", "#1F3350", "navy", "#ffff", "transparent", "#12345g", "\xff", "#é"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := Parse(text)
		if err != nil {
			if len(err.Error()) > 400 {
				t.Errorf("a message of %d bytes", len(err.Error()))
			}
			return
		}
		if again, err := Parse(c.Hex()); err != nil || again != c {
			t.Errorf("%q is %s, which reads as %s (%v)", text, c.Hex(), again.Hex(), err)
		}
	})
}

func FuzzReadGPL(f *testing.F) {
	f.Add([]byte("GIMP Palette\nName: Dock\nColumns: 3\n#\n 31  51  80\tnavy blue\n"))
	f.Add([]byte("GIMP Palette\r\n0 0 0\r\n255 255 255 # white\r\n"))
	f.Add([]byte("\uFEFFGIMP Palette\n1 2 256"))
	fuzzText(f, Formats()[0], tidyName)
}

func FuzzReadHexList(f *testing.F) {
	f.Add([]byte("// dock\n#1f3350 navy blue ; best\n1f3350\n#fff\n"))
	f.Add([]byte("#fff x//y ///z ;;w\n"))
	named, _ := FormatOf("x.txt")
	fuzzText(f, named, hexListName)
}

func FuzzReadCSS(f *testing.F) {
	f.Add([]byte(":root { --navy: #1f3350; --a: rgb(1 2 3 / 100%); --b: RED!important }"))
	f.Add([]byte("/* x */ a:hover{--x:\"}\";--y:{};--z:rgba(1%,2%,3%,1)"))
	css, _ := FormatOf("x.css")
	fuzzText(f, css, nil)
}

// fuzzText reads anything without a panic, refuses it with a fault that has a place, or writes it and reads the same back
// under the names that the format can hold; without a rule for names only the colours are compared.
func fuzzText(f *testing.F, format Format, name func(string) string) {
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := format.Read(bytes.NewReader(data))
		if err != nil {
			var fault *fileError
			if !errors.As(err, &fault) {
				t.Errorf("a fault without a place: %v", err)
			}
			return
		}
		for i, s := range p.inWords().Fabrics {
			if name == nil {
				p.Fabrics[i].Name = s.Name
			} else {
				p.Fabrics[i].Name = name(p.Fabrics[i].Name)
			}
		}
		if err := readsBack(format, p); err != nil {
			t.Error(err)
		}
	})
}

func FuzzReadASE(f *testing.F) {
	f.Add(aseFile(1, aseBlock(aseColour, aseBody("navy", "RGB ", 0, 0.25, 0.5))))
	f.Add(aseFile(3, aseBlock(aseGroupStart, aseBody("g", "")), aseBlock(aseColour, aseBody("x", "LAB ", 0.9, 100, 100)), aseBlock(aseGroupEnd, nil)))
	f.Add(aseFile(1, aseBlock(aseColour, aseBody("x", "CMYK", 0, 0, 0, 1))))
	f.Add(aseFile(1, aseBlock(aseColour, aseBody(strings.Repeat("é", 100), "Gray", 0.3))))
	f.Add(aseFile(1, aseBlock(aseColour, aseBody("grey", "Gray", 0.3))))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := readASE(bytes.NewReader(data))
		if err != nil {
			var fault *fileError
			if !errors.As(err, &fault) {
				t.Errorf("a fault without a place: %v", err)
			}
			return
		}
		ase, _ := FormatOf("x.ase")
		for _, format := range []Format{Formats()[0], ase} {
			if err := readsBack(format, p); err != nil {
				t.Error(err)
			}
		}
	})
}
