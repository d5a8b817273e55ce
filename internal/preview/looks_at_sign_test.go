package preview

import (
	"context"
	"errors"
	"io"
	"testing"

	"eighthturn/internal/stop"
)

// countdown is a context that ends when it has been looked at so many times; it counts on. No clock is asked.
type countdown struct {
	context.Context
	looks, most int
}

func (c *countdown) Err() error {
	if c.looks++; c.looks > c.most {
		return context.Canceled
	}
	return nil
}

// TestEveryWorkLooks: whatever is worked out of a layout looks at its sign again and again, and ends at the look at which its context has
// ended. Each is made alone, of plans that are made already where it is not one itself.
func TestEveryWorkLooks(t *testing.T) {
	text := quiltOf(24, 24, false)
	d := draw(text, drawing{})
	p := newPicture(d.top, d.source, newNumbering(1))
	planned := newPlans(d.top, d.source, "quilt")
	planned.Cuts()
	fresh := func(sign *stop.Sign) *plans { return newPlans(d.top, d.source, "quilt").until(sign) }
	for _, w := range []struct {
		name  string
		least int // looks
		work  func(*stop.Sign)
	}{
		{"laying", 2, func(s *stop.Sign) { drawText(s, text, drawing{}, nil) }},
		{"numbers", 3, func(s *stop.Sign) { p.pageNumbers(s) }},
		{"cutting", 5, func(s *stop.Sign) { fresh(s).Cuts() }},
		{"sewing", 50, func(s *stop.Sign) { fresh(s).Steps() }},
		{"light and dark", 500, func(s *stop.Sign) { fresh(s).Values() }},
		{"pattern", 9, func(s *stop.Sign) {
			_, _ = (&plans{planned.Until(s), d.source, "quilt", nil, false, &patterns{}}).printed()
		}},
		{"sewing as pages", 20, func(s *stop.Sign) { _ = fileAt("/save/sewing.pdf").write(planned.until(s), io.Discard) }},
		{"picture", 5, func(s *stop.Sign) { _ = fileAt("/save/picture.svg").write(planned.until(s), s.Writer(io.Discard)) }},
	} {
		whole := &countdown{Context: t.Context(), most: 1 << 30}
		if err := stop.Do(whole, w.work); err != nil || whole.looks < w.least {
			t.Errorf("%s: %d looks, want %d at the least: %v", w.name, whole.looks, w.least, err)
		}
		cut := &countdown{Context: t.Context(), most: 1}
		if err := stop.Do(cut, w.work); !errors.Is(err, context.Canceled) || cut.looks > 4 { // Do asks for the error once more
			t.Errorf("%s: it went on for %d looks: %v", w.name, cut.looks, err)
		}
	}
}
