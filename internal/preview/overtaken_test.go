package preview

import (
	"context"
	"net/http"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"eighthturn/internal/stop"
)

// endless is work that ends by its sign alone, and says when it begins and ends.
func endless(begun, ended chan<- bool) work {
	return func(_ *study, sign *stop.Sign) ([]byte, error) {
		begun <- true
		defer func() { ended <- true }()
		for {
			sign.Step(1)
		}
	}
}

// withEndless is a site with an address at which work has no end.
func withEndless(t *testing.T) (s *site, begun, ended chan bool) {
	s = aSite(t, Options{})
	begun, ended = make(chan bool, 8), make(chan bool, 8)
	s.routes["/endless"] = route{"/endless", "text/plain; charset=utf-8", func(s *site, w http.ResponseWriter, r *http.Request) {
		s.serveOf(w, r, endless(begun, ended))
	}}
	return s, begun, ended
}

// isTrue waits for something to happen.
func isTrue(t *testing.T, what string, c <-chan bool) {
	t.Helper()
	select {
	case <-c:
	case <-time.After(5 * time.Second):
		t.Fatalf("after 5 seconds it has not happened: %s", what)
	}
}

// TestOvertakenWorkEnds: work for a page ends when another top is shown, and the page is told; a comment more leaves it at work. It ends
// too when the page goes.
func TestOvertakenWorkEnds(t *testing.T) {
	t.Parallel()
	s, begun, ended := withEndless(t)
	publishing(t, s, seafarers)
	answer := make(chan int)
	go func() { answer <- ask(s, "/endless", query("picture=2")).StatusCode }()
	isTrue(t, "the work begins", begun)
	ask(s, "/report", query("tab=1")) // so that its plans are known to name no lines
	publishing(t, s, strings.Replace(seafarers, "#c04040", "#f0c0c0", 1))
	isTrue(t, "the work ends with the picture", ended)
	if got := <-answer; got != http.StatusConflict {
		t.Errorf("the page is told %d", got)
	}
	ctx, leave := context.WithCancel(t.Context())
	go func() {
		answer <- ask(s, "/endless", func(r *http.Request) { *r = *r.WithContext(ctx) }).StatusCode
	}()
	isTrue(t, "the work begins", begun)
	leave()
	isTrue(t, "the work ends with the request", ended)
	<-answer
}

// TestAnyPictureWillDo: a file that is overtaken while it is made is made of the newer picture.
func TestAnyPictureWillDo(t *testing.T) {
	t.Parallel()
	s, begun, ended := withEndless(t)
	publishing(t, s, seafarers)
	var tries atomic.Int32
	s.routes["/file"] = route{"/file", "text/plain; charset=utf-8", func(s *site, w http.ResponseWriter, r *http.Request) {
		s.serveFile(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
			if tries.Add(1) == 1 {
				return endless(begun, ended)(of, sign)
			}
			return []byte(of.plans.Top.Title), nil
		})
	}}
	answer := make(chan string)
	go func() { answer <- body(ask(s, "/file", nil)) }()
	isTrue(t, "the work begins", begun)
	publishing(t, s, titled("the newer one"))
	if got := <-answer; got != "the newer one" {
		t.Errorf("got %q", got)
	}
}

// TestSlowReportBlocksNoOther: while one report takes for ever, and one who asks for it too waits, all others are answered; and a save is published.
func TestSlowReportBlocksNoOther(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	publishing(t, s, seafarers)
	of := s.studies.now
	begun := make(chan bool, 1)
	const slow = 0
	go func() {
		_ = stop.Do(of, func(sign *stop.Sign) {
			of.tabs[slow].Get(sign, func() *cachedTab {
				begun <- true
				for {
					sign.Step(1)
				}
			})
		})
	}()
	isTrue(t, "the slow report begins", begun)
	answer := make(chan int)
	go func() { answer <- ask(s, "/report", query("picture=2")).StatusCode }()
	for _, path := range []string{"/report?tab=1", "/report?tab=2", "/report?tab=5", "/squint.png", "/save/cutting.csv", "/picture.svg", "/diagram?tab=1&number=0"} {
		path, q, _ := strings.Cut(path, "?")
		if r := ask(s, path, query(q)); r.StatusCode != http.StatusOK {
			t.Errorf("%s: %d", path, r.StatusCode)
		}
	}
	publishing(t, s, titled("the next"))
	if got := <-answer; got != http.StatusConflict {
		t.Errorf("one who waited for the slow report is told %d", got)
	}
	if r := ask(s, "/report", nil); r.StatusCode != http.StatusOK {
		t.Errorf("the same report of the next picture: %d", r.StatusCode)
	}
}

// slowly is a drawer that takes for ever over one text, unless it is told to end.
func slowly(slow string, begun chan<- bool) drawer {
	return func(ctx context.Context, text string, before drawing) (drawing, error) {
		if text == slow {
			begun <- true
			<-ctx.Done()
			return drawing{}, ctx.Err()
		}
		return draw(text, before), nil
	}
}

// TestSlowDrawingGivesWay: a layout that takes for ever to draw gives way to the next save.
func TestSlowDrawingGivesWay(t *testing.T) {
	t.Parallel()
	begun := make(chan bool, 8)
	r := start(t, lanterns, Options{draw: slowly(titled("slow"), begun)})
	r.next()
	for range 3 {
		put(t, r.file, titled("slow"))
		isTrue(t, "the slow drawing begins", begun)
		put(t, r.file, titled("good"))
		if got := r.next().titleShown(); got != "good" {
			t.Fatalf("shown %q", got)
		}
		put(t, r.file, lanterns)
		r.next()
	}
}

// TestEndsInAnyState: the preview ends within half a second in whatever state it is: at rest, while it draws, while it works for a page, with
// an open stream.
func TestEndsInAnyState(t *testing.T) {
	t.Parallel()
	const most = 500 * time.Millisecond
	for name, begin := range map[string]func(*testing.T) *running{
		"at rest": func(t *testing.T) *running {
			r := start(t, lanterns, Options{})
			r.next()
			return r
		},
		"drawing": func(t *testing.T) *running {
			begun := make(chan bool, 8)
			r := start(t, lanterns, Options{draw: slowly(lanterns, begun)})
			isTrue(t, "it draws", begun)
			return r
		},
		"drawing what heeds nothing": func(t *testing.T) *running {
			begun, never := make(chan bool, 8), make(chan bool)
			r := start(t, lanterns, Options{draw: func(context.Context, string, drawing) (drawing, error) {
				begun <- true
				<-never
				return drawing{}, nil
			}})
			isTrue(t, "it draws", begun)
			return r
		},
		"a stream and requests": func(t *testing.T) *running {
			r := start(t, seafarers, Options{})
			r.next()
			for _, path := range []string{"events", "report?tab=1", "report?tab=2", "report?tab=4", "squint.png", "save/pattern.pdf", "save/picture.png"} {
				go func() {
					if answer, err := http.Get(r.address + path); err == nil {
						_ = body(answer)
					}
				}()
			}
			time.Sleep(20 * time.Millisecond)
			return r
		},
	} {
		t.Run(name, func(t *testing.T) {
			r := begin(t)
			began := time.Now()
			must(t, r.end())
			if took := time.Since(began); took > most {
				t.Errorf("it took %v", took)
			}
		})
	}
}
