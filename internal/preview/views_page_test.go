//go:build judges

package preview

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// quiltBox is where the quilt lies in the window: left, top, width and height of each drawing's ground.
const quiltBox = `[...document.querySelectorAll('.pane > svg:first-child > g > g > path')].flatMap((e) => { const b = e.getBoundingClientRect(); return [b.left, b.top, b.width, b.height]; })`

// stays says where a box that was measured twice has moved to, "" if it stays.
func stays(before, now []float64) string {
	if len(before) == len(now) && !slices.ContainsFunc(before, func(v float64) bool { return math.IsNaN(v) }) {
		moved := false
		for i := range before {
			moved = moved || math.Abs(before[i]-now[i]) > 0.5
		}
		if !moved {
			return ""
		}
	}
	return fmt.Sprintf("from %.1f to %.1f", before, now)
}

// TestOpeningNeverMovesTheQuilt: whatever is opened, in a window of any width, the quilt stays where it is, and so does the button
// that opened it. In wide windows the reports do not lie over a quilt that has room beside them.
func TestOpeningNeverMovesTheQuilt(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	const button = `(() => { const b = document.querySelector('[data-action=report]').getBoundingClientRect(); return [b.left, b.top]; })()`
	for _, size := range [][2]int64{{1600, 900}, {1280, 800}, {1024, 768}, {820, 1180}, {390, 844}} {
		p.do(chromedp.EmulateViewport(size[0], size[1]))
		p.load(r.address)
		quilt, opener := eval[[]float64](p, quiltBox), eval[[]float64](p, button)
		for _, key := range []string{"r", "k", "m", "m", "r", "k"} {
			p.key(key)
			if key == "r" {
				p.frames()
			}
			now := eval[[]float64](p, quiltBox)
			if wrong := stays(quilt, now[:4]); wrong != "" {
				t.Errorf("%d wide: %q moves the quilt %s", size[0], key, wrong)
			}
			if wrong := stays(opener, eval[[]float64](p, button)); wrong != "" {
				t.Errorf("%d wide: %q moves the button of the reports %s", size[0], key, wrong)
			}
			if key != "r" || size[0] < 1000 {
				continue
			}
			if left := eval[float64](p, `document.querySelector('aside').getBoundingClientRect().left || 1e6`); left < quilt[0]+quilt[2] {
				t.Errorf("%d wide: the reports begin at %.0f, over a quilt that ends at %.0f", size[0], left, quilt[0]+quilt[2])
			}
		}
	}
	eval[bool](p, `(document.querySelector('main').style.marginTop = '9px', true)`)
	p.frames()
	quilt := eval[[]float64](p, quiltBox)
	eval[bool](p, `(document.querySelector('main').style.marginTop = '', true)`)
	p.frames()
	if stays(quilt, eval[[]float64](p, quiltBox)) == "" {
		t.Error("not noticed: the picture was moved")
	}
}

// frames waits until two frames were painted.
func (p *tab) frames() {
	p.t.Helper()
	eval[bool](p, `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))`)
}

// TestDragToCompare: with the line between two views each side is seen in its own; it begins in the middle of the quilt, and the pointer,
// a finger and the keys move it.
func TestDragToCompare(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	p.load(r.address)
	p.press("slide")
	const at = `parseFloat(document.getElementById('split').getAttribute('aria-valuenow'))`
	const middle = `(() => { const b = document.getElementById('split').getBoundingClientRect(); return [b.left + b.width / 2, b.top + b.height / 2]; })()`
	p.until(`!document.getElementById('split').hidden`)
	p.frames()
	if boxes := eval[[]float64](p, quiltBox); stays(boxes[:4], boxes[4:]) != "" {
		t.Errorf("the two views lie apart: %v", boxes)
	}
	place, began := eval[[]float64](p, middle), eval[float64](p, at)
	if off := eval[float64](p, `(() => { const b = document.querySelector('.pane .frame').getBoundingClientRect(); return b.left + b.width / 2; })()`) - place[0]; math.Abs(off) > 7 {
		t.Errorf("the line begins %.0f pixels off the middle of the quilt", off)
	}
	p.mouse(pressed, place[0], place[1], left)
	p.mouse(moved, place[0]+140, place[1], left)
	p.mouse(released, place[0]+140, place[1], left)
	if got := eval[float64](p, at); got != began+10 {
		t.Errorf("dragged by a tenth of 1400 pixels, the line stands at %.0f %% instead of %.0f", got, began+10)
	}
	if clip := eval[string](p, `getComputedStyle(document.querySelector('.pane + .pane svg')).clipPath`); clip != fmt.Sprintf("inset(0px 0px 0px %g%%)", began+10) {
		t.Errorf("the second view is cut to %s", clip)
	}
	p.picture("slide")
	place = eval[[]float64](p, middle)
	p.touch(place, []float64{place[0] - 280, place[1]})
	p.until(fmt.Sprintf(`%s === %g`, at, began-10))
	eval[bool](p, `(document.getElementById('split').focus(), true)`)
	for _, key := range []struct {
		key  string
		want float64
	}{{kb.ArrowRight, began - 8}, {kb.ArrowLeft, began - 10}, {kb.PageUp, began}, {kb.Home, 0}, {kb.End, 100}, {kb.PageDown, 90}} {
		p.key(key.key)
		if got := eval[float64](p, at); got != key.want {
			t.Errorf("%q: the line stands at %.0f %%, wanted %.0f", key.key, got, key.want)
		}
	}
	if says := eval[string](p, `document.getElementById('split').getAttribute('aria-valuetext')`); says != "color to the left of 90%, value to the right" {
		t.Errorf("a screen reader says %q", says)
	}
	p.key("v") // the second view becomes the first
	if says := eval[string](p, `document.getElementById('split').getAttribute('aria-valuetext')`); !strings.HasPrefix(says, "value") || !strings.Contains(says, "color to the right") {
		t.Errorf("after the other view was chosen, a screen reader says %q", says)
	}
	eval[bool](p, `(document.querySelector('[data-second=line]').click(), true)`)
	if says := eval[string](p, `document.getElementById('split').getAttribute('aria-valuetext')`); !strings.Contains(says, "line to the right") {
		t.Errorf("after a second view was chosen, a screen reader says %q", says)
	}
	p.key("m")
	p.until(`document.getElementById('split').hidden && document.querySelectorAll('.pane').length === 1`)
}

// TestLinkToAState: the address says the view, what it is compared with, the report and the place; who opens it sees the same,
// and the browser goes back over them.
func TestLinkToAState(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	p.load(r.address)
	if got := eval[string](p, `location.hash`); got != "" {
		t.Errorf("a page that was only opened has the address %s", got)
	}
	p.key("v")
	p.key("r")
	p.until(reporting)
	eval[bool](p, `(document.getElementById('tab-1').click(), true)`)
	p.key("m")
	p.wheel(600, 400, 300)
	p.until(`/^#view=value&compare=slide&with=color&split=\d+&report=cutting&at=[-0-9.,]+&zoom=[0-9.]+$/.test(location.hash)`)
	address := eval[string](p, `location.href`)
	other := p.beside()
	other.do(chromedp.EmulateViewport(1400, 900))
	other.load(address)
	other.frames()
	if wrong := stays(eval[[]float64](p, quiltBox), eval[[]float64](other, quiltBox)); wrong != "" {
		t.Errorf("opened by its link, the quilt has moved %s", wrong)
	}
	for _, same := range []string{`document.querySelector('[data-action=value]').getAttribute('aria-pressed')`, `document.querySelector('[data-action=slide]').getAttribute('aria-pressed')`,
		`document.querySelector('#report-tabs [aria-selected=true]').textContent`, `String(document.getElementById('report').hidden)`} {
		if a, b := eval[string](p, same), eval[string](other, same); a != b {
			t.Errorf("%s: %q, and opened by its link %q", same, a, b)
		}
	}
	other.do(chromedp.EmulateViewport(900, 700))
	other.load(regexp.MustCompile(`split=\d+`).ReplaceAllString(address, "split=20") + "&view=<script>&with=nothing&nonsense")
	if got := eval[string](other, `document.getElementById('split').getAttribute('aria-valuenow')`); got != "20" {
		t.Errorf("an address that ends in nonsense is read as %s", got)
	}
	for _, back := range []string{
		`document.getElementById('split').hidden && document.querySelector('#report-tabs [aria-selected=true]').textContent === 'Cutting'`,
		`document.querySelector('#report-tabs [aria-selected=true]').textContent !== 'Cutting' && !document.getElementById('report').hidden`,
		`document.getElementById('report').hidden && document.querySelector('[data-action=value]').getAttribute('aria-pressed') === 'true'`,
		`document.querySelector('[data-action=colour]').getAttribute('aria-pressed') === 'true' && location.hash === ''`,
	} {
		eval[bool](p, `(history.back(), true)`)
		p.until(back)
	}
	eval[bool](p, `(history.forward(), true)`)
	p.until(`document.querySelector('[data-action=value]').getAttribute('aria-pressed') === 'true'`)
	p.press("link")
	p.until(`!document.getElementById('note').hidden`)
}

// TestFullScreen: a key and a button show the picture alone on the screen, and Esc leaves it.
func TestFullScreen(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	p.load(r.address)
	const full = `document.fullscreenElement !== null && !document.querySelector('nav').checkVisibility() && !document.querySelector('header').checkVisibility()`
	const window = `document.fullscreenElement === null && document.querySelector('nav').checkVisibility()`
	p.key("x")
	p.until(full)
	p.picture("full-screen")
	p.key(kb.Escape)
	p.until(window)
	p.press("fullscreen")
	p.until(full)
	p.press("fullscreen")
	p.until(window)
}

// TestSheetIsPulled: on a phone the thumb pulls the reports up and down, lets them lie where it lets go, and pulls them shut.
func TestSheetIsPulled(t *testing.T) {
	r, p := start(t, starfish(t), Options{}), newTab(t)
	p.do(chromedp.EmulateViewport(390, 844))
	p.load(r.address)
	p.key("r")
	p.until(reporting)
	const grip = `(() => { const b = document.getElementById('edge').getBoundingClientRect(); return [b.left + b.width / 2, b.top + b.height / 2]; })()`
	const height = `document.querySelector('aside').getBoundingClientRect().height`
	before, from := eval[float64](p, height), eval[[]float64](p, grip)
	p.touch(from, []float64{from[0], from[1] - 150})
	p.frames()
	if now := eval[float64](p, height); math.Abs(now-before-150) > 15 {
		t.Errorf("pulled up by 150 pixels, the sheet is %.0f high instead of %.0f", now, before)
	}
	p.picture("sheet-high")
	tall := eval[float64](p, height)
	from = eval[[]float64](p, grip)
	p.touch(from, from) // a tap lowers it
	p.until(height + fmt.Sprintf(" < %.0f", tall-50))
	from = eval[[]float64](p, grip)
	p.touch(from, []float64{from[0], 780})
	p.until(`document.getElementById('report').hidden`)
	p.key("r")
	p.until(`!document.getElementById('report').hidden && ` + height + ` > 300`)
	eval[bool](p, `(document.getElementById('edge').focus(), true)`)
	before = eval[float64](p, height)
	p.key(kb.ArrowUp)
	if now := eval[float64](p, height); now < before+10 {
		t.Errorf("the key makes the sheet %.0f high instead of %.0f", now, before)
	}
}
