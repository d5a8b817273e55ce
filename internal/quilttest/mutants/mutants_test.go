package main

import (
	"bytes"
	"context"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"eighthturn/internal/quilttest/judges"
)

// fates are the breakages of testdata/steps, and what becomes of them.
func fates() map[string]fate {
	return map[string]fate{
		"steps.go var: var start = «5» -> 5 + 1":                                              noticed,
		"steps.go Count: n := «0» -> 0 + 1":                                                   noticed,
		"steps.go Count: for i := from; i > «0»; { -> 0 + 1":                                  noticed,
		"steps.go Count: for i := from; «i > 0»; { -> i >= 0":                                 noticed,
		"steps.go Count: for i := from; «i > 0»; { -> turned round":                           noticed,
		"steps.go Count: «i--» -> left out":                                                   timedOut,
		"steps.go Count: if «stop» && n+1 > most { -> turned round":                           noticed,
		"steps.go Count: if stop && «n+1 > most» { -> n+1 >= most":                            noticed,
		"steps.go Count: if stop && «n+1 > most» { -> turned round":                           noticed,
		"steps.go Count: if stop && «n+1» > most { -> n - 1":                                  noticed,
		"steps.go Count: if stop && n+«1» > most { -> 1 + 1":                                  noticed,
		"steps.go Count: «n++» -> left out":                                                   noticed,
		"steps.go Idle: if «n < 2000» { -> n <= 2000":                                         unreached,
		"steps.go Idle: if «n < 2000» { -> turned round":                                      unreached,
		"steps.go Idle: if n < «2000» { -> 2000 + 250":                                        unreached,
		"steps.go Idle: «n += 2000» -> left out":                                              unreached,
		"steps.go Idle: n += «2000» -> 2000 + 250":                                            unreached,
		"steps.go Idle: return «-n - 1» -> -n + 1":                                            unreached,
		"steps.go Idle: return -n - «1» -> 1 + 1":                                             unreached,
		"steps.go Share: func Share(of float64) float64 { return of * «0.5» } -> 0.5 + 0.125": survived,
		"steps.go Half: if «n%2 != 0» { -> turned round":                                      unreached,
		"steps.go Half: if n%«2» != 0 { -> 2 + 1":                                             unreached,
		"steps.go Half: if n%2 != «0» { -> 0 + 1":                                             unreached,
		"steps.go Half: return n / «2», true -> 2 + 1":                                        unreached,
		"steps.go Fourfold: «n += n» -> left out":                                             unreached, // a comment behind it is no part of the name
		"steps.go Fourfold: «n += n» -> left out (2)":                                         unreached,
		"steps.go Fourfold: «n = max( …» -> left out":                                         unreached,
		"steps.go Fourfold: «-1», -> -1 + 1":                                                  unreached,
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
		if slices.Contains(found, m.key()) {
			t.Errorf("two are called %s", m.key())
		}
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
	equal, _ := d.same([]entry{{1, d.path, "steps.go Idle: return -n - «1» -> 1 + 1"}})
	var survivors []string
	told := func(m mutant, f fate, asked []string) {
		if f == survived {
			survivors = append(survivors, asked...)
		}
	}
	r, err := d.run(context.Background(), d.mutants, options{least: time.Second}, equal, told)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range d.mutants {
		want := fates()[m.key()]
		if equal[m.id] {
			want = same
		}
		if got := r.fates[m.id]; got != want {
			t.Errorf("%v: %s, wanted %s", m, got, want)
		}
	}
	if !slices.Equal(survivors, []string{"TestCount"}) {
		t.Errorf("what is not noticed was asked of %v", survivors)
	}
	var out bytes.Buffer
	table(&out, []result{r})
	if fields := strings.Fields(strings.Split(out.String(), "\n")[1]); !slices.Equal(fields[1:7], []string{"28", "11", "1", "14", "1", "1"}) {
		t.Errorf("the table has\n%s", &out)
	}
}

// TestSkipped: tests that are left out are not asked.
func TestSkipped(t *testing.T) {
	if !judges.On {
		t.Skip("compiles a package and runs its tests")
	}
	folders, err := load([]string{"./testdata/steps"})
	if err != nil {
		t.Fatal(err)
	}
	silent := func(mutant, fate, []string) {}
	for _, o := range []options{{skip: regexp.MustCompile("Cou|Other")}, {only: regexp.MustCompile("^Nothing$")}} {
		r, err := folders[0].run(context.Background(), folders[0].mutants, o, nil, silent)
		if err != nil || r.count(unreached) != len(r.fates) {
			t.Errorf("%v: %v", err, r.fates)
		}
	}
}

// TestAgain: of what an earlier run told, wherever its files stood, each breakage is tried again, and nothing else is.
func TestAgain(t *testing.T) {
	folders, err := load([]string{"./testdata/steps"})
	if err != nil {
		t.Fatal(err)
	}
	list := folders[0].told([]string{
		"not noticed: /another/steps/steps.go:99: Fourfold: «n += n» -> left out (2)",
		"\t1 tests reach it: TestFourfold",
		"not reached: /another/place/steps.go:99: Half: if n%«2» != 0 { -> 2 + 1",
	})
	if len(list) != 1 || list[0].key() != "steps.go Fourfold: «n += n» -> left out (2)" {
		t.Errorf("tried again: %v", list)
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
	known, err := equals(equalText)
	if err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, e := range known {
		paths = append(paths, e.path)
	}
	slices.Sort(paths)
	folders, err := load(slices.Compact(paths))
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range folders {
		_, idle := d.same(known)
		for _, said := range idle {
			t.Error(said)
		}
	}
}

// TestEntries: an entry names one breakage; one that names none is told with what there is instead, and so is what is no entry.
func TestEntries(t *testing.T) {
	folders, err := load([]string{"./testdata/steps"})
	if err != nil {
		t.Fatal(err)
	}
	d := folders[0]
	known, err := equals("# a comment\n\n" + d.path + "\tsteps.go Fourfold: «n += n» -> left out (2)\twhy\n" +
		d.path + "\tsteps.go Half: return n / «4», true -> 2 + 1\twhy\nelsewhere\tsteps.go Half: return n / «4», true -> 2 + 1\twhy\n")
	if err != nil {
		t.Fatal(err)
	}
	listed, idle := d.same(known)
	if len(listed) != 1 {
		t.Errorf("%d breakages are listed", len(listed))
	}
	for _, m := range d.mutants {
		if second := m.key() == "steps.go Fourfold: «n += n» -> left out (2)"; listed[m.id] != second {
			t.Errorf("%v: listed %v", m, listed[m.id])
		}
	}
	want := "equal.txt:4: nothing can be broken so any more: steps.go Half: return n / «4», true -> 2 + 1\n" +
		"\tthere is steps.go Half: if n%«2» != 0 { -> 2 + 1\n\tthere is steps.go Half: return n / «2», true -> 2 + 1"
	if len(idle) != 1 || idle[0] != want {
		t.Errorf("of an entry that names nothing is said %q", idle)
	}
	for text, want := range map[string]string{
		"a\tb":                "equal.txt:1: wanted a package, a breakage and the reason, with tabs between them",
		"a\tb\t ":             "equal.txt:1: wanted a package, a breakage and the reason, with tabs between them",
		"a\tb\tc\n#\na\tb\td": "equal.txt:3: this breakage stands in line 1 already",
	} {
		if _, err := equals(text); err == nil || err.Error() != want {
			t.Errorf("%q: %v", text, err)
		}
	}
}
