// Command eighthturn turns a quilt's layout into pictures, lists and plans: flags and messages, nothing else. Each command
// stands in a file of its own.
package main

import (
	"eighthturn/internal/report"
	"errors"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"
)

func main() {
	c := &console{in: os.Stdin, out: os.Stdout, err: os.Stderr}
	os.Exit(run(os.Args[1:], c))
}

// run does what the arguments ask for and gives the exit code.
func run(args []string, c *console) int {
	root := rootCommand(c, args)
	root.SetArgs(args)
	return c.conclude(root.Execute())
}

// commands is every command, in the order of help.
func commands(c *console) []*cobra.Command {
	list := []*cobra.Command{
		newCommand(c), paletteCommand(c),
		wordsCommand(c),
		previewCommand(c),
		drawCommand(c),
		checkCommand(c),
		valuesCommand(c),
		tidyCommand(c),
		cutsCommand(c),
		sewCommand(c),
		templatesCommand(c),
		fitCommand(c),
		chartCommand(c),
		bookletCommand(c),
	}
	for _, r := range report.Reports() {
		if !slices.ContainsFunc(list, func(cmd *cobra.Command) bool { return cmd.Name() == r.Name }) {
			list = append(list, reportCommand(c, r))
		}
	}
	return list
}

// Groups of commands, as help heads them.
const (
	toBegin  = "To begin"
	toSee    = "To see the quilt"
	toAmend  = "To get the layout right"
	toCutSew = "To cut and sew"
)

func groups() []string { return []string{toBegin, toSee, toAmend, toCutSew} }

// rootCommand is the program itself. It is given the arguments to tell a mistyped command from a mistyped option.
func rootCommand(c *console, args []string) *cobra.Command {
	var version bool
	root := &cobra.Command{
		Use:   "eighthturn",
		Short: "quilts from one wedge, an eighth of a turn",
		Long: "You write a quilt as a short text, its layout: the strip that the wedges are cut from, the fabrics, the blocks, " +
			"and the grid as the quilt looks. eighthturn reads it, tells you what is amiss and draws the quilt. " +
			"Write layouts in any plain text editor and give them names like harbour.quilt.",
		Example: "eighthturn draw harbour.quilt\n  makes harbour.svg, a picture of the quilt\n" +
			"eighthturn check harbour.quilt\n  lists mistakes, then sizes, counts and fabrics\n" +
			"eighthturn draw --help\n  says what a command can do",
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          knownCommand,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if version {
				return c.print(versionText())
			}
			return c.print(helpText(cmd))
		},
	}
	root.Flags().BoolVar(&version, "version", false, "say which version of eighthturn this is")
	root.CompletionOptions.DisableDefaultCmd = true // completionCommand takes its place
	cobra.EnableCommandSorting = false              // help has an order of its own
	root.SetOut(c.out)
	root.SetErr(c.err)
	root.SetHelpFunc(func(cmd *cobra.Command, args []string) { c.failed = c.help(cmd, args) })
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error { return flagProblem(cmd, args, err) })
	for _, g := range groups() {
		root.AddGroup(&cobra.Group{ID: g, Title: g})
	}
	root.AddCommand(commands(c)...)
	root.AddCommand(quietCommands(c)...)
	if shellAsks(args) {
		completeWords(root.Commands())
	}
	root.SetHelpCommand(helpCommand(c))
	return root
}

// helpCommand is `eighthturn help draw`, which some try before --help.
func helpCommand(c *console) *cobra.Command {
	return &cobra.Command{
		Use:    "help [COMMAND]",
		Short:  "what a command does",
		Hidden: true,
		RunE: func(cmd *cobra.Command, args []string) error {
			root := cmd.Root()
			about, _, err := root.Find(args)
			if err != nil || about == root {
				return c.help(root, args)
			}
			return c.print(helpText(about))
		},
	}
}

// help shows the help of a command; to one who mistyped a command, it says so instead.
func (c *console) help(cmd *cobra.Command, args []string) error {
	if cmd.HasSubCommands() {
		path := strings.Fields(cmd.CommandPath())[1:]
		if wrong := knownCommand(cmd, words(args)[min(len(path), len(words(args))):]); wrong != nil {
			return wrong
		}
	}
	return c.print(helpText(cmd))
}

// conclude shows what went wrong, if anything did, and gives the exit code.
func (c *console) conclude(err error) int {
	if err == nil {
		err = c.failed
	}
	var (
		said *reported
		p    *problem
	)
	switch {
	case err == nil:
		return done
	case errors.As(err, &said):
		return said.code
	case !errors.As(err, &p):
		p = misuse("eighthturn", err.Error(), seeHelp("eighthturn"))
	}
	c.show(p)
	return p.code
}
