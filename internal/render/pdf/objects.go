package pdf

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strconv"

	"github.com/carlos7ags/folio/core"
)

// objects are those of a file, numbered from 1 on.
type objects struct{ list []core.PdfObject }

// packs says whether an object is packed with others: no stream may be, and what a file begins with and its pages stay where
// any program finds them.
func (o objects) packs(i int) bool {
	d, _ := o.list[i].(*core.PdfDictionary)
	if d == nil {
		_, array := o.list[i].(*core.PdfArray)
		return array
	}
	kind, _ := d.Get("Type").(*core.PdfName)
	return i >= infoNumber && (kind == nil || kind.Value != "Page")
}

// What every file has stands at fixed numbers, so that it can be referred to before it is known.
const (
	catalogNumber = iota + 1
	pagesNumber
	resourcesNumber
	infoNumber
)

// reserve makes room for what every file has.
func (o *objects) reserve() { o.list = make([]core.PdfObject, infoNumber) }

func at(number int) *core.PdfIndirectReference { return core.NewPdfIndirectReference(number, 0) }

// add gives an object the next number.
func (o *objects) add(object core.PdfObject) *core.PdfIndirectReference {
	o.list = append(o.list, object)
	return at(len(o.list))
}

// together is how many objects are packed in one stream.
const together = 2000

// packedLevel is how hard they are packed: the library's own level takes several times as long for a hundredth of the bytes.
const packedLevel = 5

// write writes a file of the objects: a comment that names its marker, one of bytes beyond ASCII (ISO 32000-1, 7.5.2), the
// objects, and a stream of their places that is the trailer too (7.5.7 and 7.5.8).
func (o objects) write(w io.Writer, marker string) error {
	buffered := bufio.NewWriter(w)
	c := &counter{w: buffered}
	c.put("%PDF-1.7\n")
	if marker != "" {
		c.put("%" + marker + "\n")
	}
	c.put("%\xe2\xe3\xcf\xd3\n")
	places := make([]core.XRefStreamEntry, len(o.list)+1)
	places[0] = core.XRefStreamEntry{Type: core.XRefEntryFree, Field3: 65535}
	put := func(number int, object core.PdfObject) {
		places[number] = core.XRefStreamEntry{Type: core.XRefEntryInUse, Field2: uint64(c.written)}
		c.put(strconv.Itoa(number) + " 0 obj\n")
		if c.err == nil {
			_, c.err = object.WriteTo(c)
		}
		c.put("\nendobj\n")
	}
	var packed []int
	for i, object := range o.list {
		if o.packs(i) {
			packed = append(packed, i)
		} else {
			put(i+1, object)
		}
	}
	for list := range slices.Chunk(packed, together) {
		stream, err := o.stream(places, list)
		if err != nil {
			return err
		}
		places = append(places, core.XRefStreamEntry{})
		put(len(places)-1, stream)
	}
	table := c.written
	number := len(places)
	places = append(places, core.XRefStreamEntry{Type: core.XRefEntryInUse, Field2: uint64(table)})
	trailer, err := core.BuildXRefStream([]core.XRefStreamSubsection{{Entries: places}}, len(places), dictionary("Root", at(catalogNumber), "Info", at(infoNumber)))
	if err != nil {
		return err
	}
	trailer.SetCompressLevel(packedLevel)
	put(number, trailer)
	c.put(fmt.Sprintf("startxref\n%d\n%%%%EOF\n", table))
	if c.err != nil {
		return c.err
	}
	return buffered.Flush()
}

// stream packs objects that are no streams into one, which will have the next number, and notes their places.
func (o objects) stream(places []core.XRefStreamEntry, packed []int) (*core.PdfStream, error) {
	list := make([]core.ObjStmEntry, 0, len(packed))
	for n, i := range packed {
		places[i+1] = core.XRefStreamEntry{Type: core.XRefEntryCompressed, Field2: uint64(len(places)), Field3: uint64(n)}
		list = append(list, core.ObjStmEntry{ObjectNumber: i + 1, Object: o.list[i]})
	}
	stream, err := core.BuildObjStm(list)
	if err == nil {
		stream.SetCompressLevel(packedLevel)
	}
	return stream, err
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
