package main

import (
	"bytes"

	"eighthturn/internal/plan/sewing"
)

// drawSteps draws the picture of every step into a folder, and says how many there are.
func (c *console) drawSteps(folder string, plan *sewing.Plan, force bool) (int, error) {
	var list []namedFigure
	for _, p := range plan.Pictures() {
		list = append(list, namedFigure{p.Name + pictureEnding, p.Figure})
	}
	d := pictureFolder{path: folder, option: "--" + picturesOption, what: "picture", force: force, ours: isStep}
	return len(list), d.draw(c, list, plan.Units)
}

// isStep says whether a file is a picture of a step of ours, by its title.
func isStep(head []byte) bool { return bytes.Contains(head, []byte("<title>"+sewing.PictureTitle)) }
