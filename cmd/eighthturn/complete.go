package main

import (
	"bytes"
	"eighthturn/palettes"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// quietCommands are commands that help does not list: they are for setting up a machine, not for a quilt.
func quietCommands(c *console) []*cobra.Command {
	return []*cobra.Command{completionCommand(c), manualCommand(c)}
}

// shell is a program that reads what is typed, and how it learns to complete our words.
type shell struct {
	name, where string
	example     string
	script      func(root *cobra.Command, to *bytes.Buffer) error
}

func shells() []shell {
	return []shell{
		{
			"bash", "The script needs the package bash-completion. For this terminal alone, type: source <(eighthturn completion bash). To have it in every new one, keep the script " +
				"where that package looks for it, under the name eighthturn.",
			"eighthturn completion bash > eighthturn\n  then move it to ~/.local/share/bash-completion/completions",
			func(root *cobra.Command, to *bytes.Buffer) error { return root.GenBashCompletionV2(to, true) },
		},
		{
			"zsh", "Keep the script in a folder that stands in fpath, under the name _eighthturn, and open a new terminal.",
			"eighthturn completion zsh > ~/.zfunc/_eighthturn\n  where .zshrc has the lines: fpath+=~/.zfunc; autoload -U compinit; compinit",
			func(root *cobra.Command, to *bytes.Buffer) error { return root.GenZshCompletion(to) },
		},
		{
			"fish", "Keep the script in the folder for completions; the next terminal knows it.",
			"eighthturn completion fish > ~/.config/fish/completions/eighthturn.fish\n  for every new terminal",
			func(root *cobra.Command, to *bytes.Buffer) error { return root.GenFishCompletion(to, true) },
		},
		{
			"powershell", "For this window alone, hand the script to Invoke-Expression; to have it in every new one, add it to your profile.",
			"eighthturn completion powershell | Out-String | Invoke-Expression\n  for this window",
			func(root *cobra.Command, to *bytes.Buffer) error { return root.GenPowerShellCompletionWithDesc(to) },
		},
	}
}

// completionCommand writes what a shell needs to complete our words.
func completionCommand(c *console) *cobra.Command {
	cmd := &cobra.Command{
		Use:    "completion SHELL",
		Short:  "let the Tab key finish what you type",
		Hidden: true,
		Long: "Writes a script for your shell, the program that reads what you type in a terminal, so that the Tab key " +
			"finishes commands, options, the names of layouts and the words of the language. The help of each shell " +
			"says where the script goes.",
		Example: "eighthturn completion bash --help\n  says where the script for bash goes\neighthturn completion fish > eighthturn.fish\n  writes the script for fish",
		Args:    knownShell,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return misuse(cmd.CommandPath(), "no shell is named", "shells are: "+strings.Join(mapped(shells(), func(s shell) string { return s.name }), ", "))
		},
	}
	for _, s := range shells() {
		cmd.AddCommand(&cobra.Command{
			Use:               s.name,
			Short:             "for " + s.name,
			Long:              "Writes the script for " + s.name + ". " + s.where,
			Example:           s.example,
			Args:              nothingMore,
			ValidArgsFunction: cobra.NoFileCompletions,
			RunE: func(cmd *cobra.Command, _ []string) error {
				var b bytes.Buffer
				if err := s.script(cmd.Root(), &b); err != nil {
					return err
				}
				return c.print(b.String())
			},
		})
	}
	return cmd
}

// knownShell refuses a word that is no shell.
func knownShell(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	names := mapped(shells(), func(s shell) string { return s.name })
	hint := "shells are: " + strings.Join(names, ", ")
	if near := nearest(args[0], names); near != "" {
		hint = didYouMean(near)
	}
	return misuse(cmd.CommandPath(), "no shell is called "+quoted(args[0]), hint)
}

// nothingMore refuses any word.
func nothingMore(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return misuse(cmd.CommandPath(), "nothing more is wanted, found "+quoted(strings.Join(args, " ")), seeHelp(cmd.CommandPath()))
}

// shellAsks says whether it is a shell that runs the program, to learn what could stand next.
func shellAsks(args []string) bool {
	return len(args) > 0 && (args[0] == cobra.ShellCompRequestCmd || args[0] == cobra.ShellCompNoDescRequestCmd)
}

// completeWords gives every command what a shell may offer for it: layouts where one is named, the words of options that
// take a few, and no files elsewhere. It goes over what the commands say of themselves and changes nothing that they
// settled.
func completeWords(cmds []*cobra.Command) {
	for _, cmd := range cmds {
		if cmd.ValidArgsFunction == nil {
			switch {
			case strings.Contains(strings.NewReplacer("[", " ", "]", " ").Replace(" "+cmd.Use+" "), " FILE "):
				cmd.ValidArgsFunction = offerLayout
			default:
				cmd.ValidArgsFunction = cobra.NoFileCompletions
			}
		}
		cmd.Flags().VisitAll(func(f *pflag.Flag) {
			_, f.Usage = pflag.UnquoteUsage(f) // help alone knows what the quotes in it are for
			if words, ok := f.Value.(*choice); ok {
				_ = cmd.RegisterFlagCompletionFunc(f.Name, words.complete) // fails where a command has settled it
			} else if f.Value.Type() != "string" && f.NoOptDefVal == "" {
				_ = cmd.RegisterFlagCompletionFunc(f.Name, cobra.NoFileCompletions)
			}
		})
	}
}

// offerLayout lets the shell offer files whose names end like layouts, and folders, for the one layout that is wanted.
func offerLayout(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return []string{layoutEnding[1:]}, cobra.ShellCompDirectiveFilterFileExt
}

// offerPalette offers our palettes with a few words each, and files where no palette begins so.
func offerPalette(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var list []string
	for _, p := range palettes.All() {
		if strings.HasPrefix(p.Name, strings.ToLower(begun)) {
			list = append(list, cobra.CompletionWithDesc(p.Name, p.About))
		}
	}
	return list, cobra.ShellCompDirectiveDefault
}

// offerOne offers words for the one that is wanted.
func offerOne(words func() []string) cobra.CompletionFunc {
	return func(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return kept(words(), func(w string) bool { return strings.HasPrefix(w, strings.ToLower(begun)) }), cobra.ShellCompDirectiveNoFileComp
	}
}
