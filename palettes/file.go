package palettes

import (
	"bytes"
	"fmt"
	"io"
	"path"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Limits of a palette file; what is over them is refused before room is made for it.
const (
	maxFileBytes = 1 << 20
	maxLineBytes = 4096
	maxNameBytes = 200
	maxFabrics   = 4096
)

// fileError is a fault in a palette file.
type fileError struct {
	Line    int    // from 1; 0 where the fault has no line
	Block   int    // from 1, in files that are made of blocks; otherwise 0
	Message string // what is there and what was wanted
}

func (e *fileError) Error() string {
	switch {
	case e.Line > 0:
		return fmt.Sprintf("line %d: %s", e.Line, e.Message)
	case e.Block > 0:
		return fmt.Sprintf("block %d: %s", e.Block, e.Message)
	}
	return e.Message
}

func atLine(line int, format string, args ...any) error {
	return &fileError{Line: line, Message: fmt.Sprintf(format, args...)}
}

// Format is a kind of palette file.
type Format struct {
	Name       string   // for messages and help
	Extensions []string // in small letters with the dot; the first is the usual one
	Read       func(io.Reader) (Palette, error)
	Write      func(io.Writer, Palette) error // nil where the format is only read
}

// Formats returns the kinds of palette file, in the order for help.
func Formats() []Format {
	return []Format{
		{"GIMP palette", []string{".gpl"}, readGPL, writeGPL},
		{"bare list of hex colors", []string{".hex"}, readHexList, writeBareHex},
		{"list of hex colors with names", []string{".txt"}, readHexList, writeHexList},
		{"CSS custom properties", []string{".css"}, readCSS, writeCSS},
		{"Adobe Swatch Exchange", []string{".ase"}, readASE, writeASE},
	}
}

// FormatOf finds the kind of a palette file by the ending of its name.
func FormatOf(fileName string) (Format, bool) {
	ending := strings.ToLower(path.Ext(fileName))
	for _, f := range Formats() {
		for _, e := range f.Extensions {
			if e == ending {
				return f, true
			}
		}
	}
	return Format{}, false
}

// readWhole reads a file of at most maxFileBytes.
func readWhole(r io.Reader) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxFileBytes+1))
	if err != nil {
		return nil, fmt.Errorf("the palette file cannot be read: %w", err)
	}
	if len(data) > maxFileBytes {
		return nil, &fileError{Message: fmt.Sprintf("the file is over %d bytes, far more than a palette needs", maxFileBytes)}
	}
	return data, nil
}

// readText reads a text file, and answers for it that each line is UTF-8, short and without control characters. Line ends
// come as \n; a byte order mark is dropped.
func readText(r io.Reader) (string, error) {
	data, err := readWhole(r)
	if err != nil {
		return "", err
	}
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	text := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(string(data))
	number := 0
	for line := range strings.SplitSeq(text, "\n") {
		number++
		switch {
		case len(line) > maxLineBytes:
			return "", atLine(number, "%d bytes on one line, expected at most %d", len(line), maxLineBytes)
		case !utf8.ValidString(line):
			return "", atLine(number, "not UTF-8 text; save the palette as UTF-8")
		case strings.ContainsFunc(line, isForbidden):
			return "", atLine(number, "a control character where text was expected; is this a palette file?")
		}
	}
	return text, nil
}

func isForbidden(r rune) bool {
	return unicode.IsControl(r) && r != '\t'
}

// tidyName draws blanks and control characters together to single spaces; what is no letter at all, as names of files may have, becomes
// one that says so.
func tidyName(name string) string {
	return strings.Join(strings.FieldsFunc(strings.ToValidUTF8(name, string(unicode.ReplacementChar)), func(r rune) bool {
		return unicode.IsSpace(r) || unicode.IsControl(r)
	}), " ")
}

// shortName is a name as long as a file may have it.
func shortName(name string) string {
	for len(name) > maxNameBytes {
		_, last := utf8.DecodeLastRuneInString(name)
		name = strings.TrimRight(name[:len(name)-last], " ")
	}
	return name
}

// add adds a fabric read from a line, and refuses names and numbers of fabrics over the limits.
func (p *Palette) add(line int, name string, c Colour) error {
	name = tidyName(name)
	switch {
	case len(name) > maxNameBytes:
		return atLine(line, "a name of %d bytes, expected at most %d", len(name), maxNameBytes)
	case len(p.Fabrics) == maxFabrics:
		return atLine(line, "more than %d colors, far more than a palette needs", maxFabrics)
	}
	p.Fabrics = append(p.Fabrics, Swatch{name, c})
	return nil
}

// writeText writes the text in one go.
func writeText(w io.Writer, text string) error {
	if _, err := io.WriteString(w, text); err != nil {
		return fmt.Errorf("the palette file cannot be written: %w", err)
	}
	return nil
}
