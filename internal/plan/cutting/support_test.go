package cutting

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"golang.org/x/tools/txtar"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/layout"
	"eighthturn/samples"
)

// topOf lays out a layout without faults.
func topOf(t testing.TB, text string) *quilt.Top {
	t.Helper()
	d, _, faults := layout.Read(text)
	if errors, _ := layout.Count(faults); errors > 0 || d == nil {
		t.Fatalf("%v\n%s", faults, text)
	}
	return quilt.Lay(d)
}

// named is a top with its name, for messages.
type named struct {
	name string
	*quilt.Top
}

// tops are the samples, the hundred layouts that were written down before the planner was, and invented ones, those with
// many thousand patches left out. They are laid out once.
var tops struct {
	sync.Once
	samples, hundred, invented []named
}

func layTops(t testing.TB) {
	tops.Do(func() {
		for _, s := range samples.All() {
			tops.samples = append(tops.samples, named{s.Name, topOf(t, s.Text)})
		}
		a, err := txtar.ParseFile("../../../testdata/cutting/hundred.txtar")
		if err != nil || len(a.Files) != 100 {
			t.Fatalf("%d layouts: %v", len(a.Files), err)
		}
		for _, f := range a.Files {
			tops.hundred = append(tops.hundred, named{strings.TrimSuffix(f.Name, ".quilt"), topOf(t, string(f.Data))})
		}
		for seed := uint64(5000); len(tops.invented) < 150; seed++ {
			if top := topOf(t, invent.Layout(seed)); len(top.Patches) < 2000 {
				tops.invented = append(tops.invented, named{"invented " + strconv.FormatUint(seed, 10), top})
			}
		}
	})
}

func sampleTops(t testing.TB) []named {
	layTops(t)
	return tops.samples
}

func hundred(t testing.TB) []named {
	layTops(t)
	return tops.hundred
}

// everyTop is all of them, but no more than so many invented ones.
func everyTop(t testing.TB, most int) []named {
	layTops(t)
	return slices.Concat(tops.samples, tops.hundred, tops.invented[:min(most, len(tops.invented))])
}

// invented is up to so many invented ones.
func invented(t testing.TB, most int) []named {
	layTops(t)
	return tops.invented[:min(most, len(tops.invented))]
}

// inch is a length of so many inches; inches a length in them.
func inch(n float64) measure.NM { return measure.NM(math.Round(n * float64(measure.Inch))) }

func inches(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }

// near fails unless two figures agree to half a digit of the last of so many decimals.
func near(t *testing.T, what string, got, want float64, decimals int) {
	t.Helper()
	if math.Abs(got-want) > 0.5000001*math.Pow10(-decimals) {
		t.Errorf("%s: got %.6f, want %g", what, got, want)
	}
}
