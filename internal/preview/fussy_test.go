package preview

import (
	"encoding/json"
	"image/png"
	"math"
	"net/http"
	"strings"
	"testing"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/motifs"
	"eighthturn/internal/quilttest/lay"
)

// toldOf is what a site answers as JSON.
func toldOf[T any](t testing.TB, s *site, path, of string) (v T) {
	t.Helper()
	r := ask(s, path, query(of))
	if r.StatusCode != http.StatusOK {
		t.Fatalf("%s %s: status %d", path, of, r.StatusCode)
	}
	must(t, json.Unmarshal([]byte(body(r)), &v))
	return v
}

// TestWhatThereIsToCut: a page is told the print's repeat, its motifs and the wedge that the layout cuts, 4 in high; the motif of a patch that
// it names; the places that `motifs` finds; and the line of a place. The print is one repeat of its stripes.
func TestWhatThereIsToCut(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, deckchairs)
	f := toldOf[fussy](t, s, "/fussy", "fabric=1&cell=0&patch=2")
	if f.Fabric != "awning" || f.Across != 3*measure.Inch/2 || len(f.Motifs) != 1 || f.Opened != 0 || f.Motifs[0].Pointing != 45 || f.Name != "awning-1" || f.Seen != nil || f.Why != "" {
		t.Errorf("the page is told %+v", f)
	}
	if other := toldOf[fussy](t, s, "/fussy", "fabric=1&cell=1&patch=2"); other.Opened != -1 {
		t.Error("a patch of no motif opens one")
	}
	wedge := f.Pieces[0]
	if low, high := wedge.Finished[1], wedge.Finished[3]; wedge.Round != 8 || math.Abs(float64(high-low-4*measure.Inch)) > 5 {
		t.Errorf("the wedge is %v", wedge)
	}
	plan, err := motifs.Build(lay.Top(t, deckchairs), 1, motifs.Options{})
	must(t, err)
	list := toldOf[centers](t, s, "/centers", "fabric=1")
	if len(list.Centers) != len(plan.Motifs) || list.Centers[1].Across != plan.Motifs[1].Across || list.Centers[1].Pointing != plan.Motifs[1].Pointing {
		t.Errorf("the page has the places %+v", list)
	}
	if why := toldOf[centers](t, s, "/centers", "fabric=0").Why; !strings.HasPrefix(why, `"sand" is one color, and a center is a place of a print. Give it`) {
		t.Errorf("of one color the page is told %q", why)
	}
	moved := toldOf[movedMotif](t, s, "/motif", "motif=mill&of=awning&across=12700000&down=0&pointing=30")
	if moved != (movedMotif{"motif mill awning across 1/2 down 0 pointing 30", true}) {
		t.Errorf("the line is %+v", moved)
	}
	picture, err := png.Decode(ask(s, "/cloth.png", query("fabric=1")).Body)
	must(t, err)
	if r, _, b, _ := picture.At(picture.Bounds().Dx()/4, 0).RGBA(); r>>8 > 10 || b>>8 < 120 {
		t.Errorf("a quarter across the print is not navy: %v", picture.At(picture.Bounds().Dx()/4, 0))
	}
	for _, wrong := range []string{"/fussy?fabric=9", "/fussy?fabric=x", "/cloth.png?fabric=-1", "/centers?", "/motif?motif=mill&of=awning&across=-1&down=0&pointing=0", "/motif?motif=mill&of=awning&across=1&down=0&pointing=360", "/motif?motif=mill&of=sand&across=1&down=0&pointing=0", "/motif?motif=mill&of=awning"} {
		path, of, _ := strings.Cut(wrong, "?")
		if r := ask(s, path, query(of)); r.StatusCode != http.StatusNotFound {
			t.Errorf("%s: status %d", wrong, r.StatusCode)
		}
	}
}

// TestPrintsToCutAreKept: a save that leaves the print as it is has no need to choose places anew; one that changes it has.
func TestPrintsToCutAreKept(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	kept := func(text string) *centers {
		publishing(t, s, text)
		ask(s, "/centers", query("fabric=1"))
		top := s.studies.now.plans.Top
		made, there := s.studies.cut.print(top, 1).centers.Made()
		if !there {
			t.Fatal("nothing is kept")
		}
		return made
	}
	first := kept(deckchairs)
	if kept(deckchairs+"# saved\n") != first {
		t.Error("a comment has places chosen anew")
	}
	for _, other := range [][2]string{{"strip 4", "strip 5"}, {"navy 3/4", "navy 1/2"}, {"crimson 1/2", "crimson 1/2 crosswise"}, {"crimson", "#b5532a"}} {
		if kept(strings.Replace(deckchairs, other[0], other[1], 1)) == first {
			t.Errorf("%s: the places are those of another print", other[1])
		}
	}
}

// TestMotifsAreWritten: a motif is moved in the file, and one that is new gets a line; nothing is written that would make an error.
func TestMotifsAreWritten(t *testing.T) {
	e := edit(t, deckchairs)
	move := func(q editRequest) (int, editReply) {
		q.Do, q.Seen = "motif", e.mark()
		return e.ask(q)
	}
	if status, reply := move(editRequest{Fabric: "awning", Motif: "mill", Across: measure.Inch, Down: 2 * measure.Inch}); status != http.StatusOK || reply.Line != 5 || !strings.Contains(e.says(), "\nmotif mill awning across 1 down 2\n") {
		t.Errorf("status %d, %s:\n%s", status, reply.Why, e.says())
	}
	e.published()
	if status, reply := move(editRequest{Fabric: "awning", Motif: "vane", Pointing: 15}); status != http.StatusOK || !strings.Contains(e.says(), "\nmotif mill awning across 1 down 2\nmotif vane awning across 0 down 0 pointing 15\n") {
		t.Errorf("status %d, %s:\n%s", status, reply.Why, e.says())
	}
	e.published()
	before := e.says()
	for why, q := range map[string]editRequest{
		"no such place on a print": {Fabric: "awning", Motif: "mill", Across: -1},
		"no such fabric now":       {Fabric: "nothing", Motif: "mill"},
		"for something else":       {Fabric: "awning", Motif: "sand"},
		"would have an error":      {Fabric: "awning", Motif: "two words"},
		"an error":                 {Fabric: "sand", Motif: "new"},
	} {
		if status, reply := move(q); status < 400 || !strings.Contains(reply.Why, why) || e.says() != before {
			t.Errorf("%v: status %d, %q", q, status, reply.Why)
		}
	}
}
