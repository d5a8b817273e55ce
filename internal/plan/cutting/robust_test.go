package cutting

import (
	"bytes"
	"encoding/json"
	"testing"
	"time"

	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
)

// TestNothingPanics: whatever reads as a layout is planned and, where something cannot be cut, faulted.
func TestNothingPanics(t *testing.T) {
	count := 0
	for seed := range uint64(judges.Of(80, 400)) {
		d, _, faults := layout.Read(invent.Mutant(seed))
		if errors, _ := layout.Count(faults); errors > 0 || d == nil {
			continue
		}
		top := quilt.Lay(d)
		if len(top.Patches) > 3000 {
			continue
		}
		count++
		p := Build(nil, top, Options{Copies: 1 + int(seed%4)/3*7, DiagonalBorders: seed%2 == 0, LongEdgesStraight: seed%5 == 0})
		if len(p.Faults) > 0 {
			continue
		}
		if err := unsupplied(top, p); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if err := wrongSums(p); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
	}
	if count < judges.Of(16, 80) {
		t.Errorf("only %d were planned", count)
	}
}

// TestSameAgain: the same top gives the same plan.
func TestSameAgain(t *testing.T) {
	for _, n := range everyTop(20) {
		a, err := json.Marshal(usual(n))
		if err != nil {
			t.Fatal(err)
		}
		if b, _ := json.Marshal(Build(nil, n.Top, Options{})); !bytes.Equal(a, b) {
			t.Fatalf("%s: two plans", n.name)
		}
	}
}

// TestClassesAreQuick: a thousand quilts of every sample are planned within seconds.
func TestClassesAreQuick(t *testing.T) {
	for _, n := range sampleTops() {
		start := time.Now()
		p := Build(nil, n.Top, Options{Copies: MaxCopies})
		if err := unsupplied(n.Top, p); err != nil {
			t.Errorf("%s: %v", n.name, err)
		}
		if took := time.Since(start); took > 20*time.Second {
			t.Errorf("%s took %v", n.name, took)
		}
	}
}
