package render

import (
	"bytes"
	"eighthturn/internal/document"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"unicode/utf16"
)

// finish appends an incremental update (ISO 32000-1, 7.5.6) to a PDF: its properties without
// a clock, the language, and that viewers print it as large as it is and show its title.
func finish(file []byte, d document.Document) ([]byte, error) {
	trailer := regexp.MustCompile(`/Size (\d+)\n/Root (\d+) 0 R\n/Info (\d+) 0 R\n`).FindSubmatch(file)
	start := regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n?$`).FindSubmatch(file)
	if trailer == nil || start == nil {
		return nil, errors.New("the PDF library wrote no trailer as expected")
	}
	root := string(trailer[2])
	catalogue := between(file, "\n"+root+" 0 obj\n<<\n", "\n>>\nendobj")
	if catalogue == nil {
		return nil, errors.New("the PDF library wrote no catalogue as expected")
	}
	out := bytes.Clone(file)
	rootAt := len(out)
	out = fmt.Appendf(out, "%s 0 obj\n<<\n%s\n/Version /1.7\n/Lang %s\n/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true>>\n>>\nendobj\n",
		root, catalogue, literal(languageOf(d)))
	infoAt := len(out)
	out = append(out, properties(string(trailer[3]), d)...)
	xref := len(out)
	out = fmt.Appendf(out, "xref\n%s 1\n%010d 00000 n \n%s 1\n%010d 00000 n \n", trailer[3], infoAt, root, rootAt)
	return fmt.Appendf(out, "trailer\n<<\n/Size %s\n/Root %s 0 R\n/Info %s 0 R\n/Prev %s\n>>\nstartxref\n%d\n%%%%EOF\n",
		trailer[1], root, trailer[3], start[1], xref), nil
}

// between is what stands after the last place of one text and before the next of another.
func between(file []byte, from, to string) []byte {
	i := bytes.LastIndex(file, []byte(from))
	if i < 0 {
		return nil
	}
	rest := file[i+len(from):]
	n := bytes.Index(rest, []byte(to))
	if n < 0 {
		return nil
	}
	return rest[:n]
}

// properties is the object with the document's properties.
func properties(number string, d document.Document) []byte {
	out := fmt.Appendf(nil, "%s 0 obj\n<<\n", number)
	for _, entry := range [][2]string{
		{"Title", d.Title}, {"Author", d.Author}, {"Subject", d.Subject}, {"Keywords", d.Keywords}, {"Creator", "eighthturn"},
	} {
		if value := line(entry[1]); value != "" {
			out = fmt.Appendf(out, "/%s %s\n", entry[0], literal(value))
		}
	}
	return append(out, ">>\nendobj\n"...)
}

// literal is a PDF's text string in UTF-16, written as hexadecimal digits.
func literal(s string) string {
	out := []byte("<FEFF")
	for _, unit := range utf16.Encode([]rune(s)) {
		if unit < 0x1000 {
			out = append(out, "000"[:3-len(strconv.FormatUint(uint64(unit), 16))+1]...)
		}
		out = strconv.AppendUint(out, uint64(unit), 16)
	}
	return string(append(out, '>'))
}
