package main

import (
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// toys is a tree with each way in which the tag can change a test.
func toys() map[string]string {
	return map[string]string{
		"internal/quilttest/judges/off.go": "//go:build !judges\n\npackage judges\n\nconst On = false\n",
		"internal/quilttest/judges/on.go":  "//go:build judges\n\npackage judges\n\nconst On = true\n",
		"internal/quilttest/judges/of.go":  "package judges\n\nfunc Of(few, all int) int { if On { return all }; return few }\n",
		"internal/quilttest/toy/toy.go": `package toy

import "eighthturn/internal/quilttest/judges"

type Box struct{ Size int }

func (b *Box) Many() int { return judges.Of(1, b.Size) }

type Case struct{ Size int }

func (c Case) Few() int { return c.Size }

func Made() *Box { return &Box{5} }

func Plain() Case { return Case{5} }
`,
		"a/a.go": "package a\n\nfunc A() int { return 1 }\n",
		"a/a_test.go": `package a

import (
	"testing"

	"eighthturn/internal/quilttest/toy"
	asked "eighthturn/internal/quilttest/judges"
)

const (
	few = iota
	all
)

var most = asked.Of(2, 3)

type crate[T any] struct{ of T }

func (c *crate[T]) open() int { return helper() }

func helper() int { return most }

func TestDirect(t *testing.T)    { if asked.On { t.Log("on") } }
func TestHelper(t *testing.T)    { t.Log(helper()) }
func TestValue(t *testing.T)     { t.Log(most) }
func TestMethod(t *testing.T)    { var c crate[int]; f := (&c).open; t.Log(f()) }
func TestToolkit(t *testing.T)   { t.Log(toy.Made().Size) }
func TestInside(t *testing.T)    { t.Run("inner", func(t *testing.T) { func() { t.Log(helper()) }() }) }
func FuzzSeeds(f *testing.F)     { for range most { f.Add(1) } }
func ExampleA()                  { helper() }
func TestUnchanged(t *testing.T) { t.Log(A(), few, all, toy.Plain().Few()) }
func BenchmarkA(b *testing.B)    { helper() }
`,
		"b/b_judge_test.go": "//go:build judges && linux\n\npackage b\n\nimport \"testing\"\n\nfunc TestTagged(t *testing.T) {}\n\nfunc tagged() {}\n",
		"b/b_test.go":       "package b\n\nimport \"testing\"\n\nfunc TestBeside(t *testing.T) { tagged() }\n\nfunc TestB(t *testing.T) {}\n",
		"b/off_test.go":     "//go:build !judges\n\npackage b\n\nimport \"testing\"\n\nfunc TestOnlyPlain(t *testing.T) {}\n\nfunc tagged() {}\n",
		"c/c_test.go":       "package c\n\nimport (\n\t\"testing\"\n\n\t\"eighthturn/internal/quilttest/judges\"\n)\n\nfunc TestMain(m *testing.M) { _ = judges.On; m.Run() }\n\nfunc TestUnderMain(t *testing.T) {}\n",
		"d/d_test.go":       "package d\n\nimport \"testing\"\n\nfunc init() { before() }\n\nfunc TestAfterInit(t *testing.T) {}\n",
		"d/e_test.go":       "//go:build !windows && (judges || never)\n\npackage d\n\nfunc before() {}\n",
		"d/f_test.go":       "// Package d is none that says //go:build judges.\n\npackage d_test\n\nimport \"testing\"\n\nfunc TestOutside(t *testing.T) {}\n",
	}
}

// namesOf are the tests of a tree that the tag changes.
func namesOf(t *testing.T, tree map[string]string) []string {
	t.Helper()
	files := fstest.MapFS{}
	for name, text := range tree {
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	tests, err := judged(files)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, test := range tests {
		names = append(names, test.folder+" "+test.name)
	}
	return names
}

// TestEveryWayIsSeen: whatever the tag changes is in the list, and what it does not is left out.
func TestEveryWayIsSeen(t *testing.T) {
	want := strings.Fields("a/ExampleA a/FuzzSeeds a/TestDirect a/TestHelper a/TestInside a/TestMethod a/TestToolkit a/TestValue b/TestBeside b/TestOnlyPlain b/TestTagged c/TestUnderMain d/TestAfterInit d/TestOutside")
	for i := range want {
		want[i] = strings.Replace(want[i], "/", " ", 1)
	}
	if got := namesOf(t, toys()); !slices.Equal(got, want) {
		t.Errorf("changed by the tag are\n%q, not\n%q", got, want)
	}
	before := toys()
	before["internal/quilttest/toy/init.go"] = "package toy\n\nfunc init() { _ = Made() }\n"
	if got := namesOf(t, before); !slices.Contains(got, "a TestUnchanged") {
		t.Errorf("what runs before any test is asked of judges, and only %q are changed", got)
	}
}

// TestWrongTreesAreErrors: what cannot be judged by names is an error, and no short list.
func TestWrongTreesAreErrors(t *testing.T) {
	for what, file := range map[string][2]string{
		"the tag in the program": {"a/on.go", "//go:build judges\n\npackage a\n"},
		"an import without name": {"a/z_test.go", "package a\n\nimport . \"eighthturn/internal/quilttest/judges\"\n\nvar z = On\n"},
		"no Go":                  {"a/z_test.go", "package\n"},
	} {
		tree := fstest.MapFS{}
		for name, text := range toys() {
			tree[name] = &fstest.MapFile{Data: []byte(text)}
		}
		tree[file[0]] = &fstest.MapFile{Data: []byte(file[1])}
		if tests, err := judged(tree); err == nil {
			t.Errorf("%s: no error but %d tests", what, len(tests))
		}
	}
}

var (
	anyTest  = regexp.MustCompile(`(?m)^func ((?:Test|Fuzz|Example)\w*)\(`)
	theTag   = regexp.MustCompile(`(?m)^//go:build .*\bjudges\b`)
	asksThem = regexp.MustCompile(`\bjudges\.(?:On|Of|Some)\b`)
)

// atAGlance are tests of a tree that show the tag in their file's head or in their own text.
func atAGlance(t *testing.T, tree fs.FS) []string {
	t.Helper()
	var names []string
	err := fs.WalkDir(tree, ".", func(file string, entry fs.DirEntry, err error) error {
		if err == nil && entry.IsDir() && (entry.Name() == "node_modules" || file == "internal/quilttest/judged") {
			return fs.SkipDir
		}
		if err != nil || entry.IsDir() || !strings.HasSuffix(file, "_test.go") {
			return err
		}
		text, err := fs.ReadFile(tree, file)
		if err != nil {
			return err
		}
		for _, part := range strings.SplitAfter(string(text), "\n}\n") {
			name := anyTest.FindStringSubmatch(part)
			if name != nil && name[1] != "TestMain" && (theTag.Match(text) || asksThem.MatchString(part)) {
				names = append(names, path.Dir(file)+" "+name[1])
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return names
}

// TestNoneIsLeftOut looks through the project's tests by another way, which sees less: none that it finds is missing in the list.
func TestNoneIsLeftOut(t *testing.T) {
	project := os.DirFS("../../..")
	tests, err := judged(project)
	if err != nil {
		t.Fatal(err)
	}
	list := map[string]bool{}
	for _, test := range tests {
		list[test.folder+" "+test.name] = true
	}
	seen := atAGlance(t, project)
	for _, name := range seen {
		if !list[name] {
			t.Errorf("%s is not in the list", name)
		}
	}
	if len(seen) < 150 || len(list) < len(seen) {
		t.Errorf("only %d tests were found, and %d are in the list", len(seen), len(list))
	}
}
