//go:build judges

package preview

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// axeRules are those of WCAG 2.0 to 2.2 at the levels A and AA, and what its makers call good practice.
const axeRules = `axe.run(document, { iframes: false, resultTypes: ['violations'], runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }).then((r) =>
	r.violations.flatMap((v) => v.nodes.map((n) => v.id + ': ' + n.target.join(' ') + ': ' + (n.failureSummary ?? '').split('\n').slice(1).join(' ').trim())))`

// axeContrast is the one rule that is another in the dark.
const axeContrast = `axe.run(document, { iframes: false, resultTypes: ['violations'], runOnly: { type: 'rule', values: ['color-contrast'] } }).then((r) =>
	r.violations.flatMap((v) => v.nodes.map((n) => v.id + ': ' + n.target.join(' ') + ': ' + (n.failureSummary ?? '').split('\n').slice(1).join(' ').trim())))`

// judged says what axe-core (MPL 2.0, npm ci in testdata/axe) finds in a page as it stands.
func (p *tab) judged(rules string) []string {
	p.t.Helper()
	if !eval[bool](p, `'axe' in window`) {
		script, err := os.ReadFile("../../testdata/axe/node_modules/axe-core/axe.min.js")
		if err != nil {
			p.t.Fatal("axe-core is not here: npm ci in testdata/axe")
		}
		eval[bool](p, string(script)+"\n;true")
	}
	p.frames()
	return eval[[]string](p, rules)
}

// axeStates are what a page may look like: what leads there from a page just loaded.
func axeStates() map[string]func(p *tab) {
	keys := func(list string) func(*tab) {
		return func(p *tab) {
			for _, key := range strings.Split(list, "") {
				p.key(key)
				if key == "r" {
					p.until(reporting)
				}
			}
		}
	}
	click := func(selector string) func(*tab) {
		return func(p *tab) { eval[bool](p, fmt.Sprintf(`(document.querySelector(%q).click(), true)`, selector)) }
	}
	return map[string]func(p *tab){
		"plain": func(*tab) {}, "reports": keys("r"), "two views": keys("br"), "line between": keys("m"), "keys": keys("k"), "vanishing": keys("a"), "squint": keys("u"),
		"compare menu": click(`.opener[aria-controls=compare-items]`), "eyes menu": click(`.opener[aria-controls=eye-items]`), "colorways menu": click(`.opener[aria-controls=colorway-items]`), "sizes menu": click(`.opener[aria-controls=size-items]`),
		"typing": func(p *tab) {
			keys("e")(p)
			p.until(`!document.getElementById('text-pane').hidden && document.querySelector('#typed-layer .keyword')`)
		},
		"cutting": func(p *tab) {
			keys("r")(p)
			click("#tab-1")(p)
			p.until(reporting)
			click("#report-rows .has-diagram")(p)
		},
		"a fabric": click("#fabrics button"),
		"audition": func(p *tab) {
			p.openAudition("kites of S")
			p.until(auditionPainted(4))
			p.clickOn(".alternative", 2)
		},
		"held patch": func(p *tab) {
			eval[bool](p, `(document.querySelector('.pane').focus(), true)`)
			eval[bool](p, `(document.querySelector('.pane').dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true })), document.querySelector('.pane').dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true })), true)`)
			p.until(`document.querySelector('#patch.pinned .copy')`)
		},
	}
}

// TestAxeFindsNothing: no state of the page breaks a rule of accessible pages, light and dark, in a wide window and on a phone.
func TestAxeFindsNothing(t *testing.T) {
	r, p := start(t, inAColorway(t), Options{Editor: "x-edit://{file}:{line}", Edit: true}), newTab(t)
	both := []bool{false, true}
	look := func(p *tab, what string, themes ...bool) {
		for _, dark := range themes {
			p.dark(dark)
			for _, wrong := range p.judged(map[bool]string{false: axeRules, true: axeContrast}[dark]) {
				t.Errorf("%s, dark %v: %s", what, dark, wrong)
			}
		}
	}
	for _, size := range [][2]int64{{1400, 900}, {390, 844}} {
		p.do(chromedp.EmulateViewport(size[0], size[1]))
		p.load(r.address)
		for state, lead := range axeStates() {
			if size[0] < 1000 && !slices.Contains([]string{"plain", "reports", "line between", "held patch", "compare menu", "eyes menu", "a fabric", "typing", "audition"}, state) {
				continue // as in a wide window
			}
			eval[bool](p, `(Storage.prototype.setItem = () => {}, sessionStorage.clear(), true)`) // nothing is left of the state before
			p.do(chromedp.Navigate("about:blank"))
			p.load(r.address)
			lead(p)
			themes := both
			if size[0] < 1000 && state != "typing" {
				themes = both[:1] // its colors are those of the wide window
			}
			look(p, fmt.Sprintf("%d wide, %s", size[0], state), themes...)
		}
	}
	for _, width := range []int64{1600, 1024, 820} {
		p.do(chromedp.EmulateViewport(width, 900))
		p.load(r.address)
		look(p, fmt.Sprintf("%d wide", width), false)
	}
	p.watching()
	put(t, r.file, "nonsense\n"+inAColorway(t))
	p.revision(2)
	look(p, "an error", both...)
	faulty := start(t, "nonsense\n", Options{})
	p.load(faulty.address)
	look(p, "an error at first", both...)
	_, address := startFolder(t, twoBeginnings, map[string]string{"a.quilt": lanterns, "b.quilt": "nonsense"})
	p.do(chromedp.Navigate(address))
	p.until(`document.querySelectorAll('#layouts li').length === 2`)
	look(p, "the gallery", both...)
	eval[bool](p, `(document.querySelector('#beginnings button').click(), true)`)
	look(p, "naming a copy", false)
	eval[bool](p, `(document.getElementById('name').removeAttribute('id'), document.querySelector('h1').style.color = '#aaa', true)`)
	if len(p.judged(axeRules)) == 0 {
		t.Error("not noticed: a field without a name")
	}
}

// TestTabsGoInReadingOrder: the tab key goes through the page as it is read: row by row from the left, part by part.
func TestTabsGoInReadingOrder(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	p.load(r.address)
	type stop struct {
		Name      string
		Part      string
		Left, Top float64
	}
	var stops []stop
	for range 40 {
		p.key("\t")
		s := eval[stop](p, `(() => { const e = document.activeElement, b = e.getBoundingClientRect(), part = e.closest('nav, main, aside, #fabric-list'); return { Name: e.dataset.action || e.id || e.textContent.trim().slice(0, 12), Part: part?.id || part?.localName || '', Left: b.left, Top: b.top }; })()`)
		if s.Part == "" && len(stops) > 0 {
			break
		}
		stops = append(stops, s)
	}
	order := map[string]int{"nav": 0, "main": 1, "aside": 2, "fabric-list": 3}
	for i := 1; i < len(stops); i++ {
		a, b := stops[i-1], stops[i]
		if order[b.Part] < order[a.Part] || a.Part == b.Part && a.Part != "main" && b.Left < a.Left {
			t.Errorf("from %s in %s the tab key goes back to %s in %s", a.Name, a.Part, b.Name, b.Part)
		}
	}
	if len(stops) < 15 {
		t.Errorf("the tab key stops %d times: %v", len(stops), stops)
	}
}
