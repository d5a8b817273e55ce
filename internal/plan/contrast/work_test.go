package contrast

import (
	"context"
	"fmt"
	"reflect"
	"slices"
	"testing"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// What a study of a large quilt costs, and how soon it ends once nobody waits for it.

// looks counts how often somebody looks whether the work is to end.
type looks struct {
	context.Context
	n int
}

func (l *looks) Err() error { l.n++; return nil }

// TestStudiesAreEndedSoon: a study looks up for each figure when it is gathered, sorted by its coloring and judged, and once more.
func TestStudiesAreEndedSoon(t *testing.T) {
	tried := 0
	for name, text := range relitTexts() {
		top := lay.Top(t, "contrast 1 2\n"+text)
		s, w := newStudy(nil, top, Options{}), newFinding(top)
		want := 2 // one before the work begins
		for _, sort := range []Sort{Web, Star, Wheel} {
			want += len(w.gathered(sort))
		}
		r := Study(top, Options{})
		for _, g := range s.found {
			for _, v := range g.variants {
				want += len(v) + len(whole(v))
			}
			if len(g.between) > 0 {
				want += len(whole(g.between))
			}
		}
		if len(r.Losses) > 0 {
			continue // the ways out are looked for as well
		}
		tried++
		ctx := &looks{Context: context.Background()}
		if err := stop.Do(ctx, func(sign *stop.Sign) { StudyUntil(sign, top, Options{}) }); err != nil || ctx.n != want {
			t.Errorf("%s: %d looks, not %d: %v", name, ctx.n, want, err)
		}
	}
	if tried < 5 {
		t.Errorf("only %d layouts lose nothing", tried)
	}
}

// stepsApart says where what a study of scraps counts is not what it does, "" for nowhere: each face, seam and fabric of a pool as it is
// gone through.
func (s *study) stepsApart() string {
	pools, n := len(s.Credits.Pools), len(s.Fabrics)
	stray := 0
	for p := range s.Credits.Pools {
		pool := &s.Credits.Pools[p]
		if len(pool.Fabrics) < 3 {
			continue
		}
		for _, f := range pool.Fabrics {
			stray += len(s.scraps.opposite[f])
		}
		if across := s.across(pool); len(across) > 0 {
			strays := slices.DeleteFunc(s.stray(), func(one Stray) bool { return one.Pool != pool.Name })
			stray += len(pool.Fabrics) + len(strays)*(len(across)+pools)
		}
	}
	counted := func(work func(s *study)) int {
		return stop.Count(func(sign *stop.Sign) { one := *s; one.sign = sign; work(&one) })
	}
	known := 0
	if pools > 0 {
		known = len(s.seams) + len(s.Faces) + pools*n
	}
	if got := counted(func(s *study) { s.newScraps() }); got != known {
		return fmt.Sprintf("scraps are known after %d steps, not %d", got, known)
	}
	if got := counted(func(s *study) { s.stray() }); got != stray {
		return fmt.Sprintf("stray ones after %d steps, not %d", got, stray)
	}
	for f := range s.Fabrics {
		want := slices.IndexFunc(s.Credits.Pools, func(p layout.Pool) bool { return slices.Contains(p.Fabrics, f) }) + 1
		if want == 0 {
			want = pools
		}
		if got := counted(func(s *study) { s.onePool(f) }); got != want {
			return fmt.Sprintf("%d pools are looked through, not %d", got, want)
		}
	}
	return ""
}

// TestAgainFindsOnce: of tops that are alike but for their fabrics only the first is gone through, whoever studied that; not so of tops
// that are alike in the number of their pieces alone.
func TestAgainFindsOnce(t *testing.T) {
	const text = "side 6\nfabric white #f4f4f0\nfabric black #0a0a0a\nblock W web wedges black kites white\ngrid\n W W\n W W\n"
	top, like := lay.Top(t, text), lay.Top(t, text)
	all := len(top.Faces) + len(top.Seams)
	less := *top
	less.Faces = less.Faces[:len(less.Faces)-1]
	more := *top
	more.Fabrics = append(slices.Clone(more.Fabrics), more.Fabrics[0])
	again, other := &Again{}, &Again{}
	for _, c := range []struct {
		what  string
		by    *Again
		of    *quilt.Top
		steps int
	}{{"the first", again, top, all}, {"the same", again, top, 0}, {"in other colors", again, otherColors(top), 0}, {"another", again, like, all}, {"the first again", again, top, 0}, {"what another found", other, top, 0}} {
		if c.by == other {
			other.First(again)
		}
		if got := stop.Count(func(s *stop.Sign) { c.by.Sign = s; c.by.Of(c.of) }); got != c.steps {
			t.Errorf("%s takes %d steps, not %d", c.what, got, c.steps)
		}
	}
	for what, alike := range map[string]bool{"less": sameLie(top, &less), "more": sameLie(top, &more), "like": sameLie(top, like), "empty": sameLie(&quilt.Top{}, &quilt.Top{})} {
		if alike {
			t.Errorf("a top counts as another: %s", what)
		}
	}
	if !sameLie(top, otherColors(top)) {
		t.Error("a top in other colors counts as another")
	}
}

// TestAgainWithPrintsOfOneSort: prints that are alike but for where their light and dark lie may change places, and are not taken for each other.
func TestAgainWithPrintsOfOneSort(t *testing.T) {
	top := lay.Top(t, "side 6\nfabric fore stripes black 4 white 4\nfabric aft stripes white 4 black 4\nfabric gray #777777\nmotif one fore across 2 down 0\nmotif two aft across 2 down 0\n"+
		"block W web wedges one kites two\nblock P plain piece gray\ngrid\n W W\n W W\n P P\n")
	other := changedPlacesOf(top, 0, 1)
	if !slices.Equal(photographed(top), photographed(other)) {
		t.Fatalf("%v and %v", photographed(top), photographed(other))
	}
	again := &Again{}
	again.Of(top)
	if got, want := again.Of(other), Study(other, Options{}); !reflect.DeepEqual(whatReads(got), whatReads(want)) {
		t.Error("in other prints it does not read as it does by itself")
	}
	plain, n := otherColors(top), newStudy(nil, top, Options{})
	n.newMasses()
	if c := n.canvas; c.otherPrints(n) || !c.otherPrints(n.recoloured(other)) || c.otherPrints(n.recoloured(plain)) {
		t.Error("prints are taken for others, or others for them")
	}
}

// TestTrialsAreEndedSoon: a trial of other colors counts each seam, what the study of them counts, and each loss that is compared.
func TestTrialsAreEndedSoon(t *testing.T) {
	for _, file := range []string{"b3", "n12", "m02"} {
		top := lay.Top(t, judgedText(t, file))
		s, r := newStudy(nil, top, Options{}), Study(top, Options{})
		want := len(s.seams)
		after := &Report{}
		want += stop.Count(func(sign *stop.Sign) {
			n := s.recoloured(top)
			n.sign = sign
			after.Figures, after.Stray = n.figuresBy(&masses{study: n}), n.stray()
		})
		w := &ways{study: s, report: r}
		for i := range r.Losses {
			for _, l := range losses(after.Figures, after.Stray) {
				if want++; w.sameLoss(&r.Losses[i], &l, after) {
					break
				}
			}
		}
		got := stop.Count(func(sign *stop.Sign) {
			one := *s
			one.sign = sign
			(&ways{study: &one, report: r}).tried(Change{}, nil, true)
		})
		if got != want || len(r.Losses) == 0 {
			t.Errorf("%s: %d steps, not %d", file, got, want)
		}
	}
}
