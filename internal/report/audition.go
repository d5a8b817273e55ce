package report

import (
	"fmt"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/audition"
)

// Audition is alternatives for one place of a layout, one after the other: whether each reads, and what to write for it.
func Audition(name string, p *audition.Plan) document.Document {
	d := document.Document{Title: name + ": " + AuditionTitle(p)}
	for i := range p.Alternatives {
		a := &p.Alternatives[i]
		s := section(fmt.Sprintf("alternative-%d", a.Number), AuditionName(a), document.Answer)
		s.Blocks = append(s.Blocks, paragraph(AuditionVerdict(a)))
		s.Blocks = append(s.Blocks, paragraph("Write:"), document.Source{Lines: trimmed(a.Lines)})
		d.Sections = append(d.Sections, s)
	}
	return d
}

// trimmed are lines of a layout with single blanks, as they are read in a sentence.
func trimmed(lines []string) (list []string) {
	for _, line := range lines {
		list = append(list, strings.Join(strings.Fields(line), " "))
	}
	return list
}

// AuditionTitle says what is tried where.
func AuditionTitle(p *audition.Plan) string {
	return "audition for " + AuditionOf(p.Role, p.Of)
}

// AuditionOf names what an audition is of.
func AuditionOf(role, of string) string {
	if of == "" {
		return role
	}
	return role + " of " + of
}

// AuditionHeading is the title on a picture.
func AuditionHeading(p *audition.Plan) string { return capital(AuditionTitle(p)) }

// AuditionName heads an alternative: its number as asked for, and its name.
func AuditionName(a *audition.Alternative) string { return fmt.Sprintf("%d. %s", a.Number, a.Name) }

// AuditionVerdict is what the study says of an alternative: its headline, as in a study of its own.
func AuditionVerdict(a *audition.Alternative) string {
	v := valuesOf(&Plans{Top: a.Top}, a.Study)
	if a.Bound {
		v.borders, v.bound = v.borders-1, true
	}
	return v.answer() + v.losses(v.toTell())
}

// AuditionSays are what stands below the pictures of an alternative: its verdict, and what to write.
func AuditionSays(a *audition.Alternative) []string {
	return append([]string{AuditionVerdict(a)}, trimmed(a.Lines)...)
}
