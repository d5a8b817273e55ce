package main

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"

	"eighthturn/internal/report"
)

// drawMaps draws every cutting map into a folder, and says how many there are.
func (c *console) drawMaps(folder string, plans *report.Plans, force bool) (int, error) {
	var list []namedFigure
	for i, m := range report.CuttingMaps(plans) {
		list = append(list, namedFigure{mapName(i, m.Name), m.Figure})
	}
	d := pictureFolder{path: folder, option: "--" + mapsOption, what: "map", force: force, ours: isMap}
	return len(list), d.draw(c, list, plans.Top.Units)
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
func isMap(head []byte) bool { return bytes.Contains(head, []byte("<title>"+report.CuttingMapTitle)) }
