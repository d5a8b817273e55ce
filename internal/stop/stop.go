// Package stop turns the end of a context into the end of the work that was done for it, wherever that work stands.
//
// Plans, reports and pictures are worked out by functions deep within one another, and a plan that is half made is none.
// So nobody hands an error up: whoever starts long work runs it in Do, which gives it a Sign; outer loops look at the
// sign, and once its context has ended the next look ends the work, and Do gives the context's error. The work must not
// leave anything half made where others find it, as for a panic.
package stop

import (
	"context"
	"io"
	"runtime"
	"sync"
	"sync/atomic"
)

// looksEvery is how many counted steps pass between two looks at the context: a step is a small piece of work, below a
// microsecond mostly.
const looksEvery = 4096

// Sign says whether work is to end. A nil sign never does. A sign belongs to the goroutine that runs the work.
type Sign struct {
	ctx   context.Context // nil once the work is done
	steps int             // since the last look
	total int             // steps in all
	turn  turn            // see breathe
}

// ended is what a look ends the work with.
type ended struct{ sign *Sign }

// Ended says whether what was recovered is a look that ended the work; whoever recovers from panics hands it on.
func Ended(recovered any) bool {
	_, ok := recovered.(ended)
	return ok
}

// Do does work, which ends early if the context does: then the error is the context's, else nil. What is left of the
// work after Do, such as a picture that is drawn later, looks at its sign in vain.
func Do(ctx context.Context, work func(*Sign)) (err error) {
	s := &Sign{ctx: ctx}
	defer func() {
		s.ctx = nil
		switch broke := recover(); broke {
		case nil:
		case ended{s}:
			err = ctx.Err()
		default:
			panic(broke)
		}
	}()
	s.Look()
	work(s)
	return nil
}

// Beside does pieces of work, by their numbers from 0, as many at a time as there are processors, each with a sign of its own. Where the
// work ends that they are part of, they end, too; what breaks one of them breaks that.
func (s *Sign) Beside(n int, work func(i int, s *Sign)) {
	ctx := context.Background()
	if s != nil && s.ctx != nil {
		ctx = s.ctx
	}
	var next atomic.Int64
	var wait sync.WaitGroup
	var broke atomic.Value
	for range min(n, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			defer func() {
				if r := recover(); r != nil {
					broke.Store(&r)
				}
			}()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				if Do(ctx, func(s *Sign) { work(i, s) }) != nil {
					return
				}
			}
		})
	}
	wait.Wait()
	if r, ok := broke.Load().(*any); ok {
		panic(*r)
	}
	s.Look()
}

// Count is how many steps work counts.
func Count(work func(*Sign)) int {
	s := &Sign{ctx: context.Background()}
	work(s)
	return s.total
}

// Look ends the work if its context has ended.
func (s *Sign) Look() {
	if s == nil || s.ctx == nil {
		return
	}
	s.steps = 0
	s.turn.breathe()
	if s.ctx.Err() != nil {
		panic(ended{s})
	}
}

// Step counts steps of the work, and looks at the context every few thousand.
func (s *Sign) Step(steps int) {
	if s == nil || s.ctx == nil {
		return
	}
	s.total += steps
	if s.steps += steps; s.steps >= looksEvery {
		s.Look()
	}
}

// Done is closed when the work is to end; nil, for ever open, for work that never is.
func (s *Sign) Done() <-chan struct{} {
	if s == nil || s.ctx == nil {
		return nil
	}
	return s.ctx.Done()
}

// Writer is a writer that looks at the sign whenever something is written.
func (s *Sign) Writer(w io.Writer) io.Writer { return &writer{s, w} }

// Reader is a reader that looks at the sign whenever something is read.
func (s *Sign) Reader(r io.Reader) io.Reader { return &reader{s, r} }

type reader struct {
	sign *Sign
	r    io.Reader
}

func (r *reader) Read(p []byte) (int, error) {
	r.sign.Look()
	return r.r.Read(p)
}

type writer struct {
	sign *Sign
	w    io.Writer
}

func (w *writer) Write(p []byte) (int, error) {
	w.sign.Look()
	return w.w.Write(p)
}
