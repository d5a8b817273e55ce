//go:build judges

package preview

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"regexp"
	"testing"
	"time"

	"eighthturn/samples"
)

// BenchmarkSite tells apart what a first visit takes: the engine's bytes, and those over the wire, the shell, the program's start, the first picture; and a save to
// the screen beside that of the preview of the same run.
func BenchmarkSite(b *testing.B) {
	e := engineForTests(b)
	plain, err := gzip.NewReader(bytes.NewReader(e.Packed))
	must(b, err)
	var packed bytes.Buffer
	small, err := gzip.NewWriterLevel(&packed, gzip.BestCompression) // as it is released; tests pack it quickly
	must(b, err)
	raw, err := io.Copy(small, plain)
	must(b, err)
	must(b, small.Close())
	for _, s := range samples.All() {
		if s.Name != "lanterns" && s.Name != "flotsam" {
			continue
		}
		b.Run(s.Name+"/opening", func(b *testing.B) {
			var shell, program, first float64
			for range b.N {
				h := newHost(b)
				r := onHost(h, newTab(b), s.Text)
				r.page.beforehand(`document.addEventListener('shown', () => performance.mark('picture'), { once: true });
					window.Worker = class extends Worker { constructor(...a) { super(...a); this.addEventListener('message', ({ data }) => { if (data.runs) performance.mark('program'); }); } };`)
				r.open()
				shell += eval[float64](r.page, `performance.getEntriesByType('paint')[0].startTime`)
				program += eval[float64](r.page, `performance.getEntriesByName('program')[0].startTime`)
				first += eval[float64](r.page, `performance.getEntriesByName('picture')[0].startTime`)
			}
			b.ReportMetric(float64(raw), "engine-bytes")
			b.ReportMetric(float64(packed.Len()), "packed-bytes")
			b.ReportMetric(shell/float64(b.N), "ms-to-shell")
			b.ReportMetric(program/float64(b.N), "ms-to-program")
			b.ReportMetric(first/float64(b.N), "ms-to-picture")
		})
		for where, serve := range map[string]func(testing.TB, string) served{"site": onSite, "preview": onPreview} {
			b.Run(s.Name+"/save/"+where, func(b *testing.B) { benchTyped(b, serve(b, s.Text), s.Text) })
		}
	}
}

// benchTyped saves what was typed in the pane, another color each time, and measures from the key to the picture on the screen.
func benchTyped(b *testing.B, r served, text string) {
	p := r.open()
	p.openText()
	eval[bool](p, watching)
	color := regexp.MustCompile(`(?m)^fabric +\S+ +#(\w{6})`).FindStringSubmatchIndex(text)
	var all []float64
	for b.Loop() {
		next := fmt.Sprintf("%s%06x%s", text[:color[2]], 0x203040+len(all)*0x010203, text[color[3]:])
		all = append(all, eval[float64](p, fmt.Sprintf(`new Promise((done) => {
			const field = document.getElementById('typed'), began = performance.timeOrigin + performance.now();
			window.painted = ({ Seen }) => done(Seen - began);
			field.value = %s;
			field.dispatchEvent(new InputEvent('input', { bubbles: true }));
			field.dispatchEvent(new KeyboardEvent('keydown', { key: 's', ctrlKey: true, bubbles: true, cancelable: true }));
		})`, encoded(next))))
		p.until(saved)
		time.Sleep(between)
	}
	b.ReportMetric(0, "ns/op")
	measured(b, "all", all)
}
