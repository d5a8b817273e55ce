package main

import (
	"bufio"
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"eighthturn/internal/render"
	"eighthturn/layout"
	"eighthturn/samples/starters"
)

// firstLayout is the layout that a double-click on the program begins with.
const firstLayout = "first-quilt" + layoutEnding

// opened does what one wants who double-clicked the program or dropped a layout on it: the window closes when the program ends, so it
// says what to do, waits, and follows a layout. home is the folder for the first layout.
func (c *console) opened(args []string, home string, run func([]string, *console) int) int {
	keys := bufio.NewReader(c.in)
	path := filepath.Join(home, firstLayout)
	switch {
	case len(args) == 1 && looksLikeLayout(args[0]):
		path = args[0]
	case len(args) > 0:
		return c.closing(keys, run(args, c))
	default:
		c.complain("", welcomeText(path))
		if _, err := keys.ReadString('\n'); err != nil {
			return done // the window was closed
		}
		if err := c.beginFirst(path); err != nil {
			return c.closing(keys, c.conclude(err))
		}
	}
	return c.closing(keys, run([]string{"preview", path}, c))
}

func welcomeText(path string) string {
	return render.Wrapped("eighthturn draws quilts from a short text, the layout, and works out cutting, sewing and the printed pattern.", "") + "\n" +
		render.Wrapped("Press Enter, and a first quilt opens in your browser. Its layout is the file below: change it in a text editor, save it, "+
			"and the picture follows. Keep this window open while you work; close it to stop.", "") + "\n" +
		"  " + layout.Visible(path) + "\n\n" +
		render.Wrapped("For everything else, open a terminal and type: eighthturn --help", "") + "\n"
}

// beginFirst writes the first layout where none stands yet.
func (c *console) beginFirst(path string) error {
	if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return c.write(target{path: path, what: "layout", example: firstLayout}, writer(starters.All()[0].Text))
}

// closing keeps the window open behind a problem until it was read.
func (c *console) closing(keys *bufio.Reader, code int) int {
	if code != done {
		c.complain("", "\nPress Enter to close this window.\n")
		_, _ = keys.ReadString('\n') // no key is a closed window
	}
	return code
}

// openedByFinder says whether macOS began the program at a double-click: its terminal then types the program's whole path into a new
// shell, which stands in the home folder. One who types all that is welcomed too.
func openedByFinder(program, folder, home string, variable func(string) string) bool {
	return filepath.IsAbs(program) && folder == home && variable("SHLVL") == "1" && variable("TERM_PROGRAM") == "Apple_Terminal"
}
