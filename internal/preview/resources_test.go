package preview

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image/png"
	"net/http"
	"runtime"
	"strings"
	"testing"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render/pixels"
)

// query puts a question behind an address.
func query(text string) func(*http.Request) {
	return func(r *http.Request) { r.URL.RawQuery = text }
}

// publishing shows one text after another.
func publishing(t testing.TB, s *site, text string) {
	t.Helper()
	d := draw(text, drawing{})
	if d.top == nil {
		t.Fatalf("the layout is faulty: %v", d.faults)
	}
	s.state.publish(reading{text: text}, d)
}

func lettered(t testing.TB, r *http.Response) tabMessage {
	t.Helper()
	var l tabMessage
	if r.StatusCode != 200 {
		t.Fatalf("status %d: %s", r.StatusCode, body(r))
	}
	must(t, json.Unmarshal([]byte(body(r)), &l))
	return l
}

// TestReportsAreOfTheNewest: a page that asks for another picture than the newest is told so,
// and is told the picture that an answer belongs to.
func TestReportsAreOfTheNewest(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, seafarers)
	for path, kind := range map[string]string{"/report": "application/json; charset=utf-8", "/squint.png": "image/png"} {
		for text, want := range map[string]int{
			"": 200, "picture=2": 200, "picture=1": 409, "picture=3": 409, "picture=x": 409, "picture=2&instance=another": 409,
			"picture=2&instance=" + s.state.instance: 200,
		} {
			r := ask(s, path, query(text))
			if r.StatusCode != want {
				t.Errorf("%s?%s: %d, want %d", path, text, r.StatusCode, want)
			}
			if got := r.Header.Get("Content-Type"); want == 200 && got != kind {
				t.Errorf("%s is of the kind %q", path, got)
			}
		}
	}
	if l := lettered(t, ask(s, "/report", nil)); l.Picture != 2 || l.Instance != s.state.instance || !strings.Contains(string(l.Report), "harbour") {
		t.Errorf("the answer is of picture %d: %.200s", l.Picture, l.Report)
	}
}

// TestNoReportWithoutPicture: a layout that is faulty from the start has nothing to study.
func TestNoReportWithoutPicture(t *testing.T) {
	t.Parallel()
	s := newSite("/x/a.quilt", Options{})
	for _, path := range []string{"/report", "/squint.png"} {
		if r := ask(s, path, nil); r.StatusCode != 404 {
			t.Errorf("%s: %d", path, r.StatusCode)
		}
	}
}

// TestStudiedOnlyIfTheTopChanged: a comment more makes a new picture, and neither report nor
// squint anew; a page that holds the report already is not sent it again.
func TestStudiedOnlyIfTheTopChanged(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, seafarers)
	first := lettered(t, ask(s, "/report", nil))
	ask(s, "/squint.png", nil)
	made, squint := s.studies.now.tab(nil, 0), squintOf(t, s)
	publishing(t, s, "# a comment\n"+seafarers)
	again := lettered(t, ask(s, "/report", query("picture=3&key="+first.Key)))
	ask(s, "/squint.png", nil)
	if s.studies.now.tab(nil, 0) != made || &squintOf(t, s)[0] != &squint[0] {
		t.Error("a comment made the resources anew")
	}
	if again.Picture != 3 || again.Key != first.Key || again.Report != nil {
		t.Errorf("after a comment the page is sent %.200s", encoded(again))
	}
	publishing(t, s, strings.Replace(seafarers, "#c04040", "#f0c0c0", 1))
	other := lettered(t, ask(s, "/report", query("picture=4&key="+first.Key)))
	if s.studies.now.tab(nil, 0) == made || other.Key == first.Key || other.Report == nil {
		t.Error("another colour left the study as it was")
	}
	ask(s, "/squint.png", nil)
	if bytes.Equal(squintOf(t, s), squint) {
		t.Error("another colour left the squint as it was")
	}
}

// squintOf is the squint picture that a site has made already.
func squintOf(t testing.TB, s *site) []byte {
	t.Helper()
	made, ok := s.studies.now.squint.Made()
	if !ok {
		t.Fatal("nothing was squinted at")
	}
	return made.png
}

// TestSquintIsThePictures: the PNG is what package pixels makes of the newest top, of whole
// greys and as wide to its height as the quilt.
func TestSquintIsThePictures(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, seafarers)
	top := s.state.current().picture.top
	got, err := png.Decode(ask(s, "/squint.png", nil).Body)
	must(t, err)
	size, err := pixels.SizeOf(top, squintPixels)
	must(t, err)
	want, err := pixels.Squinting(top, size, pixels.Squint{})
	must(t, err)
	if got.Bounds() != want.Picture.Bounds() {
		t.Fatalf("the picture measures %v, wanted %v", got.Bounds(), want.Picture.Bounds())
	}
	for y := range size.Height {
		for x := range size.Width {
			r, g, b, a := got.At(x, y).RGBA()
			if wr, _, _, wa := want.Picture.At(x, y).RGBA(); r != wr || g != wr || b != wr || a != wa {
				t.Fatalf("pixel %d %d is %x %x %x %x, wanted %x %x", x, y, r, g, b, a, wr, wa)
			}
		}
	}
	study := contrast.Study(top, contrast.Options{})
	if study.Thresholds.Distance != viewedFrom || study.Thresholds.Blur != (pixels.Squint{Distance: viewedFrom}).Sigma() {
		t.Error("the study and the squint stand at different distances")
	}
}

// TestSavedViews: the picture as a file is drawn in every view that has a button.
func TestSavedViews(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, seafarers)
	drawn := map[string]string{}
	for _, view := range views() {
		text := body(ask(s, "/picture.svg", query("view="+view)))
		for other, same := range drawn {
			if same == text {
				t.Errorf("%s is drawn as %s is", view, other)
			}
		}
		drawn[view] = text
		if !bytes.Contains(asset("index.html"), []byte(`data-action="`+view+`"`)) {
			t.Errorf("%s has no button", view)
		}
	}
	for view, holds := range map[string]string{"squint": "data:image/png", "vanishing": "seams marked", "protan": "#"} {
		if !strings.Contains(drawn[view], holds) {
			t.Errorf("the view %s holds no %q", view, holds)
		}
	}
}

// TestTextOfReportsIsText: names from the layout reach the page as text that steers nothing.
func TestTextOfReportsIsText(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, strings.ReplaceAll(seafarers, "harbour", "ha\u0635rbour"))
	text := body(ask(s, "/report", nil))
	if strings.ContainsAny(text, "<>\x1b\u202e\u2028") || !strings.Contains(text, "ha\u0635rbour") {
		t.Errorf("the report holds what could run or steer: %.300s", text)
	}
}

// TestBrokenReport: a panic in a report is told in its place, the others are there, and the
// preview lives on.
func TestBrokenReport(t *testing.T) {
	t.Parallel()
	r := makeTabSafely(newPlans(draw(seafarers, drawing{}).top, nil, ""), tabSource{Name: "any", make: func(*plans) reportTab {
		var none []int
		return reportTab{Intro: fmt.Sprint(none[len(r0)])}
	}})
	if text := string(encoded(r)); !strings.Contains(text, "Something broke") || !strings.Contains(text, "index out of range") || strings.Contains(text, ".go") {
		t.Errorf("told: %s", text)
	}
}

const r0 = "anything"

// TestStudiesLeaveNothingBehind: many saves, each studied and squinted at, leave the
// memory as it was.
func TestStudiesLeaveNothingBehind(t *testing.T) {
	s := aSite(t, Options{})
	one := func(n int) {
		text := strings.Replace(seafarers, "#c04040", fmt.Sprintf("#c0%02x40", n), 1)
		if n%3 == 0 {
			text = strings.Replace(text, "strip   4", fmt.Sprintf("strip   %d", 3+n%5), 1)
		}
		publishing(t, s, text)
		ask(s, "/report", nil)
		ask(s, "/squint.png", nil)
	}
	heap := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	for n := range judges.Of(10, 20) {
		one(n)
	}
	before := heap()
	for n := range judges.Of(20, 50) {
		one(n + 30)
	}
	after := heap()
	t.Logf("heap after the first saves %d KB, after more %d KB", before>>10, after>>10)
	if after > before+1<<20 {
		t.Errorf("the heap grew from %d to %d bytes", before, after)
	}
}
