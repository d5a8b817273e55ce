package credits

import (
	"encoding/xml"
	"strings"
	"testing"
)

// read reads Dublin Core out of RDF by the standard library's reader.
func read(t *testing.T, text string) (c Credits) {
	t.Helper()
	type list struct {
		Items []string `xml:"li"`
	}
	var rdf struct {
		Description struct {
			Title struct {
				Alt list `xml:"Alt"`
			} `xml:"http://purl.org/dc/elements/1.1/ title"`
			Creator struct {
				Seq list `xml:"Seq"`
			} `xml:"http://purl.org/dc/elements/1.1/ creator"`
			Rights struct {
				Alt list `xml:"Alt"`
			} `xml:"http://purl.org/dc/elements/1.1/ rights"`
		} `xml:"Description"`
	}
	if err := xml.Unmarshal([]byte(text), &rdf); err != nil {
		t.Fatal(err)
	}
	one := func(l list) string { return strings.Join(l.Items, "|") }
	d := rdf.Description
	return Credits{one(d.Title.Alt), one(d.Creator.Seq), one(d.Rights.Alt)}
}

// TestCreditsAreReadBack: whatever a line holds comes back, and what is not said is not there.
func TestCreditsAreReadBack(t *testing.T) {
	for _, c := range []Credits{
		{}, {Title: "Lanterns"}, {Author: "Zoë Ångström"}, {"Salt & <Rope>", `"Ann" 'B'`, "© 2026 Ann; ]]> share"}, {"風", "", "2026"},
	} {
		if got := read(t, c.RDF()); got != c {
			t.Errorf("%q comes back as %q", c, got)
		}
		if packet := string(c.Packet()); !strings.Contains(packet, c.RDF()) || !strings.HasPrefix(packet, "<?xpacket begin=\"\xef\xbb\xbf\"") {
			t.Errorf("no packet: %s", packet)
		}
	}
	if got := read(t, Credits{Title: "bell\x07"}.RDF()); got.Title != "bell\ufffd" {
		t.Errorf("%q", got.Title)
	}
	if (Credits{}).Said() || !(Credits{Copyright: "2026"}).Said() {
		t.Error("what is said is not told from what is not")
	}
}
