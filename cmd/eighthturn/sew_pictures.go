package main

import (
	"bytes"

	"eighthturn/internal/report"
)

// drawSteps draws the picture of every step into a folder, and says how many there are.
func (c *console) drawSteps(folder string, p *report.Plans, force bool) (int, error) {
	var list []namedFigure
	for _, picture := range report.SewingPictures(p) {
		list = append(list, namedFigure{picture.Name + pictureEnding, picture.Figure})
	}
	d := pictureFolder{path: folder, option: "--" + picturesOption, what: "picture", force: force, ours: isStep}
	return len(list), d.draw(c, list, p.Top.Units)
}

// isStep says whether a file is a picture of a step of ours, by its title.
func isStep(head []byte) bool {
	return bytes.Contains(head, []byte("<title>"+report.SewingPictureTitle))
}
