package main

import (
	"eighthturn/internal/render"
	"eighthturn/palettes"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// Commands that help does not list have help in its style all the same.
func TestHelpOfQuietCommands(t *testing.T) {
	var all []*cobra.Command
	for _, cmd := range quietCommands(testConsole()) {
		all = append(append(all, cmd), cmd.Commands()...)
	}
	if len(all) < 6 {
		t.Fatalf("only %d commands", len(all))
	}
	for _, cmd := range all {
		if cmd.Short == "" || len(cmd.Long) < 60 || cmd.Args == nil || !strings.Contains("\n"+cmd.Example, "\neighthturn ") {
			t.Errorf("%s: %d letters of description, %q", cmd.CommandPath(), len(cmd.Long), cmd.Example)
		}
		for _, line := range strings.Split(helpText(cmd), "\n") {
			if render.Columns(line) > pageWidth {
				t.Errorf("%s: %d columns: %s", cmd.CommandPath(), render.Columns(line), line)
			}
		}
	}
}

// Wherever a command names a layout in its line, a shell offers layouts; nowhere else does it offer files unasked.
func TestEveryCommandCompletes(t *testing.T) {
	for _, cmd := range rootCommand(testConsole(), []string{cobra.ShellCompRequestCmd}).Commands() {
		if cmd.Name() == "help" {
			continue
		}
		if cmd.ValidArgsFunction == nil {
			t.Errorf("%s leaves a shell to offer any file", cmd.Name())
			continue
		}
		words, how := cmd.ValidArgsFunction(cmd, nil, "")
		layouts := how == cobra.ShellCompDirectiveFilterFileExt && len(words) == 1 && words[0] == "quilt"
		if takes := strings.Contains(cmd.Use, "FILE"); takes != layouts {
			t.Errorf("%s offers %v, %v", cmd.Name(), words, how)
		}
		if _, how := cmd.ValidArgsFunction(cmd, []string{"a", "b", "c"}, ""); how != cobra.ShellCompDirectiveNoFileComp {
			t.Errorf("%s offers more after what it takes", cmd.Name())
		}
	}
}

// offered is what the program tells a shell that could stand next, a line each.
func offered(t *testing.T, words ...string) string {
	t.Helper()
	r := runIn(t, append([]string{cobra.ShellCompRequestCmd}, words...)...)
	if r.code != 0 {
		t.Fatalf("%q: code %d, %s", words, r.code, r.err)
	}
	return r.out
}

// No description that a shell shows has the quotes that mark an option's value for help, whatever the command; and each shows some.
func TestShellsShowNoQuotes(t *testing.T) {
	for _, cmd := range commands(testConsole()) {
		list := offered(t, cmd.Name(), "--")
		if strings.Contains(list, "`") || !strings.Contains(list, "--help\thelp for "+cmd.Name()) {
			t.Errorf("%s: %s", cmd.Name(), list)
		}
	}
	if list := offered(t, "draw", "--"); !strings.Contains(list, "--margin\tfor all but SVG: a margin of this LENGTH") {
		t.Errorf("the value's name is lost: %s", list)
	}
}

// Palettes are offered by name with a few words, and files where no palette begins so.
func TestPalettesAreOffered(t *testing.T) {
	list := offered(t, "palette", "")
	for _, p := range palettes.All() {
		if !strings.Contains(list, p.Name+"\t"+p.About+"\n") {
			t.Errorf("%s is not offered: %s", p.Name, list)
		}
	}
	if list := offered(t, "palette", "Tide"); !strings.HasPrefix(list, "tidewater\t") || strings.Count(list, "\n") != 2 || !strings.Contains(list, ":0\n") {
		t.Errorf("%q", list)
	}
	if list := offered(t, "palette", "tidewater", ""); list != ":4\n" {
		t.Errorf("%q", list)
	}
	if list := offered(t, "draw", "harbor.quilt", "-o", ""); !strings.HasPrefix(list, "svg\npng\njpg\njpeg\nwebp\npdf\n:8") {
		t.Errorf("%q", list)
	}
}
