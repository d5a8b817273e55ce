package main

import (
	"context"
	_ "embed"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
)

//go:embed wake.go.txt
var wake string

// fate is what became of a breakage.
type fate string

// The fates.
const (
	noticed   fate = "noticed"
	timedOut  fate = "timed out"
	unreached fate = "not reached"
	survived  fate = "not noticed"
	same      fate = "equal"
)

// result is what became of the breakages of a package.
type result struct {
	path  string
	fates map[int]fate
}

func (r *result) count(f fate) int {
	n := 0
	for _, is := range r.fates {
		if is == f {
			n++
		}
	}
	return n
}

// noticed counts what tests noticed, be it that they did not end.
func (r *result) noticed() int { return r.count(noticed) + r.count(timedOut) }

// counted is all that could have been noticed.
func (r *result) counted() int { return len(r.fates) - r.count(same) }

// run tries breakages of a package, but for those that are known to change nothing, and tells of each that should be told.
func (d *folder) run(ctx context.Context, mutants []mutant, o options, equal map[int]bool, told func(mutant, fate, []string)) (result, error) {
	r := result{d.path, map[int]fate{}}
	var tried []mutant
	for _, m := range mutants {
		if equal[m.id] {
			r.fates[m.id] = same
			continue
		}
		tried = append(tried, m)
	}
	work, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return r, err
	}
	defer os.RemoveAll(work)
	overlay, err := d.overlay(work)
	if err != nil {
		return r, err
	}
	var suites []*suite
	for i, path := range append([]string{d.path}, o.also...) {
		s, err := build(ctx, path, overlay, filepath.Join(work, fmt.Sprint("tests", i)), o)
		if err != nil {
			return r, err
		}
		suites = append(suites, s)
	}
	var one sync.Mutex
	fates, err := each(tried, func(m mutant) (fate, error) {
		became, asked := ask(ctx, suites, m)
		one.Lock()
		defer one.Unlock()
		if ctx.Err() == nil {
			told(m, became, asked)
		}
		return became, ctx.Err()
	})
	for i, m := range tried {
		r.fates[m.id] = fates[i]
	}
	return r, err
}

// ask wakes one breakage in the tests of one package after the other, until some notice it, and names those that did not.
func ask(ctx context.Context, suites []*suite, m mutant) (fate, []string) {
	all, asked := unreached, []string(nil)
	for _, s := range suites {
		became := s.wake(ctx, m)
		if became == noticed || became == timedOut {
			return became, nil
		}
		if became == survived {
			all, asked = survived, append(asked, s.reaching(m)...)
		}
	}
	return all, asked
}

// overlay writes the files of a package with all breakages asleep, and the map from the true ones to them.
func (d *folder) overlay(work string) (string, error) {
	replace := map[string]string{}
	put := func(i int, name, text string) error {
		to := filepath.Join(work, fmt.Sprintf("%d.go", i))
		replace[name] = to
		return os.WriteFile(to, []byte(text), 0o600)
	}
	for i, f := range d.files {
		if err := put(i, f.name, f.broken()); err != nil {
			return "", err
		}
	}
	if err := put(len(d.files), filepath.Join(d.dir, "wake_mutants.go"), strings.Replace(wake, "PACKAGE", d.name, 1)); err != nil {
		return "", err
	}
	b, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	name := filepath.Join(work, "overlay.json")
	return name, os.WriteFile(name, b, 0o600)
}
