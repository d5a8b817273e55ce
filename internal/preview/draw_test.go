package preview

import (
	"context"

	"eighthturn/svgout"
)

// draw runs a text that names no photos through the stream.
func draw(text string, before drawing) drawing {
	return toItsEnd(drawWith(nil, variant{}))(text, before)
}

// toItsEnd is a drawer that is never told to end.
func toItsEnd(draw drawer) func(string, drawing) drawing {
	return func(text string, before drawing) drawing {
		d, _ := draw(context.Background(), text, before)
		return d
	}
}

// heedless is a drawer that heeds no context.
func heedless(draw func(string, drawing) drawing) drawer {
	return func(_ context.Context, text string, before drawing) (drawing, error) { return draw(text, before), nil }
}

// views are the names of all views, in the order of their buttons.
func views() []string { return svgout.Views() }
