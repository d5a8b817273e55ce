package pdf

import (
	"bufio"
	"fmt"
	"io"
	"strconv"

	"github.com/carlos7ags/folio/core"
)

// objects are those of a file, numbered from 1 on.
type objects []core.PdfObject

// What every file has stands at fixed numbers, so that it can be referred to before it is known.
const (
	catalogNumber = iota + 1
	pagesNumber
	resourcesNumber
	infoNumber
)

// reserve makes room for what every file has.
func (o *objects) reserve() { *o = make(objects, infoNumber) }

func at(number int) *core.PdfIndirectReference { return core.NewPdfIndirectReference(number, 0) }

// add gives an object the next number.
func (o *objects) add(object core.PdfObject) *core.PdfIndirectReference {
	*o = append(*o, object)
	return at(len(*o))
}

// write writes a file of the objects: a comment that names its marker, one of bytes beyond ASCII (ISO 32000-1, 7.5.2), the
// objects, the table of their places and the trailer.
func (o objects) write(w io.Writer, marker string) error {
	buffered := bufio.NewWriter(w)
	c := &counter{w: buffered}
	c.put("%PDF-1.7\n")
	if marker != "" {
		c.put("%" + marker + "\n")
	}
	c.put("%\xe2\xe3\xcf\xd3\n")
	places := make([]int64, len(o))
	for i, object := range o {
		places[i] = c.written
		c.put(strconv.Itoa(i+1) + " 0 obj\n")
		if c.err == nil {
			_, c.err = object.WriteTo(c)
		}
		c.put("\nendobj\n")
	}
	table := c.written
	c.put(fmt.Sprintf("xref\n0 %d\n%010d 65535 f \n", len(o)+1, 0))
	for _, place := range places {
		c.put(fmt.Sprintf("%010d 00000 n \n", place))
	}
	c.put(fmt.Sprintf("trailer\n<< /Size %d /Root %d 0 R /Info %d 0 R >>\nstartxref\n%d\n%%%%EOF\n", len(o)+1, catalogNumber, infoNumber, table))
	if c.err != nil {
		return c.err
	}
	return buffered.Flush()
}

// counter counts what is written, and writes nothing behind a fault.
type counter struct {
	w       io.Writer
	written int64
	err     error
}

func (c *counter) Write(b []byte) (int, error) {
	n, err := c.w.Write(b)
	c.written += int64(n)
	return n, err
}

func (c *counter) put(text string) {
	if c.err == nil {
		_, c.err = io.WriteString(c, text)
	}
}

// dictionary takes names and values in turn.
func dictionary(entries ...any) *core.PdfDictionary {
	d := core.NewPdfDictionary()
	for i := 0; i < len(entries); i += 2 {
		d.Set(entries[i].(string), entries[i+1].(core.PdfObject))
	}
	return d
}

func name(text string) *core.PdfName { return core.NewPdfName(text) }

func numbers(list ...float64) *core.PdfArray {
	a := core.NewPdfArray()
	for _, v := range list {
		a.Add(core.NewPdfReal(v))
	}
	return a
}
