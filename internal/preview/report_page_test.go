//go:build judges

package preview

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"eighthturn/internal/quilt"
)

// reporting waits for the report of the picture that is shown.
const reporting = `document.querySelector('#report-rows tbody') && document.getElementById('report').checkVisibility() && !document.querySelector('#report.stale')`

// lit is what is lit up in the picture: the seams' path and the veil's.
const litPaths = `[[...document.querySelectorAll('.highlight path')].map((e) => e.getAttribute('d')).join(''), document.querySelector('.dim').getAttribute('d')]`

// rowNamed is the row whose first cell begins with a text.
func rowNamed(text string) string {
	return fmt.Sprintf(`[...document.querySelectorAll('#report-rows tbody')].find((b) => b.innerText.startsWith(%q))`, text)
}

// click clicks a row by its beginning.
func (p *tab) click(row string) {
	p.t.Helper()
	eval[bool](p, `(`+rowNamed(row)+`.firstElementChild.click(), true)`)
}

// TestStudyViews chooses each view of the study by button and by key.
func TestStudyViews(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	top := r.next().picture.top
	p.load(r.address)
	shows := func(view string) string {
		switch view {
		case "squint":
			return `document.querySelector('image.squint')?.getAttribute('href')?.startsWith('blob:') && document.querySelector('figcaption').innerText.includes('10 ft')`
		case "vanishing":
			return `document.querySelectorAll('.seam-mark').length === 2 && document.querySelector('figcaption').innerText.includes('vanishes, 11 in')`
		}
		return fmt.Sprintf(`document.querySelector('g[fill="%s"] path') && document.querySelector('figcaption').innerText.includes('%s')`, seen(top.Fabrics[3].Colour)[view], view)
	}
	keys := map[string]string{"squint": "u", "vanishing": "a", "protan": "p", "deutan": "d", "tritan": "t"}
	for view, key := range keys {
		p.press(view)
		p.until(shows(view))
		p.key("c")
		p.until(`document.querySelector('g[fill="#c04040"] path') && !document.querySelector('image.squint').hasAttribute('href') && !document.querySelector('.seam-mark')`)
		p.key(key)
		p.until(shows(view))
		p.key("c")
	}
	p.key("U")
	p.until(`document.querySelectorAll('.pane').length === 2 && document.querySelectorAll('.pane')[1].querySelector('image[href]') && !document.querySelectorAll('.pane')[0].querySelector('image[href]')`)
	if n := eval[float64](p, `performance.getEntriesByType('resource').filter((e) => e.name.includes('/report?')).length`); n != 1 {
		t.Errorf("the reports of one picture were asked for %.0f times", n)
	}
}

// TestChoosingAViewRecolours: a view of colour vision changes fills alone; no path is drawn
// anew for it.
func TestChoosingAViewRecolours(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	for _, key := range []string{"p", "d", "t", "a", "u", "v"} {
		changed := eval[[]string](p, fmt.Sprintf(`(async () => {
			const seen = new Set(), watch = new MutationObserver((list) => { for (const m of list) seen.add(m.target.nodeName + ' ' + (m.attributeName ?? m.type)); });
			watch.observe(document.querySelector('.pane svg g g'), { subtree: true, childList: true, attributes: true });
			document.dispatchEvent(new KeyboardEvent('keydown', { key: %q, bubbles: true }));
			document.body.dispatchEvent(new KeyboardEvent('keydown', { key: %q, bubbles: true }));
			await new Promise(requestAnimationFrame);
			watch.disconnect();
			return [...seen];
		})()`, "Unidentified", key))
		for _, what := range changed {
			if what != "g fill" && what != "path fill" && what != "g style" { // the ground is a path
				t.Errorf("the view of the key %s changes %s", key, what)
			}
		}
		if len(changed) == 0 && key != "u" && key != "v" { // greys follow greys
			t.Errorf("the view of the key %s changes nothing", key)
		}
	}
}

// TestReportRowsLight opens the report and points at rows with the mouse, the keyboard and a
// finger.
func TestReportRowsLight(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	p.do(chromedp.Click(chromedp.CSS(`[data-action=report]`)))
	p.until(reporting)
	if strings.Contains(p.text("#report"), "our choice") {
		t.Error("how it was judged is not folded")
	}
	fold := func() {
		eval[bool](p, `(document.querySelectorAll('#report-rows summary').forEach((s) => s.click()), true)`)
	}
	fold()
	for _, want := range []string{"Value", "Judged from 10 ft away", "Does it read?", "10 webs of harbour", "outline: 100/100", "Munsell", "51.4%", "mist, spray", "slate, moss",
		"row 1: columns 1, 3; row 2: column 4; row 3: columns 1, 3; the border", "where no line needs to show", "How values are judged", "our choice", "published", "derived"} {
		if got := p.text("#report"); !strings.Contains(got, want) {
			t.Errorf("the report is told without %q:\n%s", want, got)
		}
	}
	none := `String(` + litPaths + `) === ','`
	p.until(none)
	over := func(text string) {
		at := eval[[]float64](p, `(() => { const b = `+rowNamed(text)+`; b.scrollIntoView({ block: 'center' }); const r = b.getBoundingClientRect(); return [r.left + 30, r.top + 8]; })()`)
		p.mouse(moved, at[0], at[1]+1)
		p.mouse(moved, at[0], at[1])
	}
	over("mist, spray")
	p.until(`document.querySelector('.highlight path')?.getAttribute('d').split('M').length - 1 === 7 && !document.querySelector('.dim').getAttribute('d')`)
	over("10 webs")
	p.until(`!document.querySelector('.highlight path') && document.querySelector('.dim').getAttribute('d')`)
	if n := eval[int](p, `document.querySelector('.dim').getAttribute('d').split('M').length - 2`); n != 48 { // four wedges in each of twelve blocks
		t.Errorf("%d pieces of the webs are lit", n)
	}
	p.picture("report-figure")
	p.mouse(moved, 300, 400)
	p.until(none)

	// Held by a click, and let go by another or by Escape.
	over("mist, spray")
	p.click("mist, spray")
	p.mouse(moved, 300, 400)
	p.until(`document.querySelector('.highlight path') && document.querySelector('#report-rows [aria-current=true]')`)
	p.key("\x1b")
	p.until(none)

	// The keyboard goes from row to row.
	eval[bool](p, `(document.querySelector('#report-rows tbody[tabindex="0"]').focus(), true)`)
	for range 3 {
		p.key(kb.ArrowDown)
	}
	p.until(`document.querySelector('.dim').getAttribute('d') && document.getElementById('announcement').textContent.startsWith('the border')`)
	fold()
	p.key(kb.End)
	p.until(none + ` && document.activeElement.innerText === 'How values are judged'`)
	p.key("\r")
	p.until(`[...document.querySelectorAll('#report-rows details')].at(-1).open`)
	p.key(kb.End)
	p.until(none + ` && document.activeElement.closest('details') && document.getElementById('announcement').textContent.startsWith('neighboring')`)
	p.key(kb.Home)
	p.key(kb.ArrowDown)
	p.key(kb.ArrowDown)
	p.key("\r")
	p.until(`document.querySelector('#report-rows tbody[aria-current=true]').innerText.startsWith('10 webs')`)
	p.key("r")
	p.until(none + ` && document.getElementById('report').hidden && document.querySelector('[data-action=report]').getAttribute('aria-expanded') === 'false'`)
}

// TestReportByTouch: on a phone the report fits, and a tap holds a row.
func TestReportByTouch(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.do(chromedp.EmulateViewport(390, 844, chromedp.EmulateTouch))
	p.load(r.address)
	p.key("f")
	p.key("r")
	p.until(reporting)
	if w := eval[int](p, `Math.floor(Math.max(document.documentElement.scrollWidth, document.getElementById('report-body').scrollWidth + document.getElementById('report-body').getBoundingClientRect().left))`); w > 390 {
		t.Errorf("the page is %d wide on a phone of 390", w)
	}
	if h := eval[float64](p, `document.querySelector('.pane').getBoundingClientRect().height`); h < 240 {
		t.Errorf("the picture has %.0f pixels of height beside the report", h)
	}
	at := eval[[]float64](p, `(() => { const b = `+rowNamed("mist, spray")+`; b.scrollIntoView({ block: 'center' }); const r = b.getBoundingClientRect(); return [r.left + 30, r.top + 10]; })()`)
	tap := func() { p.do(chromedp.TapXY(at[0], at[1])) }
	tap()
	p.until(`document.querySelector('.highlight path') && document.querySelector('#report-rows [aria-current=true]')`)
	p.picture("report-phone")
	tap()
	p.until(`!document.querySelector('.highlight path')`)
}

// TestPageLightsWhatIsMeant: for every row of every layout, the page finds the very seams and
// faces that the report names.
func TestPageLightsWhatIsMeant(t *testing.T) {
	p := newTab(t)
	all := layouts(t)
	all["seafarers"] = seafarers
	for name, text := range all {
		r := start(t, text, Options{})
		first := r.next()
		top := first.picture.top
		p.load(r.address)
		found := eval[[][][]int64](p, `(async () => {
			const { Model } = await import('/model.js'), { Highlight } = await import('/highlight.js');
			const model = new Model(), paths = new Highlight(model), list = [];
			model.apply(await (await fetch('/state')).json());
			const numbers = (d) => (d.match(/-?\d+/g) ?? []).map(Number);
			for (let tab = 0; tab < 3; tab++) {
				const { report } = await (await fetch('/report?tab=' + tab)).json();
				for (const { highlight } of [...report.sections.flatMap((s) => s.rows), ...report.marks ?? []]) list.push([numbers(paths.seamPaths(report.highlights?.[highlight]?.seams).join('')), numbers(paths.facePath(report.highlights?.[highlight]?.faces))]);
			}
			return list;
		})()`)
		n := 0
		check := func(what string, faces, seams []int) {
			if fault := elsewhere(first.picture, found[n], faces, seams); fault != "" {
				t.Errorf("%s, %s: %s", name, what, fault)
			}
			n++
		}
		for _, by := range tabSources()[:3] {
			report := by.make(newStudy(first.picture, &studies{name: name}).plans)
			for _, s := range report.Sections {
				for _, w := range s.Rows {
					check(s.Title+": "+strings.Join(w.Cells, " "), facesOfRow(top, &w), distinctOf(w.Seams))
				}
			}
			for _, m := range report.Marks {
				check("marks", nil, m.Seams)
			}
		}
		must(t, r.end())
	}
}

// TestNoStaleReport: through thirty saves, with answers that come late, no frame shows a
// report, marks or a squint beside a picture that they were not made of.
func TestNoStaleReport(t *testing.T) {
	for _, view := range []string{"a", "u"} {
		if faults := staleFrames(t, view, ""); len(faults) > 0 {
			t.Errorf("beside a newer picture: %v", faults)
		}
	}
}

// TestNoStaleReportCatches: a panel that hides nothing is seen to be stale.
func TestNoStaleReportCatches(t *testing.T) {
	if faults := staleFrames(t, "a", `(() => { const s = new CSSStyleSheet(); s.replaceSync('#report.stale #report-rows { visibility: visible !important }'); document.adoptedStyleSheets = [s]; return true; })()`); len(faults) == 0 {
		t.Error("a stale report goes unnoticed")
	}
}

// staleFrames saves thirty colours and gives the frames in which something old was seen. The
// fabric's colour says which save a frame shows, and its L* in the report which one that is of.
func staleFrames(t *testing.T, view, spoil string) []string {
	t.Helper()
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	p.key("r")
	p.until(reporting)
	p.key(view)
	if spoil != "" {
		eval[bool](p, spoil)
	}
	eval[bool](p, `(() => {
		const own = window.fetch;
		window.fetch = async (...a) => { const answer = await own(...a); if (!String(a[0]).startsWith('/state')) await new Promise((r) => setTimeout(r, 60 * Math.random())); return answer; };
		window.stale = [];
		window.frames0 = 0;
		const image = document.querySelector('image.squint'), made = new Map();
		const look = () => {
			window.frames0++;
			const grey = [...document.querySelectorAll('.pane svg g g:nth-of-type(2) > g')].map((g) => g.getAttribute('fill')).join();
			const row = [...document.querySelectorAll('#report-rows tbody')].find((b) => b.innerText.startsWith('buoy'));
			if (row?.checkVisibility({ visibilityProperty: true })) {
				const swatch = row.querySelector('.swatch').style.getPropertyValue('--fabric'), fabric = [...document.querySelectorAll('#fabrics .swatch')].map((s) => s.style.getPropertyValue('--fabric'));
				if (!fabric.includes(swatch)) stale.push('a row of ' + swatch + ' beside ' + fabric);
			}
			const href = image.getAttribute('href');
			if (href) { if (made.has(href) && made.get(href) !== grey) stale.push('a squint of ' + made.get(href) + ' beside ' + grey); made.set(href, grey); }
			requestAnimationFrame(look);
		};
		look();
		return true;
	})()`)
	for n := range 30 {
		put(t, r.file, strings.Replace(seafarers, "#c04040", fmt.Sprintf("#c0%02x40", 70+5*n), 1))
		p.revision(n + 2)
		if n%4 == 0 {
			time.Sleep(150 * time.Millisecond)
		}
	}
	p.until(reporting)
	if n := eval[int](p, `window.frames0`); n < 30 {
		t.Errorf("only %d frames were looked at", n)
	}
	return eval[[]string](p, `window.stale.slice(0, 3)`)
}

// TestReportIsKept: a save that changes nothing of the report leaves it standing with the row
// that has the focus; one that changes a number keeps the row that is held.
func TestReportIsKept(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	p.key("r")
	p.until(reporting)
	eval[bool](p, `(window.first = document.querySelector('#report-rows tbody'), `+rowNamed("mist, spray")+`.click(), document.getElementById('report-body').scrollTop = 200, true)`)
	put(t, r.file, "# a comment\n"+seafarers)
	p.revision(2)
	p.until(reporting)
	if !eval[bool](p, `window.first.isConnected && !!document.querySelector('.highlight path')`) {
		t.Error("a comment made the panel anew")
	}
	put(t, r.file, strings.Replace(seafarers, "#c04040", "#d04040", 1))
	p.revision(3)
	p.until(reporting + ` && !window.first.isConnected`)
	got := eval[string](p, `[document.querySelector('#report-rows [aria-current=true]')?.innerText.slice(0, 11), !!document.querySelector('.highlight path'), document.getElementById('report-body').scrollTop].join()`)
	if got != "mist, spray,true,200" {
		t.Errorf("held, lit and scrolled to: %s", got)
	}
	p.do(chromedp.Reload())
	p.until(reporting)
}

// tabNames are the names of all tabs.
func tabNames() []string {
	var list []string
	for _, t := range tabSources() {
		list = append(list, t.Name)
	}
	return list
}

// TestTabsOfReports: each report has a tab, which is chosen by click or arrow, is asked for
// then and not before, and stays chosen over a reload.
func TestTabsOfReports(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	p.key("r")
	p.until(reporting)
	asked := func() string {
		return eval[string](p, `performance.getEntriesByType('resource').filter((e) => e.name.includes('/report?')).map((e) => e.name.match(/tab=(\d)/)[1]).join()`)
	}
	if got := eval[[]string](p, `[...document.querySelectorAll('[role=tab]')].map((e) => e.innerText)`); !slices.Equal(got, tabNames()) {
		t.Errorf("the tabs are %q", got)
	}
	if got := asked(); got != "0" {
		t.Errorf("asked for the tabs %s", got)
	}
	eval[bool](p, `(document.querySelector('[role=tab][aria-selected=true]').focus(), true)`)
	p.key(kb.ArrowRight)
	p.until(`document.activeElement.innerText === 'Cutting' && document.getElementById('report-rows').innerText.includes('To buy')`)
	p.key(kb.ArrowLeft)
	p.until(reporting + ` && document.getElementById('report-rows').innerText.includes('Does it read')`)
	p.do(chromedp.Click(chromedp.CSS(`#tab-2`)))
	p.until(reporting + ` && document.getElementById('report-rows').innerText.includes('Joining the blocks')`)
	if got := asked(); got != "0,1,2" {
		t.Errorf("asked for the tabs %s", got)
	}
	p.do(chromedp.Reload())
	p.until(reporting + ` && document.getElementById('report-rows').innerText.includes('Joining the blocks')`)
}

// TestReportMemory: a hundred saves with the report, marks and squint in sight leave the page
// as it was.
func TestReportMemory(t *testing.T) {
	r, p := start(t, seafarers, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	p.key("r")
	p.key("a")
	p.key("U")
	revision := 1
	save := func(n int) {
		put(t, r.file, strings.Replace(seafarers, "#c04040", fmt.Sprintf("#c0%02x40", 60+n%10*4), 1))
		revision++
		p.revision(revision)
		if n%10 == 0 {
			p.until(reporting + ` && document.querySelector('image[href]')`)
		}
	}
	counts := func() []float64 {
		p.until(reporting + ` && document.querySelector('image[href]') && document.querySelector('.seam-mark')`)
		return eval[[]float64](p, `(globalThis.gc?.(), [document.querySelectorAll('*').length, performance.memory.usedJSHeapSize])`)
	}
	for n := range 20 {
		save(n)
	}
	before := counts()
	for n := range 40 {
		save(n + 30)
	}
	after := counts()
	t.Logf("elements %.0f and %.0f, heap %.1f and %.1f MB", before[0], after[0], before[1]/1e6, after[1]/1e6)
	if math.Abs(after[0]-before[0]) > 8 || after[1] > before[1]+4e6 {
		t.Errorf("40 saves: %.0f elements became %.0f, a heap of %.1f MB became %.1f", before[0], after[0], before[1]/1e6, after[1]/1e6)
	}
}

// facesOfRow are the faces that a row lights up, each once.
func facesOfRow(top *quilt.Top, w *tabRow) []int {
	list := slices.Clone(w.Faces)
	for _, n := range w.Patches {
		p := &top.Patches[n]
		list = append(list, upTo(int(p.First), int(p.First+p.Count-1))...)
	}
	return distinctOf(list)
}

// elsewhere says where what the page found is not what lies at some faces and seams of a
// picture. Both stand in the order of the page's numbers.
func elsewhere(p *picture, found [][]int64, faces, seams []int) string {
	n, top := p.pageNumbers(nil), p.top
	seams, faces = slices.Clone(seams), slices.Clone(faces)
	slices.SortFunc(seams, func(a, b int) int { return cmp.Compare(n.seamsOf([]int{a})[0], n.seamsOf([]int{b})[0]) })
	slices.SortFunc(faces, func(a, b int) int { return cmp.Compare(n.face[a], n.face[b]) })
	var ends, corners []int64
	for _, i := range seams {
		s := seamOf(top, i)
		ends = append(ends, units(s.From.X), units(s.From.Y), units(s.To.X), units(s.To.Y))
	}
	for _, i := range faces {
		for _, q := range top.Faces[i].Outline {
			corners = append(corners, units(q.X), units(q.Y))
		}
	}
	if len(ends) != len(found[0]) || len(corners) != len(found[1]) {
		return fmt.Sprintf("%d numbers for seams, wanted %d; %d for faces, wanted %d", len(found[0]), len(ends), len(found[1]), len(corners))
	}
	for i := 0; i < len(ends); i += 4 {
		if got := found[0][i : i+4]; !near(got, ends[i:i+4]) && !near([]int64{got[2], got[3], got[0], got[1]}, ends[i:i+4]) {
			return fmt.Sprintf("a seam from %v, wanted %v", got, ends[i:i+4])
		}
	}
	if !near(found[1], corners) {
		return "other faces"
	}
	return ""
}

// near says whether numbers differ by no more than rounding to units twice.
func near(a, b []int64) bool {
	for i := range a {
		if d := a[i] - b[i]; d < -2 || d > 2 {
			return false
		}
	}
	return true
}
