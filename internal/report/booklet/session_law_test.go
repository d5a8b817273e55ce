package booklet

import (
	"reflect"
	"strings"
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/samples"
)

// wrongSessions are the faults of lines divided over sessions: one that lasts too long, lines that are lost or stand in another
// order, a session that ends though its next line would fit.
func wrongSessions(s *Schedule, hours []hour, list [][]hour) []string {
	var wrong []string
	flat := []hour{}
	for i, lines := range list {
		length, sum := s.Sessions[min(i, len(s.Sessions)-1)], 0
		for _, h := range lines {
			sum += h.minutes
			h.what = strings.TrimSuffix(h.what, " (continued)")
			if n := len(flat) - 1; n >= 0 && flat[n].what == h.what {
				flat[n].minutes += h.minutes
			} else {
				flat = append(flat, h)
			}
		}
		if sum > length {
			wrong = append(wrong, "session "+numeral(i+1)+" lasts too long")
		}
		if i+1 < len(list) && sum+list[i+1][0].minutes <= length {
			wrong = append(wrong, "session "+numeral(i+1)+" ends too early")
		}
	}
	if len(flat) != len(hours) {
		return append(wrong, "lines are lost or doubled")
	}
	for i, h := range hours {
		if flat[i] != h {
			wrong = append(wrong, h.what+" is not as it was")
		}
	}
	return wrong
}

func TestSessionsHoldTheClass(t *testing.T) {
	divided := 0
	for _, sample := range samples.All() {
		for _, lengths := range [][]int{{120}, {30}, {180, 90}, {600}} {
			s := Schedule{Times: map[string]int{"show": 17, "welcome": 45}, Sessions: lengths}
			b := newBook(study(t, sample.Text, cutting.Options{}), Options{Schedule: s})
			hours := b.hours()
			list := s.sessions(hours)
			for _, wrong := range wrongSessions(&s, hours, list) {
				t.Errorf("%s, %v: %s", sample.Name, lengths, wrong)
			}
			if len(list) < 2 {
				continue
			}
			divided++
			for what, spoil := range map[string]func(){
				"a line that is lost":      func() { list[0] = list[0][1:] },
				"a line that lasts longer": func() { list[1][0].minutes += 600 },
			} {
				list = s.sessions(hours)
				if spoil(); len(wrongSessions(&s, hours, list)) == 0 {
					t.Errorf("%s, %v: %s goes unseen", sample.Name, lengths, what)
				}
			}
		}
	}
	if divided < 20 {
		t.Errorf("only %d classes run over several sessions", divided)
	}
}

// TestTeachersTimes: where the teacher gives all times, none is called a guess; where one is left out, that one is.
func TestTeachersTimes(t *testing.T) {
	own := map[string]int{}
	for i, name := range Activities() {
		own[name] = 11 + i
	}
	r := study(t, sampleText(t, "lanterns"), cutting.Options{Copies: 12})
	said := strings.Join(ownTexts(Handout(r, Options{Schedule: Schedule{Times: own, Sessions: []int{120}}})), "\n")
	schedule, _, _ := strings.Cut(said, "To finish the top at home")
	if _, schedule, _ = strings.Cut(schedule, "In class, sew"); strings.Contains(schedule, "about") || !strings.Contains(schedule, "11 minutes") || !strings.Contains(schedule, "The class runs over") {
		t.Errorf("own times are guesses: %s", schedule)
	}
	delete(own, "welcome")
	said = strings.Join(ownTexts(Handout(r, Options{Schedule: Schedule{Times: own}})), "\n")
	if !strings.Contains(said, "about 15 minutes") || !strings.Contains(said, "Times given as \"about\" are estimates. Work") {
		t.Error("a guess beside own times is not said to be one")
	}
}

// TestLinesThatGoOn: a line that is longer than a session begins with one, fills it and goes on, and is said to go on each time.
func TestLinesThatGoOn(t *testing.T) {
	s := Schedule{Sessions: []int{120, 90}}
	got := s.sessions([]hour{{what: "Cut", minutes: 60}, {what: "Sew", minutes: 300}, {what: "Press", minutes: 60}, {what: "Show", minutes: 10}})
	want := [][]hour{{{what: "Cut", minutes: 60}}, {{what: "Sew", minutes: 90}}, {{what: "Sew (continued)", minutes: 90}}, {{what: "Sew (continued)", minutes: 90}},
		{{what: "Sew (continued)", minutes: 30}, {what: "Press", minutes: 60}}, {{what: "Show", minutes: 10}}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("the class is divided into %+v", got)
	}
}
