//go:build judges

package preview

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// BenchmarkSave measures from a save until its picture is seen in the browser ("all"), and until the second frame after it was drawn up,
// which Chromium may begin before the first is painted ("frame"), beside a page with nothing behind it: watch, send, replace one polygon
// a patch.
func BenchmarkSave(b *testing.B) {
	need(b)
	for _, size := range []struct {
		name          string
		columns, rows int
		banded        bool
	}{{"lap-12x12", 12, 12, false}, {"king-24x24-bands", 24, 24, true}, {"20000-patches", 58, 58, false}} {
		text := quiltOf(size.columns, size.rows, size.banded)
		for _, e := range edits {
			if size.banded && e.name == "whole-layout" {
				continue // a strip set comes to one strip only
			}
			b.Run(size.name+"/"+e.name+"/preview", func(b *testing.B) { benchPreview(b, text, e.edit, "") })
			b.Run(size.name+"/"+e.name+"/reporting", func(b *testing.B) { benchPreview(b, text, e.edit, "ra") })
			b.Run(size.name+"/"+e.name+"/plain", func(b *testing.B) { benchPlain(b, text, e.edit) })
		}
	}
}

func measured(b *testing.B, name string, list []float64) {
	slices.Sort(list)
	b.ReportMetric(list[len(list)/2], name+"-p50-ms")
	if name == "all" {
		b.ReportMetric(list[len(list)*95/100], name+"-p95-ms")
	}
}

// paint is what the page tells of one change, in milliseconds of its own clock.
type paint struct{ Save, Told, Arrived, Done, Framed, Seen float64 }

// watching lets a page tell when the picture that it has just drawn up is seen: with it a word is written, and the browser says when the
// frame with that word was presented (Element Timing, W3C draft; Chromium gives it in steps of 4 ms).
const watching = `(() => {
	const waiting = new Map(), at = (v) => performance.timeOrigin + v, frame = () => new Promise((r) => requestAnimationFrame(() => r(performance.now())));
	new PerformanceObserver((list) => { for (const e of list.getEntries()) waiting.get(e.identifier)?.(e.renderTime); }).observe({ type: 'element' });
	window.look = async (Save, parts) => {
		const word = document.createElement('p'), seen = new Promise((r) => waiting.set(String(Save), r)), second = frame().then(frame);
		document.getElementById('word')?.remove();
		word.id = 'word';
		word.textContent = String(Save);
		word.setAttribute('elementtiming', Save);
		Object.assign(word.style, { position: 'fixed', top: 0, left: 0, margin: 0, font: '9px sans-serif' });
		document.body.append(word);
		window.painted?.({ Save, ...parts, Framed: at(await second), Seen: at(await seen) });
	};
	document.addEventListener('shown', ({ detail }) => window.look(detail.revision, { Told: at(detail.began), Arrived: at(detail.arrived), Done: at(detail.done) }));
	return true;
})()`

func milliseconds(t time.Time) float64 { return float64(t.UnixMicro()) / 1000 }

// between is how long the browser is left alone before a save.
const between = 150 * time.Millisecond

// awaitPaint begins to wait until the page tells of a save by its number.
func awaitPaint(p *tab, save int) chan paint {
	done := make(chan paint, 1)
	go func() {
		done <- eval[paint](p, fmt.Sprintf(`new Promise((r) => { window.painted = (p) => { if (p.Save === %d) r(p); }; })`, save))
	}()
	time.Sleep(between)
	return done
}

// numbered is a layout with the number of its save.
func numbered(text string, save int) string { return fmt.Sprintf("# save %d\n", save) + text }

// publication is when a save was published, and the parts before.
type publication struct {
	timings
	at time.Time
}

// benchPreview presses some keys first: with "ra" the report and its marks are in sight. Saves follow one another faster than a hand can save,
// so the page works the report out when they have come to rest.
func benchPreview(b *testing.B, text string, edit func(string, int) string, keys string) {
	file := filepath.Join(b.TempDir(), "a.quilt")
	put(b, file, numbered(text, 0))
	ctx, cancel := context.WithCancel(context.Background())
	addresses, published, ended := make(chan string, 1), make(chan publication, 100), make(chan error, 1)
	o := Options{NoOpen: true, opened: func(a string) { addresses <- a }, published: func(_ *snapshot, t timings) { published <- publication{t, time.Now()} }}
	go func() { ended <- Run(ctx, file, o) }()
	defer func() { cancel(); <-ended }()
	p := newTab(b)
	p.load(<-addresses)
	<-published
	for _, key := range keys {
		p.key(string(key))
	}
	eval[bool](p, watching)
	parts := map[string][]float64{}
	n := 0
	for b.Loop() {
		b.StopTimer()
		n++
		next := numbered(edit(text, n), n)
		done := awaitPaint(p, n+1)
		b.StartTimer()
		saved := time.Now()
		put(b, file, next)
		t := <-published
		end := <-done
		b.StopTimer()
		add := func(name string, v float64) { parts[name] = append(parts[name], v) }
		add("all", end.Seen-milliseconds(saved))
		add("frame", end.Framed-milliseconds(saved))
		add("notice", float64(t.found.Sub(saved).Microseconds())/1000)
		add("draw", float64(t.draw.Microseconds())/1000)
		add("ready", float64(t.at.Sub(t.found.Add(t.draw)).Microseconds())/1000)
		add("event", end.Told-milliseconds(t.at))
		add("send", end.Arrived-end.Told)
		add("page", end.Done-end.Arrived)
		add("paint", end.Seen-end.Done)
		b.StartTimer()
	}
	for name, list := range parts {
		measured(b, name, list)
	}
}

// plainPage is the smallest page that follows a file: no product behind it.
const plainPage = `<!doctype html><body style="margin:0"><div id="p"></div><script>
async function show() {
	const text = await (await fetch('/picture')).text();
	document.getElementById('p').innerHTML = text;
	window.look?.(Number(document.querySelector('svg').dataset.save), {});
}
new EventSource('/events').onmessage = show;
show();
</script>`

func benchPlain(b *testing.B, text string, edit func(string, int) string) {
	file := filepath.Join(b.TempDir(), "a.quilt")
	put(b, file, text)
	s := newPlain(b, file)
	p := newTab(b)
	p.do(navigate(s.URL))
	p.until(`document.querySelector('svg')`)
	eval[bool](p, watching)
	all, frame := []float64{}, []float64{}
	n := 0
	for b.Loop() {
		b.StopTimer()
		n++
		next := numbered(edit(text, n), n)
		done := awaitPaint(p, n)
		b.StartTimer()
		saved := time.Now()
		put(b, file, next)
		end := <-done
		all, frame = append(all, end.Seen-milliseconds(saved)), append(frame, end.Framed-milliseconds(saved))
	}
	measured(b, "all", all)
	measured(b, "frame", frame)
}

// newPlain serves plainPage for a file until the benchmark ends.
func newPlain(b *testing.B, file string) *httptest.Server {
	w, err := fsnotify.NewWatcher()
	must(b, err)
	must(b, w.Add(filepath.Dir(file)))
	var mu sync.Mutex
	var picture []byte
	changed := make(chan bool, 1)
	draw := func() {
		text, _ := os.ReadFile(file)
		if d, _, _ := layout.Read(string(text)); d != nil {
			mu.Lock()
			save := 0
			_, _ = fmt.Sscanf(string(text), "# save %d", &save) // there is none at first
			picture = polygons(quilt.Lay(d), save)
			mu.Unlock()
			select {
			case changed <- true:
			default:
			}
		}
	}
	draw()
	go func() {
		for e := range w.Events {
			if e.Has(fsnotify.Write) {
				draw()
			}
		}
	}()
	mux := http.NewServeMux()
	mux.HandleFunc("/{$}", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		fmt.Fprint(w, plainPage)
	})
	mux.HandleFunc("/picture", func(w http.ResponseWriter, _ *http.Request) {
		mu.Lock()
		defer mu.Unlock()
		_, _ = w.Write(picture)
	})
	mux.HandleFunc("/events", func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "text/event-stream")
		for {
			select {
			case <-changed:
				fmt.Fprint(w, "data: 1\n\n")
				w.(http.Flusher).Flush()
			case <-r.Context().Done():
				return
			}
		}
	})
	s := httptest.NewServer(mux)
	b.Cleanup(func() { w.Close(); s.CloseClientConnections(); s.Close() })
	return s
}

// polygons is a top as one polygon a face.
func polygons(t *quilt.Top, save int) []byte {
	inches := func(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }
	b := fmt.Appendf(nil, `<svg data-save="%d" viewBox="0 0 %.2f %.2f" width="1100" height="860">`, save, inches(t.Outer.Max.X), inches(t.Outer.Max.Y))
	for i := range t.Faces {
		b = append(b, `<polygon points="`...)
		for _, p := range t.Faces[i].Outline {
			b = fmt.Appendf(b, "%.4f,%.4f ", inches(p.X), inches(p.Y))
		}
		b = fmt.Appendf(b, `" fill="%s"/>`, t.Fabrics[t.Faces[i].Fabric].Colour.Hex())
	}
	return append(b, "</svg>"...)
}
