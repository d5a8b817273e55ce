// Package credits says in a file of any kind what a quilt is called, who designed it and what its copyright notice is: as RDF in
// the words of Dublin Core (DCMI Metadata Terms; RDF/XML), the way XMP has them (ISO 16684-1, 7.4 and 8.3).
package credits

import (
	"bytes"
	"encoding/xml"
	"strings"
)

// Credits are one line each, "" for what is not said.
type Credits struct{ Title, Author, Copyright string }

// Said says whether anything is.
func (c Credits) Said() bool { return c != Credits{} }

// Tool is the name that files give for what made them.
const Tool = "eighthturn"

// RDF is the credits as an element of XML, without a line end: a title and rights in the usual language, and a list of one author.
func (c Credits) RDF() string {
	var b strings.Builder
	b.WriteString(`<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" ` +
		`xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">`)
	add := func(name, list, item, text string) {
		if text != "" {
			b.WriteString("<dc:" + name + "><rdf:" + list + "><" + item + ">" + escaped(text) + "</rdf:li></rdf:" + list + "></dc:" + name + ">")
		}
	}
	const usual = `rdf:li xml:lang="x-default"`
	add("title", "Alt", usual, c.Title)
	add("creator", "Seq", "rdf:li", c.Author)
	add("rights", "Alt", usual, c.Copyright)
	b.WriteString("<xmp:CreatorTool>" + Tool + "</xmp:CreatorTool></rdf:Description></rdf:RDF>")
	return b.String()
}

// Packet is the credits as XMP that stands in a file of another kind, not to be changed in its place (ISO 16684-1, 7.3).
func (c Credits) Packet() []byte {
	return []byte("<?xpacket begin=\"\ufeff\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?><x:xmpmeta xmlns:x=\"adobe:ns:meta/\">" + c.RDF() + "</x:xmpmeta><?xpacket end=\"r\"?>")
}

// escaped is text for an element; what XML cannot hold becomes U+FFFD.
func escaped(text string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(text)) // writing to memory cannot fail
	return b.String()
}
