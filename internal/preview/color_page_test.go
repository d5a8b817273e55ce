//go:build judges

package preview

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"eighthturn/palettes"
)

// pageSizes are the windows in which the page's states are looked at.
var pageSizes = [][2]int64{{1600, 900}, {1280, 800}, {1024, 768}, {820, 1180}, {390, 844}}

// openCard opens the card of the fabric at a place of the strip, from dark to light.
func (p *tab) openCard(at int) {
	p.t.Helper()
	eval[bool](p, fmt.Sprintf(`(document.querySelectorAll('#fabrics button')[%d].click(), true)`, at))
	p.until(`!document.getElementById('color-card').hidden`)
}

// cardLaidOut says what is wrong with a card in the corner of the stage: that to try a color covers the middle of the quilt (of the first of
// two views; below it lies the second where there is no room beside), it reaches beyond the stage, scrolls sideways, or has controls that
// lie over one another.
const cardLaidOut = `((selector) => {
	const wrong = [], box = document.querySelector(selector), b = box.getBoundingClientRect();
	for (const pane of document.querySelectorAll(selector === '#color-card' ? '.pane:first-child svg g' : '#none')) {
		const q = pane.getBoundingClientRect(), x = q.left + q.width / 2, y = q.top + q.height / 2;
		if (x > b.left && x < b.right && y > b.top && y < b.bottom) wrong.push('it covers the middle of the quilt');
	}
	const m = document.querySelector('main').getBoundingClientRect();
	if (b.left < m.left - 0.5 || b.right > m.right + 0.5 || b.top < m.top - 0.5 || b.bottom > m.bottom + 0.5) wrong.push('it reaches beyond the stage');
	if (box.scrollWidth > box.clientWidth + 1) wrong.push('it scrolls sideways');
	const list = [...box.querySelectorAll('button, input, [role=slider], select')].filter((e) => e.checkVisibility() && !e.closest('.centers')).map((e) => [e.getAttribute('aria-label') ?? e.textContent, e.getBoundingClientRect()]);
	for (const [name, e] of list) if (e.left < b.left - 1 || e.right > b.right + 1 && !box.querySelector('.others').contains(document.elementFromPoint(e.left, e.top))) wrong.push(name + ' is cut off');
	for (const [i, [nameA, p]] of list.entries()) for (const [nameB, q] of list.slice(i + 1)) {
		if (Math.min(p.right, q.right) - Math.max(p.left, q.left) > 1 && Math.min(p.bottom, q.bottom) - Math.max(p.top, q.top) > 1) wrong.push(nameA + ' lies over ' + nameB);
	}
	return [...new Set(wrong)];
})`

// focusSeen says which controls of a part of the page cannot be reached by the keyboard, or do not show that they have the focus.
const focusSeen = `((selector) => {
	const wrong = [], name = (e) => e.getAttribute('aria-label') || e.textContent || e.id;
	const list = [...document.querySelectorAll(selector + ' :is(button, input, textarea, a, [tabindex])')].filter((e) => e.checkVisibility() && !e.disabled);
	const had = document.activeElement;
	for (const e of list) {
		e.focus({ preventScroll: true });
		if (document.activeElement !== e) { wrong.push(name(e) + ' takes no focus'); continue; }
		const style = getComputedStyle(e);
		if (e.matches(':focus-visible') && (style.outlineStyle === 'none' || parseFloat(style.outlineWidth) < 1.5)) wrong.push(name(e) + ' does not show that it has the focus');
		if (e.tabIndex < 0 && !e.closest('[role=tablist], #report-rows')) wrong.push(name(e) + ' is left out by the tab key');
	}
	had?.focus({ preventScroll: true });
	return wrong;
})`

// quiltAt is where the quilt stands on the screen.
const quiltAt = `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))).then(() => { const b = document.querySelector('.pane svg g').getBoundingClientRect(); return [b.left, b.top, b.width, b.height].map((v) => Math.round(v)).join(' '); })`

// TestTheCardIsLaidOut: at every width, light and dark, the card to try a color moves nothing, covers no middle of a quilt, and
// all its words can be read.
func TestTheCardIsLaidOut(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	for _, size := range pageSizes {
		p.do(chromedp.EmulateViewport(size[0], size[1]))
		p.load(r.address)
		for _, dark := range []bool{false, true} {
			p.dark(dark)
			for _, state := range []string{"card", "card-two"} {
				if state == "card-two" {
					if size[0] != 1280 && size[0] != 390 {
						continue
					}
					p.key("b")
				}
				before := eval[string](p, quiltAt)
				p.openCard(3)
				eval[bool](p, `(document.querySelector('.ladder button:nth-child(5)').click(), true)`)
				p.until(`document.querySelector('#color-card code').textContent !== ''`)
				what := fmt.Sprintf("%d wide, dark %v, %s", size[0], dark, state)
				for _, wrong := range slices.Concat(eval[[]string](p, laidOut), eval[[]string](p, cardLaidOut+`('#color-card')`), eval[[]string](p, focusSeen+`('#color-card')`)) {
					t.Errorf("%s: %s", what, wrong)
				}
				if after := eval[string](p, quiltAt); after != before {
					t.Errorf("%s: the quilt moved from %s to %s", what, before, after)
				}
				p.picture(fmt.Sprintf("%s-%d-%v", state, size[0], dark))
				p.key("\x1b")
				p.until(`document.getElementById('color-card').hidden`)
				if state == "card-two" {
					p.key("b")
				}
			}
		}
	}
	p.openCard(0)
	for _, broken := range []string{`maxHeight = 'none', c.style.height = '90%'`, `bottom = '-60px'`, `width = '500px'`} {
		eval[bool](p, `((c) => (c.style.`+broken+`, true))(document.getElementById('color-card'))`)
		if len(eval[[]string](p, cardLaidOut+`('#color-card')`)) == 0 {
			t.Errorf("not noticed: %s", broken)
		}
		eval[bool](p, `(document.getElementById('color-card').removeAttribute('style'), true)`)
	}
}

// TestTryingAColor: the picture, the strip and the value study follow a color that is tried; the line has it; Escape takes it
// away, and so does a save, with a word.
func TestTryingAColor(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	p.key("r")
	p.until(reporting)
	const fills = `[...document.querySelectorAll('.pane > svg:first-child g[fill]')].map((g) => g.getAttribute('fill')).join(' ')`
	const study = `document.getElementById('report-rows').innerText`
	before, studied := eval[string](p, fills), eval[string](p, study)
	p.openCard(1)
	own := eval[string](p, `document.querySelector('#color-card input').value`)
	eval[bool](p, `(document.querySelector('#color-card input').focus(), document.querySelector('#color-card input').select(), true)`)
	p.key("#2f6f72")
	painted := func(want string) { p.until(fills + fmt.Sprintf(" === %q", want)) }
	painted(strings.ReplaceAll(before, own, "#2f6f72"))
	p.until(`document.querySelector('#color-card code').textContent.includes('#2f6f72')`)
	if line := eval[string](p, `document.querySelector('#color-card code').textContent`); !strings.Contains(starfish(t), strings.ReplaceAll(line, "#2f6f72", own)) {
		t.Errorf("the line is %q, which is no line of the layout in another color", line)
	}
	p.until(study + ` !== ` + fmt.Sprintf("%q", studied))
	value := fmt.Sprintf("%.0f", must1(palettes.Parse("#2f6f72")).Lightness())
	if said := eval[string](p, `document.querySelector('#color-card .values').textContent`); !strings.HasSuffix(said, "→ "+value) {
		t.Errorf("the card says %q, the value is %s", said, value)
	}
	p.key("\x1b")
	p.until(`document.getElementById('color-card').hidden`)
	p.until(study + ` === ` + fmt.Sprintf("%q", studied))
	painted(before)
	p.until(`document.activeElement.dataset.fabric`) // let go, the fabric in the strip has the focus again

	p.openCard(1)
	p.key(kb.ArrowRight) // an arrow on the plane: another hue of the same value
	p.until(fills + ` !== ` + fmt.Sprintf("%q", before))
	if said := eval[string](p, `document.querySelector('#color-card .values').textContent`); strings.Contains(said, "→") {
		t.Errorf("another hue has another value: %s", said)
	}
	put(t, r.file, starfish(t)+"\n# saved\n")
	p.revision(2)
	p.until(`document.getElementById('color-card').hidden && document.getElementById('note').textContent.includes('saved')`)
	painted(before)

	p.key("r")
	p.do(chromedp.EmulateViewport(390, 844, chromedp.EmulateTouch))
	p.frames()
	middle := func(selector string) []float64 {
		return eval[[]float64](p, fmt.Sprintf(`((b) => [b.left + b.width / 2, b.top + b.height / 2])(document.querySelector(%q).getBoundingClientRect())`, selector))
	}
	tap := func(selector string) { at := middle(selector); p.touch(at, at) }
	tap(`#fabrics [data-fabric="1"]`)
	p.until(`!document.getElementById('color-card').hidden`)
	from := middle(".plane")
	p.touch(from, []float64{from[0] - 120, from[1] + 10})
	p.until(`Math.abs(document.querySelector('.plane').getAttribute('aria-valuenow') - ` + fmt.Sprintf("%f", (from[0]-120)/390*360) + `) < 20 && document.querySelector('#color-card code').textContent !== ''`)
	p.picture("card-touch")
	const field = `document.querySelector('#color-card input').value`
	p.until(fills + `.includes(` + field + `)`)
	tried := eval[string](p, field)
	other := field + ` !== ` + fmt.Sprintf("%q", tried)
	for range 5 { // the browser passes over a tap that comes right behind a drag
		tap(".ladder button:nth-child(8)")
		if eval[bool](p, `new Promise((r) => setTimeout(() => r(`+other+`), 300))`) {
			break
		}
	}
	p.until(other)
	tap("#color-card .close")
	p.until(`document.getElementById('color-card').hidden && ` + fills + ` === ` + fmt.Sprintf("%q", before))
}

func must1[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// TestThePageHasTheProgramsColors: lightness, chroma and hue on the page are those of package palettes, which published values
// judge; what the page makes of them is the color again, and a color of the same value has it to the rounding of eight bits.
func TestThePageHasTheProgramsColors(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	var list []string
	for v := range 343 {
		list = append(list, palettes.Colour{R: uint8(v % 7 * 42), G: uint8(v / 7 % 7 * 42), B: uint8(v / 49 * 42)}.Hex())
	}
	for i, v := range eval[[][]any](p, `import('/lab.js').then(({ lchOf, hexAt, grayOf, reach }) => "`+strings.Join(list, " ")+`".split(' ').map((hex) => {
		const { l, c, h } = lchOf(hex), other = hexAt(l, c, h + 90), strongest = hexAt(l, reach(l, h + 45), h + 45);
		return [l, c, h, hexAt(l, c + 1e-9, h), grayOf(hex), lchOf(other).l, lchOf(strongest).l];
	}))`) {
		c := must1(palettes.Parse(list[i]))
		lab := c.Lab()
		hue := math.Mod(math.Atan2(lab.B, lab.A)*180/math.Pi+360, 360)
		if math.Abs(v[0].(float64)-lab.L) > 1e-9 || math.Abs(v[1].(float64)-lab.Chroma()) > 1e-6 || lab.Chroma() > 1e-3 && math.Abs(v[2].(float64)-hue) > 1e-6 {
			t.Errorf("%s: the page has %v, the program %v", list[i], v[:3], lab)
		}
		if v[3] != list[i] {
			t.Errorf("%s: becomes %s and back", list[i], v[3])
		}
		if v[4] != c.Grey().Hex() {
			t.Errorf("%s: its gray is %s, the program's %s", list[i], v[4], c.Grey().Hex())
		}
		for _, l := range v[5:] {
			if math.Abs(l.(float64)-lab.L) > 0.35 {
				t.Errorf("%s: a color of the same value has %.3f instead of %.3f", list[i], l, lab.L)
			}
		}
	}
}
