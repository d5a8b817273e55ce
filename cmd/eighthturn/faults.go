package main

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"eighthturn/internal/files"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// strictOption makes warnings count as faults.
const strictOption = "strict"

// report shows the faults of a layout on standard error.
func (c *console) report(s *source, lines *layout.Source, list []layout.Fault) {
	var b strings.Builder
	_ = layout.Report(&b, s.name, lines, list) // writing to memory cannot fail
	c.complain(s.name, b.String())
}

// stops says whether the faults of a layout stop what was asked for.
func stops(list []layout.Fault, strict bool) bool {
	errors, warnings := layout.Count(list)
	return errors > 0 || strict && warnings > 0
}

// stopped reports what does not happen because of a layout's faults.
func (c *console) stopped(s *source, list []layout.Fault, what string) error {
	c.complain("", fmt.Sprintf("%s in %s; %s\n", counted(list), layout.Visible(s.name), what))
	return &reported{faulty}
}

// counted says how many faults there are of each severity.
func counted(list []layout.Fault) string {
	errors, warnings := layout.Count(list)
	switch {
	case errors == 0 && warnings == 0:
		return "no errors"
	case warnings == 0:
		return measure.Count(errors, "error")
	case errors == 0:
		return measure.Count(warnings, "warning")
	}
	return measure.Count(errors, "error") + " and " + measure.Count(warnings, "warning")
}

// laidOut is a layout that was read and laid out; design and top are nil where errors stop that.
type laidOut struct {
	design *layout.Design
	top    *quilt.Top
	lines  *layout.Source
	faults []layout.Fault // what the text shows and what only the laid-out top does, by their places
}

// layOut reads and lays out a layout. The photos that it names lie beside it, those of a layout from standard input in
// the folder where the program runs.
func layOut(s *source) laidOut {
	var l laidOut
	l.design, l.lines, l.faults = layout.ReadWith(s.text, files.Beside(s.path).Cloth)
	if l.design != nil {
		s.keepPhotos(l.design)
		l.top = quilt.Lay(l.design)
		l.faults = append(l.faults, l.top.Warnings...)
		slices.SortStableFunc(l.faults, func(a, b layout.Fault) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
	}
	return l
}

// keepPhotos notes the files of a layout's photos.
func (s *source) keepPhotos(d *layout.Design) {
	for i := range d.Fabrics {
		if p := d.Fabrics[i].Photo; p != nil {
			if info, err := os.Stat(filepath.Join(filepath.Dir(s.path), filepath.FromSlash(p.File))); err == nil {
				s.madeFrom = append(s.madeFrom, info)
			}
		}
	}
}

// top reads a layout, shows its faults and lays it out. Where they stop what was asked for, the error says what does not
// happen.
func (c *console) top(file string, strict bool, not string) (*source, *quilt.Top, error) {
	s, err := c.read(file)
	if err != nil {
		return nil, nil, err
	}
	l := layOut(s)
	c.report(s, l.lines, l.faults)
	if stops(l.faults, strict) {
		return s, nil, c.stopped(s, l.faults, not)
	}
	return s, l.top, nil
}
