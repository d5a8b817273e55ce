package pdf

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
	"testing"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Every letter keeps its outline, as another reader of fonts sees it, and none keeps instructions.
func TestWithoutHints(t *testing.T) {
	for name, file := range map[string][]byte{"regular": goregular.TTF, "bold": gobold.TTF} {
		plain := withoutHints(file)
		if err := sameOutlines(file, plain); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if !bytes.Equal(withoutHints(plain), plain) {
			t.Errorf("%s: instructions are left", name)
		}
		if a, b := zeros(file), zeros(plain); b < a+len(file)/8 {
			t.Errorf("%s: %d zeros before, %d behind: no instructions were taken", name, a, b)
		}
		broken := bytes.Clone(plain)
		glyf := bytes.Index(broken, []byte("glyf"))
		broken[binary.BigEndian.Uint32(broken[glyf+8:])+40]++
		if sameOutlines(file, broken) == nil {
			t.Errorf("%s: a letter with another outline was not noticed", name)
		}
	}
}

func zeros(b []byte) int { return bytes.Count(b, []byte{0}) }

func sameOutlines(a, b []byte) error {
	first, err := sfnt.Parse(a)
	second, other := sfnt.Parse(b)
	if err = errors.Join(err, other); err != nil {
		return err
	}
	var buffers [2]sfnt.Buffer
	for i := range first.NumGlyphs() {
		want, err := first.LoadGlyph(&buffers[0], sfnt.GlyphIndex(i), fixed.I(2048), nil)
		got, other := second.LoadGlyph(&buffers[1], sfnt.GlyphIndex(i), fixed.I(2048), nil)
		if err = errors.Join(err, other); err != nil {
			return err
		}
		if !slices.Equal(want, got) {
			return fmt.Errorf("letter %d has another outline", i)
		}
	}
	return nil
}
