package invent

import (
	"strings"
	"testing"

	"eighthturn/layout"
)

// TestLayouts reads some hundreds of invented layouts: nearly all are valid, and between
// them they hold all that they should.
func TestLayouts(t *testing.T) {
	const seeds = 600
	var tally Tally
	rejected := 0
	for seed := range uint64(seeds) {
		text := Layout(seed)
		d, source, faults := layout.Read(text)
		if d != nil {
			tally.Add(d)
			continue
		}
		rejected++
		var report strings.Builder
		layout.Report(&report, "seed", source, faults)
		t.Logf("seed %d was rejected:\n%s", seed, report.String())
	}
	if rejected*50 > seeds {
		t.Errorf("%d of %d layouts were rejected, at most one in fifty may be", rejected, seeds)
	}
	if missing := tally.Missing(3); len(missing) > 0 {
		t.Errorf("hardly seen: %q\n%s", missing, tally.String())
	}
}

// TestSameSeed: a seed gives one layout, and another seed another.
func TestSameSeed(t *testing.T) {
	seen := map[string]uint64{}
	for seed := range uint64(200) {
		text := Layout(seed)
		if text != Layout(seed) {
			t.Fatalf("seed %d gives two layouts", seed)
		}
		if other, twice := seen[text]; twice {
			t.Errorf("seeds %d and %d give one layout", other, seed)
		}
		seen[text] = seed
	}
}

// TestMissingNotices: a tally of too little says what is missing.
func TestMissingNotices(t *testing.T) {
	d, _, _ := layout.Read("strip 4\nfabric x #123\nblock A web wedges x kites x\ngrid\n A A\n")
	var tally Tally
	tally.Add(d)
	missing := strings.Join(tally.Missing(1), "; ")
	for _, what := range []string{"cm: 0", "ring: 0", "kinds mixed: 0", "turned 2 times: 0", "strip set with a rest: 0", "odd across: 0"} {
		if !strings.Contains(missing, what) {
			t.Errorf("nothing says %q: %s", what, missing)
		}
	}
	if strings.Contains(missing, "inches") || strings.Contains(missing, "even across") {
		t.Errorf("what was there is called missing: %s", missing)
	}
}

// TestPrinted: the layouts with prints are valid, and their prints are seen; a photo that is missing is a fault.
func TestPrinted(t *testing.T) {
	for _, text := range Printed() {
		d, _, faults := layout.ReadWith(text, Photo)
		if errors, _ := layout.Count(faults); errors > 0 || d == nil {
			t.Errorf("%v\n%s", faults, text)
		}
		if d, _, _ := layout.ReadWith(strings.NewReplacer(`"rose`, `"missing-rose`, `"sea`, `"missing-sea`).Replace(text), Photo); d != nil {
			t.Errorf("a photo is missing, and nothing says so:\n%s", text)
		}
	}
}
