package preview

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"sync"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/orders"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pixels"
	"eighthturn/internal/stop"
	"eighthturn/palettes"
)

// study is what is worked out of one top when pages ask for it, which they do after they have shown the picture. Each part is
// made once, by the first that asks for it; those who ask for another part do not wait for it. All work ends when another top is shown.
type study struct {
	context.Context
	end     context.CancelFunc
	picture *picture
	plans   *plans
	numbers stop.Once[*pageNumbers] // of the picture
	tabs    []stop.Once[*cachedTab]
	from    *studies
	trying  trying // a color
	dressed dressed
	squint  stop.Once[squinted]
	prints  []stop.Once[printed] // by size, in color and then by value
}

// cachedTab is a tab as it is sent.
type cachedTab struct {
	reportTab
	key  string // of its content
	sent json.RawMessage
}

// squinted is a PNG file, or why there is none.
type squinted struct {
	png []byte
	err error
}

func newStudy(p *picture, of *studies) *study {
	s := &study{picture: p, plans: newPlans(p.top, p.source, of.name), tabs: make([]stop.Once[*cachedTab], len(tabSources())), prints: make([]stop.Once[printed], 2*len(printSizes())), from: of}
	s.plans.Cutting, s.plans.worn = cutBy(of.cutting, p.top), of.worn
	if p.source != nil {
		s.plans.Nearby = orders.Nearby(p.source.Text, of.cloth, p.top)
	}
	s.Context, s.end = context.WithCancel(context.Background())
	return s
}

// after is the study of a picture that is shown now: the same one if the top is the same and counted the same way, unless
// plans of it name lines of the layout, which may have moved. Then only what names none is taken over.
func (s *study) after(p *picture, of *studies) *study {
	if s.picture.epoch != p.epoch || !alike(s.picture.top, p.top) || !sameColorways(s.picture, p) {
		return newStudy(p, of)
	}
	if s.plans.Cut() && !s.plans.placed() {
		return s
	}
	next := newStudy(p, of)
	handOn(&s.numbers, &next.numbers)
	handOn(&s.squint, &next.squint)
	for i := range s.prints {
		handOn(&s.prints[i], &next.prints[i])
	}
	for i := range s.tabs {
		if tab, made := s.tabs[i].Made(); made && !tab.Placed {
			handOn(&s.tabs[i], &next.tabs[i])
		}
	}
	return next
}

// handOn gives one what another has made.
func handOn[T any](from, to *stop.Once[T]) {
	if value, made := from.Made(); made {
		to.Get(nil, func() T { return value })
	}
}

// tab is a tab with its report.
func (s *study) tab(sign *stop.Sign, tab int) *cachedTab {
	return s.tabs[tab].Get(sign, func() *cachedTab {
		r := makeTabSafely(s.plans.until(sign), tabSources()[tab])
		r.fillHighlights(s.pageNumbers(sign))
		w := &cachedTab{reportTab: r, sent: encoded(&r)}
		sum := sha256.Sum256(w.sent)
		w.key = hex.EncodeToString(sum[:8])
		return w
	})
}

func (s *study) pageNumbers(sign *stop.Sign) *pageNumbers {
	return s.numbers.Get(sign, func() *pageNumbers { return s.picture.pageNumbers(sign) })
}

// squintPixels is how many pixels the longer side of a squint picture has. It is drawn in a
// few steps, whose edges a finer one shows no better.
const squintPixels = 1200

// viewedFrom is how far away the quilt is squinted at and studied from.
const viewedFrom = 10 * 12 * measure.Inch

func (s *study) squintPNG(sign *stop.Sign) ([]byte, error) {
	made := s.squint.Get(sign, func() squinted {
		png, err := s.picture.squint(sign)
		return squinted{png, err}
	})
	return made.png, made.err
}

// squint is the picture as half-shut eyes see it.
func (p *picture) squint(sign *stop.Sign) ([]byte, error) {
	size, err := pixels.SizeOf(p.top, squintPixels)
	if err != nil {
		return nil, err
	}
	made, err := pixels.Squinting(p.top, size, pixels.Squint{Distance: viewedFrom})
	if err != nil {
		return nil, err
	}
	sign.Look()
	var b bytes.Buffer
	if err := pixels.WritePNG(sign.Writer(&b), p.top, made.Picture); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// studies gives out the study of the newest picture.
type studies struct {
	name    string                           // of the layout's file, without folder and ending
	cutting func(*quilt.Top) cutting.Options // how quilts are cut and bought; nil for the usual way
	cloth   func(photo string) (palettes.PhotoSample, error)
	worn    []string // what addresses of the page go on with
	cut     cutPrints
	lock    sync.Mutex // held for a moment
	of      *picture   // the newest; nil before there is one
	now     *study     // of a top like it
}

// follow makes room for the study of a picture that is about to be shown, and ends that of another top. It must not be
// called twice at a time.
func (s *studies) follow(p *picture) {
	before := s.now
	var now *study
	if before == nil {
		now = newStudy(p, s)
	} else if now = before.after(p, s); now != before {
		defer before.end()
	}
	s.lock.Lock()
	defer s.lock.Unlock()
	s.of, s.now = p, now
}

// study is the study of a picture, nil if a newer one is about to be shown.
func (s *studies) study(p *picture) *study {
	s.lock.Lock()
	defer s.lock.Unlock()
	if s.of != p {
		return nil
	}
	return s.now
}
