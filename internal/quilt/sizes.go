package quilt

import (
	"fmt"

	"eighthturn/internal/measure"
	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// Size is the top in a size that the layout names.
type Size struct {
	Name  string
	Own   bool // it is the top as it is written
	Place layout.Span
	Units measure.System

	design   *layout.Design
	colorway int              // that its top is in, by index; -1 for none
	laid     *stop.Once[*Top] // laid when it is first asked for
}

// sizesOf are the sizes of a design.
func sizesOf(d *layout.Design) (list []Size) {
	for i := range d.Sizes {
		s := &d.Sizes[i]
		list = append(list, Size{Name: s.Name, Own: s.Own, Place: s.Span, Units: s.Design.Units, design: s.Design, colorway: -1, laid: &stop.Once[*Top]{}})
	}
	return list
}

// inColorway are sizes in a colorway, by index.
func inColorway(sizes []Size, colorway int) (list []Size) {
	for _, s := range sizes {
		s.colorway, s.laid = colorway, &stop.Once[*Top]{}
		list = append(list, s)
	}
	return list
}

// Top is the top in the size, whose name its title then has. The sign ends the work; nil for never.
func (s *Size) Top(sign *stop.Sign) *Top {
	return s.laid.Get(sign, func() *Top {
		t := LayUntil(sign, s.design)
		if t.Size = s.Name; t.Title != "" {
			t.Title += ", " + s.Name
		}
		if s.colorway >= 0 {
			t = t.In(s.colorway)
		}
		return t
	})
}

// SizeNamed is a size by its name, which is compared as the language compares names. That there is none is the error.
func (t *Top) SizeNamed(name string) (*Size, error) {
	for i := range t.Sizes {
		if layout.FoldName(t.Sizes[i].Name) == layout.FoldName(name) {
			return &t.Sizes[i], nil
		}
	}
	return nil, fmt.Errorf(`this layout has no size "%s"`, layout.Visible(name))
}
