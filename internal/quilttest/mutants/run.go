package main

import (
	"context"
	_ "embed"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"time"
)

//go:embed wake.go.txt
var wake string

//go:embed equal.txt
var equalText string

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

// equals are the breakages that change nothing, by their keys, a line each: the package, a tab, the key, a tab, the reason.
func equals() (map[string]bool, error) {
	known := map[string]bool{}
	for i, line := range strings.Split(strings.TrimSpace(equalText), "\n") {
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		parts := strings.Split(line, "\t")
		if len(parts) != 3 || strings.TrimSpace(parts[2]) == "" {
			return nil, fmt.Errorf("equal.txt:%d: wanted a package, a breakage and the reason, with tabs between them", i+1)
		}
		known[parts[0]+"\t"+parts[1]] = true
	}
	return known, nil
}

// suite is the tests of a package, with the breakages of this or another one in it.
type suite struct {
	binary, dir string
	usual       time.Duration // that it takes with all breakages asleep
	least       time.Duration // that it may take at least before it counts as never ending
	reached     map[int]bool
}

// run tries breakages of a package.
func (d *folder) run(ctx context.Context, mutants []mutant, o options, equal map[string]bool) (result, error) {
	r := result{d.path, map[int]fate{}}
	var tried []mutant
	for _, m := range mutants {
		if equal[d.path+"\t"+m.key()] {
			r.fates[m.id] = same
			continue
		}
		r.fates[m.id] = unreached
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
	for i, path := range append([]string{d.path}, o.also...) {
		s, err := build(ctx, path, overlay, filepath.Join(work, fmt.Sprint("tests", i)))
		if err != nil {
			return r, err
		}
		s.least = o.least
		var left []mutant
		for _, m := range tried {
			if r.fates[m.id] == unreached || r.fates[m.id] == survived {
				left = append(left, m)
			}
		}
		if err := s.wakeAll(ctx, left, r.fates); err != nil {
			return r, err
		}
	}
	return r, nil
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

// build compiles the tests of a package and runs them once, to see that they pass and what they reach.
func build(ctx context.Context, path, overlay, to string) (*suite, error) {
	out, err := exec.CommandContext(ctx, "go", "list", "-f", "{{.Dir}}", path).Output()
	if err != nil {
		return nil, fmt.Errorf("go list %s: %w", path, err)
	}
	s := &suite{binary: to, dir: strings.TrimSpace(string(out)), reached: map[int]bool{}}
	if out, err := exec.CommandContext(ctx, "go", "test", "-vet=off", "-overlay", overlay, "-c", "-o", to, path).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w\n%s", err, out)
	}
	log := to + ".reached"
	began := time.Now()
	if out, err := s.test(ctx, 10*time.Minute, "MUTANT_REACHED="+log); err != nil {
		return nil, fmt.Errorf("the tests fail with every breakage asleep: %w\n%s", err, out)
	}
	s.usual = time.Since(began)
	b, err := os.ReadFile(log)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		return nil, err
	}
	for _, line := range strings.Fields(string(b)) {
		id, err := strconv.Atoi(line)
		if err != nil {
			return nil, err
		}
		s.reached[id] = true
	}
	return s, nil
}

// errLong says that tests did not end.
var errLong = errors.New("the tests do not end")

// test runs the tests once, up to the first that fails.
func (s *suite) test(ctx context.Context, most time.Duration, env ...string) ([]byte, error) {
	ctx, cancel := context.WithTimeoutCause(ctx, most, errLong)
	defer cancel()
	c := exec.CommandContext(ctx, s.binary, "-test.failfast", "-test.timeout=0")
	c.Dir, c.Env, c.WaitDelay = s.dir, append(os.Environ(), env...), time.Second
	out, err := c.CombinedOutput()
	if err != nil && errors.Is(context.Cause(ctx), errLong) {
		return out, errLong
	}
	return out, err
}

// atOnce is how many runs of tests go side by side.
const atOnce = 2

// wakeAll wakes one breakage after the other and notes what became of it.
func (s *suite) wakeAll(ctx context.Context, mutants []mutant, fates map[int]fate) error {
	var group sync.WaitGroup
	var mutex sync.Mutex
	queue := make(chan mutant)
	for range atOnce {
		group.Go(func() {
			for m := range queue {
				_, err := s.test(ctx, max(s.least, 6*s.usual), "MUTANT="+strconv.Itoa(m.id))
				became := noticed
				switch {
				case err == nil:
					became = survived
				case errors.Is(err, errLong):
					became = timedOut
				}
				mutex.Lock()
				fates[m.id] = became
				mutex.Unlock()
			}
		})
	}
	for _, m := range mutants {
		if s.reached[m.id] && ctx.Err() == nil {
			queue <- m
		}
	}
	close(queue)
	group.Wait()
	return ctx.Err()
}
