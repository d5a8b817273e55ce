//go:build judges

package preview

import (
	"encoding/base64"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// gardenFiles are the sample with a photo of a print, and the photo.
func gardenFiles(t testing.TB) (text, photo string) {
	t.Helper()
	var list [2]string
	for i, name := range []string{"garden.quilt", "garden.png"} {
		b, err := os.ReadFile("../../samples/prints/" + name)
		must(t, err)
		list[i] = string(b)
	}
	return list[0], list[1]
}

// startGarden follows the sample with a photo of a print, which lies beside it.
func startGarden(t testing.TB, o Options) *running {
	t.Helper()
	text, photo := gardenFiles(t)
	folder := t.TempDir()
	put(t, filepath.Join(folder, "garden.png"), photo)
	put(t, filepath.Join(folder, "garden.quilt"), text)
	return startOn(t, filepath.Join(folder, "garden.quilt"), o)
}

// cuttingShown says whether the window on a print shows all that there is.
const cuttingShown = `!document.getElementById('fussy').hidden && (document.querySelectorAll('#fussy .centers button').length === 12 || !document.querySelector('#fussy .why').hidden) && document.querySelector('#fussy code').textContent !== '' && document.querySelector('#fussy .center canvas').width > 0`

// openPrint opens the window on a fabric's print by its card.
func (p *tab) openPrint(fabric string) {
	p.t.Helper()
	button := fmt.Sprintf(`[...document.querySelectorAll('#fabrics button')].find((b) => b.querySelector('.name').textContent === %q)`, fabric)
	p.until(button)
	eval[bool](p, `(`+button+`.click(), true)`)
	p.until(`!document.getElementById('color-card').hidden`)
	eval[bool](p, `([...document.querySelectorAll('#color-card button')].find((b) => b.textContent === 'Fussy cut').click(), true)`)
	p.until(cuttingShown)
}

// TestTheWindowOnAPrintIsLaidOut: at every width, light and dark, it moves nothing, lies within the stage, and its words and controls can be
// read and reached; on a phone a thumb does not miss them.
func TestTheWindowOnAPrintIsLaidOut(t *testing.T) {
	r, p := startGarden(t, Options{Edit: true}), newTab(t)
	for _, size := range pageSizes {
		touch := []chromedp.EmulateViewportOption{}
		if size[0] == 390 {
			touch = append(touch, chromedp.EmulateTouch)
		}
		p.do(chromedp.EmulateViewport(size[0], size[1], touch...))
		p.load(r.address)
		for _, dark := range []bool{false, true} {
			p.dark(dark)
			before := eval[string](p, quiltAt)
			p.openPrint("garden")
			what := fmt.Sprintf("%d wide, dark %v", size[0], dark)
			for _, wrong := range slices.Concat(eval[[]string](p, laidOut), eval[[]string](p, cardLaidOut+`('#fussy')`), eval[[]string](p, focusSeen+`('#fussy')`)) {
				t.Errorf("%s: %s", what, wrong)
			}
			if after := eval[string](p, quiltAt); after != before {
				t.Errorf("%s: the quilt moved from %s to %s", what, before, after)
			}
			if size[0] == 390 {
				for _, small := range eval[[]string](p, `[...document.querySelectorAll('#fussy button, #fussy select')].filter((e) => e.checkVisibility()).filter((e) => { const b = e.getBoundingClientRect(); return b.width < 43.5 || b.height < 43.5; }).map((e) => e.textContent || e.localName)`) {
					t.Errorf("%s: a thumb misses %s", what, small)
				}
			}
			p.picture(fmt.Sprintf("fussy-%d-%v", size[0], dark))
			if size[0] == 1280 || size[0] == 390 && !dark {
				for _, wrong := range p.judged(map[bool]string{false: axeRules, true: axeContrast}[dark]) {
					t.Errorf("%s: %s", what, wrong)
				}
			}
			p.key("\x1b")
			p.until(`document.getElementById('fussy').hidden`)
		}
	}
	p.do(chromedp.EmulateViewport(1280, 800))
	p.load(r.address)
	p.openPrint("garden")
	for _, broken := range []string{`bottom = '-60px'`, `right = '-60px'`} {
		eval[bool](p, `((c) => (c.style.`+broken+`, true))(document.getElementById('fussy'))`)
		if len(eval[[]string](p, cardLaidOut+`('#fussy')`)) == 0 {
			t.Errorf("not noticed: %s", broken)
		}
		eval[bool](p, `(document.getElementById('fussy').removeAttribute('style'), true)`)
	}
}

// gardenOn is the garden by a server, or by the program in a worker.
func gardenOn(t testing.TB, way string) served {
	text, photo := gardenFiles(t)
	if way == "server" {
		r := startGarden(t, Options{Edit: true})
		return served{r.address, newTab(t), func(text string) { put(t, r.file, text) }, r.says}
	}
	h := newHost(t)
	s := onHost(h, newTab(t), text)
	other := s.page.beside()
	other.do(chromedp.Navigate(h.URL + "/about.html"))
	eval[bool](other, opened(fmt.Sprintf(`files.put({ name: 'garden.png', bytes: Uint8Array.from(atob(%q), (c) => c.charCodeAt(0)), version: '1' }); transaction.oncomplete = () => done(true);`, base64.StdEncoding.EncodeToString([]byte(photo)))))
	return s
}

// lineOfMotif is the line that the window shows.
const lineOfMotif = `document.querySelector('#fussy code').textContent`

// TestFussyCut: a motif is moved by keys, turned, written, undone; a new one gets a line of its own; what is saved elsewhere is taken over. All of
// that with a server and with the program in a worker.
func TestFussyCut(t *testing.T) {
	text, _ := gardenFiles(t)
	for _, way := range []string{"server", "worker"} {
		t.Run(way, func(t *testing.T) {
			s := gardenOn(t, way)
			p := s.open()
			p.openPrint("garden")
			says := func(line string) {
				t.Helper()
				p.until(fmt.Sprintf(`%s === %q`, lineOfMotif, line))
			}
			written := func(want string) {
				t.Helper()
				p.until(`document.querySelector('#fussy .main').disabled && document.getElementById('note').textContent.startsWith('Saved in line')`)
				if got := s.says(); got != want {
					t.Errorf("the layout is\n%s", got)
				}
			}
			write := func() {
				t.Helper()
				p.until(`!document.querySelector('#fussy .main').disabled`)
				eval[bool](p, `(document.querySelector('#fussy .main').click(), true)`)
			}
			const star = "motif  star   garden  across 4   down 4"
			says(star)
			p.key(kb.ArrowRight)
			p.key(kb.ArrowUp, chromedp.KeyModifiers(8)) // with shift
			p.key("]")
			says("motif  star   garden  across 4 1/8   down 3 15/16 pointing 15")
			write()
			moved := strings.Replace(text, star, "motif  star   garden  across 4 1/8   down 3 15/16 pointing 15", 1)
			written(moved)
			eval[bool](p, `(document.querySelector('#note button').click(), true)`)
			says(star)
			if got := s.says(); got != text {
				t.Errorf("undone, the layout is\n%s", got)
			}
			eval[bool](p, `(() => { const s = document.querySelector('#fussy select'); s.value = ''; s.dispatchEvent(new Event('change')); document.querySelectorAll('#fussy .centers button')[2].click(); return true; })()`)
			p.until(`document.querySelectorAll('#fussy .centers button')[2].getAttribute('aria-pressed') === 'true' && ` + lineOfMotif + `.startsWith('motif garden-1 garden across ')`)
			line := eval[string](p, lineOfMotif)
			const bloom = "motif  bloom  garden  across 18  down 8  pointing 45\n"
			write()
			written(strings.Replace(text, bloom, bloom+line+"\n", 1))
			if note := p.text("#note"); !strings.Contains(note, "Write garden-1 for the wedges of a block.") {
				t.Errorf("the page says %q", note)
			}
			p.until(`document.querySelector('#fussy select').value === 'garden-1'`)
			s.save(strings.Replace(s.says(), line, "motif garden-1 garden across 1 down 2", 1))
			says("motif garden-1 garden across 1 down 2")
			s.save(strings.NewReplacer("motif", "# motif", "wedges star", "wedges teal", "wedges wheel", "wedges teal", "wedges bloom", "wedges teal", `garden  swatch  "garden.png"  across 24  repeat across 24 down 12`, "garden #806040").Replace(text))
			p.until(`document.getElementById('fussy').hidden`)
		})
	}
}

// TestCuttingByHand: the piece is dragged and turned by mouse and finger; it goes over the edge of the repeat, and stays on a photo without
// one; a patch that is held opens its own motif.
func TestCuttingByHand(t *testing.T) {
	r, p := startGarden(t, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	p.openPrint("garden")
	if eval[bool](p, `document.querySelector('#fussy .main').checkVisibility()`) {
		t.Error("a page that may not write offers to")
	}
	handle := func() []float64 {
		return eval[[]float64](p, `((b) => [b.left + b.width / 2, b.top + b.height / 2])(document.querySelector('.field .handle').getBoundingClientRect())`)
	}
	middle := func() []float64 {
		return eval[[]float64](p, `(() => { const b = document.querySelector('.field canvas').getBoundingClientRect(), m = new DOMMatrix(getComputedStyle(document.querySelector('.field svg > g:nth-of-type(2)')).transform); return [b.left + m.e, b.top + m.f]; })()`)
	}
	at, from := middle(), handle()
	p.mouse(pressed, from[0], from[1], left)
	p.mouse(moved, at[0]+80, at[1]-70, left)
	p.mouse(moved, at[0]+80, at[1]+3, left)
	p.mouse(released, at[0]+80, at[1]+3, left)
	p.until(lineOfMotif + `.endsWith('down 4 pointing 90')`)
	if h := handle(); math.Abs(h[1]-at[1]) > 1 || h[0] < at[0]+20 {
		t.Errorf("turned to the right, the handle lies at %v beside %v", h, at)
	}
	wide := eval[float64](p, `document.querySelector('.field').clientWidth`)
	p.dragPiece(-150/wide, 0) // beyond the left edge of the repeat
	p.until(`/across (1[6-9]|2[0-3])/.test(` + lineOfMotif + `)`)
	p.picture("fussy-over-the-edge")
	p.key("\x1b")
	p.until(`document.getElementById('fussy').hidden && document.activeElement?.dataset.fabric !== undefined`)

	// A patch of block B, which is cut from another motif.
	b := eval[[]float64](p, `(() => { const b = document.querySelector('.pane svg g.cloth, .pane svg g').getBoundingClientRect(); return [b.left + b.width * (6.5 + 12) / 53, b.top + b.height * (6.5 + 2) / 53]; })()`)
	p.mouse(pressed, b[0], b[1], left)
	p.mouse(released, b[0], b[1], left)
	p.until(`document.querySelector('#patch.pinned')`)
	eval[bool](p, `([...document.querySelectorAll('#patch button')].find((b) => b.textContent === 'Fussy cut').click(), true)`)
	p.until(cuttingShown + ` && document.querySelector('#fussy select').value === 'wheel'`)
	p.key("\x1b")

	p.do(chromedp.EmulateViewport(390, 844, chromedp.EmulateTouch))
	p.frames()
	p.openPrint("garden")
	before := eval[string](p, lineOfMotif)
	m := middle()
	p.touch(m, []float64{m[0] + 60, m[1] + 20})
	p.until(lineOfMotif + fmt.Sprintf(` !== %q`, before))
	p.key("\x1b")
	p.do(chromedp.EmulateViewport(1280, 800))
	text, _ := gardenFiles(t)
	put(t, r.file, strings.Replace(text, " repeat across 24 down 12", "", 1))
	p.revision(2)
	p.openPrint("garden")
	p.dragPiece(0.75, 0.6)
	p.until(lineOfMotif + `.includes('across 24   down 12')`)
	if said := p.text("#fussy .center p"); !strings.Contains(said, "reaches beyond the photo") {
		t.Errorf("in the corner of the photo the window says %q", said)
	}
	p.picture("fussy-beyond")
}
