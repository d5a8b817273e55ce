package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// suite is the tests of a package, with the breakages of this or another one in it.
type suite struct {
	binary, dir string
	least       time.Duration // that tests may take at least before they count as never ending
	probes      []probe       // the quickest first
}

// probe is a test by itself, or a part of a long one.
type probe struct {
	name    string        // of a part with its test's before it and a slash between
	usual   time.Duration // of processor time that it takes with all breakages asleep
	reached map[int]bool
}

// atOnce is how many runs of tests go side by side.
const atOnce = 2

// build compiles the tests of a package and runs each once, to see that it passes, how long it takes and what it reaches.
func build(ctx context.Context, path, overlay, to string, o options) (*suite, error) {
	out, err := exec.CommandContext(ctx, "go", "list", "-f", "{{.Dir}}", path).Output()
	if err != nil {
		return nil, fmt.Errorf("go list %s: %w", path, err)
	}
	s := &suite{least: o.least, binary: to, dir: strings.TrimSpace(string(out))}
	if out, err := exec.CommandContext(ctx, "go", "test", "-vet=off", "-overlay", overlay, "-c", "-o", to, path).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w\n%s", err, out)
	}
	if _, err := os.Stat(to); err != nil {
		return s, nil // it has no tests
	}
	list := exec.CommandContext(ctx, to, "-test.list", "^(Test|Fuzz|Example)")
	list.Dir = s.dir
	names, err := list.Output()
	if err != nil {
		return nil, fmt.Errorf("the tests of %s cannot be listed: %w", path, err)
	}
	asked := slices.DeleteFunc(strings.Fields(string(names)), func(name string) bool {
		return o.skip != nil && o.skip.MatchString(name) || o.only != nil && !o.only.MatchString(name)
	})
	found, err := each(asked, func(name string) ([]probe, error) { return s.inParts(ctx, name, to+"."+name) })
	probes := slices.Concat(found...)
	slices.SortFunc(probes, func(a, b probe) int { return cmp.Or(cmp.Compare(a.usual, b.usual), cmp.Compare(a.name, b.name)) })
	s.probes = probes
	return s, err
}

// long is how long a test takes that is asked part by part, where it has some: a breakage then costs those parts that reach it.
const long = 2 * time.Second

// inParts runs one test with all breakages asleep, and if it is long each of its parts by itself.
func (s *suite) inParts(ctx context.Context, name, log string) ([]probe, error) {
	whole, parts, err := s.probe(ctx, name, log)
	if err != nil || whole.usual < long || len(parts) < 2 {
		return []probe{whole}, err
	}
	var list []probe
	for i, part := range parts {
		p, _, err := s.probe(ctx, part, log+strconv.Itoa(i))
		if err != nil { // it needs what others do before it
			return []probe{whole}, ctx.Err()
		}
		list = append(list, p)
	}
	return list, nil
}

// ran is a part that a test says it runs.
var ran = regexp.MustCompile(`(?m)^=== RUN   (\S+?/[^/\s]+)$`)

// probe runs one test with all breakages asleep; the parts are what it is made of.
func (s *suite) probe(ctx context.Context, name, log string) (p probe, parts []string, err error) {
	p = probe{name: name, reached: map[int]bool{}}
	out, took, err := s.test(ctx, []string{name}, 5*time.Minute, "MUTANT_REACHED="+log)
	if err != nil {
		return p, nil, fmt.Errorf("%s fails with every breakage asleep: %w\n%s", name, err, out)
	}
	p.usual = took
	for _, m := range ran.FindAllSubmatch(out, -1) {
		parts = append(parts, string(m[1]))
	}
	b, err := os.ReadFile(log)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		return p, nil, err
	}
	for _, line := range strings.Fields(string(b)) {
		id, err := strconv.Atoi(line)
		if err != nil {
			return p, nil, err
		}
		p.reached[id] = true
	}
	return p, parts, nil
}

// errLong says that tests did not end.
var errLong = errors.New("the tests do not end")

// patience is how much longer than their processor time tests may take by the clock, on a computer that others use as well.
const patience = 20

// memory is how much of it, in kilobytes, tests may take that do not know where to stop.
const memory = 6 << 20

// test runs some tests once, up to the first that fails, and says what processor time that took. They may take so much of it at most.
func (s *suite) test(ctx context.Context, names []string, most time.Duration, env ...string) ([]byte, time.Duration, error) {
	ctx, cancel := context.WithTimeoutCause(ctx, patience*most, errLong)
	defer cancel()
	var wanted []string
	for _, name := range names {
		wanted = append(wanted, "^"+strings.ReplaceAll(regexp.QuoteMeta(name), "/", "$/^")+"$")
	}
	limit := fmt.Sprintf(`ulimit -t %d && ulimit -v %d && exec "$@"`, int(most.Seconds()+1), memory)
	c := exec.CommandContext(ctx, "sh", "-c", limit, "sh", s.binary, "-test.v", "-test.failfast", "-test.timeout=0", "-test.run", strings.Join(wanted, "|"))
	c.Dir, c.Env, c.WaitDelay = s.dir, append(os.Environ(), env...), time.Second
	out, err := c.CombinedOutput()
	if c.ProcessState == nil {
		return out, 0, err
	}
	took := c.ProcessState.UserTime() + c.ProcessState.SystemTime()
	if err != nil && (took >= most || errors.Is(context.Cause(ctx), errLong)) {
		err = errLong
	}
	return out, took, err
}

// each asks the same of all, some at once, and gives the answers in their order.
func each[A, B any](list []A, ask func(A) (B, error)) ([]B, error) {
	answers, errs := make([]B, len(list)), make([]error, len(list))
	var group sync.WaitGroup
	places := make(chan int)
	for range atOnce {
		group.Go(func() {
			for i := range places {
				answers[i], errs[i] = ask(list[i])
			}
		})
	}
	for i := range list {
		places <- i
	}
	close(places)
	group.Wait()
	return answers, errors.Join(errs...)
}

// stages are how long tests may take to be asked with others of their kind: most breakages are noticed by quick tests.
var stages = []time.Duration{200 * time.Millisecond, 2 * time.Second, time.Hour}

// wake wakes one breakage and asks the tests that reach it, the quick ones first.
func (s *suite) wake(ctx context.Context, m mutant) fate {
	became, next := unreached, 0
	for _, most := range stages {
		var names []string
		usual := time.Duration(0)
		for ; next < len(s.probes) && s.probes[next].usual <= most; next++ {
			if p := s.probes[next]; p.reached[m.id] {
				names, usual = append(names, p.name), usual+p.usual
			}
		}
		if len(names) == 0 || ctx.Err() != nil {
			continue
		}
		_, _, err := s.test(ctx, names, max(s.least, 6*usual), "MUTANT="+strconv.Itoa(m.id))
		if errors.Is(err, errLong) {
			return timedOut
		}
		if err != nil {
			return noticed
		}
		became = survived
	}
	return became
}

// reaching names the tests that reach a breakage, the quickest first.
func (s *suite) reaching(m mutant) []string {
	var names []string
	for _, p := range s.probes {
		if p.reached[m.id] {
			names = append(names, p.name)
		}
	}
	return names
}
