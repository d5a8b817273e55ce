package preview

import (
	"context"
	"strings"
	"time"

	"eighthturn/internal/files"
)

// How long what was read must stay the same before it is shown. An editor may be in the
// midst of writing: a text that reads without an error needs the least trust, one that
// breaks off more, and a file that is not there may be about to be put back.
const (
	quietGood    = 3 * time.Millisecond
	quietFaulty  = 60 * time.Millisecond
	quietBroken  = 250 * time.Millisecond // shorter by a quarter, or without its last line end
	quietMissing = 600 * time.Millisecond

	pollEvery  = 250 * time.Millisecond
	lookSpared = 7               // polls in a row that a large file whose dates stand still is not read
	largeFile  = 256 << 10       // bytes
	tooLate    = 1 * time.Second // a picture may be behind so long under never-ending saves

	maxOvertaken = 2 // drawings in a row that saves may end; the next one is made to its end
)

// timings are how long the parts of one publication took.
type timings struct {
	found time.Time     // when the content was first seen
	draw  time.Duration // reading the layout and laying it out
	total time.Duration // from the first sight to the publication
}

// follower looks at one file and publishes what it says.
type follower struct {
	shelf   Shelf
	path    string
	hints   *hints
	draw    drawer
	album   *files.Album // of the layout's folder
	publish func(reading, drawing, timings)

	shown  reading
	last   drawing // the newest that has a top
	named  bool    // what is shown names photos
	begun  bool    // something was published
	spared int
}

// run follows the file until the context ends.
func (f *follower) run(ctx context.Context) {
	clock := time.NewTicker(pollEvery)
	defer clock.Stop()
	for {
		f.hints.aim(f.path)
		if r, changed := f.look(); changed {
			f.settle(ctx, r)
		}
		select {
		case <-ctx.Done():
			return
		case <-f.hints.C:
			f.spared = lookSpared
		case <-clock.C:
		}
	}
}

// look reads the file and says whether it, or a photo that it names, differs from what is shown. A large file whose
// size and date stand still is read at every eighth poll only; both may lie.
func (f *follower) look() (reading, bool) {
	if f.begun && f.shown.size > largeFile && f.spared < lookSpared && f.shown.unmoved(f.shelf, f.path) {
		f.spared++
		return f.shown, f.album.Changed()
	}
	f.spared = 0
	r := read(f.shelf, f.path)
	return r, !f.begun || !r.same(&f.shown) || f.album.Changed()
}

// settle draws what was read and publishes it once the file has kept still for long enough.
// What is overtaken meanwhile is dropped, unless good pictures were dropped for so long that
// the page would seem to stand still.
func (f *follower) settle(ctx context.Context, r reading) {
	first := time.Now()
	since := first
	overtaken := 0
	d, took, made := f.drawn(ctx, r, true)
	for {
		if made && !f.wait(ctx, f.quiet(r, d)-time.Since(since)) || ctx.Err() != nil {
			return
		}
		now := read(f.shelf, f.path)
		switch {
		case made && now.same(&r):
			if time.Since(since) >= f.quiet(r, d) {
				f.show(r, d, timings{since, took, time.Since(first)})
				return
			}
			continue
		case f.begun && now.same(&f.shown) && !f.named: // a photo may have been read anew meanwhile
			return
		case made && time.Since(first) > tooLate && d.top != nil && !f.broken(r):
			f.show(r, d, timings{since, took, time.Since(first)})
			first = time.Now()
		}
		if overtaken++; made {
			overtaken = 0
		}
		r, since = now, time.Now()
		d, took, made = f.drawn(ctx, r, overtaken < maxOvertaken)
	}
}

func (f *follower) show(r reading, d drawing, t timings) {
	f.publish(r, d, t)
	f.shown, f.begun, f.named = r, true, len(d.photos) > 0
	f.album.Forget(d.photos)
	if d.top != nil {
		f.last = d
	}
}

// drawn is what a drawer gives.
type drawn struct {
	drawing
	err error
}

// drawn draws what was read, and says how long that took. It is not made where the context ends, or the file says something
// else meanwhile and the drawing gives way to that.
func (f *follower) drawn(ctx context.Context, r reading, givesWay bool) (d drawing, took time.Duration, made bool) {
	start := time.Now()
	if r.problem != "" {
		return drawing{}, 0, true
	}
	ctx, end := context.WithCancel(ctx)
	defer end()
	ended := make(chan drawn, 1)
	go func(before drawing) {
		d, err := f.draw(ctx, r.text, before)
		ended <- drawn{d, err}
	}(f.last)
	clock := time.NewTicker(pollEvery)
	defer clock.Stop()
	for {
		select {
		case made := <-ended:
			return made.drawing, time.Since(start), made.err == nil
		case <-ctx.Done(): // the program ends, and waits for nothing
			return drawing{}, 0, false
		case <-f.hints.C:
		case <-clock.C:
		}
		if now := read(f.shelf, f.path); givesWay && !now.same(&r) {
			end()
			<-ended
			return drawing{}, 0, false
		}
	}
}

// wait waits for so long, or for a hint. It says whether to go on.
func (f *follower) wait(ctx context.Context, d time.Duration) bool {
	if d <= 0 {
		return ctx.Err() == nil
	}
	timer := time.NewTimer(d)
	defer timer.Stop()
	select {
	case <-ctx.Done():
		return false
	case <-f.hints.C:
	case <-timer.C:
	}
	return true
}

// quiet is how long a reading must stay the same before it is shown.
func (f *follower) quiet(r reading, d drawing) time.Duration {
	switch {
	case r.problem != "":
		return quietMissing
	case f.broken(r):
		return quietBroken
	case d.top == nil:
		return quietFaulty
	}
	return quietGood
}

// broken says whether a text looks as if it were still being written: empty, a good deal
// shorter than the one before, or without the line end that the one before ended with.
func (f *follower) broken(r reading) bool {
	before := f.shown.text
	return strings.TrimSpace(r.text) == "" || len(r.text) < len(before)*3/4 ||
		strings.HasSuffix(before, "\n") && !strings.HasSuffix(r.text, "\n")
}
