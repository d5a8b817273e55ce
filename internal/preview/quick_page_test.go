//go:build judges

package preview

import (
	"fmt"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/invent"
)

// TestQuickPixels: what is painted at once is what Chromium paints of the drawing, but for what it makes of seams; whatever the quilt, its
// place in the window, its view and its colors. The measure is the mean difference of a channel, of 255, and how many pixels differ by more
// than an eighth of black to white.
func TestQuickPixels(t *testing.T) {
	s, p := pageOfState(t)
	eval[bool](p, `(async () => {
		const { Model } = await import('/model.js'), { Drawing } = await import('/drawing.js');
		const pixelsOf = async (drawing, width, height) => {
			const svg = drawing.svg.cloneNode(true), canvas = document.createElement('canvas'), image = new Image();
			Object.assign(canvas, { width, height });
			for (const [key, value] of Object.entries({ width, height })) svg.setAttribute(key, value);
			image.src = URL.createObjectURL(new Blob([new XMLSerializer().serializeToString(svg)], { type: 'image/svg+xml' }));
			await image.decode();
			const context = canvas.getContext('2d');
			context.fillStyle = getComputedStyle(drawing.quick.canvas).backgroundColor;
			context.fillRect(0, 0, width, height);
			context.drawImage(image, 0, 0);
			return context.getImageData(0, 0, width, height).data;
		};
		window.compared = async (view, width, height, x, y, scale, spoiled) => {
			const model = new Model();
			model.apply(await (await fetch('/state')).json());
			const drawing = new Drawing(model), { quick } = drawing;
			document.body.append(quick.canvas);
			drawing.show(view, false);
			drawing.update({ anew: true, regions: new Set(), colours: [] });
			scale *= Math.min(width / model.quilt.width, height / model.quilt.height);
			quick.takes = () => false;
			drawing.place(x, y, scale);
			const want = await pixelsOf(drawing, width, height);
			quick.takes = () => true;
			quick.fit(width / devicePixelRatio, height / devicePixelRatio);
			const own = model.fabrics[0];
			for (const colour of ['#101418', '#f0e8d0', '#884422', own.colour]) { // each as a change of what was painted before
				model.fabrics[0] = colour === own.colour && !spoiled ? own : { ...own, colour, grey: colour };
				if (colour !== own.colour || !spoiled) { quick.take({}); quick.paint(); }
			}
			const changed = quick.painted.changes;
			const got = quick.context.getImageData(0, 0, width, height).data;
			let sum = 0, far = 0;
			for (let i = 0; i < want.length; i++) {
				const by = Math.abs(want[i] - got[i]);
				sum += by;
				if (by > 32) far++;
			}
			const shown = !quick.canvas.hidden;
			quick.settle();
			const again = await pixelsOf(drawing, width, height), same = spoiled || again.every((v, i) => v === want[i]) && quick.canvas.hidden;
			quick.canvas.remove();
			return { changed, mean: sum / want.length, far: far / want.length, shown, same };
		};
		return true;
	})()`)
	type result struct {
		Mean, Far   float64
		Changed     int
		Shown, Same bool
	}
	compared := func(call string) result { return eval[result](p, call) }
	texts := []string{quiltOf(58, 58, false), quiltOf(9, 7, true)}
	for seed := range uint64(10) {
		texts = append(texts, invent.Layout(seed+60))
	}
	shown := 0
	for i, text := range texts {
		d := draw(text, drawing{})
		if d.top == nil {
			continue
		}
		shown++
		s.publish(reading{text: text}, d)
		for _, call := range []string{
			`compared('colour', 640, 400, 12.3, 7.7, 0.9)`, `compared('value', 320, 200, -41.6, -100.2, 2.3)`, `compared('colour', 300, 300, 200, -40, 0.7)`,
		} {
			if r := compared(call); r.Mean > 0.8 || r.Far > 0.006 || !r.Shown || !r.Same || r.Changed != 3 {
				t.Errorf("layout %d, %s: %+v\n%s", i, call, r, text)
			}
		}
	}
	if shown < 8 {
		t.Errorf("only %d layouts were compared", shown)
	}
	if r := compared(`compared('colour', 640, 400, 12.3, 7.7, 0.9, true)`); r.Mean < 1 {
		t.Errorf("another color goes unnoticed: %+v", r)
	}
}

// TestLargeQuiltsArePaintedAtOnce: on the page itself, and the drawing follows.
func TestLargeQuiltsArePaintedAtOnce(t *testing.T) {
	text := quiltOf(32, 32, false)
	r, p := start(t, text, Options{}), newTab(t)
	p.load(r.address)
	const rested, fills = `document.querySelector('.quick').hidden`, `[...document.querySelectorAll('.pane svg g g:nth-of-type(2) > g')].map((g) => g.getAttribute('fill')).join(' ')`
	p.until(rested)
	eval[bool](p, `(window.quick = [], document.addEventListener('shown', () => quick.push(!`+rested+`)), true)`)
	for i, step := range []struct {
		from, to string
		quick    bool
	}{
		{"fabric f1 #37bc9d", "fabric f1 #123456", true},
		{"B0 B3 B2", "B1 B3 B2", false}, // a block is drawn as quickly
		{"strip 4", "strip 5", true},
	} {
		changed := strings.Replace(text, step.from, step.to, 1)
		if changed == text {
			t.Fatalf("%q is not in the layout", step.from)
		}
		text = changed
		put(t, r.file, text)
		p.until(fmt.Sprintf(`quick.length === %d`, i+1))
		if got := eval[bool](p, `quick.at(-1)`); got != step.quick {
			t.Errorf("%s: painted at once is %v", step.to, got)
		}
		p.until(rested)
		if got := eval[string](p, fills); !strings.Contains(got, "#123456") {
			t.Errorf("%s: at rest the drawing has %s", step.to, got)
		}
	}
	p.key("l") // lines have no faces
	p.until(rested + ` && document.querySelector('.lines.black')`)
}
