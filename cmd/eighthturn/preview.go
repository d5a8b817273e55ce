package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/preview"
	"eighthturn/internal/quilt"
	"eighthturn/samples/starters"
)

// previewCommand shows a layout in the browser for as long as it is being worked on.
func previewCommand(c *console) *cobra.Command {
	var o preview.Options
	var cut cutOptions
	var t tries
	var in variantOption
	cmd := &cobra.Command{
		Use:     "preview [FILE | FOLDER]",
		Short:   "the quilt in your browser, at every save",
		GroupID: toSee,
		Long: "Opens a page in your browser that shows the quilt and follows the layout: every save in your text editor " +
			"shows at once, errors appear over the last good picture until they are fixed, and your place in the " +
			"picture stays the same. Of a folder, shows all layouts as small pictures; a click opens one, and the menu beside " +
			"its title the others. Without FILE or FOLDER, shows this folder with layouts to begin from: the page writes a copy " +
			"here when you ask for it, and never replaces a file. Only this computer can open the page. Press Control-C to stop.",
		Example: "eighthturn preview harbor.quilt\n  opens the page; leave it beside your text editor\n" +
			"eighthturn preview\n  shows the layouts of this folder, and some to begin from\n" +
			"eighthturn preview harbor.quilt --no-open\n  shows the page's address; you open it yourself",
		SuggestFor: []string{"watch", "serve", "live", "show", "open"},
		Args:       layoutOrFolder,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.Output, o.Tries, o.Colorway, o.Size = c.out, t, in.colorway, in.size
			for _, text := range t {
				if _, _, err := contrast.ReadTry(text); err != nil {
					return misuse(cmd.CommandPath(), err.Error(), "for example --"+tryOption+" navy=#3a4f66")
				}
			}
			notes := notesOnce{to: c.err}
			o.Cutting = func(top *quilt.Top) cutting.Options { return cut.onPage(cmd, top, notes.say) }
			if len(args) == 0 {
				return c.liveFolder(cmd, ".", beginnings(), o)
			}
			return c.live(cmd, args[0], o)
		},
	}
	f := cmd.Flags()
	f.Var((*portOption)(&o.Port), portName, "the page's `PORT` on this computer; any free one if omitted")
	f.BoolVar(&o.NoOpen, "no-open", false, "show the page's address without opening it")
	f.BoolVar(&o.Quiet, "quiet", false, "say nothing at each save")
	f.BoolVar(&o.Edit, "edit", false, "let the page write the layout: colors that you try, hints, and a pane to type in")
	f.BoolVar(&o.Secret, "key", false, "admit only the page that was opened, on a computer that several people share")
	f.Var((*hostsOption)(&o.Hosts), hostName, "another `NAME` that the browser may use for this computer, if a port is forwarded")
	f.Var((*editorOption)(&o.Editor), editorName, "an `ADDRESS` that opens your text editor, with {file} and {line}, for the page's links to lines")
	in.flags(cmd)
	t.flags(cmd)
	cut.addCloth(cmd)
	cut.addPieces(cmd)
	return cmd
}

// live follows a layout until it is told to end; a second control-C ends the program by itself.
func (c *console) live(cmd *cobra.Command, file string, o preview.Options) error {
	if file == stdio {
		return misuse(cmd.CommandPath(), "only a file can be followed, not standard input", "save the layout and name its file")
	}
	if info, err := os.Stat(file); err == nil && info.IsDir() {
		return c.liveFolder(cmd, file, nil, o)
	}
	if _, err := os.Stat(file); errors.Is(err, fs.ErrNotExist) && filepath.Ext(file) == "" {
		return noSuchFile(file)
	}
	ctx, stop := c.endingItself()
	defer stop()
	return portInUse(cmd, preview.Run(ctx, file, o))
}

// liveFolder shows the layouts of a folder until it is told to end.
func (c *console) liveFolder(cmd *cobra.Command, folder string, begin []preview.Beginning, o preview.Options) error {
	ctx, stop := c.endingItself()
	defer stop()
	return portInUse(cmd, preview.RunFolder(ctx, folder, begin, o))
}

// beginnings are the layouts that the gallery offers a copy of.
func beginnings() []preview.Beginning {
	return mapped(starters.All(), func(s starters.Starter) preview.Beginning {
		return preview.Beginning{Name: s.Name, About: s.About, Text: s.Text}
	})
}

// layoutOrFolder wants the name of a layout or of a folder, or nothing.
func layoutOrFolder(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return oneLayout(cmd, args)
}

// portInUse says what to do where the port cannot be had; another error is given back.
func portInUse(cmd *cobra.Command, err error) error {
	var port *preview.PortError
	if errors.As(err, &port) {
		return misuse(cmd.CommandPath(), err.Error(), "leave --port out to take any free one")
	}
	return err
}
