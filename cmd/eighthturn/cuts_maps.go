package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"eighthturn/cutting"
	"eighthturn/figure"
	"eighthturn/outfile"
)

// drawMaps draws every map of a plan into a folder, and says how many there are. The folder is made where it is not there.
func (c *console) drawMaps(folder string, plan *cutting.Plan, force bool) (int, error) {
	if err := os.Mkdir(folder, 0o777); err != nil && !os.IsExist(err) {
		return 0, &problem{faulty, folder, "this folder cannot be made: " + systemText(err), "name one in a folder that is there"}
	}
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return 0, &problem{faulty, folder, "this is a file, not a folder", "name another folder behind --maps"}
	}
	maps := plan.Maps()
	for i, m := range maps {
		out := target{path: filepath.Join(folder, mapName(i, m.Name)), what: "map", example: "map" + pictureEnding, options: outfile.Options{Force: force, Ours: isMap}}
		err := c.write(out, func(w io.Writer) error { return figure.SVG(w, m.Figure, figure.Options{Units: plan.Units}) })
		if err != nil {
			return 0, err
		}
	}
	return len(maps), nil
}

// mapName is a map's file: its number, so that maps stand in the order to cut, and the letters and digits of its name.
func mapName(i int, name string) string {
	name = strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) || r == '-' || r == '_' {
			return r
		}
		return '-'
	}, name)
	return fmt.Sprintf("%02d-%s%s", i+1, name, pictureEnding)
}

// isMap says whether a file is a map of ours, by its title.
func isMap(head []byte) bool { return bytes.Contains(head, []byte("<title>"+cutting.MapTitle)) }
