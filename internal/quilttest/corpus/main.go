// Command corpus keeps what fuzzing found: of the inputs that lie in the cache those that reach statements which the target's own seeds,
// the inputs that are kept already and all smaller ones do not.
//
//	go run ./internal/quilttest/corpus ./palettes ./internal/lsp
package main

import (
	"cmp"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

func main() {
	found := flag.String("found", "", "the `FOLDER` of what was found, by package and target; the one of go test -fuzz if omitted")
	most := flag.Int64("most", 4000, "leave out inputs of more than this number of `BYTES`")
	least := flag.Int("least", 1, "leave out inputs that add fewer than this number of `STATEMENTS`")
	only := flag.String("only", "", "the targets whose names match this `PATTERN`; all if omitted")
	flag.Parse()
	pattern, err := regexp.Compile(*only)
	if err == nil && *found == "" {
		*found, err = cache()
	}
	for _, folder := range flag.Args() {
		if err == nil {
			err = (&keeping{folder: filepath.Clean(folder), most: *most, least: *least}).all(*found, pattern)
		}
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// cache is where go test -fuzz leaves what it finds of this project.
func cache() (string, error) {
	out, err := exec.Command("go", "env", "GOCACHE").Output()
	return filepath.Join(strings.TrimSpace(string(out)), "fuzz", "eighthturn"), err
}

// keeping is the work on the targets of a package.
type keeping struct {
	folder string
	most   int64
	least  int
	binary string // the package's tests, which count the statements of the project
}

func (k *keeping) all(found string, only *regexp.Regexp) error {
	work, err := os.MkdirTemp("", "corpus")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	k.binary = filepath.Join(work, "tests")
	tested, err := packages("./" + k.folder)
	if err != nil {
		return err
	}
	build := exec.Command("go", "test", "-c", "-vet=off", "-covermode=set", "-coverpkg="+strings.Join(tested, ","), "-o", k.binary, "./"+k.folder)
	if said, err := build.CombinedOutput(); err != nil {
		return fmt.Errorf("%s: %w\n%s", k.folder, err, said)
	}
	listed, err := exec.Command(k.binary, "-test.list", "^Fuzz").Output()
	if err != nil {
		return err
	}
	for _, name := range strings.Fields(string(listed)) {
		if !only.MatchString(name) {
			continue
		}
		t := &target{keeping: k, name: name, kept: filepath.Join(k.folder, "testdata", "fuzz", name), reached: reached{}}
		if err := t.keep(filepath.Join(found, k.folder, name)); err != nil {
			return fmt.Errorf("%s %s: %w", k.folder, name, err)
		}
	}
	return nil
}

// packages are those of the project that a package's tests are built from.
func packages(folder string) (list []string, err error) {
	out, err := exec.Command("go", "list", "-deps", "-test", folder).Output()
	for _, line := range strings.Split(string(out), "\n") {
		if strings.HasPrefix(line, "eighthturn/") && !strings.Contains(line, " ") && !strings.HasSuffix(line, ".test") {
			list = append(list, line)
		}
	}
	return list, err
}

// target is one target, and what its inputs reach.
type target struct {
	*keeping
	name    string
	kept    string // the folder of its inputs
	reached reached
	added   []input
	failed  []string
}

// input is a file that was found.
type input struct {
	name string
	size int64
}

// keep keeps what adds to the target's inputs, and tells how many there were and are.
func (t *target) keep(found string) error {
	before, err := t.run("")
	if err != nil {
		return fmt.Errorf("its own inputs fail: %w", err)
	}
	t.reached = before
	were, _ := os.ReadDir(t.kept) // none before the first is kept
	list, err := t.brought(found)
	if err != nil {
		return err
	}
	first := t.reached.statements()
	t.among(list)
	for _, i := range list {
		if !slices.Contains(t.added, i) {
			if err := os.Remove(filepath.Join(t.kept, i.name)); err != nil {
				return err
			}
		}
	}
	_ = os.Remove(t.kept) // where nothing is kept
	bytes := int64(0)
	for _, i := range t.added {
		bytes += i.size
	}
	fmt.Printf("%s %s: %d inputs found, %d added to %d, %d bytes; %d statements, were %d\n", t.folder, t.name, len(list), len(t.added), len(were), bytes, t.reached.statements(), first)
	for _, name := range t.failed {
		fmt.Printf("%s %s: %s fails\n", t.folder, t.name, name)
	}
	return nil
}

// brought lays the inputs that were found, and are not kept, beside those that are: the smallest first.
func (t *target) brought(found string) (list []input, err error) {
	files, err := os.ReadDir(found)
	if errors.Is(err, os.ErrNotExist) || len(files) == 0 {
		return nil, nil
	}
	err = errors.Join(err, os.MkdirAll(t.kept, 0o755))
	for _, f := range files {
		content, fault := os.ReadFile(filepath.Join(found, f.Name()))
		err = errors.Join(err, fault)
		to := filepath.Join(t.kept, f.Name())
		if _, known := os.Stat(to); known == nil || int64(len(content)) > t.most {
			continue
		}
		err = errors.Join(err, os.WriteFile(to, content, 0o644))
		list = append(list, input{f.Name(), int64(len(content))})
	}
	slices.SortFunc(list, func(a, b input) int { return cmp.Or(cmp.Compare(a.size, b.size), cmp.Compare(a.name, b.name)) })
	return list, err
}

// mostAtOnce is how many inputs are run together.
const mostAtOnce = 48

// among keeps what adds of some inputs: those that together add nothing need not be run one by one.
func (t *target) among(list []input) {
	for batch := range slices.Chunk(list, mostAtOnce) {
		t.halves(batch)
	}
}

func (t *target) halves(list []input) {
	names := make([]string, len(list))
	for i := range list {
		names[i] = list[i].name
	}
	got, err := t.run("^(" + strings.Join(names, "|") + ")$")
	switch {
	case err == nil && got.beyond(t.reached) < t.least:
	case len(list) > 1:
		t.halves(list[:len(list)/2])
		t.halves(list[len(list)/2:])
	case err != nil:
		t.failed = append(t.failed, names[0])
	default:
		t.reached.add(got)
		t.added = append(t.added, list[0])
	}
}

// run is what inputs reach by their names, all of them for "".
func (t *target) run(names string) (reached, error) {
	profile := t.binary + ".profile"
	which := "^" + t.name + "$"
	if names != "" {
		which += "/" + names
	}
	binary, err := filepath.Abs(t.binary)
	if err != nil {
		return nil, err
	}
	tests := exec.Command(binary, "-test.run", which, "-test.coverprofile", profile)
	tests.Dir = t.folder
	if said, err := tests.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w\n%.2000s", err, said)
	}
	text, err := os.ReadFile(profile)
	if err != nil {
		return nil, err
	}
	return profiled(string(text))
}
