// Command mutants breaks packages on purpose and says which breakages their tests notice: conditions turned round, comparisons
// that take in their bound or leave it out, numbers one off, plus and minus swapped, statements left out.
//
//	go run ./internal/quilttest/mutants [-seed N] [-sample N] [-also PACKAGE,…] [-skip TESTS] [-only TESTS] [-again FILE] [-equal] PACKAGE…
//
// All breakages of a package are compiled at once, each asleep, and a run of its tests wakes one. So a breakage costs a
// run of the tests that are wanted, and no compiling. What no test reaches is not run at all.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/signal"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"syscall"
	"text/tabwriter"
	"time"
)

// options are what the command line says.
type options struct {
	seed   uint64
	sample int            // breakages of a package that are tried; 0 for all
	also   []string       // packages whose tests are asked about what a package's own do not notice
	least  time.Duration  // processor time that tests may take at least before they count as never ending
	equal  bool           // try what is listed as changing nothing, and nothing else
	skip   *regexp.Regexp // tests that are not asked; nil for none
	only   *regexp.Regexp // tests that are asked, and no others; nil for all
	again  []string       // breakages as an earlier run told of them, which alone are tried; nil for all
	list   bool           // list the breakages, run nothing
}

func main() {
	o := options{least: 10 * time.Second}
	var also, again string
	flag.Uint64Var(&o.seed, "seed", 1, "`number` that chooses the sample")
	flag.IntVar(&o.sample, "sample", 0, "how `many` breakages of each package are tried; 0 for all")
	flag.StringVar(&also, "also", "", "`packages`, with commas, whose tests are asked about what a package's own do not notice")
	flag.BoolVar(&o.equal, "equal", false, "try those alone that are listed as changing nothing")
	flag.Func("skip", "`tests` that are not asked, such as dear ones, as go test takes them", expression(&o.skip))
	flag.Func("only", "`tests` that are asked, and no others, such as new ones", expression(&o.only))
	flag.StringVar(&again, "again", "", "a `file` of what an earlier run told, of which each breakage is tried again, and no other")
	flag.BoolVar(&o.list, "list", false, "list the breakages, run nothing")
	least := flag.Int("least", 0, "how many of a `hundred` have to be noticed")
	flag.Parse()
	if also != "" {
		o.also = strings.Split(also, ",")
	}
	if again != "" {
		text, err := os.ReadFile(again)
		if err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(2)
		}
		o.again = strings.Split(string(text), "\n")
	}
	if flag.NArg() == 0 {
		flag.Usage()
		os.Exit(2)
	}
	ctx, cancel := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer cancel()
	results, err := try(ctx, o, flag.Args(), os.Stdout)
	if !o.list {
		table(os.Stdout, results)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	for _, r := range results {
		if r.noticed()*100 < *least*r.counted() {
			fmt.Fprintf(os.Stderr, "%s: fewer than %d of a hundred are noticed\n", r.path, *least)
			os.Exit(1)
		}
	}
}

// try breaks packages one after the other and tells of each breakage that nothing noticed; of those that are listed as changing
// nothing, where they are asked for, of each that something noticed.
func try(ctx context.Context, o options, patterns []string, out io.Writer) ([]result, error) {
	packages, err := load(patterns)
	if err != nil {
		return nil, err
	}
	known, err := equals(equalText)
	if err != nil {
		return nil, err
	}
	var results []result
	var idle []string
	for _, p := range packages {
		equal, none := p.same(known)
		idle = append(idle, none...)
		if o.equal {
			p.mutants = slices.DeleteFunc(p.mutants, func(m mutant) bool { return !equal[m.id] })
			equal = nil
		}
		if o.again != nil {
			p.mutants = p.told(o.again)
		}
		mutants := chosen(p.mutants, o)
		if o.list {
			for _, m := range mutants {
				fmt.Fprintln(out, m)
			}
			continue
		}
		r, err := p.run(ctx, mutants, o, equal, func(m mutant, f fate, asked []string) {
			if missed := f == survived || f == unreached; missed != o.equal {
				fmt.Fprintf(out, "%s: %v\n", f, m)
			}
			if f == survived {
				fmt.Fprintf(out, "\t%d tests reach it: %s\n", len(asked), strings.Join(asked[:min(len(asked), 8)], ", "))
			}
		})
		if err != nil {
			return results, errors.Join(fmt.Errorf("%s", p.path), err)
		}
		results = append(results, r)
	}
	if idle != nil {
		return results, errors.New(strings.Join(idle, "\n"))
	}
	return results, nil
}

// expression takes an option that is a regular expression.
func expression(to **regexp.Regexp) func(string) error {
	return func(text string) (err error) {
		*to, err = regexp.Compile(text)
		return err
	}
}

// told are the breakages of a package that lines of an earlier run tell of, wherever the files stood then.
func (d *folder) told(lines []string) []mutant {
	known := map[string]bool{}
	for _, line := range lines {
		if _, at, ok := strings.Cut(line, ": "); ok {
			place, name, _ := strings.Cut(at, ": ")
			known[inFolder(place)+" "+name] = true
		}
	}
	var list []mutant
	for _, m := range d.mutants {
		if known[inFolder(m.place)+" "+m.name()] {
			list = append(list, m)
		}
	}
	return list
}

// inFolder is the file of a place, with its folder alone.
func inFolder(place string) string {
	name, _, _ := strings.Cut(place, ":")
	return filepath.Join(filepath.Base(filepath.Dir(name)), filepath.Base(name))
}

// chosen is a sample, the same for the same seed, in the order of the text.
func chosen(mutants []mutant, o options) []mutant {
	if o.sample == 0 || o.sample >= len(mutants) {
		return mutants
	}
	dice := rand.New(rand.NewPCG(o.seed, 0))
	places := dice.Perm(len(mutants))[:o.sample]
	slices.Sort(places)
	var list []mutant
	for _, i := range places {
		list = append(list, mutants[i])
	}
	return list
}

// table writes what became of the breakages, a line a package.
func table(out io.Writer, results []result) {
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(w, "package\ttried\tnoticed\ttimed out\tnot reached\tnot noticed\tequal\tnoticed of the rest\t")
	for _, r := range results {
		share := 100.0
		if n := r.counted(); n > 0 {
			share = float64(r.noticed()) * 100 / float64(n)
		}
		fmt.Fprintf(w, "%s\t%d\t%d\t%d\t%d\t%d\t%d\t%.1f %%\t\n", r.path, len(r.fates), r.count(noticed), r.count(timedOut), r.count(unreached), r.count(survived), r.count(same), share)
	}
	w.Flush()
}
