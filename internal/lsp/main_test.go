package lsp

import (
	"os"
	"testing"
)

// TestMain is the server itself where Neovim starts the test as one.
func TestMain(m *testing.M) {
	if os.Getenv("EIGHTHTURN_SERVES") == "" {
		os.Exit(m.Run())
	}
	if Serve(os.Stdin, os.Stdout, "test") != nil {
		os.Exit(1)
	}
}
