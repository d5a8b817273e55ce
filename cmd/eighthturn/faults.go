package main

import (
	"fmt"
	"strings"

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
		return "no faults"
	case warnings == 0:
		return plural(errors, "error")
	case errors == 0:
		return plural(warnings, "warning")
	}
	return plural(errors, "error") + " and " + plural(warnings, "warning")
}

// design reads a layout and shows its faults. Where they stop what was asked for, the error says what does not happen.
func (c *console) design(file string, strict bool, not string) (*source, *layout.Design, error) {
	s, err := c.read(file)
	if err != nil {
		return nil, nil, err
	}
	d, lines, list := layout.Read(s.text)
	c.report(s, lines, list)
	if stops(list, strict) {
		return s, nil, c.stopped(s, list, not)
	}
	return s, d, nil
}
