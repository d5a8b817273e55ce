//go:build judges

package preview

import (
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// inAColorway is the starfish with a colorway and a size of long names.
func inAColorway(t *testing.T) string {
	return starfish(t) + "\ncolorway low-water-at-dusk sand #d7c3d0\nsize extra-long-queen across 12 down 14\n"
}

// TestColorwaysOnThePage: a key and a menu show the quilt in the layout's colorways, the strip, the title, the report and what is saved with
// it; the second view may be in one; the address says so; a color is written into the colorway that is shown; and a colorway that is gone
// leaves the quilt as it is written.
func TestColorwaysOnThePage(t *testing.T) {
	r, p := start(t, inColorways, Options{Edit: true}), newTab(t)
	p.load(r.address)
	p.watching()
	const fills = `[...document.querySelectorAll('.pane')].map((b) => [...b.querySelectorAll('svg g g:nth-of-type(2) > g')].map((g) => g.getAttribute('fill')).join())`
	shows := func(pane int, color string) string {
		return fills + `[` + string(rune('0'+pane)) + `].includes('` + color + `')`
	}
	p.key("r")
	p.until(reporting)
	p.until(shows(0, "#c04040") + ` && document.getElementById('colorway-name').textContent === 'as written'`)
	p.key("o")
	p.until(shows(0, "#334455") + ` && document.title.includes('Seafarers, dusk') && document.getElementById('title').textContent === 'Seafarers' && location.hash.includes('colorway=dusk')`)
	p.until(`[...document.querySelectorAll('#fabrics .swatch')].some((s) => s.style.getPropertyValue('--fabric') === '#334455')`)
	p.until(reporting + ` && [...document.querySelectorAll('#report-rows .swatch')].some((s) => s.style.getPropertyValue('--fabric') === '#334455')`)
	p.picture("colorway-dusk")
	for _, tab := range []string{"4", "5"} { // the pattern and the files
		eval[bool](p, `(document.getElementById('tab-`+tab+`').click(), true)`)
	}
	p.until(reporting + ` && document.querySelector('#report-rows a.file')?.getAttribute('href') === 'save/picture.svg?colorway=dusk'`)
	if got := eval[string](p, `document.getElementById('save-picture').getAttribute('href')`); got != "picture.svg?view=colour&seams=1&colorway=dusk" {
		t.Errorf("the picture is saved from %s", got)
	}
	p.key("r")
	p.key("O")
	p.until(shows(0, "#334455") + ` && ` + shows(1, "#ffccaa") + ` && [...document.querySelectorAll('figcaption')].map((c) => c.innerText).join() === 'color, dusk,color, dawn'`)
	p.picture("colorways-beside")
	other := p.beside()
	other.do(chromedp.EmulateViewport(1000, 700))
	other.load(eval[string](p, `location.href`))
	other.until(shows(0, "#334455") + ` && ` + shows(1, "#ffccaa"))
	p.key("V")
	p.until(`document.querySelectorAll('figcaption')[1].innerText === 'value' && !location.hash.includes('with-colorway')`)
	p.key("b")

	eval[bool](p, `(document.querySelector('#fabrics [data-fabric="3"]').click(), true)`)
	eval[bool](p, `(document.querySelector('.ladder button:nth-child(3)').click(), true)`)
	p.until(`!document.querySelector('#color-card .main').disabled`)
	hex := eval[string](p, `document.querySelector('#color-card input').value`)
	eval[bool](p, `(document.querySelector('#color-card .main').click(), true)`)
	p.revision(2)
	if b, err := os.ReadFile(r.file); err != nil || string(b) != strings.Replace(inColorways, "buoy #334455", "buoy "+hex, 1) {
		t.Errorf("written in a colorway is\n%s", b)
	}
	p.until(shows(0, hex))
	put(t, r.file, strings.Replace(inColorways, "colorway dusk", "colorway night", 1))
	p.revision(3)
	p.until(shows(0, "#c04040") + ` && document.getElementById('colorway-name').textContent === 'as written'`)
	eval[bool](p, `(document.querySelector('#colorways .opener').click(), [...document.querySelectorAll('#colorway-items button')].find((b) => b.textContent === 'night').click(), true)`)
	p.until(shows(0, "#334455") + ` && document.title.includes('Seafarers, night')`)
	put(t, r.file, seafarers)
	p.revision(4)
	p.until(`document.getElementById('colorways').hidden`)
}
