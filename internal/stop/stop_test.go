package stop

import (
	"context"
	"errors"
	"io"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// endless is work that ends by its sign alone.
func endless(s *Sign) {
	for {
		s.Step(1)
	}
}

// Work ends when its context does, whether it had begun or not, and the error is the context's.
func TestWorkEndsWithItsContext(t *testing.T) {
	ctx, end := context.WithCancel(t.Context())
	time.AfterFunc(10*time.Millisecond, end)
	began := time.Now()
	for range 2 {
		if err := Do(ctx, endless); !errors.Is(err, context.Canceled) {
			t.Errorf("got %v", err)
		}
	}
	if took := time.Since(began); took > 2*time.Second {
		t.Errorf("it took %v", took)
	}
	for name, work := range map[string]func(*Sign){
		"writing": func(s *Sign) {
			for {
				_, _ = io.WriteString(s.Writer(io.Discard), "a line\n")
			}
		},
		"work within work": func(s *Sign) { _ = Do(context.Background(), func(*Sign) { endless(s) }) },
	} {
		ctx, end := context.WithTimeout(t.Context(), 10*time.Millisecond)
		if err := Do(ctx, work); !errors.Is(err, context.DeadlineExceeded) {
			t.Errorf("%s: got %v", name, err)
		}
		end()
	}
}

// Work whose context lasts is done, a look after it is in vain, and what breaks it is not hidden.
func TestWorkIsDone(t *testing.T) {
	ctx, end := context.WithCancel(t.Context())
	var left *Sign
	steps := 0
	if err := Do(ctx, func(s *Sign) {
		for left = s; steps < 3*looksEvery; steps++ {
			s.Step(1)
		}
	}); err != nil || steps != 3*looksEvery {
		t.Errorf("got %v after %d steps", err, steps)
	}
	end()
	left.Look()
	left.Step(looksEvery)
	(*Sign)(nil).Look()
	(*Sign)(nil).Step(looksEvery)
	defer func() {
		if broke := recover(); broke != "broken on purpose" {
			t.Errorf("recovered %v", broke)
		}
	}()
	_ = Do(t.Context(), func(*Sign) { panic("broken on purpose") })
}

// A value that many ask for is made once; who may wait no longer goes, and the others get it.
func TestOnceForMany(t *testing.T) {
	var o Once[string]
	var times atomic.Int32
	first, end := context.WithTimeout(t.Context(), 20*time.Millisecond)
	defer end()
	begun := make(chan struct{})
	var all sync.WaitGroup
	all.Go(func() { // it makes the value and has to end
		err := Do(first, func(s *Sign) {
			o.Get(s, func() string {
				times.Add(1)
				close(begun)
				endless(s)
				return ""
			})
		})
		if !errors.Is(err, context.DeadlineExceeded) {
			t.Errorf("got %v", err)
		}
	})
	<-begun
	all.Go(func() { // it waits and has to end
		soon, end := context.WithTimeout(t.Context(), time.Millisecond)
		defer end()
		if err := Do(soon, func(s *Sign) { o.Get(s, func() string { return "too early" }) }); !errors.Is(err, context.DeadlineExceeded) {
			t.Errorf("got %v", err)
		}
	})
	for range 8 {
		all.Go(func() {
			if got := o.Get(nil, func() string { times.Add(1); return "made" }); got != "made" {
				t.Errorf("got %q", got)
			}
		})
	}
	all.Wait()
	if n := times.Load(); n != 2 {
		t.Errorf("it was made %d times, wanted once after one that had to end", n)
	}
}

// Pieces of work beside one another are all done; where the context ends, or one of them breaks, so does the work that they are part of.
func TestBeside(t *testing.T) {
	for _, n := range []int{0, 1, 2, 50} {
		var done [50]atomic.Int32
		for _, s := range []*Sign{nil, {ctx: t.Context()}} {
			s.Beside(n, func(i int, s *Sign) { s.Step(1); done[i].Add(1) })
		}
		for i := range done {
			want := int32(0)
			if i < n {
				want = 2
			}
			if got := done[i].Load(); got != want {
				t.Errorf("of %d pieces number %d is done %d times, want %d", n, i, got, want)
			}
		}
	}
	ctx, end := context.WithTimeout(t.Context(), 10*time.Millisecond)
	defer end()
	if err := Do(ctx, func(s *Sign) { s.Beside(3, func(_ int, s *Sign) { endless(s) }) }); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("got %v", err)
	}
	defer func() {
		if broke := recover(); broke != "broken" {
			t.Errorf("got %v", broke)
		}
	}()
	_ = Do(t.Context(), func(s *Sign) {
		s.Beside(4, func(i int, _ *Sign) {
			if i == 2 {
				panic("broken")
			}
		})
	})
	t.Error("nothing broke")
}
