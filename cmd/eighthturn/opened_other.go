//go:build !windows

package main

import (
	"os"
	"runtime"
)

// doubleClicked says whether the program was begun from the desktop and not in a terminal.
func doubleClicked() bool {
	if runtime.GOOS != "darwin" {
		return false
	}
	folder, err := os.Getwd()
	home, none := os.UserHomeDir()
	return err == nil && none == nil && openedByFinder(os.Args[0], folder, home, os.Getenv)
}
