//go:build judges

package preview

import (
	"context"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestPrint: the whole quilt on one page, whatever the window shows.
func TestPrint(t *testing.T) {
	for name, text := range map[string]string{"small": lanterns, "large": quiltOf(24, 24, true)} {
		r, p := start(t, text, Options{}), newTab(t)
		p.load(r.address)
		for range 5 {
			p.key("+")
		}
		p.key("b")
		if name == "large" {
			p.key("r")
		}
		papers := map[string][]chromedp.PaperSize{"small": {chromedp.PaperA4, chromedp.PaperLetter}, "large": {chromedp.PaperA4}}
		for _, paper := range papers[name] {
			ctx, cancel := context.WithTimeout(p.ctx, patience)
			pdf, err := chromedp.Run(ctx, chromedp.PrintToPDF(chromedp.PDFPaper(paper), chromedp.PDFPrintBackground()))
			cancel()
			must(t, err)
			if n := strings.Count(string(pdf), "/Type /Page\n") + strings.Count(string(pdf), "/Type /Page "); n != 1 {
				t.Errorf("%s: %d pages", name, n)
			}
			if folder := os.Getenv("EIGHTHTURN_SHOTS"); folder != "" {
				put(t, folder+"/print-"+name+".pdf", string(pdf))
			}
		}
	}
}

// TestPhoneAndDark: nothing sticks out at the width of a phone, and the picture has room; the
// dark wall is dark.
func TestPhoneAndDark(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.do(chromedp.EmulateViewport(375, 740))
	p.load(r.address)
	if w := eval[int](p, `document.documentElement.scrollWidth`); w > 375 {
		t.Errorf("the page is %d wide on a phone of 375", w)
	}
	if h := eval[float64](p, `document.querySelector('.pane').getBoundingClientRect().height`); h < 300 {
		t.Errorf("the picture has %.0f pixels of height", h)
	}
	p.mouse(moved, 180, 330)
	p.picture("phone")
	p.dark(true)
	wall := eval[string](p, `getComputedStyle(document.body).backgroundColor`)
	var red, green, blue int
	_, err := fmt.Sscanf(wall, "rgb(%d, %d, %d)", &red, &green, &blue)
	must(t, err)
	if red > 80 || max(red, green, blue)-min(red, green, blue) > 4 {
		t.Errorf("the dark wall is %s: not dark, or not neutral", wall)
	}
	p.picture("phone-dark")
	p.do(chromedp.EmulateViewport(1000, 700))
	p.picture("middle-dark")
	p.do(chromedp.EmulateViewport(1400, 900))
	p.picture("wide-dark")
	p.dark(false)
	p.picture("wide")
}

// TestFlash: what the last save changed is shown once, and no more than that.
func TestFlash(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	put(t, r.file, strings.Replace(lanterns, "kites navy", "kites teal", 1))
	p.revision(2)
	p.key("n")
	d := eval[string](p, `document.querySelector('.flash.pulse').getAttribute('d')`)
	if n := strings.Count(d, "M"); n != 8 { // two kites in each of the four webs
		t.Errorf("%d patches flash: %s", n, d)
	}
	p.picture("flash")
}

// TestPolicyHolds: the page works under its own policy, and asks for nothing from outside.
func TestPolicyHolds(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.do(chromedp.Navigate("about:blank"))
	p.load(r.address)
	eval[bool](p, `(window.broken = [], document.addEventListener('securitypolicyviolation', (e) => window.broken.push(e.violatedDirective + ' ' + e.blockedURI)), true)`)
	for _, key := range []string{"v", "l", "s", "u", "a", "p", "d", "t", "r", "b", "k", "n", "c"} {
		p.key(key)
	}
	put(t, r.file, "nonsense\n"+lanterns)
	p.until(`!document.getElementById('faults').hidden`)
	if got := eval[[]string](p, `window.broken`); len(got) > 0 {
		t.Errorf("against the policy: %v", got)
	}
	outside := eval[[]string](p, `performance.getEntriesByType('resource').map((e) => e.name).filter((n) => !n.startsWith(location.origin))`)
	if len(outside) > 0 {
		t.Errorf("asked for from outside: %v", outside)
	}
	got := eval[string](p, `new Promise((r) => {
		document.addEventListener('securitypolicyviolation', (e) => r(e.violatedDirective), { once: true });
		const s = document.createElement('script'); s.textContent = 'window.ran = true'; document.head.append(s);
		setTimeout(() => r('it ran: ' + window.ran), 1000);
	})`)
	if !strings.HasPrefix(got, "script-src") {
		t.Errorf("a script put into the page: %s", got)
	}
}

// TestSavePicture: the link gives the picture as it is shown.
func TestSavePicture(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	p.key("v")
	p.key("s")
	link := eval[[]string](p, `[document.getElementById('save-picture').href, document.getElementById('save-picture').download]`)
	if link[1] != "quilt-value.svg" || !strings.Contains(link[0], "view=value&seams=1") {
		t.Errorf("the link is %v", link)
	}
	svg := eval[string](p, `fetch(document.getElementById('save-picture').href).then((r) => r.text())`)
	if !strings.Contains(svg, "#707070") || !strings.HasPrefix(svg, "<?xml") {
		t.Errorf("the picture begins %.200s", svg)
	}
}

// TestPageMemory: many saves leave the page's memory as it was. A hundred and fifty are
// tried here; the program's own memory is tried with two thousand.
func TestPageMemory(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	revision := 1
	save := func(n int) {
		text := strings.Replace(lanterns, "#b5532a", fmt.Sprintf("#b5%02x2a", n), 1)
		if n%2 == 0 {
			text = strings.Replace(text, "F W W F", "F F W F", 1)
		}
		put(t, r.file, text)
		revision++
		p.revision(revision)
	}
	counts := func() []float64 {
		return eval[[]float64](p, `(globalThis.gc?.(), [document.querySelectorAll('*').length, performance.memory.usedJSHeapSize])`)
	}
	for n := range 30 {
		save(n)
	}
	before := counts()
	for n := range 80 {
		save(n + 30)
	}
	after := counts()
	t.Logf("elements %.0f and %.0f, heap %.1f and %.1f MB", before[0], after[0], before[1]/1e6, after[1]/1e6)
	if math.Abs(after[0]-before[0]) > 8 || after[1] > before[1]+4e6 {
		t.Errorf("80 saves: %.0f elements became %.0f, a heap of %.1f MB became %.1f", before[0], after[0], before[1]/1e6, after[1]/1e6)
	}
}
