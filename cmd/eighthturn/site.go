package main

import (
	"bytes"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
	"eighthturn/internal/preview"
	"eighthturn/layout"
)

const (
	engineOption    = "engine"
	downloadsOption = "downloads"
)

// siteCommand writes the whole program as pages for a web host.
func siteCommand(c *console) *cobra.Command {
	var engine, downloads string
	cmd := &cobra.Command{
		Use:     "site FOLDER",
		Short:   "the whole program as pages for your web site",
		GroupID: toSee,
		Long: "Writes a folder of pages in which eighthturn runs in a browser: layouts to begin from, a pane to type in, the " +
			"picture, all reports, the pattern and the files. Put the folder on your web site as it is, any host will do, or on a " +
			"memory stick with a small web server; pages opened as files do not run. The pages fetch nothing but this folder, layouts " +
			"stay in each visitor's own browser, and after the first visit they work without a network. A folder that this command " +
			"made is replaced whole; one that holds anything else is refused.",
		Example: "eighthturn site quilt-class\n  makes the folder quilt-class, to be put on a web site\n" +
			"eighthturn site quilt-class --downloads https://example.com/eighthturn\n  and its pages lead to the program itself",
		SuggestFor: []string{"pages", "html", "wasm", "online", "host", "publish"},
		Args:       oneFolder,
		RunE:       func(cmd *cobra.Command, args []string) error { return makeSite(c, cmd, args[0], engine, downloads) },
	}
	f := cmd.Flags()
	f.StringVar(&engine, engineOption, "", "the `FOLDER` with the engine, the part that browsers run; by default the one that came with this program")
	f.StringVar(&downloads, downloadsOption, "", "the web `ADDRESS` where visitors can get the program itself")
	_ = cmd.MarkFlagDirname(engineOption) // fails only for an option that is not there
	cmd.ValidArgsFunction = func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return nil, cobra.ShellCompDirectiveFilterDirs
	}
	return cmd
}

// oneFolder wants the name of one folder and nothing more.
func oneFolder(cmd *cobra.Command, args []string) error {
	example := "for example " + cmd.CommandPath() + " quilt-class"
	switch {
	case len(args) == 0 || args[0] == "":
		return misuse(cmd.CommandPath(), "no folder is named", example)
	case args[0] == stdio:
		return misuse(cmd.CommandPath(), "pages go into a folder, not to standard output", example)
	case len(args) > 1:
		return misuse(cmd.CommandPath(), fmt.Sprintf("expected one folder, found %d: %s", len(args), quoted(strings.Join(args, " "))), tooManyHint(cmd, args))
	}
	return nil
}

func makeSite(c *console, cmd *cobra.Command, folder, engineFolder, downloads string) error {
	if at, err := url.Parse(downloads); downloads != "" && (err != nil || at.Scheme != "https" && at.Scheme != "http" || at.Host == "") {
		return misuse(cmd.CommandPath(), "after --"+downloadsOption+": found "+quoted(downloads)+", expected a web address", "for example --"+downloadsOption+" https://example.com/eighthturn")
	}
	if err := mayBeSite(folder); err != nil {
		return err
	}
	engine, err := c.engine(engineFolder)
	if err != nil {
		return err
	}
	list := preview.Static(*engine, downloads)
	size := 0
	for _, f := range list {
		var b bytes.Buffer
		if err := f.Write(&b); err != nil {
			return err
		}
		size += b.Len()
	}
	there := isSite(folder)
	t := target{path: folder, what: "page", example: "quilt-class", option: "site", options: files.Options{Ours: func([]byte) bool { return there }}}
	if err := c.writeSet(t, "site", list); err != nil {
		return err
	}
	return c.print(fmt.Sprintf("written: %s, %d files, %.1f MB\nPut the folder on your web site as it is. To try it here, serve it with a small web server: python3 -m http.server -d %s\n",
		layout.Visible(folder), len(list), float64(size)/1e6, shellWord(layout.Visible(folder))))
}

// mayBeSite refuses a folder that holds anything but pages that this command made.
func mayBeSite(folder string) error {
	entries, err := os.ReadDir(folder)
	if os.IsNotExist(err) {
		return nil
	}
	if err != nil {
		return folderProblem(folder, "site", nil, err)
	}
	known := preview.StaticNames()
	for _, e := range entries {
		if !slices.Contains(known, e.Name()) || !isSite(folder) {
			return &problem{faulty, folder, "this folder holds something else already: " + e.Name(), "name a new folder, or empty this one"}
		}
	}
	return nil
}

// isSite says whether a folder has pages that this command made.
func isSite(folder string) bool {
	b, err := os.ReadFile(filepath.Join(folder, preview.ServiceName))
	return err == nil && preview.IsService(b)
}
