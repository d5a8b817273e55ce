package preview

import (
	"fmt"
	"net/http"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/stop"
)

// TestFiles: every kind of file is what its ending says, bears the layout's name, is offered
// by the report, and is the same bytes each time.
func TestFiles(t *testing.T) {
	s := aSite(t, Options{})
	publishing(t, s, seafarers)
	begins := map[string]string{".svg": "<?xml", ".png": "\x89PNG", ".jpg": "\xff\xd8\xff", ".pdf": "%PDF-", ".csv": "row,fabric", ".xlsx": "PK\x03\x04", ".html": "<!DOCTYPE html>"}
	report := body(ask(s, "/report", query("tab=5")))
	for _, f := range savedFiles() {
		r := ask(s, f.path, nil)
		text, end := body(r), filepath.Ext(f.suffix)
		if r.StatusCode != 200 || begins[end] == "" || !strings.HasPrefix(strings.ToLower(text), strings.ToLower(begins[end])) {
			t.Errorf("%s: %d, %.80q", f.path, r.StatusCode, text)
		}
		if got, want := r.Header.Get("Content-Disposition"), "attachment; filename=quilt"+f.suffix; got != want {
			t.Errorf("%s is handed over as %q", f.path, got)
		}
		if !strings.Contains(r.Header.Get("Content-Security-Policy"), "sandbox") {
			t.Errorf("%s may do more than be saved", f.path)
		}
		if !strings.Contains(report, `"save":"`+f.path[1:]+`","as":"quilt`+f.suffix+`"`) {
			t.Errorf("%s is not offered", f.path)
		}
		if body(ask(s, f.path, nil)) != text {
			t.Errorf("%s differs from one time to the next", f.path)
		}
	}
}

// TestNamesOfFiles: whatever a layout is called, its files' names are plain.
func TestNamesOfFiles(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]string{
		"/a/harbour.quilt": "harbour", "two words.quilt": "two words", "größe 2.quilt": "größe 2", "a\"b\r\nc.quilt": "a-b--c", "..quilt": "quilt",
		"<x>.quilt": "x", "a.b.quilt": "a-b", ".quilt": "quilt", "x\u202ey.quilt": "x-y", "CON:.quilt": "CON",
	} {
		if got := stem(name); got != want {
			t.Errorf("%q: %q, wanted %q", name, got, want)
		}
	}
	s := newSite("/x/größe \"2\".quilt", Options{})
	publishing(t, s, seafarers)
	if got := ask(s, "/save/picture.svg", nil).Header.Get("Content-Disposition"); got != "attachment; filename*=utf-8''gr%C3%B6%C3%9Fe%20-2.svg" {
		t.Errorf("handed over as %q", got)
	}
}

// TestOddStudies: what is asked for that there is not is told as that, and a diagram of an
// older picture is not given.
func TestOddStudies(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, seafarers)
	for address, want := range map[string]int{
		"/report?tab=7": 404, "/report?tab=-1": 404, "/report?tab=x": 404, "/report?tab=1": 200, "/report?tab=1&picture=1": 409,
		"/diagram?tab=1&number=0": 200, "/diagram?tab=1&number=999": 404, "/diagram?tab=1&number=-1": 404, "/diagram?tab=1&number=x": 404,
		"/diagram?tab=0&number=0": 404, "/diagram?tab=2&number=0&picture=1": 409, "/diagram?tab=2&number=0&picture=2": 200, "/diagram?tab=9": 404,
	} {
		path, q, _ := strings.Cut(address, "?")
		if r := ask(s, path, query(q)); r.StatusCode != want {
			t.Errorf("%s: %d, wanted %d", address, r.StatusCode, want)
		}
	}
}

// TestPlannedOnlyIfTheTopChanged: plans are made when they are first asked for, and again only
// when the top has changed.
func TestPlannedOnlyIfTheTopChanged(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, seafarers)
	plans := func() *plans { return s.studies.now.plans }
	if plans().Cut() || plans().Sewn() {
		t.Error("something was planned before anybody asked")
	}
	ask(s, "/report", query("tab=1"))
	if !plans().Cut() {
		t.Error("nothing was planned that was asked for")
	}
	cuts := plans().Cuts()
	if _, printed := plans().document.Made(); plans().Sewn() || printed {
		t.Error("more was planned than was asked for, or less")
	}
	ask(s, "/report", query("tab=2"))
	publishing(t, s, "# a comment\n"+seafarers)
	ask(s, "/report", query("tab=2"))
	ask(s, "/save/cutting.csv", nil)
	if plans().Cuts() != cuts {
		t.Error("a comment made the plan anew")
	}
	publishing(t, s, strings.Replace(seafarers, "strip   4", "strip   5", 1))
	ask(s, "/save/cutting.csv", nil)
	if _, made := s.studies.now.tabs[2].Made(); plans().Cuts() == cuts || made {
		t.Error("other strips left the plan as it was")
	}
}

// TestFewAtATime: files wait for their turn, no more of them than a few, and no report waits for a file.
func TestFewAtATime(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, seafarers)
	for range maxMaking { // as many files are being made as may be
		s.desk.making <- struct{}{}
	}
	answers := make(chan int, maxWaiting)
	for range maxWaiting - 1 {
		go func() { answers <- ask(s, "/save/cutting.csv", nil).StatusCode }()
	}
	for deadline := time.Now().Add(5 * time.Second); s.desk.asked.Load() < maxWaiting-1; time.Sleep(time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatal("they do not wait")
		}
	}
	if r := ask(s, "/report", query("tab=1")); r.StatusCode != http.StatusOK {
		t.Errorf("a report: %d", r.StatusCode)
	}
	s.desk.asked.Add(1)
	if r := ask(s, "/save/cutting.csv", nil); r.StatusCode != http.StatusServiceUnavailable || r.Header.Get("Retry-After") == "" {
		t.Errorf("one too many: %d", r.StatusCode)
	}
	s.desk.asked.Add(-1)
	for range maxMaking {
		<-s.desk.making
	}
	for range maxWaiting - 1 {
		if got := <-answers; got != 200 {
			t.Errorf("one that waited: %d", got)
		}
	}
}

// TestPanicInAFile: what breaks in making a file is told, and the preview lives on.
func TestPanicInAFile(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	s.routes["/x"] = route{"/x", "text/plain; charset=utf-8", func(s *site, w http.ResponseWriter, r *http.Request) {
		s.serveOf(w, r, func(*study, *stop.Sign) ([]byte, error) { panic("broken") })
	}}
	if r := ask(s, "/x", nil); r.StatusCode != 500 {
		t.Errorf("a panic: %d", r.StatusCode)
	}
	if r := ask(s, "/save/cutting.csv", nil); r.StatusCode != 200 {
		t.Errorf("the next one: %d", r.StatusCode)
	}
}

// TestPlansLeaveNothingBehind: many saves, each planned, printed and saved in every way,
// leave the memory as it was.
func TestPlansLeaveNothingBehind(t *testing.T) {
	s := aSite(t, Options{})
	one := func(n int) {
		publishing(t, s, strings.Replace(strings.Replace(seafarers, "#c04040", fmt.Sprintf("#c0%02x40", n), 1), "strip   4", fmt.Sprintf("strip   %d", 3+n%5), 1))
		for tab := range tabSources() {
			ask(s, "/report", query(fmt.Sprint("tab=", tab)))
		}
		ask(s, "/diagram", query("tab=2"))
		if n%10 == 0 {
			for _, f := range savedFiles() {
				ask(s, f.path, nil)
			}
		}
	}
	heap := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	for n := range 11 {
		one(n)
	}
	before := heap()
	for n := range judges.Of(10, 30) {
		one(n + 31)
	}
	after := heap()
	t.Logf("heap after the first saves %d KB, after more %d KB", before>>10, after>>10)
	if after > before+2<<20 {
		t.Errorf("the heap grew from %d to %d bytes", before, after)
	}
}
