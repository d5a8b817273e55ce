package main

import (
	"eighthturn/internal/render"
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
