package preview

import (
	"eighthturn/internal/plan/contrast"
	"eighthturn/svgout"
)

// draw runs a text that names no photos through the stream.
func draw(text string, before drawing) drawing { return drawWith(nil)(text, before) }

// views are the names of all views, in the order of their buttons.
func views() []string {
	list := append(svgout.Views(), squintView, vanishingView)
	for _, d := range contrast.Deficiencies() {
		list = append(list, d.Name)
	}
	return list
}
