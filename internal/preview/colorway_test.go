package preview

import (
	"net/http"
	"strings"
	"testing"
)

// inColorways is a layout with two colorways.
const inColorways = seafarers + "colorway dusk buoy #334455\ncolorway dawn buoy #ffccaa\n"

// TestColorwayIsWhatItIsWrittenOut: whatever a page asks for in a colorway is what a preview that was begun in that colorway answers, but
// for the addresses and names of files, and without the name it is the quilt as written.
func TestColorwayIsWhatItIsWrittenOut(t *testing.T) {
	t.Parallel()
	plain, dusk, asWritten := aSite(t, Options{}), aSite(t, Options{Colorway: "dusk"}), aSite(t, Options{})
	show := func(s *site, text, colorway string) {
		d, err := drawWith(nil, variant{colorway: colorway})(t.Context(), text, drawing{})
		must(t, err)
		s.state.publish(reading{text: text}, d)
	}
	show(plain, inColorways, "")
	show(dusk, inColorways, "dusk")
	show(asWritten, inColorways, "")
	same := strings.NewReplacer("?colorway=dusk", "", "&amp;colorway=dusk", "", "\\u0026colorway=dusk", "", "-dusk", "", "?colorway=", "", "\\u0026colorway=", "")
	told := func(s *site, path, colorway string) string {
		path, q, _ := strings.Cut(path, "?")
		r := ask(s, path, query(strings.Trim(q+colorway, "&")))
		if r.StatusCode != http.StatusOK {
			t.Errorf("%s%s: %d", path, colorway, r.StatusCode)
		}
		text := same.Replace(body(r))
		text = strings.ReplaceAll(text, plain.state.instance, dusk.state.instance)
		return withoutKeys(strings.ReplaceAll(text, asWritten.state.instance, dusk.state.instance))
	}
	differs := 0
	for _, path := range []string{"/report?tab=0", "/report?tab=1", "/report?tab=2", "/report?tab=3", "/report?tab=4", "/report?tab=5", "/diagram?tab=1&number=0", "/picture.svg?view=colour", "/picture.svg?view=value", "/squint.png", "/save/cutting.csv", "/color?try=0-123456"} {
		in, begun, written := told(plain, path, "&colorway=dusk"), told(dusk, path, ""), told(plain, path, "")
		if in != begun {
			t.Errorf("%s in dusk is not what a preview in dusk says:\n%.1500s\n%.1500s", path, in, begun)
		}
		if in != written {
			differs++
		}
		if back := told(dusk, path, "&colorway="); back != written {
			t.Errorf("%s as it is written, of a preview in dusk, is not what it is:\n%.1500s\n%.1500s", path, back, written)
		}
	}
	if differs < 5 {
		t.Errorf("only %d answers differ in a colorway", differs)
	}
	for _, s := range []*site{plain, dusk} {
		if r := ask(s, "/report", query("tab=0&colorway=noon")); r.StatusCode != http.StatusNotFound {
			t.Errorf("a colorway that is not there: %d", r.StatusCode)
		}
	}
}

// withoutKeys is an answer without the keys of its content, which addresses of files are part of.
func withoutKeys(text string) string {
	for _, name := range []string{`"key":"`, `content=`} {
		for at := 0; ; {
			i := strings.Index(text[at:], name)
			if i < 0 {
				break
			}
			at += i + len(name)
			end := at + strings.IndexFunc(text[at:], func(r rune) bool { return (r < '0' || r > '9') && (r < 'a' || r > 'f') })
			text = text[:at] + text[end:]
		}
	}
	return text
}

// TestColorwaysFollowTheLayout: what is worked out in a colorway is of the newest layout, whose line for it may be all that changed.
func TestColorwaysFollowTheLayout(t *testing.T) {
	t.Parallel()
	for _, begun := range []string{"", "dawn"} {
		s := aSite(t, Options{})
		show := func(text string) string {
			d, err := drawWith(nil, variant{colorway: begun})(t.Context(), text, drawing{})
			must(t, err)
			s.state.publish(reading{text: text}, d)
			return body(ask(s, "/picture.svg", query("view=colour&colorway=dusk")))
		}
		if got := show(inColorways); !strings.Contains(got, "#334455") {
			t.Errorf("the picture in dusk has not its color:\n%.600s", got)
		}
		ask(s, "/report", query("tab=1")) // so that its plans are known to name no lines
		if got := show(strings.Replace(inColorways, "#334455", "#998877", 1)); !strings.Contains(got, "#998877") {
			t.Errorf("begun in %q: the picture in dusk has not its new color:\n%.600s", begun, got)
		}
	}
}
