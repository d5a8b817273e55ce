//go:build judges

package preview

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"eighthturn/layout"
)

const (
	moved    = input.DispatchMouseEventTypeMouseMoved
	pressed  = input.DispatchMouseEventTypeMousePressed
	released = input.DispatchMouseEventTypeMouseReleased
)

func left(e *input.DispatchMouseEventParams) {
	e.Button, e.Buttons, e.ClickCount = input.MouseButtonLeft, 1, 1
}

// revision waits until the page shows a revision, faulty or not.
func (p *tab) revision(n int) {
	p.t.Helper()
	p.until(fmt.Sprintf("window.lastShown >= %d", n))
}

// watching makes the page keep the revision that it shows.
func (p *tab) watching() {
	p.t.Helper()
	eval[bool](p, `(document.addEventListener('shown', (e) => { window.lastShown = e.detail.revision; }), true)`)
}

// place is where the quilt stands in the window.
func (p *tab) place() string {
	return eval[string](p, `document.querySelector('.pane svg g').getAttribute('transform')`)
}

func TestSaveShowsInBrowser(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	if got := p.text("#title"); got != "Harbour lanterns" {
		t.Errorf("the page is headed %q", got)
	}
	p.until(`document.querySelector('g[fill="#b5532a"] path')`)
	put(t, r.file, strings.Replace(lanterns, "#b5532a", "#123456", 1))
	p.until(`document.querySelector('g[fill="#123456"] path') && !document.querySelector('g[fill="#b5532a"]')`)
	put(t, r.file, strings.Replace(lanterns, "F W W F", "F F W F", 1))
	p.until(`document.getElementById('facts').innerText.includes('78 patches')`)
	p.do(chromedp.Reload())
	p.until(`document.getElementById('facts')?.innerText.includes('78 patches')`)
	put(t, r.file, strings.Replace(lanterns, "F W W F", "W W W F", 1))
	p.until(`document.getElementById('facts').innerText.includes('82 patches')`)
}

// TestViews switches each view and the seams by button and by key, alone and side by side.
func TestViews(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	grey, rust := `g[fill="#707070"] path`, `g[fill="#b5532a"] path`
	shows := func(selector string) string {
		return fmt.Sprintf(`(() => { const e = document.querySelector('%s'); return e && e.checkVisibility(); })()`, selector)
	}
	p.until(shows(rust))
	for n, way := range []func(name, key string){
		func(name, _ string) { p.press(name) },
		func(_, key string) { p.key(key) },
	} {
		way("value", "v")
		p.until(shows(grey) + ` && !` + shows(rust))
		way("line", "l")
		p.until(shows(".lines.black .outlines path") + ` && ` + shows(".letters text") + ` && !` + shows(grey))
		way("colour", "c")
		p.until(shows(rust) + ` && !` + shows(".letters text"))
		p.until(shows(".lines .seams path"))
		way("seams", "s")
		p.until(`!` + shows(".lines path"))
		way("seams", "s")
		p.until(shows(".lines .seams path"))
		way("two", "b")
		p.until(shows(rust) + ` && ` + shows(grey) + ` && document.querySelectorAll('.pane').length === 2`)
		if n == 0 {
			p.mouse(moved, 300, 450)
			p.until(`document.querySelectorAll('.outline[d^=M]').length === 2`)
			p.picture("two")
			p.key("L")
			p.until(shows(".letters text"))
			p.picture("two-line")
			p.key("V")
		}
		way("two", "b")
		p.until(`document.querySelectorAll('.pane').length === 1`)
	}
}

// TestPlaceIsKept: zoom and place do not move when the file is saved, whatever is saved, nor
// when the page is loaded again; the block under the pointer stays under it while zooming.
func TestPlaceIsKept(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	before := p.place()
	p.mouse(moved, 700, 300)
	p.until(`document.querySelector('#patch dl')`)
	under := p.text("#patch")
	for range 6 {
		p.wheel(700, 300, 100)
	}
	p.until(fmt.Sprintf("document.querySelector('.pane svg g').getAttribute('transform') !== %q", before))
	time.Sleep(300 * time.Millisecond)
	p.mouse(moved, 701, 300)
	p.mouse(moved, 700, 300)
	time.Sleep(100 * time.Millisecond)
	if got := p.text("#patch"); got != under {
		t.Errorf("under the pointer lay %q, and after zooming %q", under, got)
	}
	p.mouse(pressed, 700, 300, left)
	p.mouse(moved, 720, 330, left)
	p.mouse(moved, 760, 360, left)
	p.mouse(released, 760, 360, left)
	time.Sleep(300 * time.Millisecond)
	at := p.place()
	if at == before {
		t.Fatal("neither wheel nor drag moved the quilt")
	}
	for n, text := range []string{
		strings.Replace(lanterns, "#b5532a", "#123456", 1),
		strings.Replace(lanterns, "F W W F", "F F W F", 1),
		"nonsense\n" + lanterns,
		titled("another"),
	} {
		put(t, r.file, text)
		p.revision(n + 2)
		if got := p.place(); got != at {
			t.Errorf("save %d moved the quilt from %s to %s", n+1, at, got)
		}
	}
	// A row and a border more: the block in the middle of the window stays where it is.
	middle := `(() => { const b = document.querySelector('.pane').getBoundingClientRect(); return [b.left + b.width / 2, b.top + b.height / 2]; })()`
	c := eval[[]float64](p, middle)
	p.mouse(moved, c[0], c[1])
	time.Sleep(100 * time.Millisecond)
	under = p.text("#patch")
	put(t, r.file, strings.Replace(titled("another"), "border  4      cream", "border 4 cream\nborder 3 navy", 1))
	p.until(`document.getElementById('facts').innerText.includes('38 7/16')`)
	p.mouse(moved, c[0]+1, c[1])
	p.mouse(moved, c[0], c[1])
	time.Sleep(100 * time.Millisecond)
	if got := p.text("#patch"); got != under {
		t.Errorf("in the middle lay %q, and after a border was added %q", under, got)
	}
	at = p.place()
	p.do(chromedp.Reload())
	p.until(fmt.Sprintf("document.querySelector('.pane svg g')?.getAttribute('transform') === %q", at))
	p.key("w")
	p.until(fmt.Sprintf("document.querySelector('.pane svg g').getAttribute('transform') !== %q", at))
}

// TestFaultAndRecovery: faults stand over the last good picture as the terminal shows them,
// vanish when they are mended, and fifty of them leave the page as large as one.
func TestFaultAndRecovery(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	elements := `document.querySelectorAll('*').length`
	good := eval[int](p, elements)
	p.until(`document.getElementById('faults').hidden`)
	bad := strings.Replace(lanterns, "ground cream", "ground craem", 1)
	put(t, r.file, bad)
	p.until(`document.title.startsWith('✕ 1 error')`)
	d := draw(bad, drawing{})
	want, _ := faultTexts("quilt.quilt", d)
	if got := eval[string](p, `document.querySelector('#faults pre').textContent`); got != strings.TrimRight(want[0].Text, "\n") {
		t.Errorf("the page shows\n%s\nthe terminal\n%s", got, want[0].Text)
	}
	if icon := eval[string](p, `document.getElementById('icon').getAttribute('href')`); icon != "icon-fault.svg" {
		t.Errorf("the icon is %s", icon)
	}
	if !eval[bool](p, `!!document.querySelector('g[fill="#b5532a"] path')`) {
		t.Error("the last good picture is gone")
	}
	p.picture("faults")
	p.dark(true)
	p.picture("faults-dark")
	p.dark(false)
	one := eval[int](p, elements)
	revision := 2
	for n := range 50 {
		put(t, r.file, strings.Replace(lanterns, "ground cream", fmt.Sprintf("ground craem%d", n), 1))
		revision++
		p.revision(revision)
	}
	if got := eval[int](p, elements); got > one {
		t.Errorf("with one fault the page has %d elements, after fifty %d", one, got)
	}
	put(t, r.file, lanterns)
	p.until(`document.getElementById('faults').hidden && !document.title.includes('✕')`)
	if got := eval[int](p, elements); got > good+8 {
		t.Errorf("the page had %d elements and has %d", good, got)
	}
	must(t, os.Remove(r.file))
	p.until(`document.getElementById('faults').innerText.includes('does not exist')`)
	put(t, r.file, lanterns)
	p.until(`document.getElementById('faults').hidden`)
}

// TestFaultAtFirst: a layout that is faulty from the start shows its faults, and then its
// picture; a fault without a place is shown as well.
func TestFaultAtFirst(t *testing.T) {
	r, p := start(t, "", Options{}), newTab(t)
	p.load(r.address)
	p.until(`document.getElementById('faults').innerText.includes('error')`)
	put(t, r.file, lanterns)
	p.until(`document.querySelector('g[fill="#b5532a"] path')`)
	breaking := Options{draw: heedless(func(string, drawing) drawing { return drawing{source: nil, broke: "no place for it"} })}
	s := start(t, lanterns, breaking)
	p.load(s.address)
	p.until(`document.getElementById('faults').innerText.includes('no place for it')`)
}

// TestPointing: the patch under the pointer is told, a click holds it, and a save keeps it.
func TestPointing(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	b := eval[[]float64](p, `(() => { const b = document.querySelector('.pane svg > g > g').getBoundingClientRect(); return [b.left + b.width / 2, b.top + b.height / 2]; })()`)
	p.mouse(moved, b[0]+6, b[1]+14)
	p.until(`document.querySelector('#patch dl')`)
	for _, want := range []string{"wedge", "teal", "cream", "rust", "3 1/2 in", "strips of 4 in", "W, web", "row 3, column 3", "line 9"} {
		if got := p.text("#patch"); !strings.Contains(got, want) {
			t.Errorf("the patch is told without %q:\n%s", want, got)
		}
	}
	p.mouse(pressed, b[0]+6, b[1]+14, left)
	p.mouse(released, b[0]+6, b[1]+14, left)
	p.until(`document.querySelector('#patch .held')`)
	p.mouse(moved, b[0]-300, b[1]-300)
	time.Sleep(100 * time.Millisecond)
	if got := p.text("#patch"); !strings.Contains(got, "row 3, column 3") {
		t.Errorf("the held patch was lost:\n%s", got)
	}
	put(t, r.file, "# a line more\n"+lanterns)
	p.revision(2)
	if got := p.text("#patch"); !strings.Contains(got, "line 10") {
		t.Errorf("after a line more:\n%s", got)
	}
	p.picture("held")
	p.key("\x1b")
	p.until(`!document.querySelector('#patch .held')`)
	p.mouse(moved, b[0], b[1]-340)
	p.until(`document.getElementById('patch').innerText.includes('border 2')`)
}

// TestEveryPatchIsFound: at the middle of each patch the page finds that patch, and the fabric
// that the program knows.
func TestEveryPatchIsFound(t *testing.T) {
	p := newTab(t)
	for name, text := range layouts(t) {
		r := start(t, text, Options{})
		first := r.next()
		if first.picture == nil {
			t.Fatalf("%s has no picture: %v", name, first.faults)
		}
		p.load(r.address)
		top, source := first.picture.top, layout.NewSource(text)
		var places []float64
		for i := range top.Patches {
			x, y := 0.0, 0.0
			for _, q := range top.Patches[i].Outline {
				x += float64(units(q.X)) / float64(len(top.Patches[i].Outline))
				y += float64(units(q.Y)) / float64(len(top.Patches[i].Outline))
			}
			places = append(places, x, y)
		}
		found := eval[[]string](p, fmt.Sprintf(`(async () => {
			const { Model } = await import('/model.js'), { patchAt, factsOf } = await import('/patch.js');
			const model = new Model();
			model.apply(await (await fetch('/state')).json());
			const at = %s, list = [];
			for (let i = 0; i < at.length; i += 2) {
				const patch = patchAt(model, at[i], at[i + 1]);
				if (!patch) { list.push('nothing'); continue; }
				const f = factsOf(model, patch);
				list.push([f.shape, f.role, f.line, ...f.fabrics.map((c) => c.name)].join(' '));
			}
			return list;
		})()`, encoded(places)))
		for i := range top.Patches {
			patch := &top.Patches[i]
			want := fmt.Sprintf("%s %s %d", patch.Shape, top.Roles[patch.Role].Name, source.Line(int(patch.Place.Start)))
			for f := patch.First; f < patch.First+patch.Count; f++ {
				want += " " + top.Fabrics[top.Faces[f].Fabric].Name
			}
			if found[i] != want {
				t.Errorf("%s: patch %d is found as %q, it is %q", name, i, found[i], want)
				break
			}
		}
	}
}

// TestKeyboardAlone reaches and works everything without a pointer.
func TestKeyboardAlone(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	reached := map[string]bool{}
	for range 40 {
		p.key("\t")
		reached[eval[string](p, `(() => { const e = document.activeElement; if (e.matches('.opener[aria-expanded=false]')) e.click(); return e.dataset.action || e.id || e.className || (e.closest('#fabrics') ? 'fabric' : e.tagName); })()`)] = true
	}
	for _, want := range []string{"colour", "value", "line", "seams", "two", "nearer", "farther", "whole", "changes", "save-picture", "keys", "pane", "fabric",
		"squint", "vanishing", "protan", "deutan", "tritan", "report"} {
		if !reached[want] {
			t.Errorf("the tab key does not reach %q: %v", want, reached)
		}
	}
	eval[bool](p, `(document.querySelector('.pane').focus(), true)`)
	p.key(kb.ArrowRight)
	p.until(`document.querySelector('#patch dl')`)
	places := map[string]bool{}
	for _, arrow := range []string{kb.ArrowRight, kb.ArrowRight, kb.ArrowDown, kb.ArrowLeft, kb.ArrowUp, kb.ArrowUp} {
		p.key(arrow)
		places[p.text("#announcement")] = true
	}
	if len(places) < 4 {
		t.Errorf("the arrows went to %v", places)
	}
	p.key("\r")
	p.until(`document.querySelector('#patch .held') && document.getElementById('announcement').textContent.startsWith('held')`)
	before := p.place()
	p.key("+")
	p.until(fmt.Sprintf("document.querySelector('.pane svg g').getAttribute('transform') !== %q", before))
	p.key("k")
	p.until(`!document.getElementById('keys').hidden`)
	p.picture("keys")
	p.key("\x1b")
	p.until(`document.getElementById('keys').hidden && !document.querySelector('#patch .held')`)
	p.key("0")
	p.until(fmt.Sprintf("document.querySelector('.pane svg g').getAttribute('transform') === %q", before))
	for _, landmark := range []string{"header", "nav[aria-label]", "main[aria-label]", "aside[aria-label]", "[role=status]", "[aria-live=polite]", "svg[role=img][aria-label*=Harbour]", "h1", "html[lang]"} {
		if !eval[bool](p, fmt.Sprintf("!!document.querySelector(%q)", landmark)) {
			t.Errorf("a screen reader finds no %s", landmark)
		}
	}
	if n := eval[int](p, `[...document.querySelectorAll('button, a')].filter((e) => e.checkVisibility() && !(e.innerText || e.getAttribute('aria-label') || '').trim()).length`); n > 0 {
		t.Errorf("%d buttons have no name", n)
	}
}
