package main

import (
	"encoding/json"

	"eighthturn/internal/measure"
	"eighthturn/internal/render"
)

// jsonHead is what stands first in the JSON of a report that a package writes.
type jsonHead struct {
	Format int    `json:"format"`
	File   string `json:"file"`
	Units  string `json:"units"`
}

// headed puts a head before the names of a report, {"...": ...}, indented, and makes it steer no terminal.
func headed(format int, file string, units measure.System, report []byte) string {
	head, err := json.MarshalIndent(jsonHead{format, file, units.String()}, "", "  ")
	if err != nil {
		panic(err) // nothing in it can fail to be written
	}
	return render.Harmless(string(head[:len(head)-2])+","+string(report[1:])) + "\n"
}

// prettyJSON is a value as JSON that steers no terminal.
func prettyJSON(value any) string {
	b, err := json.MarshalIndent(value, "", "  ")
	if err != nil {
		panic(err) // nothing that is shown can fail to be written
	}
	return render.Harmless(string(b)) + "\n"
}

// jsonLength is a length in the one dialect.
type jsonLength = measure.JSONLength
