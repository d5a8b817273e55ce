//go:build judges

package preview

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// arrive waits for a picture, whichever page is on its way.
func (p *tab) arrive() {
	p.t.Helper()
	for deadline := time.Now().Add(patience); time.Now().Before(deadline); time.Sleep(20 * time.Millisecond) {
		if there, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](`document.querySelector('.pane svg g path') !== null && !document.querySelector('[data-action=text]').hidden`)); err == nil && there {
			return
		}
	}
	p.t.Fatalf("there is no picture; the page says %s", eval[string](p, `document.body.innerText`))
}

// findWorkers lets a test end the program of a page.
const findWorkers = `window.workers = []; window.Worker = class extends Worker { constructor(...a) { super(...a); window.workers.push(this); } };`

// TestSite: from the folder of `site` alone, on a host that knows nothing and forbids what pages need not do, a layout is begun by the keyboard,
// typed in, and there again when the page is loaded anew, in another tab, when the program was ended, and without a network.
func TestSite(t *testing.T) {
	h, p := newHost(t), newTab(t)
	p.beforehand(findWorkers)
	p.do(chromedp.Navigate(h.URL))
	p.until(`document.querySelectorAll('#beginnings img').length > 5 && document.querySelector('#beginnings img').naturalWidth > 100`)
	p.picture("site-gallery")
	eval[bool](p, `(document.querySelectorAll('#beginnings button')[1].focus(), true)`)
	p.key("\r")
	p.until(`document.getElementById('naming').open && document.activeElement.id === 'name'`)
	eval[bool](p, `(document.getElementById('name').value = 'mine 1', true)`)
	p.key(kb.Enter)
	p.arrive()
	p.openText()
	typed := p.typedLine("# one")
	p.do(chromedp.Reload())
	p.arrive()
	p.openText()
	p.has(typed)

	two := p.beside()
	two.do(chromedp.Navigate(eval[string](p, `location.href`)))
	two.arrive()
	two.openText()
	two.has(typed)
	p.has(two.typedLine("# two"))

	// What another page has saved, and this one has not heard of, is merged and not written over.
	two.keepUntold("mine 1.quilt", eval[string](p, typedText)+"# untold\n")
	if got := p.typedLine("# told"); !strings.HasSuffix(got, "# untold\n") || !strings.Contains(got, "# told\n") {
		t.Errorf("the page has\n%s", got)
	}

	// The program is ended in the midst of a save, and by a page that gives it up.
	p.caret("\n")
	p.key("# three\n")
	eval[bool](p, `((w) => { w.terminate(); document.dispatchEvent(new Event('visibilitychange')); w.dispatchEvent(new ErrorEvent('error', { message: 'killed' })); return true; })(workers.at(-1))`)
	p.until(saved + ` && workers.length === 2`)
	typed = eval[string](p, typedText)
	if got := two.stored("mine 1.quilt"); got != typed || !strings.Contains(got, "# three\n# told\n# two\n# one\n") {
		t.Errorf("kept is\n%s\ntyped was\n%s", got, typed)
	}
	two.has(typed)

	eval[bool](p, `navigator.serviceWorker.ready.then(() => true)`)
	h.Close()
	p.do(chromedp.Reload())
	p.arrive()
	p.openText()
	p.has(typed)
	if got := p.typedLine("# offline"); two.stored("mine 1.quilt") != got {
		t.Errorf("without a network the page keeps\n%s", got)
	}
	p.key("r")
	for _, wrong := range h.asked {
		t.Error(wrong)
	}
}

// typedLine types a line below the first one, waits until it is saved, and gives the whole text.
func (p *tab) typedLine(line string) string {
	p.t.Helper()
	p.caret("\n")
	p.key(line + "\n")
	p.until(saved)
	return eval[string](p, typedText)
}

// has waits until the pane has a text.
func (p *tab) has(text string) {
	p.t.Helper()
	p.until(typedText + fmt.Sprintf(" === %q", text))
}

// noRoom lets a test say that the browser's storage is full, before and after the program is ended: it then answers as browsers do
// (Storage Standard, "QuotaExceededError").
const noRoom = `const put = IDBObjectStore.prototype.put, room = new BroadcastChannel('room');
let full = false;
room.onmessage = ({ data }) => { full = data; };
room.postMessage('asked');
IDBObjectStore.prototype.put = function (...a) { if (full) throw new DOMException('full', 'QuotaExceededError'); return put.apply(this, a); };
`

// TestSiteWithoutRoom: where the browser has no room left, or keeps nothing at all, the page says so, draws what is typed, hands it out, and
// loses nothing when the program ends; once there is room it is kept.
func TestSiteWithoutRoom(t *testing.T) {
	h, p := newHost(t), newTab(t)
	p.beforehand(findWorkers)
	h.files["worker.js"] = append([]byte(noRoom), h.files["worker.js"]...)
	text := starfish(t)
	s := onHost(h, p, text)
	s.open()
	p.openText()
	full := func(is bool) {
		eval[bool](p, fmt.Sprintf(`(window.full = %v, window.room ??= Object.assign(new BroadcastChannel('room'), { onmessage: () => room.postMessage(full) }), room.postMessage(full), true)`, is))
	}
	full(true)
	p.caret("\n")
	p.key("# not kept\n")
	const notKept = `document.getElementById('text-state').textContent === 'not kept'`
	p.until(notKept + ` && !document.getElementById('unkept').hidden && document.getElementById('text-download').checkVisibility()`)
	p.picture("site-full")
	typed := eval[string](p, typedText)
	if s.says() != text {
		t.Error("there was room")
	}
	eval[bool](p, `((w) => { w.terminate(); w.dispatchEvent(new ErrorEvent('error', { message: 'killed' })); return true; })(workers.at(-1))`)
	p.until(`workers.length === 2`)
	p.key("# and more\n")
	p.until(`document.getElementById('text-state').textContent !== 'typing …' && ` + notKept)
	p.has(strings.Replace(typed, "# not kept\n", "# not kept\n# and more\n", 1))
	eval[bool](p, `((made) => { window.handed = new Promise((done) => { URL.createObjectURL = (blob) => { done(blob); return made.call(URL, blob); }; }); return true; })(URL.createObjectURL)`)
	eval[bool](p, `(document.querySelector('#unkept button').click(), true)`)
	if file := eval[string](p, `window.handed.then((blob) => blob.text())`); file != eval[string](p, typedText) {
		t.Errorf("handed out is\n%s", file)
	}
	full(false)
	p.key("# kept\n")
	p.until(saved + ` && document.getElementById('unkept').hidden`)
	if s.says() != eval[string](p, typedText) {
		t.Errorf("kept is\n%s", s.says())
	}

	refusing := newHost(t)
	refusing.files["worker.js"] = append([]byte("Object.defineProperty(self, 'indexedDB', { get() { throw new DOMException('refused', 'SecurityError'); } });\n"), refusing.files["worker.js"]...)
	none := newTab(t)
	none.do(chromedp.Navigate(refusing.URL))
	none.until(`document.querySelectorAll('#beginnings button').length > 5 && document.getElementById('unkept').textContent.includes('keeps nothing')`)
	eval[bool](none, `(document.querySelectorAll('#beginnings button')[1].click(), document.getElementById('begin').click(), true)`)
	none.arrive()
	none.press("text")
	none.until(notKept)
	text = eval[string](none, typedText)
	none.caret("\n")
	none.key("# held\n")
	none.until(notKept + ` && document.getElementById('unkept').checkVisibility()`)
	none.has(strings.Replace(text, "\n", "\n# held\n", 1))
}

// TestSiteLinks: a link holds the layout and what is shown; it is sent to nobody, replaces nothing, and where it is damaged, or long, that is said.
func TestSiteLinks(t *testing.T) {
	h, p := newHost(t), newTab(t)
	s := onHost(h, p, starfish(t))
	s.open()
	p.key("v")
	copied := func() []string {
		return eval[[]string](p, `(window.copied = '', navigator.clipboard.writeText = async (text) => { window.copied = text; }, document.querySelector('[data-action=link]').click(),
			new Promise((done) => { const look = () => window.copied && document.getElementById('note').textContent.startsWith('Link copied') ? done([window.copied, document.getElementById('note').textContent]) : setTimeout(look, 20); look(); }))`)
	}
	link := copied()
	if !strings.HasPrefix(link[0], h.URL+"/quilt.html#layout=") || len(link[0]) > 1500 || link[1] != "Link copied" {
		t.Errorf("the link has %d letters: %.80s; said is %q", len(link[0]), link[0], link[1])
	}
	s.save(lanterns)
	p.until(`document.getElementById('title').textContent === 'Harbour lanterns'`)
	guest := newTab(t)
	guest.do(chromedp.Navigate(link[0]))
	guest.arrive()
	guest.until(`document.getElementById('title').textContent !== 'quilt.quilt'`) // its picture is there
	if at := eval[string](guest, `location.search + location.hash`); at != "?quilt.quilt#view=value" || guest.text("#title") != "Starfish at low water" {
		t.Errorf("the guest is at %q, and sees %q", at, guest.text("#title"))
	}
	p.do(chromedp.Navigate(link[0]))
	p.arrive()
	if at := eval[string](p, `location.search`); at != "?quilt-2.quilt" || s.says() != lanterns {
		t.Errorf("with a layout of that name already there, the page is at %q", at)
	}
	s.save(lanterns + "# " + eval[string](p, `Array.from(crypto.getRandomValues(new Uint8Array(9000)), (n) => n.toString(36)).join('')`) + "\n")
	p.do(chromedp.Navigate(s.address))
	p.arrive()
	if long := copied(); !strings.Contains(long[1], "send the layout as a file") {
		t.Errorf("of a link of %d letters is said %q", len(long[0]), long[1])
	}
	for address, says := range map[string]string{
		link[0][:len(link[0])/2]: "This link is damaged", h.URL + "/quilt.html#layout=AAAA": "This link is damaged", h.URL + "/quilt.html?gone.quilt": "no layout of this name",
	} {
		guest.do(chromedp.Navigate("about:blank"), chromedp.Navigate(address))
		guest.until(fmt.Sprintf(`document.getElementById('waiting').textContent.includes(%q)`, says))
	}
	old := newTab(t)
	old.beforehand(`delete window.WebAssembly`)
	for _, at := range []string{"/", "/quilt.html?quilt.quilt"} {
		old.do(chromedp.Navigate(h.URL + at))
		old.until(`document.body.innerText.includes('too old for this page') && document.querySelector('a[href="about.html#program"]')`)
	}
	for _, wrong := range h.asked {
		t.Error(wrong)
	}
	eval[bool](guest, `fetch('https://example.com/').then(() => false, () => new Promise((done) => setTimeout(() => done(true), 300)))`)
	if h.mutex.Lock(); len(h.asked) == 0 || !strings.Contains(h.asked[0], "/report") {
		t.Errorf("not noticed: a page that asks elsewhere; the host was asked %q", h.asked)
	}
	h.mutex.Unlock()
}

// TestSiteIsAccessible: the pages that only the site has break no rule of accessible pages, and reach beyond no window.
func TestSiteIsAccessible(t *testing.T) {
	h, p := newHost(t), newTab(t)
	onHost(h, p, starfish(t))
	for page, until := range map[string]string{"about.html": `true`, "": `document.querySelectorAll('#held button').length === 2 && document.querySelectorAll('#beginnings img').length > 5`, "quilt.html?" + servedName: ""} {
		p.do(chromedp.Navigate(h.URL + "/" + page))
		if until == "" {
			p.arrive()
			p.openText()
		} else {
			p.until(until)
		}
		for _, size := range [][2]int64{{1280, 800}, {390, 844}} {
			p.do(chromedp.EmulateViewport(size[0], size[1]))
			for _, dark := range []bool{false, true} {
				p.dark(dark)
				rules := axeRules
				if dark || size[0] < 1000 {
					rules = axeContrast
				}
				for _, wrong := range p.judged(rules) {
					t.Errorf("%q, %d wide, dark %v: %s", page, size[0], dark, wrong)
				}
				if over := eval[int](p, `document.documentElement.scrollWidth - innerWidth`); over > 0 {
					t.Errorf("%q is %d pixels wider than a window of %d", page, over, size[0])
				}
				p.picture(fmt.Sprintf("site-%.5s-%d-%v", page, size[0], dark))
			}
		}
	}
}

// TestSiteFiles: layouts and photos come in by the file field, are seen at once, go out as a zip file, and are taken away.
func TestSiteFiles(t *testing.T) {
	h, p := newHost(t), newTab(t)
	p.do(chromedp.Navigate(h.URL))
	p.until(`document.querySelectorAll('#beginnings button').length > 5`)
	layout := strings.Replace(lanterns, "navy   #1f3350", "navy   swatch \"cloth/blue.png\"", 1)
	take := func(files string) {
		eval[bool](p, `(async () => {
			const dots = new OffscreenCanvas(32, 32), pen = dots.getContext('2d'), list = new DataTransfer(), field = document.getElementById('files');
			pen.fillStyle = '#123456';
			pen.fillRect(0, 0, 32, 32);
			const photo = await dots.convertToBlob();
			for (const file of `+files+`) list.items.add(file);
			field.files = list.files;
			field.dispatchEvent(new Event('change'));
			return true;
		})()`)
	}
	take(fmt.Sprintf(`[new File([%s], 'cloth.quilt'), new File([photo], 'blue.png'), new File(['x'], 'notes.doc')]`, encoded(layout)))
	p.until(`document.querySelectorAll('#held li').length === 2 && document.getElementById('shelf-said').textContent.startsWith('Added: cloth.quilt, blue.png. notes.doc was not added.')`)
	eval[bool](p, `(document.getElementById('shelf').scrollIntoView(), true)`)
	p.picture("site-files")
	eval[bool](p, `((made) => { window.handed = new Promise((done) => { URL.createObjectURL = (blob) => { done(blob); return made.call(URL, blob); }; }); return true; })(URL.createObjectURL)`)
	eval[bool](p, `(document.getElementById('save-all').click(), true)`)
	if head := eval[string](p, `window.handed.then((blob) => blob.text()).then((text) => text.slice(0, 2) + text.includes('cloth.quilt') + text.includes('blue.png'))`); head != "PKtruetrue" {
		t.Errorf("all files are %q", head)
	}
	p.do(chromedp.Navigate(h.URL + "/quilt.html?cloth.quilt"))
	p.arrive()
	p.until(`document.querySelector('g[fill="#123456"] path') && document.getElementById('faults').hidden`)
	p.do(chromedp.Navigate(h.URL))
	p.until(`document.querySelectorAll('#held li').length === 2`)
	eval[bool](p, `(window.confirm = () => true, document.querySelector('[aria-label="Remove blue.png"]').click(), true)`)
	p.until(`document.querySelectorAll('#held li').length === 1 && document.getElementById('shelf-said').textContent === 'blue.png is removed.'`)
	if p.stored("blue.png") != "" || p.stored("cloth.quilt") != layout {
		t.Error("the storage has other files")
	}
}
