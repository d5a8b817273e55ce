package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/contrast"
	"eighthturn/internal/report"
)

// valuesOptions is what `values` was asked for.
type valuesOptions struct {
	strict bool
	reportForms
	distance, blur lengthOption
	contrast       contrastOption
	tries          tries
	in             variantOption
}

// valuesCommand studies light and dark.
func valuesCommand(c *console) *cobra.Command {
	o := &valuesOptions{distance: lengthOption{option: "distance"}, blur: lengthOption{option: "blur"}}
	cmd := &cobra.Command{
		Use:     "values FILE",
		Short:   "light and dark: does the design read?",
		GroupID: toSee,
		Long: "Shows how light each fabric is, which seams vanish because both sides are equally light, whether the " +
			"webs, stars and rings can be seen, and which other color would help. Only lightness is judged; seams " +
			"that depend on color alone are reported. Every verdict is given with its numbers.",
		Example: "eighthturn values harbor.quilt\n" +
			"eighthturn values harbor.quilt --try rust=#7a2f16\n  tries a darker rust; the layout is not changed\n" +
			"eighthturn values harbor.quilt --distance 6ft --contrast 8,20\n  from six feet, with your own thresholds",
		SuggestFor: []string{"value", "contrast", "squint", "tone", "grey"},
		Args:       oneLayout,
		RunE:       func(cmd *cobra.Command, args []string) error { return study(c, cmd, o, args[0]) },
	}
	o.in.flags(cmd)
	f := cmd.Flags()
	o.tries.flags(cmd)
	f.Var(&o.distance, "distance", "viewing distance, a `LENGTH`; 10 ft if omitted")
	f.Var(&o.blur, "blur", "how much squinting blurs, a `LENGTH` on the quilt (one standard deviation)")
	f.Var(&o.contrast, "contrast", "the `STEPS` in L* that count as soft and as clear, as in \"8 20\"")
	f.BoolVar(&o.strict, strictOption, false, "treat warnings, and webs, stars or rings that do not show, as errors: exit code 1")
	o.flags(cmd)
	return cmd
}

func study(c *console, cmd *cobra.Command, o *valuesOptions, file string) error {
	if err := o.oneForm(cmd); err != nil {
		return err
	}
	s, top, err := o.in.top(c, cmd, file, o.strict, "no study is made")
	if err != nil {
		return err
	}
	p := &report.Plans{Top: top, Name: file, Contrast: contrast.Options{Distance: o.distance.nm, Blur: o.blur.nm, Contrast: o.contrast.steps}}
	if err := p.Contrast.Check(); err != nil {
		return misuse(cmd.CommandPath(), err.Error(), "")
	}
	if p.Tries, err = o.tries.on(cmd, top); err != nil {
		return err
	}
	text := ""
	if o.json {
		err = c.printJSON(planJSON(p.Values(), formatValues, s.name, top.Units))
	} else if text, err = o.text(report.Values(p)); err == nil {
		err = c.print(text)
	}
	if err == nil && o.strict && lost(p.Values()) {
		return &reported{faulty}
	}
	return err
}

// lost says whether a figure does not read in any way.
func lost(r *contrast.Report) bool {
	for i := range r.Figures {
		if !r.Figures[i].Verdict.Shows() {
			return true
		}
	}
	return false
}

// formatValues changes when what a name in the JSON means does.
const formatValues = 3

// lengthOption is the value of an option that takes a length with its unit.
type lengthOption struct {
	option string
	text   string
	nm     measure.NM
}

func (l *lengthOption) String() string { return l.text }
func (l *lengthOption) Type() string   { return "length" }

// farthest is beyond any room.
const farthest = 1000 * measure.Yard

func (l *lengthOption) Set(text string) error {
	number, feet := text, measure.NM(1)
	for _, unit := range []string{"feet", "foot", "ft"} {
		if n, ok := strings.CutSuffix(strings.TrimSpace(number), unit); ok {
			number, feet = strings.TrimSpace(n)+" in", 12
			break
		}
	}
	wrong := &problem{message: fmt.Sprintf("after --%s: found %s, expected a length with its unit", l.option, quoted(text)), hint: fmt.Sprintf(`for example --%s "6 ft" or --%s "0.3 in"`, l.option, l.option)}
	r, err := measure.Read(number)
	if err != nil || !r.HasUnit() || strings.TrimSpace(number[r.Bytes:]) != "" {
		return wrong
	}
	length := r.In(measure.Inches).NM()
	if length <= 0 || length > farthest {
		return wrong
	}
	l.text, l.nm = text, length*feet
	return nil
}

// contrastOption is the value of an option that takes two steps in L*.
type contrastOption struct{ steps *contrast.Contrast }

func (o *contrastOption) Type() string { return "steps" }

func (o *contrastOption) String() string {
	if o.steps == nil {
		return ""
	}
	return fmt.Sprintf("%g %g", o.steps.Soft, o.steps.Clear)
}

func (o *contrastOption) Set(text string) error {
	fields := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' })
	if len(fields) == 2 {
		soft, err := strconv.ParseFloat(fields[0], 64)
		clear, err2 := strconv.ParseFloat(fields[1], 64)
		steps := &contrast.Contrast{Soft: soft, Clear: clear}
		if err == nil && err2 == nil && (&contrast.Options{Contrast: steps}).Check() == nil {
			o.steps = steps
			return nil
		}
	}
	return &problem{message: fmt.Sprintf("after --contrast: found %s, expected two steps in L*, the soft one and the larger clear one", quoted(text)), hint: `for example --contrast "8 20"`}
}
