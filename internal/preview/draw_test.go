package preview

import (
	"eighthturn/svgout"
)

// draw runs a text that names no photos through the stream.
func draw(text string, before drawing) drawing { return drawWith(nil)(text, before) }

// views are the names of all views, in the order of their buttons.
func views() []string { return svgout.Views() }
