package palettes

import (
	"image"
	"image/color"
	"strings"
	"testing"
)

// TestStyleSheetsBetweenTheLines: closing brackets that nothing opened, strings and comments within a value leave the colors and the lines
// behind them where they are.
func TestStyleSheetsBetweenTheLines(t *testing.T) {
	for name, c := range map[string]struct{ text, is string }{
		"a bracket that nothing opened": {"a { --x: 1); --navy: #1f3350; --rust: #b5532a }", "navy #1f3350, rust #b5532a"},
		"comments end where they end":   {"/*a*/--navy:#1f3350;/*\n*/--rust:#b5532a;", "navy #1f3350, rust #b5532a"},
		"a comment within a value":      {"a { --navy: /*a*/#1f3350; --rust: rgb(181/**/83/**/42) }", "navy #1f3350, rust #b5532a"},
		"a string with a stop in it":    {"a { --x: 'a;b'; --y: \"}\"; --navy: #1f3350 }", "navy #1f3350"},
	} {
		p, err := readCSS(strings.NewReader(c.text))
		var list []string
		for _, f := range p.Fabrics {
			list = append(list, f.Name+" "+f.Colour.Hex())
		}
		if got := strings.Join(list, ", "); err != nil || got != c.is {
			t.Errorf("%s: %s, %v, expected %s", name, got, err, c.is)
		}
	}
}

// TestNamesInHexLists: a name begins no comment, whatever stands in front of its words, and keeps such marks behind their first letter.
func TestNamesInHexLists(t *testing.T) {
	for name, is := range map[string]string{";night": "night", "//night ;sky": "night sky", "a;b/c": "a;b/c", "night /; sky": "night sky"} {
		if got := hexListName(name); got != is {
			t.Errorf("%q becomes %q, expected %q", name, got, is)
		}
	}
}

// TestNotesOfACameraAreBounded: what a camera noted is kept up to its limit and no further; what else decides is a block's length alone.
func TestNotesOfACameraAreBounded(t *testing.T) {
	for _, c := range []struct {
		name   string
		length int
		kept   bool
	}{{"eXIf", 0, true}, {"eXIf", 1 << 16, true}, {"eXIf", 1<<16 + 1, false}, {"cICP", 4, true}, {"cICP", 3, false}, {"cICP", 5, false}, {"tEXt", 4, false}} {
		if got := keeps(c.name, make([]byte, c.length)); got != c.kept {
			t.Errorf("%s of %d bytes: kept %v", c.name, c.length, got)
		}
	}
}

// TestPaleIsAsSolidAsBefore: paler colors are as much see-through as they were.
func TestPaleIsAsSolidAsBefore(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 1, 1))
	m.SetRGBA(0, 0, color.RGBA{10, 20, 30, 100})
	if got := Paler(m, 50).RGBAAt(0, 0); got != (color.RGBA{133, 138, 143, 100}) {
		t.Errorf("%v", got)
	}
}

// TestPhotosOfOtherSorts: a photo of another sort is told as that from the first byte behind its mark; less is no photo at all.
func TestPhotosOfOtherSorts(t *testing.T) {
	for length, says := range map[int]string{12: "this is no photo", 13: "this is a HEIC or AVIF photo"} {
		_, err := checkPhoto([]byte("\x00\x00\x00\x18ftypheic\x00")[:length])
		if err == nil || !strings.HasPrefix(err.Error(), says) {
			t.Errorf("%d bytes: %v", length, err)
		}
	}
}

// TestColorsAsLongAsAllowed: a color's text may have its most characters, and not one more.
func TestColorsAsLongAsAllowed(t *testing.T) {
	for _, more := range []int{0, 1} {
		text := strings.Repeat("x", maxColourText+more)
		_, err := Parse(text)
		if err == nil || strings.Contains(err.Error(), text) == (more == 1) {
			t.Errorf("%d characters: %v", len(text), err)
		}
	}
}

// TestFirstWords: a word ends at the first blank, even where there is none before it.
func TestFirstWords(t *testing.T) {
	for text, is := range map[string]string{"": "", "a": "a", "a b": "a", "ab\tc d": "ab", " a": "", "\ta": ""} {
		if got := firstWord(text); got != is {
			t.Errorf("%q: %q, expected %q", text, got, is)
		}
	}
}
