package pixels

import (
	"strings"

	"eighthturn/internal/credits"
)

// credits writes what the picture says of its title, author and rights under the keywords that are the standard's own (PNG
// Specification, third edition, 11.3.3): as Latin-1 where that will do, which more programs read, else as UTF-8.
func (f *pngFile) credits(c credits.Credits) {
	for _, said := range [][2]string{{"Title", c.Title}, {"Author", c.Author}, {"Copyright", c.Copyright}} {
		switch keyword, text := said[0], said[1]; {
		case text == "":
		case isLatin1(text):
			f.block("tEXt", append([]byte(keyword+"\x00"), latin1(text)...))
		default: // not packed, in no language, the keyword not translated
			f.block("iTXt", []byte(keyword+"\x00\x00\x00\x00\x00"+text))
		}
	}
}

// isLatin1 says whether a text is of signs that Latin-1 prints.
func isLatin1(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r > 0xff || r >= 0x7f && r < 0xa0 })
}

func latin1(text string) (b []byte) {
	for _, r := range text {
		b = append(b, byte(r))
	}
	return b
}
