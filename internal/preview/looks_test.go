//go:build judges

package preview

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/svgout"
)

// sampled reads the colours of a document's drawing at places given in units of the quilt:
// the svg is drawn by the browser itself at so many pixels a unit.
const sampled = `(async () => {
	const draw = async (text, width, height) => {
		const image = new Image();
		image.src = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
		await image.decode();
		const c = new OffscreenCanvas(width, height), x = c.getContext('2d');
		x.drawImage(image, 0, 0, width, height);
		return x.getImageData(0, 0, width, height).data;
	};
	const { width, height, page, file } = %s;
	const a = await draw(page, width, height), b = await draw(file, width, height);
	let apart = 0, most = 0, sum = 0;
	for (let i = 0; i < a.length; i++) {
		const d = Math.abs(a[i] - b[i]);
		most = Math.max(most, d);
		sum += d;
		if (d > 64) apart++;
	}
	return [most, apart / (a.length / 4), sum / a.length, a[3]];
})()`

// pageSVG is what the page draws, as a document of its own.
const pageSVG = `(async () => {
	const { Model } = await import('/model.js'), { Drawing } = await import('/drawing.js');
	const model = new Model(), drawing = new Drawing(model);
	model.apply(await (await fetch('/state')).json());
	drawing.show(%q, false);
	drawing.update({ anew: true, regions: new Set(), colours: [] });
	drawing.fitForPrint(true);
	for (const e of [drawing.flash, drawing.outlineHalo, drawing.outline]) e.remove();
	return new XMLSerializer().serializeToString(drawing.svg).replace('<svg', '<svg width="%d" height="%d"');
})()`

// TestPageShowsWhatTheFileShows: the page's drawing and the file that package svgout writes
// are the same picture, pixel by pixel but for the mixing along seams, in colour and value,
// for every layout there is; and of one fabric alone not a pixel is off, so nothing shows
// through where blocks and regions meet.
func TestPageShowsWhatTheFileShows(t *testing.T) {
	p, turn := newTab(t), 0
	for name, text := range layouts(t) {
		r := start(t, text, Options{})
		first := r.next()
		p.load(r.address)
		for _, view := range []svgout.View{svgout.Colour, svgout.Value} {
			if turn++; turn%4 == 1 || turn%4 == 0 { // layouts by turns in color and in gray
				continue
			}
			got := compare(t, p, first.picture.top, view)
			// The two round seams to different grids, so pixels on them may differ in their mix.
			if got[1] > 0.002 || got[2] > 0.8 {
				t.Errorf("%s in %s: %.4f of the pixels are far apart, %.3f off in the mean", name, svgout.Views()[view], got[1], got[2])
			}
		}
		must(t, r.end())
	}
}

func compare(t *testing.T, p *tab, top *quilt.Top, view svgout.View) []float64 {
	t.Helper()
	const width = 700
	height := int(math.Round(width * float64(top.Outer.Height()) / float64(top.Outer.Width())))
	var file bytes.Buffer
	must(t, svgout.Draw(&file, top, svgout.Options{View: view, ByFabric: true, SeamLines: svgout.SeamsLeftOut}))
	page := eval[string](p, fmt.Sprintf(pageSVG, svgout.Views()[view], width, height))
	return eval[[]float64](p, fmt.Sprintf(sampled, encoded(map[string]any{"width": width, "height": height, "page": page, "file": file.String()})))
}

// TestNothingShowsThrough colours every fabric alike on a ground that is not: every pixel has
// the one colour, at sizes where seams fall between pixels.
func TestNothingShowsThrough(t *testing.T) {
	r, p := start(t, quiltOf(24, 24, true), Options{}), newTab(t)
	p.load(r.address)
	off := func(width int, without string) float64 {
		page := eval[string](p, fmt.Sprintf(pageSVG, "colour", width, width))
		return eval[float64](p, fmt.Sprintf(throughGreen, encoded(page), encoded(without), width))
	}
	for _, width := range []int{333, 700, 1111} {
		if got := off(width, "nothing"); got > 4 { // eight layers of one colour, each rounded
			t.Errorf("at a width of %d, a pixel is %.0f off the one colour", width, got)
		}
	}
	if got := off(700, "[shape-rendering], [shape-rendering] + g ~ path, svg > g > g > path"); got < 30 {
		t.Errorf("without what lies beneath the seams the ground shows by %.0f only: this would go unnoticed", got)
	}
}

// throughGreen draws a picture in one colour on green, without some of its elements, and says
// how far the worst pixel is from that colour.
const throughGreen = `(async () => {
	const doc = new DOMParser().parseFromString(%s, 'image/svg+xml'), without = %s, width = %d;
	for (const e of doc.querySelectorAll(without)) e.remove();
	for (const e of doc.querySelectorAll('[fill]')) if (e.getAttribute('fill') !== 'none') e.setAttribute('fill', '#c05030');
	const ground = doc.createElementNS('http://www.w3.org/2000/svg', 'rect');
	for (const [k, v] of [['width', '100%%'], ['height', '100%%'], ['fill', '#00ff00']]) ground.setAttribute(k, v);
	doc.documentElement.prepend(ground);
	const image = new Image();
	image.src = URL.createObjectURL(new Blob([new XMLSerializer().serializeToString(doc)], { type: 'image/svg+xml' }));
	await image.decode();
	const c = new OffscreenCanvas(width, width), x = c.getContext('2d');
	x.drawImage(image, 0, 0);
	const d = x.getImageData(2, 2, width - 4, width - 4).data;
	let off = 0;
	for (let i = 0; i < d.length; i += 4) off = Math.max(off, Math.abs(d[i] - 0xc0), Math.abs(d[i + 1] - 0x50), Math.abs(d[i + 2] - 0x30));
	return off;
})()`
