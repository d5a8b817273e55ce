//go:build judges

package preview

import (
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"
)

// BenchmarkAudition measures from the choice of a place to the second frame after the pictures of nine alternatives of a lap quilt are
// there, by the page's own clock, beside the smallest page that shows such an answer, which it is sent ready-made.
func BenchmarkAudition(b *testing.B) {
	need(b)
	r := start(b, quiltOf(12, 12, false), Options{})
	for name, choice := range map[string][2]string{"role": {"wedges of B1", "fabrics"}, "color": {"f3", "hue"}} {
		b.Run(name+"/preview", func(b *testing.B) { benchAudition(b, r.address, choice[0], choice[1]) })
	}
	b.Run("plain", func(b *testing.B) {
		response, err := http.Get(r.address + strings.TrimPrefix(auditionPath("f3", "", strings.Fields("f0 f1 f2 f4 f5 f6 f7 f8 f9")), "/"))
		must(b, err)
		answer, err := io.ReadAll(response.Body)
		must(b, err)
		benchPlainAudition(b, answer)
	})
}

func benchAudition(b *testing.B, address, place, among string) {
	p := newTab(b)
	p.load(address + "#report=audition&among=" + among)
	p.until(`document.querySelectorAll('#audition-place option').length > 1`)
	var list []float64
	for b.Loop() {
		b.StopTimer()
		p.choosePlace("f11") // with no pictures that are those to come
		p.until(auditionPainted(9))
		time.Sleep(300 * time.Millisecond) // what was asked for is there, and not the audition before
		b.StartTimer()
		list = append(list, eval[float64](p, fmt.Sprintf(`new Promise((done) => {
			const list = document.getElementById('audition-list'), select = document.getElementById('audition-place'), began = performance.now();
			new MutationObserver(async (_, seen) => {
				seen.disconnect();
				await Promise.all([...list.querySelectorAll('img')].map((i) => i.decode()));
				requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now() - began)));
			}).observe(list, { childList: true });
			select.value = %q;
			select.dispatchEvent(new Event('change'));
		})`, place)))
	}
	measured(b, "all", list)
}

// plainAudition shows an answer and nothing else.
const plainAudition = `<!doctype html><body><ol id="p"></ol><script>
window.run = async () => {
	const began = performance.now(), { alternatives } = await (await fetch('/audition')).json(), list = document.getElementById('p');
	const picture = (text) => { const i = new Image(); i.src = URL.createObjectURL(new Blob([Uint8Array.from(atob(text), (c) => c.charCodeAt(0))], { type: 'image/png' })); return i; };
	list.replaceChildren(...alternatives.map((a) => { const li = document.createElement('li'); li.append(picture(a.color), picture(a.gray), a.says); return li; }));
	await Promise.all([...list.querySelectorAll('img')].map((i) => i.decode()));
	return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now() - began))));
};</script>`

func benchPlainAudition(b *testing.B, answer []byte) {
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/audition" {
			w.Header().Set("Content-Type", "application/json")
			_, _ = w.Write(answer)
			return
		}
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = io.WriteString(w, plainAudition)
	}))
	defer s.Close()
	p := newTab(b)
	p.do(navigate(s.URL))
	p.until(`window.run`)
	var list []float64
	for b.Loop() {
		list = append(list, eval[float64](p, `window.run()`))
	}
	measured(b, "all", list)
}
