package preview

import (
	"net/http"
	"strconv"
	"strings"
	"testing"
	"time"

	"eighthturn/internal/quilttest/judges"
)

// slowToPlan is a layout that is planned for as long as there are steps for it: each of many borders asks for strips of a width of its own.
func slowToPlan() string {
	var b strings.Builder
	b.WriteString("side 2\nfabric f0 #208040\nfabric f1 #408040\nfabric f2 #608040\nfabric f3 #808040\nblock A plain piece f0\ngrid\n A A\n A A\n")
	for n := range 90 {
		b.WriteString("border 0." + strconv.Itoa(31+n%60) + " f" + strconv.Itoa(n%4) + " corners f" + strconv.Itoa((n+1)%4) + "\n")
	}
	return b.String()
}

// everything is every address of what is worked out of a picture.
func everything() []string {
	list := []string{"squint.png", "picture.svg"}
	for tab := range tabSources() {
		list = append(list, "report?tab="+strconv.Itoa(tab))
	}
	for _, f := range savedFiles() {
		list = append(list, f.path[1:])
	}
	return list
}

// gotAll asks for everything at once and gives the status of each by its address.
func gotAll(s *site) map[string]int {
	type got struct {
		path   string
		status int
	}
	answers := make(chan got)
	for _, path := range everything() {
		go func() {
			address, q, _ := strings.Cut(path, "?")
			answer := ask(s, "/"+address, query(q))
			for answer.StatusCode == http.StatusServiceUnavailable {
				time.Sleep(20 * time.Millisecond) // too much is made at once
				answer = ask(s, "/"+address, query(q))
			}
			answers <- got{path, answer.StatusCode}
		}()
	}
	all := map[string]int{}
	for range everything() {
		a := <-answers
		all[a.path] = a.status
	}
	return all
}

// TestGoodSaveAfterASlowOne: while everything is asked of a layout that is slow to plan, a good one is shown; all that is worked out of it
// is there, and the slow plan was given up by all that asked for it.
func TestGoodSaveAfterASlowOne(t *testing.T) {
	s := aSite(t, Options{})
	for round := range judges.Of(1, 3) {
		publishing(t, s, slowToPlan())
		slow := s.studies.now
		before := make(chan map[string]int, 1)
		go func() { before <- gotAll(s) }()
		time.Sleep(time.Duration(50+90*round) * time.Millisecond) // so that it is in the midst of it
		publishing(t, s, strings.Replace(seafarers, "strip   4", "strip   "+strconv.Itoa(4+round%3), 1))
		for path, status := range gotAll(s) {
			if status != http.StatusOK {
				t.Errorf("round %d: %s: %d", round, path, status)
			}
		}
		<-before
		if slow.plans.Cut() {
			t.Errorf("round %d: the slow layout was planned to the end", round)
		}
	}
}
