package main

import (
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/lsp"
)

// lspCommand answers a text editor while a layout is written.
func lspCommand(c *console) *cobra.Command {
	return &cobra.Command{
		Use:     "lsp",
		Short:   "help in your text editor as you type",
		GroupID: toAmend,
		Long: "Speaks the Language Server Protocol on standard input and output, so that your text editor can help while " +
			"you write a layout: errors under the words, with hints that it applies; what a word means; words that may " +
			"stand here; colors; names followed and changed everywhere; tidying. The editor starts it, not you. " +
			"README.md says how to set up an editor.",
		Example: "eighthturn lsp\n  is what your text editor starts for files that end in .quilt\n" +
			"eighthturn check harbor.quilt\n  says the same errors without an editor",
		SuggestFor: []string{"language-server", "server", "editor"},
		Args:       nothingMore,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if isDevice(c.in) && terminal(c.err) {
				return misuse(cmd.CommandPath(), "text editors start this command", "set it as the language server for files that end in "+layoutEnding)
			}
			if lsp.Serve(c.in, c.out, strings.TrimSpace(versionText())) != nil {
				return &reported{faulty} // the editor is gone, and the protocol wants this code
			}
			return nil
		},
	}
}
