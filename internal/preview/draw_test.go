package preview

import (
	"context"

	"eighthturn/svgout"
)

// draw runs a text that names no photos through the stream.
func draw(text string, before drawing) drawing {
	d, _ := drawWith(nil)(context.Background(), text, before) // which never ends
	return d
}

// heedless is a drawer that heeds no context.
func heedless(draw func(string, drawing) drawing) drawer {
	return func(_ context.Context, text string, before drawing) (drawing, error) { return draw(text, before), nil }
}

// views are the names of all views, in the order of their buttons.
func views() []string { return svgout.Views() }
