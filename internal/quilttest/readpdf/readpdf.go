// Package readpdf tells tests what is in a PDF that is built on a table of places in a stream (ISO 32000-1, 7.5.7 and 7.5.8).
package readpdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Object is an object of a file: as it is written, or the dictionary of a stream.
type Object struct {
	Number int
	Text   string
	Stream []byte // unpacked; nil where it is none
}

var (
	startOf = regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`)
	widths  = regexp.MustCompile(`/W \[\s*(\d) (\d) (\d)\s*\]`)
)

// value is a whole number of a dictionary, -1 for none.
func value(dictionary, key string) int {
	m := regexp.MustCompile(`/` + key + ` (\d+)`).FindStringSubmatch(dictionary)
	if m == nil {
		return -1
	}
	n, _ := strconv.Atoi(m[1]) // it is digits
	return n
}

// Objects are a file's objects by their numbers, each from the place that the file's table says; what packs and finds others is left out.
func Objects(file []byte) ([]Object, error) {
	m := startOf.FindSubmatch(file)
	if m == nil {
		return nil, errors.New("the file does not end as a PDF")
	}
	start, _ := strconv.Atoi(string(m[1]))
	table, err := objectAt(file, start)
	if err != nil {
		return nil, err
	}
	places, err := placesOf(table)
	if err != nil {
		return nil, err
	}
	var list []Object
	packs := map[int][]Object{}
	for number, place := range places {
		var o Object
		switch place[0] {
		case 1:
			o, err = objectAt(file, place[1])
		case 2:
			if packs[place[1]] == nil {
				packs[place[1]], err = packedAt(file, places[place[1]][1])
			}
			if place[2] < len(packs[place[1]]) {
				o = packs[place[1]][place[2]]
			}
		default:
			continue
		}
		if err != nil || o.Number != number {
			return nil, fmt.Errorf("where object %d should be is %d, %v", number, o.Number, err)
		}
		if !strings.Contains(o.Text, "/Type /XRef") && !strings.Contains(o.Text, "/Type /ObjStm") {
			list = append(list, o)
		}
	}
	return list, nil
}

// placesOf are the entries of a table: what they are, and two numbers each.
func placesOf(table Object) (list [][3]int, err error) {
	w := widths.FindStringSubmatch(table.Text)
	if w == nil || !strings.Contains(table.Text, "/Type /XRef") {
		return nil, fmt.Errorf("the table is %.80q", table.Text)
	}
	for rest := table.Stream; len(rest) > 0; {
		var entry [3]int
		for i := range entry {
			wide, _ := strconv.Atoi(w[i+1])
			if wide > len(rest) {
				return nil, errors.New("the table ends within an entry")
			}
			for _, b := range rest[:wide] {
				entry[i] = entry[i]<<8 | int(b)
			}
			rest = rest[wide:]
		}
		list = append(list, entry)
	}
	if size := value(table.Text, "Size"); size != len(list) {
		return nil, fmt.Errorf("the table has %d entries of %d", len(list), size)
	}
	return list, nil
}

// objectAt is the object that stands at a place of a file.
func objectAt(file []byte, place int) (o Object, err error) {
	if place > len(file) {
		return o, fmt.Errorf("place %d lies behind the file", place)
	}
	head, rest, _ := bytes.Cut(file[place:], []byte(" 0 obj\n"))
	if o.Number, err = strconv.Atoi(string(head[:min(len(head), 20)])); err != nil {
		return o, err
	}
	text, _, _ := bytes.Cut(rest, []byte("\nendobj\n"))
	dictionary, _, is := bytes.Cut(text, []byte("\nstream\n"))
	o.Text = string(dictionary)
	if !is {
		return o, nil
	}
	length := value(o.Text, "Length")
	stream := rest[len(dictionary)+len("\nstream\n"):]
	if length < 0 || !bytes.HasPrefix(stream[min(length, len(stream)):], []byte("\nendstream\nendobj\n")) {
		return o, fmt.Errorf("the stream of object %d is not %d long", o.Number, length)
	}
	if o.Stream = stream[:length]; strings.Contains(o.Text, "/FlateDecode") {
		var z io.ReadCloser
		if z, err = zlib.NewReader(bytes.NewReader(o.Stream)); err == nil {
			o.Stream, err = io.ReadAll(z)
		}
	}
	return o, err
}

// packedAt are the objects that are packed at a place, in their order.
func packedAt(file []byte, place int) (list []Object, err error) {
	pack, err := objectAt(file, place)
	if err != nil {
		return nil, err
	}
	numbers, first := strings.Fields(string(pack.Stream)), value(pack.Text, "First")
	count := value(pack.Text, "N")
	if first < 0 || len(numbers) < 2*count {
		return nil, fmt.Errorf("nothing is packed at %d", place)
	}
	number := func(n int) int { v, _ := strconv.Atoi(numbers[n]); return v }
	for i := range count {
		from, to := first+number(2*i+1), len(pack.Stream)
		if i+1 < count {
			to = first + number(2*i+3)
		}
		list = append(list, Object{Number: number(2 * i), Text: strings.TrimSpace(string(pack.Stream[from:to]))})
	}
	return list, nil
}

// Text is a file object by object: streams of text as they are, others by their length and a sum.
func Text(file []byte) (string, error) {
	list, err := Objects(file)
	if err != nil {
		return "", err
	}
	head, _, _ := bytes.Cut(file, []byte("\n1 0 obj"))
	var out strings.Builder
	fmt.Fprintf(&out, "%q\n", head)
	packing := regexp.MustCompile(` ?/(Length \d+|Filter /FlateDecode)`)
	for _, o := range list {
		fmt.Fprintf(&out, "%d: %s\n", o.Number, packing.ReplaceAllString(o.Text, ""))
		switch {
		case o.Stream == nil:
		case utf8.Valid(o.Stream) && !bytes.ContainsRune(o.Stream, 0):
			out.WriteString(strings.TrimRight(string(o.Stream), "\n") + "\n")
		default:
			fmt.Fprintf(&out, "%d bytes, %.8x\n", len(o.Stream), sha256.Sum256(o.Stream))
		}
	}
	return out.String(), nil
}
