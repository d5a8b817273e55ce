package preview

import (
	"bytes"
	"encoding/json"
	"net/http"
	"strings"
	"testing"
)

// TestStudyOfATriedColor: what is asked for with a color that is tried is what the layout would give with it; without one it is
// the layout's own, before and after; a color that names nothing is told so.
func TestStudyOfATriedColor(t *testing.T) {
	s := aSite(t, Options{})
	written := strings.Replace(lanterns, "#b5532a", "#1f4450", 1)
	other := newSite("/somewhere/secret/quilt.quilt", Options{})
	other.state.publish(reading{text: written}, draw(written, drawing{}))
	content := func(s *site, address string) []byte {
		t.Helper()
		r := ask(s, address, nil)
		if r.StatusCode != http.StatusOK {
			t.Fatalf("%s: %d", address, r.StatusCode)
		}
		var b struct{ Report json.RawMessage }
		text := []byte(body(r))
		if json.Unmarshal(text, &b) == nil {
			text = b.Report
		}
		return text
	}
	for _, address := range []string{"/report?tab=0", "/squint.png?"} {
		own, want := content(s, address), content(other, address)
		if bytes.Equal(own, want) {
			t.Fatalf("%s: both colors give the same", address)
		}
		for range 2 {
			if got := content(s, address+"&try=2-1f4450"); !bytes.Equal(got, want) {
				t.Errorf("%s: a tried color gives\n%.300s, written it gives\n%.300s", address, got, want)
			}
			if got := content(s, address); !bytes.Equal(got, own) {
				t.Errorf("%s: the layout's own is not what it was", address)
			}
		}
		for _, odd := range []string{"x", "2", "2-", "2-1f445", "2-1f44501f", "-1-1f4450", "9-1f4450", "2-zzzzzz", "2-1f4450-2"} {
			if r := ask(s, address+"&try="+odd, nil); r.StatusCode != http.StatusNotFound {
				t.Errorf("%s, try %q: %d", address, odd, r.StatusCode)
			}
		}
	}
	if r := ask(s, "/color", nil); r.StatusCode != http.StatusNotFound {
		t.Errorf("no color: %d", r.StatusCode)
	}
	var got triedColor
	must(t, json.Unmarshal([]byte(body(ask(s, "/color?try=2-1f4450", nil))), &got))
	if len(got.Lines) != 1 || got.Lines[0] != (editedLine{5, "fabric  rust   #1f4450"}) || len(got.Seen) != 3 {
		t.Errorf("the color comes to %+v", got)
	}
}
