package main

import (
	"encoding"
	"os"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/render"
)

// pageWidth is how many columns of a terminal help, lists and sentences take.
const pageWidth = 80

func testConsole() *console { return &console{in: os.Stdin, out: os.Stdout, err: os.Stderr} }

// Every command says what it is for, shows two examples or more, and fits the terminal; every option says what it does.
func TestHelpOfEveryCommand(t *testing.T) {
	root := rootCommand(testConsole(), nil)
	for _, cmd := range append(commands(testConsole()), root) {
		if cmd != root && !slices.Contains(groups(), cmd.GroupID) {
			t.Errorf("%s stands under no heading", cmd.Name())
		}
		if len(cmd.Short) == 0 || len(cmd.Short) > 50 || len(cmd.Long) < 100 || cmd.Args == nil {
			t.Errorf("%s: its summary has %d letters, its description %d, arguments are checked: %v", cmd.Name(), len(cmd.Short), len(cmd.Long), cmd.Args != nil)
		}
		if n := strings.Count("\n"+cmd.Example, "\neighthturn "); n < 2 {
			t.Errorf("%s has %d examples", cmd.Name(), n)
		}
		cmd.Flags().VisitAll(func(f *pflag.Flag) {
			if f.Usage == "" || strings.HasSuffix(f.Usage, ".") {
				t.Errorf("%s --%s: %q", cmd.Name(), f.Name, f.Usage)
			}
		})
		for _, line := range strings.Split(helpText(cmd), "\n") {
			if render.Columns(line) > pageWidth {
				t.Errorf("%s: %d columns: %s", cmd.Name(), render.Columns(line), line)
			}
		}
	}
}

// Every example in the help of a command is understood by that command.
func TestExamplesAreUnderstood(t *testing.T) {
	for _, cmd := range append(commands(testConsole()), rootCommand(testConsole(), nil)) {
		for _, line := range strings.Split(cmd.Example, "\n") {
			args, ok := strings.CutPrefix(line, "eighthturn ")
			if !ok {
				continue
			}
			if len(line)+2 > pageWidth {
				t.Errorf("%s: %q is broken into two lines, and cannot be copied", cmd.Name(), line)
			}
			args, _, _ = strings.Cut(args, " > ") // the shell's
			words := strings.Fields(args)
			for i, word := range words {
				if strings.HasPrefix(word, "#") {
					t.Errorf("%s: a shell takes for a comment what begins with # in %q", cmd.Name(), line)
				}
				words[i] = strings.Trim(word, `"`) // which every shell takes away, other than single ones
			}
			root := rootCommand(testConsole(), words)
			found, rest, err := root.Find(words)
			if err != nil || found == root {
				t.Errorf("%s: no command in %q", cmd.Name(), line)
				continue
			}
			found.InitDefaultHelpFlag()
			if err := found.ParseFlags(rest); err != nil {
				t.Errorf("%q: %v", line, err)
			} else if help, _ := found.Flags().GetBool("help"); !help {
				if err := found.Args(found, found.Flags().Args()); err != nil {
					t.Errorf("%q: %v", line, err)
				}
			}
		}
	}
}

// The names of options mean the same in every command that has them.
func TestOptionsAreOfOneMind(t *testing.T) {
	short := map[string]string{}
	for _, cmd := range commands(testConsole()) {
		cmd.Flags().VisitAll(func(f *pflag.Flag) {
			if was, seen := short[f.Name]; seen && was != f.Shorthand {
				t.Errorf("--%s is -%s here and -%s there", f.Name, f.Shorthand, was)
			}
			short[f.Name] = f.Shorthand
		})
	}
	if short[outputOption] != "o" {
		t.Errorf("-o is not --%s", outputOption)
	}
}

// described are the names in the description of a report.
func described(t *testing.T, file string) []string {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, m := range regexp.MustCompile("(?m)^\\| `([^`]+)`").FindAllStringSubmatch(string(text), -1) {
		names = append(names, m[1])
	}
	return names
}

// jsonNames are the names that a type is written with.
func jsonNames(at string, typ reflect.Type) []string {
	switch typ.Kind() {
	case reflect.Pointer:
		return append([]string{at}, jsonNames(at, typ.Elem())...)
	case reflect.Slice, reflect.Array:
		return jsonNames(at+"[]", typ.Elem())
	case reflect.Struct:
		if typ == reflect.TypeFor[measure.JSONLength]() || typ.Implements(reflect.TypeFor[encoding.TextMarshaler]()) {
			return []string{at}
		}
		var names []string
		for i := range typ.NumField() {
			if typ.Field(i).Anonymous {
				names = append(names, jsonNames(at, typ.Field(i).Type)...)
				continue
			}
			name, _, _ := strings.Cut(typ.Field(i).Tag.Get("json"), ",")
			if name == "-" {
				continue
			}
			if at != "" {
				name = at + "." + name
			}
			names = append(names, jsonNames(name, typ.Field(i).Type)...)
		}
		return names
	}
	return []string{at}
}

// reports are what is written as JSON, by the files that describe it.
func reports() map[string]reflect.Type {
	return map[string]reflect.Type{
		"check-json.md": reflect.TypeFor[struct {
			jsonHead
			checkJSON
		}](),
		"values-json.md": reflect.TypeFor[struct {
			jsonHead
			contrast.Report
		}](),
	}
}

func TestReportsAreDescribed(t *testing.T) {
	for file, typ := range reports() {
		has, said := jsonNames("", typ), described(t, file)
		for _, name := range has {
			if !slices.Contains(said, name) {
				t.Errorf("%s: %s is not described", file, name)
			}
		}
		for _, name := range said {
			if !slices.Contains(has, name) {
				t.Errorf("%s: %s is described and not there", file, name)
			}
		}
		if len(has) < 30 {
			t.Errorf("%s: only %d names were found", file, len(has))
		}
	}
}

func TestNoCommandIsHidden(t *testing.T) {
	text := helpText(rootCommand(testConsole(), nil))
	for _, cmd := range commands(testConsole()) {
		if !strings.Contains(text, "\n  "+cmd.Name()+" ") {
			t.Errorf("help does not list %s", cmd.Name())
		}
	}
	if strings.Contains(text, (&cobra.Command{Use: "completion"}).Name()) {
		t.Error("help lists what is for shells alone")
	}
}

// jsonHead is what stands first in the JSON of a report that a package writes.
type jsonHead struct {
	Format int    `json:"format"`
	File   string `json:"file"`
	Units  string `json:"units"`
}

// A run makes the one command that it is for, by the name in the list.
func TestEveryCommandIsMadeByItsName(t *testing.T) {
	for _, m := range makers() {
		made := m.make(testConsole())
		if made.Name() != m.name {
			t.Errorf("%s is made under the name %s", made.Name(), m.name)
		}
		if alone := rootCommand(testConsole(), []string{m.name, "--help"}).Commands(); len(alone) != 1 || alone[0].Name() != m.name {
			t.Errorf("a run of %s makes %d commands", m.name, len(alone))
		}
	}
	for _, args := range [][]string{nil, {"drow"}, {"--help"}, {"help", "draw"}, {"--version", "draw"}, {"manual"}} {
		if all := rootCommand(testConsole(), args).Commands(); len(all) < len(makers()) {
			t.Errorf("%v makes %d commands, which are not all", args, len(all))
		}
	}
}
