package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"

	"eighthturn/figure"
	"eighthturn/outfile"
	"eighthturn/sewing"
)

// drawSteps draws the picture of every step into a folder, and says how many there are. The folder is made where it is not
// there.
func (c *console) drawSteps(folder string, plan *sewing.Plan, force bool) (int, error) {
	if err := os.Mkdir(folder, 0o777); err != nil && !os.IsExist(err) {
		return 0, &problem{faulty, folder, "this folder cannot be made: " + systemText(err), "name one in a folder that is there"}
	}
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return 0, &problem{faulty, folder, "this is a file, not a folder", "name another folder behind --pictures"}
	}
	pictures := plan.Pictures()
	for i := range pictures {
		p := &pictures[i]
		out := target{path: filepath.Join(folder, p.Name+pictureEnding), what: "picture", example: "step" + pictureEnding, options: outfile.Options{Force: force, Ours: isStep}}
		err := c.write(out, func(w io.Writer) error { return figure.SVG(w, p.Figure, figure.Options{Units: plan.Units}) })
		if err != nil {
			return 0, err
		}
	}
	return len(pictures), nil
}

// isStep says whether a file is a picture of a step of ours, by its title.
func isStep(head []byte) bool { return bytes.Contains(head, []byte("<title>"+sewing.PictureTitle)) }
