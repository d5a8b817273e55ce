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

// madeMark stands near the beginning of pages and Markdown that `booklet` writes.
const madeMark = "<!-- made by eighthturn -->\n"

// farthestMark is how far the line may reach that the mark stands behind: well within what is looked at of a file that is there.
const farthestMark = 800

// marked puts the mark into a page, a text or a picture: into Markdown behind its title, since what stands before a title is a chapter of
// its own in a book that is made of it.
func marked(file []byte) []byte {
	if at := bytes.IndexByte(file, '\n'); bytes.HasPrefix(file, []byte("# ")) && at >= 0 && at < farthestMark {
		return append(append(bytes.Clone(file[:at+1]), "\n"+madeMark...), file[at+1:]...)
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
	return bytes.Contains(head, []byte(strings.TrimSpace(madeMark))) || pdf.Marked(head, patternMarker)
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
