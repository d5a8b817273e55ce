package main

import (
	"eighthturn/layout"
	"eighthturn/patchwork"
	"eighthturn/svgout"
	"os"
)

func main() {
	b, _ := os.ReadFile(os.Args[1])
	d, s, f := layout.Read(string(b))
	layout.Report(os.Stderr, os.Args[1], s, f)
	if d == nil {
		os.Exit(1)
	}
	t := patchwork.Lay(d)
	o := svgout.Options{Legend: true}
	if len(os.Args) > 2 {
		switch os.Args[2] {
		case "value":
			o.View = 1
		case "line":
			o.View = 2
		case "seams":
			o.SeamLines = true
		}
	}
	svgout.Draw(os.Stdout, t, o)
}
