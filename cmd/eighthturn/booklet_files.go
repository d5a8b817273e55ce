package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"unicode/utf16"

	"eighthturn/internal/document"
	"eighthturn/internal/files"
	"eighthturn/internal/render"
	"eighthturn/layout"
)

// madeMark stands near the beginning of pages and Markdown that `booklet` writes.
const madeMark = "<!-- made by eighthturn -->\n"

// marked puts the mark into a page, a text or a picture.
func marked(file []byte) []byte {
	for _, first := range []string{"<!DOCTYPE", "<?xml"} {
		if bytes.HasPrefix(file, []byte(first)) {
			if at := bytes.IndexByte(file, '\n'); at >= 0 {
				return append(append(bytes.Clone(file[:at+1]), madeMark...), file[at+1:]...)
			}
		}
	}
	return append([]byte(madeMark), file...)
}

// madeHere says whether a file is a pattern of ours: by its head, or, since a PDF names its maker at its end, by that.
func madeHere(path string, head []byte) bool {
	if bytes.Contains(head, []byte(strings.TrimSpace(madeMark))) {
		return true
	}
	return bytes.HasPrefix(head, []byte("%PDF-")) && bytes.Contains(tail(path), []byte("/Creator "+makerInPDF()))
}

// makerInPDF is the program's name as a PDF's properties have it: UTF-16 in hexadecimal digits.
func makerInPDF() string {
	text := "<FEFF"
	for _, unit := range utf16.Encode([]rune("eighthturn")) {
		text += fmt.Sprintf("%04x", unit)
	}
	return text + ">"
}

// tail is the end of a file, nothing if it cannot be read.
func tail(path string) []byte {
	const most = 1 << 16
	f, err := os.Open(path)
	if err != nil {
		return nil
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil
	}
	b := make([]byte, min(most, info.Size()))
	n, err := f.ReadAt(b, info.Size()-int64(len(b)))
	if err != nil {
		return nil
	}
	return b[:n]
}

// folder writes Markdown and its pictures into a folder, which is made if it is not there.
func (o *printedPattern) folder(c *console, d document.Document, out target) error {
	written, err := render.Markdown(d, "pattern")
	if err != nil {
		return &problem{faulty, out.path, err.Error(), ""}
	}
	if err := (pictureFolder{path: filepath.Clean(out.path), option: "-o"}).make(); err != nil {
		return err
	}
	names := make([]string, 0, len(written))
	for name := range written {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, check := range []bool{true, false} { // nothing is written if one of them would be refused
		for _, name := range names {
			one := out
			one.path = filepath.Join(out.path, name)
			one.options.Ours = func(head []byte) bool { return madeHere(one.path, head) }
			if check {
				if err := files.Check(one.path, one.options); err != nil {
					return one.problem(err)
				}
				continue
			}
			if err := c.write(one, bytesOf(marked(written[name]))); err != nil {
				return err
			}
		}
	}
	return c.print(fmt.Sprintf("made: %s, with %s\n", layout.Visible(filepath.Join(out.path, "pattern.md")), plural(len(written)-1, "picture")))
}
