package preview

import (
	"encoding/json"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"testing"
)

// inSizes is a layout with a colorway and two sizes, of which one is the quilt as written.
const inSizes = inColorways + "size lap\nsize queen across 8 down 9 border 5\n"

func sizedSite(t *testing.T, text string, in variant, tries ...string) *site {
	t.Helper()
	s := newSite("/somewhere/quilt.quilt", Options{})
	d, err := drawWith(nil, in, tries...)(t.Context(), text, drawing{})
	must(t, err)
	s.state.publish(reading{text: text}, d)
	return s
}

// TestSizeIsWhatItIsBegunIn: whatever a page asks for in a size, in a colorway too, is what a preview that was begun in that size answers,
// but for the addresses and names of files; the quilt as written is there from a preview that was begun in a size.
func TestSizeIsWhatItIsBegunIn(t *testing.T) {
	t.Parallel()
	plain, queen := sizedSite(t, inSizes, variant{}), sizedSite(t, inSizes, variant{size: "queen"})
	same := strings.NewReplacer("?size=queen&amp;", "?", "?size=queen\\u0026", "?", "?size=queen&", "?", "?size=queen", "", "?size=&amp;", "?", "?size=\\u0026", "?", "?size=", "", "-queen", "")
	told := func(s *site, path string, more ...string) string {
		path, q, _ := strings.Cut(path, "?")
		r := ask(s, path, query(strings.Trim(q+"&"+strings.Join(more, "&"), "&")))
		if r.StatusCode != http.StatusOK {
			t.Errorf("%s %v: %d", path, more, r.StatusCode)
		}
		return withoutKeys(strings.ReplaceAll(same.Replace(body(r)), plain.state.instance, queen.state.instance))
	}
	differs := 0
	audition := auditionPath("kites", "A", []string{"mist", "slate"})
	for _, path := range []string{"/report?tab=0", "/report?tab=1", "/report?tab=2", "/report?tab=3", "/report?tab=5", "/diagram?tab=1&number=0", "/picture.svg?view=colour", "/squint.png", "/save/cutting.csv", "/color?try=0-123456", "/auditions", audition} {
		for _, worn := range []string{"", "colorway=dusk"} {
			in, begun, written := told(plain, path, "size=queen", worn), told(queen, path, worn), told(plain, path, worn)
			if in != begun {
				t.Errorf("%s in queen, %q, is not what a preview in queen says:\n%.1500s\n%.1500s", path, worn, in, begun)
			}
			if in != written {
				differs++
			}
			if back := told(queen, path, "size=", worn); back != written {
				t.Errorf("%s as written, %q, of a preview in queen, is not what it is:\n%.1500s\n%.1500s", path, worn, back, written)
			}
		}
	}
	if differs < 14 {
		t.Errorf("only %d answers differ in a size", differs)
	}
	for _, s := range []*site{plain, queen} {
		if r := ask(s, "/report", query("tab=0&size=king")); r.StatusCode != http.StatusNotFound {
			t.Errorf("a size that is not there: %d", r.StatusCode)
		}
	}
}

// stateIn is what a page is told that shows a size and has a picture of a revision.
func stateIn(t *testing.T, s *site, size string, have string) (m message) {
	t.Helper()
	r := ask(s, "/state", query(url.Values{"instance": {s.state.instance}, "have": {have}, "size": {size}}.Encode()))
	must(t, json.Unmarshal([]byte(body(r)), &m))
	return m
}

// TestSizesFollowTheLayout: a page in a size is sent its picture, and after a save what that lacks; a size that is gone is answered with
// the quilt as it is shown otherwise; lines are those of the layout.
func TestSizesFollowTheLayout(t *testing.T) {
	t.Parallel()
	s := sizedSite(t, inSizes, variant{})
	show := func(text string) {
		d, err := drawWith(nil, variant{})(t.Context(), text, drawing{})
		must(t, err)
		s.state.publish(reading{text: text}, d)
	}
	m := stateIn(t, s, "Queen", "0")
	if m.Size != "queen" || m.Begun != "" || m.Picture != 1 || m.Base != 0 || len(m.Cells) != 72 || !slices.Equal(m.Sizes, []quiltSize{{"lap", true}, {"queen", false}}) || m.Plain != "Seafarers" {
		t.Errorf("in queen: size %q, begun %q, picture %d on %d, %d cells, sizes %v, title %q", m.Size, m.Begun, m.Picture, m.Base, len(m.Cells), m.Sizes, m.Plain)
	}
	var from sources
	must(t, json.Unmarshal(m.Sources, &from))
	for _, line := range from.Rows {
		if text := strings.Split(inSizes, "\n")[line-1]; !strings.Contains(text, "A B") && !strings.Contains(text, "B A") {
			t.Errorf("a row is said to be in line %d, %q", line, text)
		}
	}
	if m := stateIn(t, s, "queen", "1"); m.Quilt != nil || m.Cells != nil {
		t.Error("a page that has it is sent it again")
	}
	show(strings.Replace(inSizes, "#c04040", "#aa3030", 1))
	if m = stateIn(t, s, "queen", "1"); m.Picture != 2 || m.Base != 1 || m.Quilt != nil || len(m.Changed) > 0 || !strings.Contains(strings.ToLower(string(m.Fabrics)), "#aa3030") {
		t.Errorf("after a color is changed: picture %d on %d, %s", m.Picture, m.Base, m.Fabrics)
	}
	show(strings.Replace(inSizes, "across 8", "across 6", 1))
	if m = stateIn(t, s, "queen", "2"); m.Picture != 3 || len(m.Cells) != 54 {
		t.Errorf("after the size is changed: picture %d, %d cells", m.Picture, len(m.Cells))
	}
	show(inColorways)
	if m = stateIn(t, s, "queen", "3"); m.Size != "" || len(m.Sizes) != 0 || m.Picture != 4 || m.Quilt == nil {
		t.Errorf("after the size is gone: size %q, sizes %v, picture %d", m.Size, m.Sizes, m.Picture)
	}
}

// TestBegunInASize: a preview that is begun in a size shows it; of a name that the layout has not it says so, in the words of the commands.
func TestBegunInASize(t *testing.T) {
	t.Parallel()
	if n := sizedSite(t, inSizes, variant{size: "QUEEN"}).state.current(); n.picture.top.Size != "queen" || len(n.picture.top.Cells) != 72 {
		t.Errorf("begun in queen it shows %q with %d cells", n.picture.top.Size, len(n.picture.top.Cells))
	}
	tried := sizedSite(t, inSizes, variant{colorway: "dawn"}, "moss=#123456")
	if m := stateIn(t, tried, "queen", "0"); m.Colorway != "dawn" || !strings.Contains(strings.ToLower(string(m.Fabrics)), "#123456") || !strings.Contains(strings.ToLower(string(m.Fabrics)), "#ffccaa") {
		t.Errorf("begun in a colorway and with a color that is tried, a size has %q, %s", m.Colorway, m.Fabrics)
	}
	n := sizedSite(t, inSizes, variant{size: "king"}).state.current()
	if n.picture.top.Size != "" || len(n.faults) == 0 || !strings.Contains(n.faults[0].Text, `this layout has no size "king"; it is shown as written`) {
		t.Errorf("begun in a size that is not there: %q, %v", n.picture.top.Size, n.faults)
	}
}
