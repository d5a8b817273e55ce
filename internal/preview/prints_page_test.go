//go:build judges

package preview

import (
	"strings"
	"testing"
	"time"
)

// laidPrints is how many pixels across the picture of prints has that the page shows, 0 where there is none.
const laidPrints = `(async () => {
	const href = [...document.querySelectorAll('.pane svg image')].map((e) => e.getAttribute('href')).find(Boolean), image = new Image();
	if (!href) return 0;
	image.src = href;
	await image.decode();
	return image.naturalWidth;
})()`

// TestPageShowsPrints: where a fabric is striped or printed, the page lays it over its faces, in gray in the views of values, finer once the quilt is looked at more
// nearly; a button takes it away; where a save makes all fabrics plain, it goes and its button with it.
func TestPageShowsPrints(t *testing.T) {
	r, p := start(t, deckchairs, Options{}), newTab(t)
	r.next()
	p.load(r.address)
	laid := func(want string) {
		t.Helper()
		for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
			if eval[bool](p, `(async () => (await `+laidPrints+`) `+want+`)()`) {
				return
			}
		}
		t.Fatalf("the picture of prints is %g pixels wide, not %s", eval[float64](p, laidPrints), want)
	}
	laid("=== 1000")
	p.picture("prints")
	p.press("prints")
	laid("=== 0")
	p.press("prints")
	laid("=== 1000")
	const gray = `(async () => {
		const image = new Image(), canvas = document.createElement('canvas'), context = canvas.getContext('2d');
		image.src = document.querySelector('.pane image.prints').getAttribute('href');
		await image.decode();
		[canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight];
		context.drawImage(image, 0, 0);
		const { data } = context.getImageData(0, 0, canvas.width, canvas.height), seen = new Set();
		for (let i = 0; i < data.length; i += 4) if (data[i] !== data[i + 1] || data[i] !== data[i + 2]) return 0; else seen.add(data[i]);
		return seen.size;
	})()`
	for _, view := range []string{"v", "a"} { // by value, and where seams vanish
		p.key(view)
		laid("=== 1000")
		p.until(`document.querySelector('.pane image.prints').getAttribute('href')`)
		if n := eval[int](p, gray); n < 4 {
			t.Errorf("key %s: prints have %d grays, 0 for colors", view, n)
		}
		p.picture("prints-" + view)
	}
	p.key("l")
	laid("=== 0")
	p.key("c")
	laid("=== 1000")
	for range 8 {
		p.key("+")
	}
	laid("> 1000")
	p.picture("prints-near")
	plain := strings.NewReplacer("stripes navy 3/4 white 1/4 crimson 1/2", "navy", "motif mill awning across 3/8 down 0 pointing 45\n", "", "wedges mill", "wedges awning", "awning lengthwise from 0", "awning")
	put(t, r.file, plain.Replace(deckchairs))
	laid("=== 0")
	p.until(`document.querySelector('[data-action=prints]').hidden`)
}

// TestPrintsInTwoColorways: where the second view is in another colorway, each view shows the prints of its own; one button takes both away;
// pictures saved from the reports are asked for with prints while they are on.
func TestPrintsInTwoColorways(t *testing.T) {
	r, p := start(t, deckchairs+"colorway dusk sand #203040\n", Options{}), newTab(t)
	r.next()
	p.load(r.address)
	const laid = `[...document.querySelectorAll('.pane image.prints')].map((e) => e.getAttribute('href') ?? '')`
	p.key("O")
	p.until(`((l) => l.length === 2 && l[0] && l[1] && l[0] !== l[1])(` + laid + `)`)
	p.picture("prints-colorways")
	corner := `Promise.all(` + laid + `.map(async (href) => {
		const image = new Image(), canvas = document.createElement('canvas'), context = canvas.getContext('2d');
		image.src = href;
		await image.decode();
		context.drawImage(image, 0, 0);
		return [...context.getImageData(6, 6, 1, 1).data.slice(0, 3)].join(' ');
	}))` // of the first block, which is sand
	if got := eval[[]string](p, corner); got[0] != "232 217 176" || got[1] != "32 48 64" {
		t.Errorf("the corners are %v", got)
	}
	const saved = `(async () => {
		const was = window.fetch, asked = [];
		window.fetch = (...a) => { asked.push(a[0]); return Promise.reject(new TypeError('not now')); };
		[...document.querySelectorAll('#report-rows a.file')].slice(0, 6).forEach((a, i) => setTimeout(() => a.click(), 50 * i));
		await new Promise((done) => setTimeout(done, 500));
		window.fetch = was;
		return asked.filter((a) => a.startsWith('save/')).join(' ');
	})()`
	p.key("r")
	eval[bool](p, `(document.getElementById('tab-5').click(), true)`)
	p.until(reporting + ` && document.querySelector('#report-rows a.file')`)
	if got := eval[string](p, saved); got != "save/picture.svg?prints=1 save/picture.png?prints=1 save/picture.jpg?prints=1 save/picture.pdf?prints=1 save/cutting.csv save/cutting.xlsx" {
		t.Errorf("saved are %s", got)
	}
	p.key("g")
	p.until(laid + `.every((l) => l === '')`)
	if got := eval[string](p, saved); strings.Contains(got, "prints") {
		t.Errorf("without prints, saved are %s", got)
	}
}
