package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"sort"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/files"
	"eighthturn/internal/measure"
	"eighthturn/internal/render"
	"eighthturn/internal/render/pdf"
	"eighthturn/layout"
)

// What `booklet` writes into pages and pictures near their beginning, and into Markdown as the first line of what stands in front of it,
// where a comment is written so.
const (
	madeMark  = "<!-- made by eighthturn -->\n"
	madeFront = "---\n# made by eighthturn\n"
)

// marked puts the mark into a page, a text or a picture.
func marked(file []byte) []byte {
	if front := []byte("---\n"); bytes.HasPrefix(file, front) {
		return append([]byte(madeFront), file[len(front):]...)
	}
	for _, first := range []string{"<!DOCTYPE", "<?xml"} {
		if bytes.HasPrefix(file, []byte(first)) {
			if at := bytes.IndexByte(file, '\n'); at >= 0 {
				return append(append(bytes.Clone(file[:at+1]), madeMark...), file[at+1:]...)
			}
		}
	}
	return append([]byte(madeMark), file...)
}

// patternMarker stands near the beginning of every PDF that `booklet` writes.
const patternMarker = "eighthturn pattern"

// patternOfOurs says whether a file is a pattern of ours.
func patternOfOurs(head []byte) bool {
	return bytes.HasPrefix(head, []byte(madeFront)) || bytes.Contains(head, []byte(strings.TrimSpace(madeMark))) || pdf.Marked(head, patternMarker)
}

// folder writes Markdown and its pictures into a folder, which is made if it is not there.
func (o *printedPattern) folder(c *console, d document.Document, out target, paper render.Paper) error {
	written, err := render.Markdown(d, "pattern", render.Options{Paper: paper, Large: o.large, Marker: patternMarker})
	if err != nil {
		return &problem{faulty, out.path, err.Error(), ""}
	}
	names := make([]string, 0, len(written))
	for name := range written {
		names = append(names, name)
	}
	sort.Strings(names)
	list := make([]files.File, len(names))
	for i, name := range names {
		content := written[name]
		if name != render.TrueSizeFile {
			content = marked(content)
		}
		list[i] = files.File{Name: name, Write: bytesOf(content)}
	}
	if err := c.writeSet(out, "-o", list); err != nil {
		return err
	}
	with := measure.Count(len(written)-1, "picture")
	if written[render.TrueSizeFile] != nil {
		with = measure.Count(len(written)-2, "picture") + " and " + render.TrueSizeFile + " to print at 100%"
	}
	return c.print(fmt.Sprintf("made: %s, with %s\n", layout.Visible(filepath.Join(out.path, "pattern.md")), with))
}
