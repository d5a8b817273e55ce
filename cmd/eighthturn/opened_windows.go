package main

import "github.com/inconshreveable/mousetrap"

// doubleClicked says whether the program was begun from the desktop and not in a terminal.
func doubleClicked() bool { return mousetrap.StartedByExplorer() }
