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

// auditionPainted says that an audition of so many alternatives is shown, with its pictures.
func auditionPainted(n int) string {
	return fmt.Sprintf(`!document.querySelector('#audition.working') && document.querySelectorAll('#audition-list li').length === %d && [...document.querySelectorAll('#audition-list img')].every((i) => i.complete && i.naturalWidth > 0)`, n)
}

// openAudition opens the tab and chooses a place by its name.
func (p *tab) openAudition(place string) {
	p.t.Helper()
	p.key("r")
	eval[bool](p, `(document.querySelector('#report-tabs [data-own]').click(), true)`)
	p.until(`document.querySelectorAll('#audition-place option').length > 1`)
	if place != "" {
		p.choosePlace(place)
	}
}

func (p *tab) choosePlace(place string) {
	p.t.Helper()
	eval[bool](p, fmt.Sprintf(`((s) => (s.value = %q, s.dispatchEvent(new Event('change')), s.value !== ''))(document.getElementById('audition-place'))`, place))
}

// clickOn clicks the nth button of a kind in the list of alternatives.
func (p *tab) clickOn(selector string, n int) {
	p.t.Helper()
	eval[bool](p, fmt.Sprintf(`(document.querySelectorAll('#audition %s')[%d].click(), true)`, selector, n))
}

// TestAuditionOnThePage: a patch that is clicked chooses its place; the alternatives have pictures, sentences and lines; one that is
// pressed shows in the picture, the strip and the study, and is let go by Escape; it can be written and undone; the address has it all.
func TestAuditionOnThePage(t *testing.T) {
	text := inColorways + "binding 2 1/2 buoy\n"
	r, p := start(t, text, Options{Edit: true}), newTab(t)
	p.load(r.address)
	p.watching()
	p.openAudition("")
	p.until(`!document.getElementById('audition-hint').hidden && document.getElementById('audition-choice').hidden`)
	eval[bool](p, `(document.querySelector('.pane').focus(), true)`)
	eval[bool](p, `(document.querySelector('.pane').dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true })), document.querySelector('.pane').dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true })), true)`)
	p.until(`/^(wedges|kites) of [AB]$/.test(document.getElementById('audition-place').value)`)
	p.until(auditionPainted(6))
	p.key("\x1b")

	p.choosePlace("buoy")
	p.until(auditionPainted(6))
	p.clickOn("[data-among=hue]", 0)
	p.until(auditionPainted(9))
	p.clickOn(".alternative", 0)
	const fills = `[...document.querySelectorAll('.pane svg g g:nth-of-type(2) > g')].map((g) => g.getAttribute('fill'))`
	hex := eval[string](p, `document.querySelector('#audition-list li').dataset.alternative`)
	p.until(fills + `.includes('` + hex + `') && document.querySelector('figcaption').innerText.includes('` + hex + `')`)
	p.until(`[...document.querySelectorAll('#fabrics .swatch')].some((s) => s.style.getPropertyValue('--fabric') === '` + hex + `')`)
	p.picture("audition-hue")
	p.until(`location.hash.includes('audition=buoy&among=hue&large=%23')`)
	other := p.beside()
	other.load(eval[string](p, `location.href`))
	other.until(auditionPainted(9) + ` && ` + fills + `.includes('` + hex + `')`)
	p.key("\x1b")
	p.until(fills + `.includes('#c04040') && !location.hash.includes('large')`)

	p.choosePlace("kites of A")
	p.clickOn("[data-among=fabrics]", 0)
	p.until(auditionPainted(6))
	p.clickOn("[data-best=true]", 0)
	said := eval[[]string](p, `[...document.querySelectorAll('#audition-list li')].map((li) => li.dataset.alternative)`)
	p.clickOn("[data-best=false]", 0)
	if as := eval[[]string](p, `[...document.querySelectorAll('#audition-list li')].map((li) => li.dataset.alternative)`); strings.Join(as, " ") != "spray harbour slate buoy moss mist" || slices.Equal(as, said) || len(said) != 6 {
		t.Errorf("as listed: %v, the best first: %v", as, said)
	}
	p.clickOn(".alternative", 1)
	p.until(`document.querySelector('.pane svg > g > image[href]')`)
	p.picture("audition-role")
	p.clickOn(".write", 1)
	p.revision(2)
	if b, _ := os.ReadFile(r.file); !strings.Contains(string(b), "block  A  web  wedges harbour slate  kites harbour\n") {
		t.Errorf("written is\n%s", b)
	}
	p.until(`!document.querySelector('.pane svg > g > image[href]')`)
	p.until(auditionPainted(6))
	p.do(chromedp.Click(chromedp.CSS(`#note button`)))
	p.revision(3)
	if b, _ := os.ReadFile(r.file); string(b) != text {
		t.Errorf("undone it is\n%s", b)
	}
	p.key("o")
	p.choosePlace("buoy")
	p.until(auditionPainted(6) + ` && document.querySelector('#audition code').innerText.startsWith('colorway dusk')`)
	p.choosePlace("binding")
	p.until(auditionPainted(6) + ` && document.querySelector('#audition code').innerText.startsWith('binding 2 1/2')`)
}

// TestTheAuditionIsLaidOut: at every width, light and dark, nothing of the tab is cut off, all its words can be read, all its controls can
// be reached, and a finger finds them.
func TestTheAuditionIsLaidOut(t *testing.T) {
	r, p := start(t, starfish(t), Options{Edit: true}), newTab(t)
	const cut = `(() => { const box = document.getElementById('report-body'), b = box.getBoundingClientRect();
		return [...document.querySelectorAll('#audition :is(button, select, img, code, p)')].filter((e) => e.checkVisibility()).map((e) => [e, e.getBoundingClientRect()])
			.filter(([, q]) => q.width > 0 && (q.left < b.left - 1 || q.right > b.right + 1)).map(([e]) => (e.className || e.id || e.localName) + ' is cut off'); })()`
	for _, size := range pageSizes {
		p.do(chromedp.EmulateViewport(size[0], size[1]))
		p.load(r.address + "#report=audition&audition=kites%20of%20S&large=shallow")
		p.until(auditionPainted(4))
		for _, dark := range []bool{false, true} {
			p.dark(dark)
			what := fmt.Sprintf("%d wide, dark %v", size[0], dark)
			for _, wrong := range slices.Concat(eval[[]string](p, laidOut), eval[[]string](p, cut), eval[[]string](p, focusSeen+`('#audition')`)) {
				t.Errorf("%s: %s", what, wrong)
			}
			p.picture(fmt.Sprintf("audition-%d-%v", size[0], dark))
		}
		p.do(chromedp.Navigate("about:blank"))
	}
}

// TestAnAuditionGivesWay: where another place is chosen while an audition is worked out, that one is let go, and the new one is asked for.
func TestAnAuditionGivesWay(t *testing.T) {
	r := start(t, quiltOf(4, 4, false), Options{})
	p := newTab(t)
	p.load(r.address + "#report=audition&among=hue")
	p.until(`document.querySelectorAll('#audition-place option').length > 1`)
	asked := eval[[]string](p, `new Promise((done) => {
		const select = document.getElementById('audition-place'), ask = window.fetch, asked = [];
		const choose = (name) => { select.value = name; select.dispatchEvent(new Event('change')); };
		window.fetch = (url, options) => {
			if (!String(url).startsWith('audition?')) return ask(url, options);
			asked.push(new URLSearchParams(String(url).split('?')[1]).get('role'));
			options.signal.addEventListener('abort', () => asked.push('let go'));
			const answer = ask(url, options);
			if (asked.length === 1) queueMicrotask(() => choose('f3'));
			else setTimeout(() => { window.fetch = ask; done(asked); }, 50);
			return answer;
		};
		choose('f2');
	})`)
	if !slices.Equal(asked, []string{"f2", "let go", "f3"}) {
		t.Errorf("asked for %v", asked)
	}
	p.until(auditionPainted(9))
}
