package layout

import (
	"strings"
	"unicode/utf8"
)

// readable refuses what is not the text of a layout at all.
func (p *parser) readable() bool {
	src := strings.TrimPrefix(p.src, byteOrderMark)
	switch {
	case len(p.src) > MaxBytes:
		p.fault(Span{}, "", "this file has %d bytes, a layout may have at most %d", len(p.src), MaxBytes)
	case len(p.source.lines) > MaxLines:
		p.fault(p.source.lines[MaxLines], "", "a layout may have at most %d lines", MaxLines)
	case strings.HasPrefix(src, "\xff\xfe"), strings.HasPrefix(src, "\xfe\xff"):
		p.fault(Span{}, "save it as UTF-8", "this file is in UTF-16, a layout is a text in UTF-8")
	case beginsWithOneOf(src, pictureStarts()):
		p.fault(Span{}, "give the name of the file that holds the layout", "this file is a picture, a layout is a text")
	case beginsWithOneOf(src, documentStarts()):
		p.fault(Span{}, "save it as plain text, in UTF-8", "this file is a document of another program, a layout is a plain text")
	case looksLikeUTF16(src):
		p.fault(Span{}, "save it as UTF-8", "this file looks like UTF-16, a layout is a text in UTF-8")
	case strings.Contains(src[:min(len(src), 4000)], "\x00"):
		at := strings.IndexByte(p.src, 0)
		p.fault(Span{at, at + 1}, "give the name of the file that holds the layout", "this file is not a text")
	case strings.TrimSpace(src) == "":
		p.fault(Span{}, "a layout needs a strip or a side, fabrics, blocks and a grid", "this layout is empty")
	case !utf8.ValidString(src):
		p.notUTF8()
	default:
		return true
	}
	return false
}

func looksLikeUTF16(src string) bool {
	head := src[:min(len(src), 400)]
	return len(head) > 3 && strings.Count(head, "\x00") > len(head)/4
}

// pictureStarts are the first bytes of PNG, JPEG, GIF, WebP and TIFF files.
func pictureStarts() []string {
	return []string{"\x89PNG", "\xff\xd8\xff", "GIF8", "RIFF", "II*\x00", "MM\x00*"}
}

// documentStarts are the first bytes of PDF, zipped, gzipped and RTF files.
func documentStarts() []string {
	return []string{"%PDF", "PK\x03\x04", "\x1f\x8b", "{\\rtf"}
}

func beginsWithOneOf(src string, starts []string) bool {
	for _, start := range starts {
		if strings.HasPrefix(src, start) {
			return true
		}
	}
	return false
}

// notUTF8 reports the first byte that is not text, and what it would be in the encoding
// that such files have most often; one message speaks for the whole file.
func (p *parser) notUTF8() {
	bad := 0
	for r, size := utf8.DecodeRuneInString(p.src); r != utf8.RuneError || size > 1; r, size = utf8.DecodeRuneInString(p.src[bad:]) {
		bad += size
	}
	at := Span{bad, bad + 1}
	if r := windows1252(p.src[bad]); r != 0 {
		p.fault(at, "save it as UTF-8", "this file is not a text in UTF-8: it may be in Windows-1252, where this byte is %s", quote(string(r)))
		return
	}
	p.fault(at, "save it as UTF-8", "this file is not a text in UTF-8")
}

// windows1252 is the character of a byte above 127 in Windows-1252, 0 for those that are
// rare in quilts.
func windows1252(b byte) rune {
	const from, letters = 0x80, "€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ"
	if b >= 0xa0 {
		return rune(b)
	}
	r := []rune(letters)[b-from]
	if r == ' ' {
		return 0
	}
	return r
}
