package main

import (
	"io"
	"os"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/plan/fit"
	"eighthturn/layout"
)

// tidying is what `tidy` was asked for.
type tidying struct {
	output, size  string
	force, modern bool
}

// tidyCommand rewrites a layout in its tidy form.
func tidyCommand(c *console) *cobra.Command {
	o := &tidying{}
	cmd := &cobra.Command{
		Use:     "tidy FILE [--modern] [--size NAME] [-o OUT]",
		Short:   "line up the columns of a layout",
		GroupID: toAmend,
		Long: "Rewrites a layout so that it is easy to read: columns lined up, rows of the grid under each other. Its " +
			"meaning and your comments stay the same. A layout with errors is left as it is, and the errors are " +
			"listed. With --modern, words of older layouts become today's: turned becomes reversed, ground becomes background. " +
			"With --size, the layout of one size is written out, without the others.",
		Example: "eighthturn tidy harbor.quilt\n  rewrites harbor.quilt in its place\n" +
			"eighthturn tidy harbor.quilt -o -\n  shows the result and changes nothing\n" +
			"eighthturn tidy harbor.quilt -o harbor-tidy.quilt\n  writes the tidy layout to another file\n" +
			"eighthturn tidy harbor.quilt --size queen -o harbor-queen.quilt\n  writes the size queen as a layout of its own",
		SuggestFor: []string{"format", "fmt", "align", "clean"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return tidy(c, cmd, o, args[0]) },
	}
	layoutNames().flag(cmd, &o.output, "write to `NAME` and leave FILE alone; - shows it here")
	cmd.Flags().BoolVar(&o.modern, "modern", false, "write today's words for those of older layouts: reversed for turned, background for ground")
	cmd.Flags().StringVar(&o.size, sizeName, "", "write the layout of the size of this `NAME`, to another file")
	cmd.Flags().BoolVar(&o.force, forceOption, false, "replace another file of that name")
	return cmd
}

func tidy(c *console, cmd *cobra.Command, o *tidying, file string) error {
	if err := layoutNames().check(cmd, o.output); err != nil {
		return err
	}
	s, err := c.read(file)
	if err != nil {
		return err
	}
	rewrite := layout.Tidy
	if o.modern {
		rewrite = layout.Modernize
	}
	whole := s.text
	if o.size != "" {
		if whole, err = c.writtenOut(cmd, o, s); err != nil {
			return err
		}
	}
	text, list := rewrite(whole)
	c.report(s, layout.NewSource(s.text), list)
	if stops(list, false) {
		return c.stopped(s, list, "nothing is changed")
	}
	switch {
	case o.output == stdio || o.output == "" && file == stdio:
		return c.write(target{path: stdio}, writer(text))
	case o.output == "" || s.isAt(o.output):
		return c.tidyInPlace(cmd, o, s, text)
	}
	t := target{path: o.output, what: "layout", example: "harbor" + layoutEnding, options: files.Options{Force: o.force, Never: s.madeFrom}}
	if err := c.write(t, writer(text)); err != nil {
		return err
	}
	return c.print("tidied: " + layout.Visible(o.output) + "\n")
}

// writtenOut is the layout of one size as a text of its own.
func (c *console) writtenOut(cmd *cobra.Command, o *tidying, s *source) (string, error) {
	if o.output == "" || s.isAt(o.output) {
		return "", misuse(cmd.CommandPath(), "a layout is not replaced by one of its sizes", "name another file with -o, or write -o - for standard output")
	}
	l := layOut(s)
	if stops(l.faults, false) {
		c.report(s, l.lines, l.faults)
		return "", c.stopped(s, l.faults, "nothing is changed")
	}
	if _, err := (&variantOption{size: o.size}).of(cmd, l.top); err != nil {
		return "", err
	}
	album := files.Beside(s.path)
	return fit.WrittenOut(s.text, o.size, func(text string) (*layout.Design, *layout.Source, []layout.Fault) {
		return layout.ReadWith(text, album.Cloth)
	}), nil
}

// isAt says whether a path is one of the names of the file that was read.
func (s *source) isAt(path string) bool {
	info, err := os.Stat(path)
	return err == nil && s.info != nil && os.SameFile(info, s.info)
}

// tidyInPlace replaces the layout that was read, unless it is tidy already or someone else changed it in the meantime.
func (c *console) tidyInPlace(cmd *cobra.Command, o *tidying, s *source, text string) error {
	switch {
	case !s.info.Mode().IsRegular():
		return misuse(cmd.CommandPath(), "a layout from a pipe cannot be rewritten in its place", "name another file with -o, or write -o - for standard output")
	case text == s.text:
		return c.print("tidy already: " + layout.Visible(s.name) + "\n")
	}
	if again, err := c.read(s.path); err != nil {
		return err
	} else if again.text != s.text {
		return &problem{faulty, s.name, "this file was changed while it was being tidied, and stays as it is", "run it again"}
	}
	t := target{path: s.path, what: "layout", options: files.Options{Force: o.force, Ours: func([]byte) bool { return true }}}
	if err := c.write(t, writer(text)); err != nil {
		return err
	}
	return c.print("tidied: " + layout.Visible(s.name) + "\n")
}

// writer is what writes a text.
func writer(text string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	}
}
