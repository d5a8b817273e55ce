package main

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/plan/summary"
	"eighthturn/internal/plan/supplies"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/samples"
)

// A report opens with what its reader came for: the answer, then the detail, then the why.

// aScreen is how many lines of a terminal the answer for a lap quilt may take, aLine how many columns its lines.
const aScreen, aLine = 40, 100

// ofTheWhy are words of how something was worked out, which are for those who ask.
var ofTheWhy = regexp.MustCompile(`(?i)\b\d+ layers\b|/100\b|\bMunsell\b|\bseparation\b|\bsame side lighter\b|\bproved\b|\bnone takes\b|\bof plans that\b|\bnone with as little\b|\bdegrees off the grain\b|\bthe rule of thumb\b`)

// decimals are lengths as exact as programs write them, where lengths are read off a ruler in inches.
var decimals = regexp.MustCompile(`\d\.\d\d`)

// deepTooSoon is what stands before what it explains: a section of the answer behind one of the detail, or of either behind
// the why; what is said too early of the why; and an answer longer than a screen.
func deepTooSoon(d document.Document, most int) []string {
	var wrong []string
	depth := document.Answer
	for _, s := range d.Sections {
		if s.Depth < depth {
			wrong = append(wrong, fmt.Sprintf("the section %q stands behind what is deeper", s.ID))
		}
		depth = max(depth, s.Depth)
	}
	answer := render.Text(d.Down(document.Answer))
	if n := strings.Count(answer, "\n"); n > most || n < 3 {
		wrong = append(wrong, fmt.Sprintf("the answer has %d lines", n))
	}
	for line := range strings.Lines(answer) {
		if n := render.Columns(strings.TrimSuffix(line, "\n")); n > aLine {
			wrong = append(wrong, fmt.Sprintf("a line of the answer has %d columns: %s", n, line))
		}
	}
	said := d.Down(document.Detail)
	said.Sections = slices.DeleteFunc(slices.Clone(said.Sections), func(s document.Section) bool { return s.ID == report.BetweenMarksID }) // cut as exactly as one can
	text := render.Text(said)
	found := ofTheWhy.FindAllString(text, -1)
	if !strings.Contains(text, " cm") {
		found = append(found, decimals.FindAllString(text, -1)...)
	}
	for _, w := range found {
		wrong = append(wrong, fmt.Sprintf("%q is of the why", w))
	}
	return wrong
}

// answering are the reports of a layout that open with an answer.
func answering(t *testing.T, name, text string) map[string]document.Document {
	t.Helper()
	design, _, list := layout.Read(text)
	if design == nil {
		t.Fatalf("%s: %v", name, list)
	}
	top := quilt.Lay(design)
	p := &report.Plans{Top: top, Name: name}
	docs := map[string]document.Document{"check": report.Check(name+": no errors", summary.Build(design, top))}
	for _, r := range report.Reports() {
		docs[r.Name] = r.Make(p)
	}
	bed, _ := supplies.FindBed("twin")
	if made, err := fit.Fit(text, fit.Options{Wanted: fit.ForBed(bed)}); err == nil {
		docs["fit"] = report.Fit(name, made, 1)
	}
	return docs
}

// TestAnswerFirst: every report of every sample, and of invented layouts, opens with its answer, in a screen where the quilt
// is no larger than for a lap; nothing of the why is said before it is asked for.
func TestAnswerFirst(t *testing.T) {
	t.Parallel()
	for _, s := range judges.Some(samples.All(), 5) {
		for name, d := range answering(t, s.Name, s.Text) {
			for _, wrong := range deepTooSoon(d, aScreen) {
				t.Errorf("%s of %s: %s", name, s.Name, wrong)
			}
		}
	}
	for seed := range uint64(judges.Of(2, 6)) {
		text := invent.Layout(seed)
		for name, d := range answering(t, fmt.Sprint("invented ", seed), text) {
			for _, wrong := range deepTooSoon(d, 3*aScreen) { // they have as many fabrics and figures as chance gives them
				t.Errorf("%s of invented %d: %s", name, seed, wrong)
			}
		}
	}
}

// TestAnswerFirstCatches: what is out of order, what is said too early, and an answer that is too long or missing.
func TestAnswerFirstCatches(t *testing.T) {
	docs := answering(t, "small", samples.All()[0].Text)
	for name, d := range docs {
		if wrong := deepTooSoon(d, aScreen); len(wrong) > 0 {
			t.Fatalf("%s: %q", name, wrong)
		}
		last := len(d.Sections) - 1
		turned := d
		turned.Sections = slices.Clone(d.Sections)
		turned.Sections[0], turned.Sections[last] = turned.Sections[last], turned.Sections[0]
		early := d
		early.Sections = append(slices.Clone(d.Sections[:1]), document.Section{ID: "early", Depth: d.Sections[0].Depth, Blocks: []document.Block{
			document.Paragraph{Text: document.Plain("No more than 6 layers, 5.858 in.")}}})
		for what, broken := range map[string]document.Document{"turned round": turned, "told early": early} {
			if len(deepTooSoon(broken, aScreen)) == 0 {
				t.Errorf("%s, %s: nothing is found", name, what)
			}
		}
		if len(deepTooSoon(d, 4)) == 0 {
			t.Errorf("%s: an answer longer than 4 lines is not found", name)
		}
	}
}
