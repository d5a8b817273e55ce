//go:build judges

package preview

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"os"
	"strings"
	"testing"

	cdp "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"eighthturn/samples"
)

// served is a layout that a page shows, by a server or by the program in a worker beside it.
type served struct {
	address string
	page    *tab              // that shows it
	save    func(text string) // saves it elsewhere: in an editor, or on another page
	says    func() string
}

const servedName = "quilt.quilt"

// onPreview serves a layout as `preview --edit` does.
func onPreview(t testing.TB, text string) served {
	r := start(t, text, Options{Edit: true})
	return served{r.address, newTab(t), func(text string) { put(t, r.file, text) }, func() string {
		b, err := os.ReadFile(r.file)
		must(t, err)
		return string(b)
	}}
}

// onSite serves a layout from the folder of `site`.
func onSite(t testing.TB, text string) served {
	h := newHost(t)
	s := onHost(h, newTab(t), text)
	t.Cleanup(func() {
		for _, wrong := range h.asked {
			t.Error(wrong)
		}
	})
	return s
}

func onHost(h *webHost, p *tab, text string) served {
	other := p.beside()
	other.do(chromedp.Navigate(h.URL + "/about.html"))
	other.keep(servedName, text)
	return served{h.URL + "/quilt.html?" + servedName, p, func(text string) { other.keep(servedName, text) }, func() string { return other.stored(servedName) }}
}

// opened is a script that does something with the storage of the browser; done gives back its value.
func opened(script string) string {
	return `new Promise((done) => {
		const opening = indexedDB.open('eighthturn', 1);
		opening.onupgradeneeded = () => { opening.result.createObjectStore('files', { keyPath: 'name' }); opening.result.createObjectStore('choices'); };
		opening.onsuccess = () => { const transaction = opening.result.transaction('files', 'readwrite'), files = transaction.objectStore('files'); opening.result.close(); ` + script + `};
	})`
}

// keep writes a layout as another page would, and tells the others.
func (p *tab) keep(name, text string) {
	p.t.Helper()
	p.keepUntold(name, text)
	eval[bool](p, fmt.Sprintf(`(new BroadcastChannel('eighthturn').postMessage(%q), true)`, name))
}

// keepUntold writes a layout as another page does of which the others have not heard yet.
func (p *tab) keepUntold(name, text string) {
	p.t.Helper()
	eval[bool](p, opened(fmt.Sprintf(`files.put({ name: %q, bytes: new TextEncoder().encode(%s), version: String(Math.random()) });
		transaction.oncomplete = () => done(true);`, name, encoded(text))))
}

// stored is what the browser keeps under a name.
func (p *tab) stored(name string) string {
	p.t.Helper()
	return eval[string](p, opened(fmt.Sprintf(`files.get(%q).onsuccess = (e) => done(e.target.result ? new TextDecoder().decode(e.target.result.bytes) : '');`, name)))
}

// open loads the page of a layout, and waits until it is seen and may be typed in.
func (s served) open() *tab {
	s.page.do(chromedp.Navigate(s.address))
	s.page.arrive()
	s.page.watching()
	return s.page
}

// beforehand runs a script on every page before the page's own.
func (p *tab) beforehand(script string) {
	p.t.Helper()
	_, err := chromedp.Call(p.ctx, cdp.AddScriptToEvaluateOnNewDocument, cdp.AddScriptToEvaluateOnNewDocumentParams{Source: script})
	must(p.t, err)
}

// TestOnBothWays: a page does the same with a server behind it and with the program in a worker beside it.
func TestOnBothWays(t *testing.T) {
	text := starfish(t)
	for way, serve := range map[string]func(testing.TB, string) served{"server": onPreview, "worker": onSite} {
		t.Run(way, func(t *testing.T) {
			s := serve(t, text)
			p := s.open()
			p.openText()
			if got := eval[string](p, typedText); got != text {
				t.Fatalf("the pane has\n%s", got)
			}
			typedAndMended(t, s, text)
			savedElsewhere(t, s, text)
			reportsAndFiles(t, p)
		})
	}
}

// typedAndMended breaks the layout by typing, mends it as the hint says, and undoes and redoes that.
func typedAndMended(t *testing.T, s served, text string) {
	p := s.page
	p.caret("\nblo")
	p.key("x")
	p.until(saved + ` && !document.getElementById('text-fault').hidden && document.querySelector('#typed-layer .wrong')?.textContent === 'bloxck'`)
	broken := strings.Replace(text, "\nblock", "\nbloxck", 1)
	if s.says() != broken || eval[int](p, `document.querySelectorAll('.pane svg g path').length`) == 0 {
		t.Errorf("broken, it says\n%s", s.says())
	}
	p.until(`document.querySelector('#text-fault button').checkVisibility()`)
	eval[bool](p, `(document.querySelector('#text-fault button').click(), true)`)
	p.until(`document.getElementById('text-fault').hidden && ` + saved + ` && ` + typedText + fmt.Sprintf(` === %q`, text))
	for _, step := range []struct{ button, says string }{{"undo", broken}, {"redo", text}} {
		eval[bool](p, `(document.getElementById('text-`+step.button+`').click(), true)`)
		p.until(saved + ` && ` + typedText + fmt.Sprintf(` === %q`, step.says))
		if s.says() != step.says {
			t.Errorf("after %s it says\n%s", step.button, s.says())
		}
	}
}

// savedElsewhere saves other lines, and then the same ones, while the layout is typed in.
func savedElsewhere(t *testing.T, s served, text string) {
	p := s.page
	p.caret("title")
	p.key(" ")
	s.save(text + "# theirs\n")
	both := strings.Replace(text, "title", "title ", 1) + "# theirs\n"
	p.until(typedText + fmt.Sprintf(` === %q && `, both) + saved)
	if s.says() != both {
		t.Errorf("merged is\n%s", s.says())
	}
	p.key("y")
	theirs := strings.Replace(both, "title ", "title Z", 1)
	s.save(theirs)
	p.until(`!document.getElementById('conflict').hidden`)
	eval[bool](p, `(document.getElementById('take-theirs').click(), true)`)
	p.until(typedText + fmt.Sprintf(` === %q && `, theirs) + saved)
	s.save(text)
	p.until(typedText + fmt.Sprintf(` === %q && `, text) + saved)
}

// reportsAndFiles looks at reports, diagrams, the squint, the printed pattern and what is saved.
func reportsAndFiles(t *testing.T, p *tab) {
	p.press("squint")
	p.until(`document.querySelector('.pane svg image')`)
	p.press("colour")
	p.press("report")
	p.until(reporting)
	tab := func(name string) {
		eval[bool](p, fmt.Sprintf(`([...document.querySelectorAll('#report-tabs button')].find((e) => e.textContent === %q).click(), true)`, name))
	}
	tab("Cutting")
	p.until(reporting + ` && document.querySelector('#report-rows .has-diagram')`)
	eval[bool](p, `(document.querySelector('#report-rows .has-diagram').click(), true)`)
	p.until(`document.querySelector('#diagram-content svg')`)
	tab("Pattern")
	p.until(`document.querySelector('#report-page:not(.unstyled)')?.contentDocument?.querySelector('h1')?.checkVisibility()`)
	styled := eval[[]string](p, `(() => { const { contentDocument: d, contentWindow: w } = document.getElementById('report-page'), e = d.querySelector('.swatch');
		return [w.getComputedStyle(d.querySelector('h1')).fontFamily, String(w.getComputedStyle(e).backgroundColor !== 'rgba(0, 0, 0, 0)'), String([...d.images].every((i) => i.naturalWidth > 0 || i.loading === 'lazy'))]; })()`)
	if strings.Contains(styled[0], "Times") || styled[1] != "true" || styled[2] != "true" {
		t.Errorf("the printed pattern is shown as %q", styled)
	}
	p.picture("pattern-" + t.Name()[strings.LastIndex(t.Name(), "/")+1:])
	tab("Files")
	p.until(reporting)
	eval[bool](p, `((made) => { window.handed = new Promise((done) => { URL.createObjectURL = (blob) => { done(blob); return made.call(URL, blob); }; }); return true; })(URL.createObjectURL)`)
	eval[bool](p, `(document.querySelector('#report-rows a').dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true })), true)`)
	if file := eval[string](p, `window.handed.then((blob) => blob.text())`); !strings.HasPrefix(file, "<?xml") && !strings.HasPrefix(file, "<svg") {
		t.Errorf("saved is %.60q", file)
	}
}

// TestSiteGivesTheSameFiles: for every sample the program in a worker gives the very bytes that it gives elsewhere: pictures, drawn and in
// pixels, pages, tables and reports; the printed pattern of one.
func TestSiteGivesTheSameFiles(t *testing.T) {
	h, p := newHost(t), newTab(t)
	p.do(chromedp.Navigate(h.URL + "/about.html"))
	for i, sample := range samples.All() {
		p.keep(sample.Name+".quilt", sample.Text)
		here := aSite(t, Options{})
		here.studies.name = sample.Name
		publishing(t, here, sample.Text)
		list := []string{"save/picture.svg", "squint.png", "save/picture.pdf", "report?tab=0"}
		if i == 0 {
			list = append(list, "save/picture.png", "save/cutting.csv", "save/templates.pdf", "save/pattern.pdf", "report?tab=1", "report?tab=2")
		}
		for _, address := range list {
			want := body(ask(here, "/"+address, nil))
			got := p.asked("quilt/"+sample.Name+".quilt/", address)
			if strings.HasPrefix(address, "report") {
				want, got = withoutInstance(want), withoutInstance(got)
			}
			if !bytes.Equal([]byte(want), []byte(got)) {
				t.Errorf("%s of %s: %d bytes, want %d", address, sample.Name, len(got), len(want))
			}
		}
	}
}

// withoutInstance is a report without the name of the run and the key.
func withoutInstance(report string) string {
	_, rest, _ := strings.Cut(report, `"report":`)
	return rest
}

// asked is what the program in a worker of its own answers.
func (p *tab) asked(base, address string) string {
	p.t.Helper()
	script := fmt.Sprintf(`(async () => {
		window.asker ??= await new Promise((done) => {
			const worker = new Worker('worker.js'), waiting = new Map();
			worker.onmessage = ({ data }) => { if (data.runs) done({ worker, waiting }); else waiting.get(data.id)?.(data); };
			worker.postMessage({ begin: true, rescued: [] });
		});
		const { worker, waiting } = window.asker, id = waiting.size + 1, ask = (address) => new Promise((done) => {
			const id = waiting.size + 1;
			waiting.set(id, done);
			worker.postMessage({ id, address });
		});
		for (let status = 0; status !== 200; ) {
			const { status: now, bytes } = await ask(%q);
			status = now;
			if (status === 200) return new Promise((done) => { const r = new FileReader(); r.onload = () => done(r.result.split(',')[1] ?? ''); r.readAsDataURL(new Blob([bytes])); });
			if (status !== 404 && status !== 409) return status + new TextDecoder().decode(bytes);
			await new Promise((r) => setTimeout(r, 20));
		}
	})()`, base+address)
	content, err := base64.StdEncoding.DecodeString(eval[string](p, script))
	must(p.t, err)
	return string(content)
}
