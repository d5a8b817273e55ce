// Command eighthturn turns a quilt's layout into pictures, lists and plans: flags and messages, nothing else. Each command
// stands in a file of its own.
package main

import (
	"errors"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/report"
)

func main() {
	c := &console{in: os.Stdin, out: os.Stdout, err: os.Stderr, ends: true}
	if doubleClicked() {
		if home, err := os.UserHomeDir(); err == nil {
			os.Exit(c.opened(os.Args[1:], home, run))
		}
	}
	os.Exit(run(os.Args[1:], c))
}

// run does what the arguments ask for and gives the exit code.
func run(args []string, c *console) int {
	if len(args) == 1 && args[0] == "--"+versionOption { // asked for often by scripts, and needs no command
		return c.conclude(c.print(versionText()))
	}
	root := rootCommand(c, args)
	root.SetArgs(args)
	return c.conclude(root.Execute())
}

// maker makes a command. Its name stands beside it, so that a run need not make all the others.
type maker struct {
	name string
	make func(*console) *cobra.Command
}

// makers make every command, in the order of help; a report without a command of its own is one too.
func makers() []maker {
	list := []maker{
		{"new", newCommand}, {"palette", paletteCommand},
		{"words", wordsCommand},
		{"preview", previewCommand},
		{"site", siteCommand},
		{"draw", drawCommand},
		{"check", checkCommand},
		{"values", valuesCommand},
		{"audition", auditionCommand},
		{"motifs", motifsCommand},
		{"tidy", tidyCommand},
		{"lsp", lspCommand},
		{"cuts", cutsCommand},
		{"sew", sewCommand},
		{"templates", templatesCommand},
		{"quilting", quiltingCommand},
		{"leftovers", leftoversCommand},
		{"fit", fitCommand},
		{"chart", chartCommand},
		{"booklet", bookletCommand},
		{"listing", listingCommand},
	}
	for _, r := range report.Reports() {
		if !slices.ContainsFunc(list, func(m maker) bool { return m.name == r.Name }) {
			list = append(list, maker{r.Name, func(c *console) *cobra.Command { return reportCommand(c, r) }})
		}
	}
	return list
}

// commands is every command, in the order of help.
func commands(c *console) []*cobra.Command {
	return mapped(makers(), func(m maker) *cobra.Command { return m.make(c) })
}

// wanted is the commands that the arguments may have to do with: the one that they begin with, and else all, for help,
// hints and shells.
func wanted(c *console, args []string) []*cobra.Command {
	for _, m := range makers() {
		if len(args) > 0 && m.name == args[0] {
			return []*cobra.Command{m.make(c)}
		}
	}
	return append(commands(c), quietCommands(c)...)
}

// versionOption is the name of the option that needs no command.
const versionOption = "version"

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
		Long: "You write a quilt as a short text, its layout: the strip that the wedges are cut from, the fabrics, the " +
			"blocks, and the grid as the quilt looks. eighthturn reads it, tells you what is wrong and draws the " +
			"quilt. Write layouts in any plain text editor and give them names like harbor.quilt.",
		Example: "eighthturn draw harbor.quilt\n  makes harbor.svg, a picture of the quilt\n" +
			"eighthturn check harbor.quilt\n  lists errors, then sizes, counts and fabrics\n" +
			"eighthturn draw --help\n  says what a command can do",
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          knownCommand,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if version {
				return c.print(versionText())
			}
			if len(args) == 0 && c.inTerminal() {
				if taken, err := c.offerFirst(); taken || err != nil {
					return err
				}
			}
			return c.print(helpText(cmd))
		},
	}
	root.PersistentPreRun = func(cmd *cobra.Command, _ []string) {
		if c.ends && cmd.HasParent() {
			c.untilTold()
		}
	}
	root.Flags().BoolVar(&version, versionOption, false, "show the version of eighthturn")
	root.CompletionOptions.DisableDefaultCmd = true // completionCommand takes its place
	cobra.EnableCommandSorting = false              // help has an order of its own
	cobra.MousetrapHelpText = ""                    // opened takes its place
	root.SetOut(c.out)
	root.SetErr(c.err)
	root.SetHelpFunc(func(cmd *cobra.Command, args []string) { c.failed = c.help(cmd, args) })
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error { return flagProblem(cmd, args, err) })
	for _, g := range groups() {
		root.AddGroup(&cobra.Group{ID: g, Title: g})
	}
	root.AddCommand(wanted(c, args)...)
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
