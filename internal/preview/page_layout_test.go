//go:build judges

package preview

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// pageStates are what a page can look like: the keys that lead there, from a page just loaded.
func pageStates() map[string][]string {
	return map[string][]string{"plain": nil, "reports": {"r"}, "two": {"b"}, "two-reports": {"b", "r"}, "slide": {"m"}, "keys": {"k"}, "keys-reports": {"r", "k"}, "vanishing": {"a"}, "colorway": {"o"}, "colorways": {"b", "O"}}
}

// laidOut measures a page: controls of the bar that stand in another row than the first, boxes that reach beyond the window,
// boxes that lie over one another, words that are cut off or lie beneath the zoom, controls of a phone's bar that a thumb misses
// (44 pixels, as the guidelines of both makers of phones ask) or that have no word, a quilt without a frame,
// and words whose contrast with what is behind them is below 4.5 (WCAG 2.2, 1.4.3).
const laidOut = `(() => {
	const wrong = [], shown = (e) => e.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && e.getBoundingClientRect().width > 0;
	const name = (e) => e.id || e.dataset.action || e.className || e.tagName;
	const bar = [...document.querySelectorAll('nav > *')].filter(shown).map((e) => e.getBoundingClientRect());
	if (document.documentElement.scrollHeight > innerHeight || document.documentElement.scrollWidth > innerWidth) wrong.push('the page itself scrolls');
	const middles = bar.map((b) => b.top + b.height / 2);
	if (Math.max(...middles) - Math.min(...middles) > 2) wrong.push('the bar has a second row');
	const tabs = [...document.querySelectorAll('#report-tabs button')].filter(shown).map((e) => e.getBoundingClientRect());
	if (tabs.some((b) => Math.abs(b.top - tabs[0].top) > 2)) wrong.push('the tabs have a second row');
	for (let i = 1; i < tabs.length; i++) if (tabs[i].left < tabs[i - 1].right - 0.5 || tabs[i].right > innerWidth) wrong.push('a tab lies over the next, or beyond the window');
	for (const e of document.querySelectorAll('header, nav, main, #fabric-list, aside, nav button, nav a, .zoom button')) {
		if (!shown(e)) continue;
		const b = e.getBoundingClientRect();
		if (b.left < -0.5 || b.right > innerWidth + 0.5 || b.top < -0.5 || b.bottom > innerHeight + 0.5) wrong.push(name(e) + ' reaches beyond the window');
	}
	const parts = ['header', 'nav', 'main', '#fabric-list', 'aside'].map((s) => document.querySelector(s)).filter(shown);
	for (const a of parts) for (const b of parts) {
		if (a === b || a.localName === 'aside' && b.matches('main, #fabric-list') || b.localName === 'aside' && a.matches('main, #fabric-list')) continue; // so that nothing moves
		const p = a.getBoundingClientRect(), q = b.getBoundingClientRect();
		if (Math.min(p.right, q.right) - Math.max(p.left, q.left) > 1 && Math.min(p.bottom, q.bottom) - Math.max(p.top, q.top) > 1) wrong.push(name(a) + ' lies over ' + name(b));
	}
	for (const row of [document.querySelectorAll("nav button, nav a"), document.querySelectorAll('.zoom button')]) {
		const list = [...row].filter(shown).map((e) => [name(e), e.getBoundingClientRect()]).sort((a, b) => a[1].left - b[1].left);
		for (let i = 1; i < list.length; i++) if (list[i][1].left < list[i - 1][1].right - 0.5) wrong.push(list[i][0] + ' lies over ' + list[i - 1][0]);
	}
	const over = (p, q) => Math.min(p.right, q.right) - Math.max(p.left, q.left) > 1 && Math.min(p.bottom, q.bottom) - Math.max(p.top, q.top) > 1;
	const box = (e) => e.getBoundingClientRect(), header = document.querySelector('header'), zoom = document.querySelector('.zoom');
	for (const e of document.querySelectorAll('#heading, #heading > *')) if (shown(e) && box(e).right > box(header).right + 0.5) wrong.push(name(e) + ' reaches out of the header');
	for (const e of document.querySelectorAll('#facts > span')) {
		const b = box(e), f = box(e.parentElement);
		if (b.top < f.bottom - 1 && (b.right > f.right + 0.5 || b.bottom > f.bottom + 2)) wrong.push('the fact “' + e.textContent + '” is cut off');
	}
	for (const e of document.querySelectorAll('figcaption')) {
		if (!shown(e) || !e.textContent) continue;
		if (e.scrollWidth > e.clientWidth + 1 || e.scrollHeight > e.clientHeight + 1) wrong.push('the caption “' + e.textContent + '” is cut off');
		if (box(e).top < box(e.parentElement).top && box(e).bottom > box(e.parentElement).top + 4) wrong.push('the caption “' + e.textContent + '” hangs into the picture');
		if (shown(zoom) && over(box(e), box(zoom))) wrong.push('the caption “' + e.textContent + '” lies beneath the zoom');
	}
	for (const e of document.querySelectorAll('nav > .group > *, nav > .menu > .opener')) {
		if (innerWidth > 700 || !shown(e)) continue;
		if (box(e).width < 44 || box(e).height < 44) wrong.push('a thumb misses ' + name(e));
		if (![...e.querySelectorAll('.word')].some(shown)) wrong.push(name(e) + ' has no word');
	}
	for (const e of document.querySelectorAll('.pane')) if (!document.body.matches('.no-picture') && !(e.querySelector('.frame')?.getBoundingClientRect().width > 50)) wrong.push('a quilt has no frame');
	const numbers = (color) => { const [r, g, b, a = 1] = color.match(/[\d.]+/g).map(Number); return { r, g, b, a }; };
	const light = ({ r, g, b }) => [r, g, b].map((v) => (v /= 255, v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)).reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0);
	const behind = (e) => {
		const layers = [];
		for (; e; e = e.parentElement) layers.push(numbers(getComputedStyle(e).backgroundColor));
		return layers.reverse().reduce((under, over) => ({ r: over.r * over.a + under.r * (1 - over.a), g: over.g * over.a + under.g * (1 - over.a), b: over.b * over.a + under.b * (1 - over.a), a: 1 }), { r: 255, g: 255, b: 255, a: 1 });
	};
	const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	while (walker.nextNode()) {
		const e = walker.currentNode.parentElement;
		if (!walker.currentNode.textContent.trim() || !shown(e) || e.closest('svg, #diagram, script, .visually-hidden')) continue;
		const [a, b] = [light(numbers(getComputedStyle(e).color)), light(behind(e))].sort((p, q) => p - q);
		if ((b + 0.05) / (a + 0.05) < 4.5) wrong.push('“' + walker.currentNode.textContent.trim().slice(0, 30) + '” has a contrast of ' + ((b + 0.05) / (a + 0.05)).toFixed(2));
	}
	return [...new Set(wrong)];
})()`

// TestThePageIsLaidOut: at every width, light and dark, the bar is one row, nothing reaches beyond the window or over its
// neighbor, and every word can be read.
func TestThePageIsLaidOut(t *testing.T) {
	r, p := start(t, inAColorway(t), Options{}), newTab(t)
	sizes := [][2]int64{{1600, 900}, {1280, 800}, {1024, 768}, {820, 1180}, {390, 844}}
	for _, size := range sizes {
		p.do(chromedp.EmulateViewport(size[0], size[1]))
		p.load(r.address)
		for _, dark := range []bool{false, true} {
			p.dark(dark)
			eval[bool](p, `(document.getElementById('title').textContent = 'A very long runner for the table by the kitchen window, in two blues and rust', true)`)
			for _, wrong := range eval[[]string](p, laidOut) {
				t.Errorf("%d wide, dark %v, a long title: %s", size[0], dark, wrong)
			}
			for state, keys := range pageStates() {
				for _, key := range keys {
					p.key(key)
				}
				if slices.Contains(keys, "r") {
					p.until(reporting)
				}
				what := fmt.Sprintf("%d wide, dark %v, %s", size[0], dark, state)
				for _, wrong := range eval[[]string](p, laidOut) {
					t.Errorf("%s: %s", what, wrong)
				}
				p.picture(fmt.Sprintf("%s-%d-%v", state, size[0], dark))
				for i := len(keys) - 1; i >= 0; i-- {
					p.key(keys[i])
				}
				p.key("c")
			}
		}
	}
	faulty := start(t, "title \"Harbor\"\nstrip 4\nfabric cream #f4ead7\nblock W web wedges nayv kites cream\ngrid\n W W\n W W\n", Options{})
	for _, size := range sizes {
		p.do(chromedp.EmulateViewport(size[0], size[1]))
		p.load(faulty.address)
		for _, dark := range []bool{false, true} {
			p.dark(dark)
			what := fmt.Sprintf("%d wide, dark %v, an error at first", size[0], dark)
			for _, wrong := range eval[[]string](p, laidOut) {
				t.Errorf("%s: %s", what, wrong)
			}
			if !eval[bool](p, `(() => { const b = document.querySelector('#faults .source').getBoundingClientRect(), m = document.querySelector('main').getBoundingClientRect(); return b.left >= m.left && b.right <= m.right + 0.5 && b.top >= m.top && b.bottom <= m.bottom; })()`) {
				t.Errorf("%s: the faulty line is not in sight", what)
			}
			p.picture(fmt.Sprintf("first-error-%d-%v", size[0], dark))
		}
	}
	for _, broken := range []string{`document.querySelector('nav').style.flexWrap = 'wrap', document.querySelector('nav').style.width = '60px'`,
		`document.querySelector('#facts').style.color = '#999'`, `document.querySelector('#heading').style.width = '2000px'`, `document.querySelector('.frame').remove()`,
		`document.querySelector('#facts').style.flexWrap = 'nowrap', document.querySelector('header').style.width = '300px'`,
		`document.querySelector('figcaption').append('along the whole of the bar '.repeat(20))`, `document.querySelector('figcaption').append('x'), document.querySelector('figcaption').style.right = 0`, `document.querySelector('main').style.marginBottom = '-40px'`} {
		p.dark(false)
		p.load(r.address)
		eval[bool](p, `(`+broken+`, true)`)
		if len(eval[[]string](p, laidOut)) == 0 {
			t.Errorf("not noticed: %s", broken)
		}
	}
}

// TestOneFabricKeepsItsColor: a fabric that is chosen in the strip is seen in its own color, the others beneath a veil; nothing
// lets what lies beneath the seams through.
func TestOneFabricKeepsItsColor(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	p.load(r.address)
	const colors = `(async () => {
		const fills = [...document.querySelectorAll('.pane > svg:first-child g[fill]')].map((g) => [g.getAttribute('fill'), getComputedStyle(g).opacity]);
		return JSON.stringify(fills);
	})()`
	before := eval[string](p, colors)
	eval[bool](p, `(document.querySelectorAll('#fabrics button')[1].click(), document.querySelector('#color-card .buttons button').click(), true)`)
	p.until(`document.querySelectorAll('#fabrics [aria-pressed=true]').length === 1 && [...document.querySelectorAll('.dim')].some((e) => e.getAttribute('d') !== '')`)
	if after := eval[string](p, colors); after != before || strings.Contains(after, `"0.`) {
		t.Errorf("the drawing itself is changed: %s, before %s", after, before)
	}
	p.picture("one-fabric")
	p.key("\x1b")
	p.until(`[...document.querySelectorAll('.dim')].every((e) => (e.getAttribute('d') ?? '') === '')`)
}

// TestErrorsUnfold: warnings alone are one line, unfolded and folded by a key; folded away, they hide no error that comes later.
func TestErrorsUnfold(t *testing.T) {
	warned := strings.Replace(lanterns, "\nblock", "\nfabric oddment #808080\nblock", 1)
	r, p := start(t, warned, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	p.until(`!document.getElementById('faults').hidden`)
	p.until(`document.getElementById('faults-list').hidden`)
	p.key("f")
	p.until(`!document.getElementById('faults-list').hidden`)
	p.key("f")
	p.until(`document.getElementById('faults-list').hidden`)
	put(t, r.file, "nonsense\n"+warned)
	p.revision(2)
	p.until(`!document.getElementById('faults-list').hidden && document.querySelector('#faults .error')`)
}

// TestANotchIsANotch: a notch of the wheel zooms as far with ctrl held as without.
func TestANotchIsANotch(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	const now = `new DOMMatrix(getComputedStyle(document.querySelector('.pane svg g')).transform).a`
	was := eval[float64](p, now)
	scale := func(ctrl bool) float64 {
		p.key("0")
		p.until(fmt.Sprintf(`Math.abs(%s - %g) < 1e-9`, now, was))
		eval[bool](p, fmt.Sprintf(`(document.querySelector('.pane').dispatchEvent(new WheelEvent('wheel', { deltaY: -120, ctrlKey: %v, clientX: 400, clientY: 400, bubbles: true, cancelable: true })), true)`, ctrl))
		p.until(fmt.Sprintf(`Math.abs(%s - %g) > 1e-6`, now, was))
		return eval[float64](p, now) / was
	}
	if with, without := scale(true), scale(false); with > 1.5 || with < without*0.99 || with > without*1.01 {
		t.Errorf("a notch zooms %.2f times with ctrl, %.2f without", with, without)
	}
}

// TestWidthOfTheReports: the hand and the keys set it, and the page keeps it when it is loaded again.
func TestWidthOfTheReports(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	p.key("r")
	width := func() float64 {
		return eval[float64](p, `document.querySelector('aside').getBoundingClientRect().width`)
	}
	edge := eval[[]float64](p, `(() => { const b = document.getElementById('edge').getBoundingClientRect(); return [b.left + b.width / 2, b.top + b.height / 2]; })()`)
	before := width()
	p.mouse(pressed, edge[0], edge[1], left)
	p.mouse(moved, edge[0]-150, edge[1], left)
	p.mouse(released, edge[0]-150, edge[1], left)
	if now := width(); now < before+140 || now > before+160 {
		t.Errorf("dragged by 150 pixels, the reports are %.0f wide instead of %.0f", now, before)
	}
	kept := width()
	p.load(r.address)
	if now := width(); now != kept {
		t.Errorf("loaded again, the reports are %.0f wide instead of %.0f", now, kept)
	}
}
