package report

import (
	"errors"
	"fmt"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/audition"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/motifs"
	"eighthturn/internal/plan/orders"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/samples"
)

// FuzzOffers asks of any text that the language accepts what else could be made of it: centers of its prints, quilts of its leftovers, the
// nearest layout that uses its strip sets both ways round, and other fabrics in place of one. Each report can be written in every form with
// the same lengths, each refusal is a sentence, and what is offered as a layout is one without errors.
func FuzzOffers(f *testing.F) {
	for i, text := range judges.Some(invent.Printed(), 2) {
		f.Add(text, uint8(i), "rust")
	}
	for _, s := range judges.Some(samples.All(), 2) {
		f.Add(s.Text, uint8(2), "#7a2f16")
	}
	for seed := range uint64(judges.Of(2, 12)) {
		f.Add(invent.Layout(seed), uint8(seed), "reversed x")
	}
	f.Fuzz(func(t *testing.T, text string, choice uint8, other string) {
		if len(text) > 4000 || len(other) > 100 {
			return
		}
		reading := layout.Inspect(text, invent.Photo)
		if reading.Design == nil || reading.Design.Columns*reading.Design.Rows > 60 {
			return
		}
		top := quilt.Lay(reading.Design)
		if len(top.Patches) > 600 {
			return // as many as a test has time for
		}
		o := &offers{text, top, choice, nil}
		o.motifs()
		o.leftovers()
		o.orders()
		o.audition(&reading, other)
		for _, wrong := range o.wrong {
			t.Errorf("%s\n%s", wrong, text)
		}
	})
}

// offers is what is offered for a layout, and what is wrong with it.
type offers struct {
	text   string
	top    *quilt.Top
	choice uint8
	wrong  []string
}

func (o *offers) add(what string, wrong ...string) {
	for _, w := range wrong {
		o.wrong = append(o.wrong, what+": "+w)
	}
}

// written looks at a report and its plan.
func (o *offers) written(what string, d document.Document, plan any) {
	o.add(what, append(wrongForms(d), wrongJSON(plan, o.top.Units)...)...)
}

// fabric is one of the top's.
func (o *offers) fabric() int { return int(o.choice) % len(o.top.Fabrics) }

func (o *offers) motifs() {
	for fabric := range o.top.Fabrics[:min(3, len(o.top.Fabrics))] {
		p, err := motifs.Build(o.top, fabric, motifs.Options{Count: int(o.choice % 7), Mirrored: o.choice&1 > 0})
		var unfit *motifs.Unfit
		switch {
		case errors.As(err, &unfit):
			if why, hint := NoMotifs("rose", unfit); len(why) < 10 || len(hint) < 10 {
				o.add("motifs", fmt.Sprintf("refused with %q, %q", why, hint))
			}
		case err != nil:
			o.add("motifs", err.Error())
		default:
			o.written("motifs", Motifs("a.quilt", o.top.Units, p), p)
		}
	}
}

func (o *offers) leftovers() {
	p := &Plans{Top: o.top, Cutting: cutting.Options{LeastCloth: o.choice&2 > 0}}
	if len(p.Cuts().Faults) > 0 {
		return // the command refuses it
	}
	o.written("leftovers", Leftovers(p), p.Leftovers())
	for n := range p.Leftovers().Proposals {
		text := LeftoversLayout(p.Leftovers(), n+1)
		if d, _, faults := layout.ReadWith(text, invent.Photo); d == nil {
			o.add("leftovers", fmt.Sprintf("number %d has errors: %v\n%s\nof", n+1, faults, text))
		}
	}
}

func (o *offers) orders() {
	p := &Plans{Top: o.top, Nearby: orders.Nearby(o.text, invent.Photo, o.top)}
	if len(p.Cuts().Faults) > 0 {
		return
	}
	for _, b := range p.bothWays() {
		if len(b.Lines) == 0 || b.Sets[1] >= b.Sets[0] {
			o.add("both ways", fmt.Sprintf("%+v saves nothing", b))
		}
	}
	o.written("cuts", Cutting(p), p.Cuts())
}

func (o *offers) audition(reading *layout.Reading, other string) {
	role, alternatives := o.top.Fabrics[o.fabric()].Name, []string{other, o.top.Fabrics[(o.fabric()+1)%len(o.top.Fabrics)].Name}
	if o.choice&4 > 0 {
		role = []string{"wedges", "kites", "border", "binding", "deal", "webs", other}[int(o.choice>>3)%7]
	}
	trials, err := reading.Auditions(layout.AuditionOf{Role: role}, alternatives)
	var unfit *layout.Unfit
	if errors.As(err, &unfit) && len(unfit.Message) > 10 {
		return
	}
	if err != nil {
		o.add("audition", err.Error())
		return
	}
	read := func(text string) (*layout.Design, []layout.Fault) {
		design, _, faults := layout.ReadWith(text, invent.Photo)
		return design, faults
	}
	plan, err := audition.Build(o.top, trials, read, audition.Options{Sorted: o.choice&64 > 0})
	var wrong *audition.Wrong
	switch {
	case errors.As(err, &wrong):
		if len(wrong.Fault.Message) < 10 {
			o.add("audition", fmt.Sprintf("refused with %q", wrong.Fault.Message))
		}
	case err != nil:
		o.add("audition", err.Error())
	default:
		plan.Role = role
		o.written("audition", Audition("a.quilt", plan), plan)
	}
}
