//go:build !windows

package main

import (
	"os"
	"runtime"
)

// doubleClicked says whether the program was begun from the desktop and not in a terminal.
func doubleClicked() bool {
	folder, err := os.Getwd()
	home, none := os.UserHomeDir()
	return runtime.GOOS == "darwin" && err == nil && none == nil && openedByFinder(os.Args[0], folder, home, os.Getenv)
}
