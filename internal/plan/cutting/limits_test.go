package cutting

import (
	"strings"
	"testing"

	"eighthturn/internal/measure"
)

// TestLimitText: what shops sell by is rounded to the nearest tenth, and said as about so much where that is not all of it.
func TestLimitText(t *testing.T) {
	for _, c := range []struct {
		nm    measure.NM
		units measure.System
		want  string
	}{
		{1000 * measure.Inch, measure.Inches, "1000 in (27.78 yd)"}, {MaxExtra, measure.Inches, "100 in (2.78 yd)"}, {500 * measure.Yard, measure.Inches, "18000 in (500 yd)"},
		{9 * measure.Yard / 2, measure.Inches, "162 in (4 1/2 yd)"}, {MaxStep, measure.Inches, "2 in"}, {MaxExtra, measure.Centimetres, "254 cm (2.54 m)"}, {3 * measure.Metre, measure.Centimetres, "300 cm (3 m)"},
	} {
		if got := limitText(c.nm, c.units); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestLimits: every option may be all from nothing to its limit, and nothing beyond; the error says which one, how much it is and what
// would be right.
func TestLimits(t *testing.T) {
	const most, step = "100 in (2.78 yd)", "2 in"
	for _, c := range []struct {
		name, limit string
		most        measure.NM
		set         func(o *Options) *measure.NM
	}{
		{"the squaring up", most, MaxExtra, func(o *Options) *measure.NM { return &o.SquareUp }},
		{"the spare length", most, MaxExtra, func(o *Options) *measure.NM { return &o.Spare }},
		{"the binding's allowance", most, MaxExtra, func(o *Options) *measure.NM { return &o.BindingAllowance }},
		{"the backing's overhang", most, MaxExtra, func(o *Options) *measure.NM { return &o.BackingOverhang }},
		{"the batting's overhang", most, MaxExtra, func(o *Options) *measure.NM { return &o.BattingOverhang }},
		{"the step of trimmed pieces", step, MaxStep, func(o *Options) *measure.NM { return &o.Steps.Trimmed }},
		{"what is left to trim", step, MaxStep, func(o *Options) *measure.NM { return &o.Steps.Spare }},
		{"the step of exact pieces", step, MaxStep, func(o *Options) *measure.NM { return &o.Steps.Exact }},
		{"a ruler's marks", step, MaxStep, func(o *Options) *measure.NM { return &o.Steps.Mark }},
	} {
		for value, said := range map[measure.NM]string{0: "", c.most: "", -measure.Inch: "-1 in", c.most + measure.Inch: measure.Inches.Nearest(c.most + measure.Inch), -1: "about 0 in", c.most + 1: ""} {
			var o Options
			*c.set(&o) = value
			err := o.Check(measure.Inches)
			if within := value >= 0 && value <= c.most; within != (err == nil) {
				t.Errorf("%s of %d: %v", c.name, value, err)
			}
			if err != nil && (value%measure.Inch == 0) && (!strings.HasPrefix(err.Error(), c.name+" is "+said) || !strings.HasSuffix(err.Error(), "expected 0 to "+c.limit)) {
				t.Errorf("%s of %d: %v", c.name, value, err)
			}
		}
	}
	for copies, want := range map[int]string{0: "", 1: "", MaxCopies: "", -1: "-1 copies are asked for, expected 1 to 1000", MaxCopies + 1: "1001 copies are asked for, expected 1 to 1000"} {
		said := ""
		if err := (&Options{Copies: copies}).Check(measure.Inches); err != nil {
			said = err.Error()
		}
		if said != want {
			t.Errorf("%d copies: %q, want %q", copies, said, want)
		}
	}
}
