//go:build judges

package preview

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// turnTo opens the reports at a tab.
func (p *tab) turnTo(n int, holds string) {
	p.t.Helper()
	if eval[bool](p, `document.getElementById('report').hidden`) {
		p.key("r")
	}
	p.do(chromedp.Click(chromedp.CSS(fmt.Sprintf("#tab-%d", n))))
	p.until(reporting + fmt.Sprintf(` && document.getElementById('report-rows').innerText.includes(%q)`, holds))
}

// diagramIs waits for a diagram by the beginning of its title.
func (p *tab) diagramIs(title string) {
	p.t.Helper()
	p.until(fmt.Sprintf(`document.querySelector('#diagram:not(.stale):not([hidden]) svg')?.getAttribute('aria-label').startsWith(%q)`, title))
}

// pieces is how many pieces of the quilt are lit up.
const pieces = `document.querySelector('.dim').getAttribute('d').split('M').length - 2`

// starfish is the sample in which not all seams nest.
func starfish(t testing.TB) string {
	t.Helper()
	b, err := os.ReadFile("../../samples/starfish.quilt")
	must(t, err)
	return string(b)
}

// TestSteppingThroughSewing goes from step to step with the arrow keys: each lights up its
// pieces and shows its picture, and what is pointed at in the picture lights up.
func TestSteppingThroughSewing(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	p.turnTo(2, "Joining the blocks")
	if !eval[bool](p, `document.getElementById('diagram').hidden`) {
		t.Error("a diagram is shown before anybody asked")
	}
	eval[bool](p, `([...document.querySelectorAll('#report-rows tbody[tabindex]')].find(row => row.innerText.startsWith('Make the units')).focus(), true)`)
	p.key(kb.ArrowDown) // from how many there are to the first step
	p.key(kb.ArrowDown)
	p.diagramIs("How to sew block A, step 2: half")
	p.until(pieces + ` > 20 && document.getElementById('announcement').textContent.startsWith('2. ')`)
	p.key(kb.ArrowUp)
	p.diagramIs("How to sew block A, step 1")
	p.key(kb.ArrowDown)
	p.key(kb.ArrowDown)
	p.diagramIs("How to sew block A, step 3: block")
	whole := eval[int](p, pieces)
	p.key(kb.ArrowDown) // about the same block: the picture stays
	p.diagramIs("How to sew block A, step 3: block")
	if whole != 6*6 { // six blocks of six pieces
		t.Errorf("the last step lights up %d pieces", whole)
	}
	p.picture("sewing-step")

	at := eval[[]float64](p, `(() => { const r = document.querySelector('#diagram-content [data-lit]').getBoundingClientRect(); return [r.left + r.width / 2, r.top + r.height / 2]; })()`)
	p.mouse(moved, at[0], at[1]+1)
	p.mouse(moved, at[0], at[1])
	p.until(pieces + ` === 1`)
	p.mouse(moved, 300, 400)
	p.until(pieces + ` !== 1`)
	p.do(chromedp.Click(chromedp.CSS("#diagram-close")))
	p.until(`document.getElementById('diagram').hidden`)
	p.key("\x1b")
}

// TestJointsThatDoNotNest: they light up, and the rows that tell of seams show these.
func TestJointsThatDoNotNest(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	p.load(r.address)
	p.turnTo(2, "Seams do not nest at")
	p.click("Seams do not nest at 4 places")
	p.until(pieces + ` > 3 && ` + pieces + ` <= 24`)
	p.picture("sewing-nests")
	p.click("Seams do not nest at 4 places")
	p.click("Sew the blocks of each row together")
	p.until(`document.querySelector('.highlight path')`)
	p.diagramIs("How to sew the blocks")
}

// TestCuttingMaps: a line lights up its pieces; a fabric's map opens when it is chosen, and
// what is pointed at in it lights up.
func TestCuttingMaps(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	p.turnTo(1, "To buy")
	for _, want := range []string{"Before you cut", "close the guard", "harbour", "3/8 yd", "Pieces, finished and cut sizes", "squares of", "strips of", "Rotary-cutting safety", "Cutting map for harbour", "How this was worked out"} {
		if got := p.text("#report-rows"); !strings.Contains(got, want) {
			t.Errorf("the report is told without %q:\n%s", want, got)
		}
	}
	p.picture("cutting-tab")
	if eval[bool](p, `[...document.querySelectorAll('#report-rows details')].some((d) => d.open)`) {
		t.Error("how it was worked out is not folded")
	}
	p.click("1\t")
	p.until(pieces + ` === Number(` + rowNamed("1\t") + `.querySelector('td:last-child').innerText)`)
	eval[bool](p, `([...document.querySelectorAll('#report-rows section')].find((s) => s.innerText.startsWith('mist')).querySelector('tbody').click(), true)`)
	p.diagramIs("Cutting map")
	lit := eval[int](p, pieces)
	at := eval[[]float64](p, `(() => { const r = document.querySelector('#diagram-content path[data-lit]').getBoundingClientRect(); return [r.left + r.width / 2, r.top + r.height / 2]; })()`)
	p.mouse(moved, at[0], at[1]+1)
	p.mouse(moved, at[0], at[1])
	p.until(fmt.Sprintf(`%s > 0 && %s < %d`, pieces, pieces, lit))
	p.picture("cutting-map")
	if bad := eval[string](p, `[...document.querySelectorAll('#diagram-content *')].filter((e) => !['svg', 'path', 'circle', 'text', 'g', 'tspan'].includes(e.localName) || [...e.attributes].some((a) => /^on|href|style/.test(a.name))).map((e) => e.outerHTML).join()`); bad != "" {
		t.Errorf("the diagram holds %s", bad)
	}
}

// TestNoStaleDiagram: through twenty saves no frame shows a diagram beside a picture that it
// was not made of.
func TestNoStaleDiagram(t *testing.T) {
	if faults := staleDiagrams(t, ""); len(faults) > 0 {
		t.Errorf("beside a newer picture: %v", faults)
	}
}

// TestNoStaleDiagramCatches: a diagram that is not hidden is seen to be stale.
func TestNoStaleDiagramCatches(t *testing.T) {
	if faults := staleDiagrams(t, `(() => { const s = new CSSStyleSheet(); s.replaceSync('#diagram.stale #diagram-content { visibility: visible !important }'); document.adoptedStyleSheets = [s]; return true; })()`); len(faults) == 0 {
		t.Error("a stale diagram goes unnoticed")
	}
}

// staleDiagrams saves twenty colours with a step's picture in sight. The picture has the
// colour of the fabric.
func staleDiagrams(t *testing.T, spoil string) []string {
	t.Helper()
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	p.turnTo(2, "Joining the blocks")
	eval[bool](p, `([...document.querySelectorAll('#report-rows section')].find((s) => s.innerText.startsWith('Block B')).querySelectorAll('tbody')[4].click(), true)`)
	p.diagramIs("How to sew block B, step 3")
	p.until(`document.getElementById('diagram-content').innerHTML.includes('#c04040')`)
	if spoil != "" {
		eval[bool](p, spoil)
	}
	eval[bool](p, `(() => {
		const own = window.fetch;
		window.fetch = async (...a) => { const answer = await own(...a); if (!String(a[0]).startsWith('/state')) await new Promise((r) => setTimeout(r, 60 * Math.random())); return answer; };
		window.stale = [];
		window.frames0 = 0;
		const look = () => {
			window.frames0++;
			const sheet = document.getElementById('diagram-content'), red = sheet.innerHTML.match(/#c0[0-9a-f]{2}40/)?.[0];
			const fills = [...document.querySelectorAll('.pane svg g g:nth-of-type(2) > g')].map((g) => g.getAttribute('fill'));
			if (red && sheet.checkVisibility({ visibilityProperty: true }) && !fills.includes(red)) stale.push(red + ' beside ' + fills);
			requestAnimationFrame(look);
		};
		look();
		return true;
	})()`)
	for n := range 20 {
		put(t, r.file, strings.Replace(seafarers, "#c04040", fmt.Sprintf("#c0%02x40", 70+5*n), 1))
		p.revision(n + 2)
		if n%4 == 0 {
			time.Sleep(150 * time.Millisecond)
		}
	}
	p.diagramIs("How to sew block B, step 3")
	p.until(`document.getElementById('diagram-content').innerHTML.includes('#c0a540')`)
	if n := eval[int](p, `window.frames0`); n < 20 {
		t.Errorf("only %d frames were looked at", n)
	}
	return eval[[]string](p, `window.stale.slice(0, 3)`)
}

const framedPage = `document.getElementById('report-page').contentDocument`

// framed is a value read in the page that is framed.
func framed(expression string) string {
	return `(document.getElementById('report-page')?.contentDocument?.readyState === 'complete' && ` + framedPage + expression + `)`
}

// TestPatternBeside: the pattern is made when its tab is opened and not before, follows the
// layout, keeps its place, and can run nothing.
func TestPatternBeside(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	p.key("r")
	p.until(reporting)
	if n := eval[int](p, `performance.getEntriesByType('resource').filter((e) => e.name.includes('pattern')).length`); n != 0 {
		t.Error("the pattern was asked for before anybody wanted it")
	}
	p.do(chromedp.Click(chromedp.CSS("#tab-4")))
	p.until(framed(`.body?.innerText.includes('Seafarers')`) + ` && !document.querySelector('#report.stale')`)
	p.picture("pattern")
	p.dark(true)
	if ground := eval[string](p, `getComputedStyle(`+framedPage+`.documentElement).backgroundColor`); ground != "rgb(255, 255, 255)" {
		t.Errorf("on a dark screen the paper is %s", ground)
	}
	p.picture("pattern-dark")
	eval[bool](p, `(document.getElementById('report-page').contentWindow.scrollTo(0, 700), true)`)
	put(t, r.file, strings.Replace(seafarers, "Seafarers", "Homeward", 1))
	p.revision(2)
	p.until(framed(`.body?.innerText.includes('Homeward')`) + ` && !document.querySelector('#report.stale')`)
	p.until(`document.getElementById('report-page').contentWindow.scrollY === 700`)
	if eval[bool](p, `(() => { const d = document.getElementById('report-page').contentDocument, s = d.createElement('script'); s.textContent = 'window.ran = true'; d.body.append(s); return !!document.getElementById('report-page').contentWindow.ran; })()`) {
		t.Error("a script runs in the pattern")
	}
	put(t, r.file, huge)
	p.revision(3)
	p.until(reporting + ` && document.getElementById('report-page').hidden && document.getElementById('report-rows').innerText.includes('The pattern cannot be made yet')`)
	put(t, r.file, seafarers)
	p.revision(4)
	p.until(framed(`.body?.innerText.includes('Seafarers')`) + ` && !document.getElementById('report-page').hidden`)
}

// TestSavingFiles: each file is fetched when it is chosen, by click or key, and handed to the
// browser under its name; what cannot be made is told.
func TestSavingFiles(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	p.turnTo(5, "cutting table")
	eval[bool](p, `(() => {
		window.saved = [];
		HTMLAnchorElement.prototype.click = function () { window.saved.push(this.download); };
		return true;
	})()`)
	for _, f := range savedFiles() {
		eval[bool](p, fmt.Sprintf(`(document.querySelector('#report-rows a[href$="%s"]').dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true })), true)`, strings.TrimPrefix(f.path, "/")))
		p.until(fmt.Sprintf(`window.saved.at(-1) === 'quilt%s' && document.getElementById('announcement').textContent === 'saved as quilt%s'`, f.suffix, f.suffix))
	}
	p.picture("files-saved")
	eval[bool](p, `(document.querySelector('#report-rows tbody').focus(), window.saved = [], true)`)
	p.key("\r")
	p.until(`window.saved.join() === 'quilt.svg'`)
	must(t, r.end())
	eval[bool](p, `(document.querySelector('#report-rows a').dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true })), true)`)
	p.until(`document.getElementById('announcement').textContent === 'The preview does not answer.'`)
}

// TestPanelFits: on every window the tabs stand in one line, nothing reaches out of the panel,
// and the picture keeps room.
func TestPanelFits(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	for _, size := range [][2]int64{{1400, 900}, {1000, 700}, {390, 844}} {
		p.do(chromedp.EmulateViewport(size[0], size[1]))
		p.load(r.address)
		for n, holds := range []string{"Does it read", "To buy", "Joining the blocks", "left", "", "To save"} {
			if n == 4 {
				p.do(chromedp.Click(chromedp.CSS("#tab-4")))
				p.until(`document.getElementById('report-page')?.hidden === false`)
			} else {
				p.turnTo(n, holds)
			}
			got := eval[[]float64](p, `(() => { const b = document.getElementById('report-body'), tabs = [...document.querySelectorAll('[role=tab]')].map((e) => e.getBoundingClientRect().top); return [b.scrollWidth - b.clientWidth, Math.max(...tabs) - Math.min(...tabs), document.documentElement.scrollWidth - innerWidth, document.querySelector('.pane').getBoundingClientRect().width, document.querySelector('.pane').getBoundingClientRect().height]; })()`)
			if got[0] > 0 || got[1] > 0 || got[2] > 0 || got[3] < 300 || got[4] < 240 {
				t.Errorf("%d wide, tab %d: the panel is %.0f too wide, tabs %.0f apart, the page %.0f too wide, the picture %.0f by %.0f", size[0], n, got[0], got[1], got[2], got[3], got[4])
			}
		}
	}
}
