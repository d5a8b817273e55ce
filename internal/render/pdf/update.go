package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strconv"
)

// updated appends an update to a file of the library's (ISO 32000-1, 7.5.6): what it says of
// itself, without a clock; its language; and that viewers print it as large as it is (12.2,
// PrintScaling) and show its title.
func (f *File) updated(file []byte) ([]byte, error) {
	file, start, err := marked(file, f.Marker)
	if err != nil {
		return nil, err
	}
	numbers := regexp.MustCompile(`/Size (\d+)\n/Root (\d+) 0 R\n/Info (\d+) 0 R\n>>\nstartxref\n`).FindSubmatch(file[start:])
	if numbers == nil {
		return nil, errors.New("the PDF library ended its file in a way that is not known")
	}
	size, root, info := numbers[1], numbers[2], numbers[3]
	_, catalogue, found := bytes.Cut(file, fmt.Appendf(nil, "\n%s 0 obj\n<<\n", root))
	catalogue, _, ended := bytes.Cut(catalogue, []byte("\n>>\nendobj"))
	if !found || !ended || !bytes.Contains(catalogue, []byte("/Type /Catalog")) {
		return nil, errors.New("the PDF library wrote a catalogue that is not known")
	}
	language := ""
	if f.Language != "" {
		language = "/Lang " + textString(f.Language) + "\n"
	}
	places := [2]int{len(file)}
	file = fmt.Appendf(file, "%s 0 obj\n<<\n%s\n/Version /1.7\n%s/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true>>\n>>\nendobj\n", root, catalogue, language)
	places[1] = len(file)
	file = append(file, f.info(info)...)
	at := len(file)
	file = fmt.Appendf(file, "xref\n%s 1\n%010d 00000 n \n%s 1\n%010d 00000 n \n", root, places[0], info, places[1])
	return fmt.Appendf(file, "trailer\n<< /Size %s /Root %s 0 R /Info %s 0 R /Prev %d >>\nstartxref\n%d\n%%%%EOF\n", size, root, info, start, at), nil
}

// info is the object with the file's properties.
func (f *File) info(number []byte) []byte {
	out := fmt.Appendf(nil, "%s 0 obj\n<<\n", number)
	for _, entry := range [][2]string{
		{"Title", f.Title}, {"Author", f.Author}, {"Subject", f.Subject}, {"Keywords", f.Keywords}, {"Creator", "eighthturn"},
	} {
		if entry[1] != "" {
			out = fmt.Appendf(out, "/%s %s\n", entry[0], textString(entry[1]))
		}
	}
	return append(out, ">>\nendobj\n"...)
}

// marked is a file with the marker behind its first line, and the place of its table of
// objects; the places in the table are moved along.
func marked(file []byte, marker string) ([]byte, int, error) {
	if marker != "" {
		marker = "%" + marker + "\n"
	}
	head, rest, found := bytes.Cut(file, []byte("\n"))
	at := bytes.LastIndex(rest, []byte("\nxref\n"))
	if !found || at < 0 {
		return nil, 0, errors.New("the PDF library wrote no table of objects")
	}
	body, table := rest[:at+1], rest[at+1:]
	out := append(append(append(append([]byte(nil), head...), '\n'), marker...), body...)
	start := len(out)
	table = regexp.MustCompile(`(?m)^\d{10} 00000 n `).ReplaceAllFunc(table, func(entry []byte) []byte {
		n, _ := strconv.Atoi(string(entry[:10])) // ten digits
		return fmt.Appendf(nil, "%010d 00000 n ", n+len(marker))
	})
	table = regexp.MustCompile(`startxref\n\d+\n`).ReplaceAll(table, fmt.Appendf(nil, "startxref\n%d\n", start))
	return append(out, table...), start, nil
}

// Marked says whether a file begins as a PDF with a marker.
func Marked(head []byte, marker string) bool {
	return bytes.HasPrefix(head, []byte("%PDF-")) && bytes.Contains(head[:min(len(head), 64)], []byte("%"+marker+"\n"))
}
