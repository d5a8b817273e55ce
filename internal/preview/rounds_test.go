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
func gotAll(address string) map[string]int {
	type got struct {
		path   string
		status int
	}
	answers := make(chan got)
	for _, path := range everything() {
		go func() {
			answer, err := http.Get(address + path)
			for ; err == nil && answer.StatusCode == http.StatusServiceUnavailable; answer, err = http.Get(address + path) {
				_ = body(answer)
				time.Sleep(20 * time.Millisecond) // too much is made at once
			}
			if err != nil {
				answers <- got{path, 0}
				return
			}
			_ = body(answer)
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

// TestGoodSaveAfterASlowOne: while everything is asked of a layout that is slow to plan, a good one is saved; its picture and all that is worked
// out of it are there within two seconds. A busy machine is given three times as long.
func TestGoodSaveAfterASlowOne(t *testing.T) {
	r := start(t, seafarers, Options{})
	r.next()
	worst := time.Duration(0)
	for round := range judges.Of(1, 3) {
		put(t, r.file, slowToPlan())
		r.next()
		before := make(chan map[string]int, 1)
		go func() { before <- gotAll(r.address) }()
		time.Sleep(time.Duration(50+90*round) * time.Millisecond)
		began := time.Now()
		put(t, r.file, strings.Replace(seafarers, "strip   4", "strip   "+strconv.Itoa(4+round%3), 1))
		r.next()
		for path, status := range gotAll(r.address) {
			if status != http.StatusOK {
				t.Errorf("round %d: %s: %d", round, path, status)
			}
		}
		took := time.Since(began)
		worst = max(worst, took)
		<-before
	}
	t.Logf("the slowest took %v", worst)
	if worst > 6*time.Second {
		t.Errorf("it took %v", worst)
	}
}
