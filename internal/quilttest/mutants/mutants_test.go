package main

import (
	"bytes"
	"context"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"eighthturn/internal/quilttest/judges"
)

// fates are the breakages of testdata/steps, and what becomes of them.
func fates() map[string]fate {
	return map[string]fate{
		"steps.go var: 5 -> 5 + 1":                   noticed,
		"steps.go Count: 0 -> 0 + 1":                 noticed, // of n, and the end of the loop
		"steps.go Count: i > 0 -> i >= 0":            noticed,
		"steps.go Count: i > 0 -> turned round":      noticed,
		"steps.go Count: i-- -> left out":            timedOut,
		"steps.go Count: stop -> turned round":       noticed,
		"steps.go Count: n+1 > most -> n+1 >= most":  noticed,
		"steps.go Count: n+1 > most -> turned round": noticed,
		"steps.go Count: n+1 -> n - 1":               noticed,
		"steps.go Count: 1 -> 1 + 1":                 noticed,
		"steps.go Count: n++ -> left out":            noticed,
		"steps.go Idle: n < 2000 -> n <= 2000":       unreached,
		"steps.go Idle: n < 2000 -> turned round":    unreached,
		"steps.go Idle: 2000 -> 2000 + 250":          unreached,
		"steps.go Idle: n += 2000 -> left out":       unreached,
		"steps.go Idle: -n - 1 -> -n + 1":            unreached,
		"steps.go Idle: 1 -> 1 + 1":                  unreached,
		"steps.go Share: 0.5 -> 0.5 + 0.125":         survived,
		"steps.go Half: n%2 != 0 -> turned round":    unreached,
		"steps.go Half: 2 -> 2 + 1":                  unreached, // of the condition, and of the result
		"steps.go Half: 0 -> 0 + 1":                  unreached, // of the condition alone
	}
}

// TestBreakages: a package is broken in every way that is promised, and in no other.
func TestBreakages(t *testing.T) {
	folders, err := load([]string{"./testdata/steps"})
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for _, m := range folders[0].mutants {
		found = append(found, m.key())
	}
	want := fates()
	for key := range want {
		if !slices.Contains(found, key) {
			t.Errorf("it is not broken so: %s", key)
		}
	}
	for _, key := range found {
		if want[key] == "" {
			t.Errorf("it is broken so, too: %s", key)
		}
	}
}

// TestFates: what tests notice, do not reach and do not notice is told apart, and so is what never ends.
func TestFates(t *testing.T) {
	if !judges.On {
		t.Skip("compiles a package and runs its tests many times")
	}
	folders, err := load([]string{"./testdata/steps"})
	if err != nil {
		t.Fatal(err)
	}
	d := folders[0]
	equal := map[string]bool{d.path + "\tsteps.go Idle: 1 -> 1 + 1": true}
	r, err := d.run(context.Background(), d.mutants, options{least: time.Second}, equal)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range d.mutants {
		want := fates()[m.key()]
		if equal[d.path+"\t"+m.key()] {
			want = same
		}
		if got := r.fates[m.id]; got != want {
			t.Errorf("%v: %s, wanted %s", m, got, want)
		}
	}
	var out bytes.Buffer
	table(&out, []result{r})
	if fields := strings.Fields(strings.Split(out.String(), "\n")[1]); !slices.Equal(fields[1:7], []string{"24", "11", "1", "10", "1", "1"}) {
		t.Errorf("the table has\n%s", &out)
	}
}

// TestSample: a seed chooses the same breakages every time, each at most once, in the order of the text.
func TestSample(t *testing.T) {
	var all []mutant
	for i := range 100 {
		all = append(all, mutant{id: i, place: filepath.Join("a", "b")})
	}
	some := chosen(all, options{seed: 4, sample: 30})
	if len(some) != 30 || !slices.IsSortedFunc(some, func(a, b mutant) int { return a.id - b.id }) {
		t.Errorf("chosen: %v", some)
	}
	if !slices.Equal(some, chosen(all, options{seed: 4, sample: 30})) || slices.Equal(some, chosen(all, options{seed: 5, sample: 30})) {
		t.Error("the sample does not hang on the seed alone")
	}
	if len(chosen(all, options{})) != 100 {
		t.Error("without a number not all are chosen")
	}
}

// TestEquals: what is listed as changing nothing has a reason, and is still there.
func TestEquals(t *testing.T) {
	known, err := equals()
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]bool{}
	paths := map[string]bool{}
	for key := range known {
		path, _, _ := strings.Cut(key, "\t")
		paths[path] = true
	}
	for path := range paths {
		folders, err := load([]string{path})
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range folders[0].mutants {
			found[path+"\t"+m.key()] = true
		}
	}
	for key := range known {
		if !found[key] {
			t.Errorf("equal.txt has what cannot be broken so any more: %s", key)
		}
	}
}
