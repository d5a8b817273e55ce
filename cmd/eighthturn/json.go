package main

import (
	"encoding/json"

	"eighthturn/internal/render"
)

// prettyJSON is a value as JSON that steers no terminal.
func prettyJSON(value any) string {
	b, err := json.MarshalIndent(value, "", "  ")
	if err != nil {
		panic(err) // nothing that is shown can fail to be written
	}
	return render.Harmless(string(b)) + "\n"
}
