//go:build judges

package preview

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
)

// randomQuilt is one of many layouts that differ a little or much.
func randomQuilt(r *rand.Rand, blocks []byte) string {
	var b strings.Builder
	b.WriteString("strip 4\n")
	fmt.Fprintf(&b, "fabric f0 #%06x\nfabric f1 #%06x\nfabric f2 #30a050\nfabric f3 #3050a0\n", r.IntN(1<<24), 0x400000+r.IntN(4))
	if r.IntN(6) == 0 {
		b.WriteString("fabric f4 #ffffff\n")
	}
	b.WriteString("block A web wedges f0 f1 kites f2\nblock B web wedges f3 kites f0 f1\nblock C floating wedges f1 background f2\nblock D plain piece f3\ngrid\n")
	columns := 14
	for i, c := range blocks {
		if i%columns == 0 {
			b.WriteString("\n ")
		}
		b.WriteByte(' ')
		b.WriteByte(c)
	}
	b.WriteByte('\n')
	if r.IntN(4) > 0 {
		fmt.Fprintf(&b, "border %d f%d\n", 2+r.IntN(2), r.IntN(3))
	}
	return b.String()
}

// TestWhatIsSentAddsUp: a page that is sent only what it lacks, save after save, holds what a
// page does that is sent everything. Some saves are missed on the way.
func TestWhatIsSentAddsUp(t *testing.T) {
	s, p := pageOfState(t)
	eval[bool](p, `(async () => {
		const { Model } = await import('/model.js');
		window.kept = new Model();
		window.told = (model) => {
			const list = [];
			for (let r = 0; r <= model.looseRegion(); r++) {
				const { faces, beneath } = model.paths(r), lines = model.seamPaths(r);
				list.push([faces, beneath].map((of) => model.fabrics.map((_, f) => of[f] ?? '')), lines, model.outlinePath(r));
			}
			return JSON.stringify([list, model.ground(), model.fabrics, model.sources, model.quilt]);
		};
		window.same = async () => {
			const message = await (await fetch('/state?instance=an-instance&have=' + kept.revision)).json();
			kept.apply(message);
			const fresh = new Model();
			fresh.apply(await (await fetch('/state')).json());
			return [message.base > 0, told(kept) === told(fresh)];
		};
		return true;
	})()`)
	r := rand.New(rand.NewPCG(3, 4))
	blocks := []byte(strings.Repeat("ABCDABDCAACCBA", 26))
	partial := 0
	for n := range 40 {
		switch r.IntN(8) {
		case 0:
			blocks = blocks[:14*(24+r.IntN(3))]
		case 1, 2, 3, 4:
			blocks[r.IntN(len(blocks))] = "ABCD"[r.IntN(4)]
		case 5:
			for range 40 {
				blocks[r.IntN(len(blocks))] = "ABCD"[r.IntN(4)]
			}
		}
		text := randomQuilt(r, blocks)
		d := draw(text, drawing{})
		if d.top == nil {
			t.Fatalf("the random quilt is faulty: %v\n%s", d.faults, text)
		}
		s.publish(reading{text: text}, d)
		if r.IntN(4) == 0 {
			continue // the page misses this one
		}
		got := eval[[]bool](p, `same()`)
		if got[0] {
			partial++
		}
		if !got[1] {
			t.Fatalf("save %d: what was sent does not add up to the whole", n)
		}
	}
	if partial < 12 {
		t.Errorf("only %d of the saves were sent in part", partial)
	}
	// A cell changed behind the page's back would be seen.
	if eval[bool](p, `(kept.cells[0] = kept.cells[0] === 0 ? 1 : 0, kept.regions = [], fetch('/state').then((r) => r.json()).then(async (m) => {
		const { Model } = await import('/model.js'), fresh = new Model();
		fresh.apply(m);
		return told(kept) === told(fresh);
	}))`) {
		t.Error("a changed cell goes unnoticed")
	}
}

// pageOfState is a page of a site whose state a test publishes.
func pageOfState(t *testing.T) (*state, *tab) {
	s := newState("an-instance", "a.quilt", "l")
	address, _ := serving(t, siteShowing(s))
	p := newTab(t)
	p.do(navigate(address))
	p.until(`document.readyState === 'complete'`)
	return s, p
}

// siteShowing is a site that shows a state.
func siteShowing(s *state) *site {
	made := newSite("/x/a.quilt", Options{})
	made.state = s
	return made
}
