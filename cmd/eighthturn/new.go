package main

import (
	"errors"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/render"
	"eighthturn/layout"
	"eighthturn/samples/starters"
)

// newCommand writes a layout to start from.
func newCommand(c *console) *cobra.Command {
	var output string
	var stays bool
	cmd := &cobra.Command{
		Use:     "new [KIND] [-o NAME]",
		Short:   "a first layout to make your own",
		GroupID: toBegin,
		Long: "Writes a small layout of the kind of quilt that you name, with every line explained. Open it in a text " +
			"editor, change a color or a row of the grid, save it and draw it. Without KIND, asks for the kind, the " +
			"size and the palette, each with an answer that Enter takes, writes the layout and opens it in your browser; where nobody can " +
			"be asked, lists the kinds of quilt. It never replaces a file.",
		Example: "eighthturn new\n  asks what quilt it is to be, and shows it\n" +
			"eighthturn new floating-webs -o harbor.quilt\n  makes harbor.quilt; then draw it: eighthturn draw harbor.quilt\n" +
			"eighthturn new rings -o -\n  shows the layout here and writes no file",
		SuggestFor: []string{"start", "init", "create", "begin", "example", "sample", "template"},
		Args:       oneSort,

		ValidArgsFunction: offerOne(sortNames),
		RunE:              func(cmd *cobra.Command, args []string) error { return begin(c, cmd, output, !stays, args) },
	}
	layoutNames().flag(cmd, &output, "the layout's `NAME`, as in harbor.quilt; - shows it here")
	cmd.Flags().BoolVar(&stays, "no-open", false, "after the questions, write the layout without opening the page")
	return cmd
}

func sortNames() []string {
	return mapped(starters.All(), func(s starters.Starter) string { return s.Name })
}

// oneSort wants the name of a starter or nothing; the name of a file belongs behind -o.
func oneSort(cmd *cobra.Command, args []string) error {
	for i, a := range args {
		if strings.EqualFold(filepath.Ext(a), layoutEnding) {
			sorts := append(slices.Delete(slices.Clone(args), i, i+1), sortNames()...)
			return misuse(cmd.CommandPath(), quoted(a)+" is a file name, but the kind of quilt comes first",
				"write the file's name after -o: "+cmd.CommandPath()+" "+sorts[0]+" -o "+shellWord(a))
		}
	}
	return oneOf("kind of quilt", sortNames())(cmd, args)
}

func begin(c *console, cmd *cobra.Command, output string, open bool, args []string) error {
	if err := layoutNames().check(cmd, output); err != nil {
		return err
	}
	if len(args) == 0 && c.inTerminal() {
		err := c.dialog().beginHere(output, open)
		if errors.Is(err, errNoAnswer) { // nobody is there
			return c.print("\n\n" + sortsText(cmd))
		}
		return err
	}
	if len(args) == 0 {
		if output != "" {
			return misuse(cmd.CommandPath(), "no kind of quilt is named", "for example "+cmd.CommandPath()+" "+sortNames()[0]+" -o "+shellWord(output))
		}
		return c.print(sortsText(cmd))
	}
	list := starters.All()
	s := list[slices.IndexFunc(list, func(s starters.Starter) bool { return strings.EqualFold(s.Name, args[0]) })]
	if output == "" {
		output = s.Name + layoutEnding
	}
	return c.writeNew(output, s.Text)
}

// writeNew writes a layout where nothing stands.
func (c *console) writeNew(path, text string) error {
	t := target{path: path, what: "layout", example: "harbor" + layoutEnding}
	if path == stdio {
		return c.write(t, writer(text))
	}
	var refused *files.Refusal
	if err := files.Check(path, files.Options{}); errors.As(err, &refused) && (refused.Reason == files.NotOurs || refused.Reason == files.IsReadOnly) {
		return &problem{faulty, path, "a file of this name already exists, and stays as it is", "give the layout another name with -o"}
	}
	if err := c.write(t, writer(text)); err != nil {
		return err
	}
	name := shellWord(layout.Visible(path))
	return c.print("written: " + layout.Visible(path) + "\n" + "Change it in a text editor, or on the page that this opens: eighthturn preview --edit " + name + "\n")
}

// sortsText lists the kinds of quilt.
func sortsText(cmd *cobra.Command) string {
	rows := mapped(starters.All(), func(s starters.Starter) [2]string { return [2]string{s.Name, s.About} })
	return "Layouts to start from\n" + render.Labeled(rows, "  ") +
		"\nTo write one: " + cmd.CommandPath() + " " + rows[0][0] + " -o harbor" + layoutEnding + "\n"
}
