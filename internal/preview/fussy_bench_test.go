//go:build judges

package preview

import (
	"bytes"
	"context"
	"encoding/json"
	"image"
	"image/jpeg"
	"math"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/tracing"
	"github.com/chromedp/chromedp"
)

// largePhoto is a JPEG photo of 24 megapixels, as cameras take them, of a print without end.
func largePhoto(t testing.TB) string {
	t.Helper()
	const width, height = 6000, 4000
	m := image.NewYCbCr(image.Rect(0, 0, width, height), image.YCbCrSubsampleRatio420)
	wave := func(v, times, of int) float64 {
		return math.Sin(2 * math.Pi * float64(v) * float64(times) / float64(of))
	}
	for y := range height {
		for x := range width {
			m.Y[y*m.YStride+x] = uint8(128 + 50*wave(x, 6, width)*wave(y, 4, height) + 20*wave(x, 50, width) + 20*wave(y, 70, height) + float64((x*7919+y*104729)%23))
		}
	}
	for y := range height / 2 {
		for x := range width / 2 {
			m.Cb[y*m.CStride+x], m.Cr[y*m.CStride+x] = uint8(128+60*wave(x, 3, width/2)), uint8(128+60*wave(y, 2, height/2))
		}
	}
	var b bytes.Buffer
	must(t, jpeg.Encode(&b, m, &jpeg.Options{Quality: 90}))
	return b.String()
}

// withLargePhoto is the garden with that photo in place of its own.
func withLargePhoto(t testing.TB) (folder, file string) {
	t.Helper()
	text, _ := gardenFiles(t)
	folder = t.TempDir()
	file = filepath.Join(folder, "garden.quilt")
	put(t, filepath.Join(folder, "garden.jpg"), largePhoto(t))
	put(t, file, strings.NewReplacer("garden.png", "garden.jpg", "down 12 ", "down 16 ").Replace(text))
	return folder, file
}

// BenchmarkDragging reports how many frames a second Chromium presents while a piece is dragged over a print for two seconds, and how many
// of them show another center, on the sample and on a photo of 24 megapixels.
func BenchmarkDragging(b *testing.B) {
	need(b)
	for name, open := range map[string]func() *running{
		"garden":        func() *running { return startGarden(b, Options{}) },
		"24-megapixels": func() *running { _, file := withLargePhoto(b); return startOn(b, file, Options{}) },
	} {
		b.Run(name, func(b *testing.B) {
			r, p := open(), newTab(b)
			r.next()
			p.load(r.address)
			p.openPrint("garden")
			for b.Loop() {
				presented, drawn := p.dragged(2 * time.Second)
				b.ReportMetric(presented, "frames/s")
				b.ReportMetric(drawn, "centers/s")
			}
		})
	}
}

// dragged drags the piece round for so long, and says how many frames a second were presented and how many centers were drawn.
func (p *tab) dragged(long time.Duration) (presented, drawn float64) {
	p.t.Helper()
	at := eval[[]float64](p, `(() => { const b = document.querySelector('.field canvas').getBoundingClientRect(), m = new DOMMatrix(getComputedStyle(document.querySelector('.field svg > g:nth-of-type(2)')).transform), context = document.querySelector('#fussy .center canvas').getContext('2d'), clear = context.clearRect;
		if (!('drawn' in window)) context.clearRect = (...a) => { window.drawn++; clear.apply(context, a); };
		window.drawn = 0;
		return [b.left + m.e, b.top + m.f, b.left + b.width / 2, b.top + b.height / 2]; })()`)
	p.mouse(pressed, at[0], at[1], left)
	frames, end := p.presented()
	began := time.Now()
	for n := 0; time.Since(began) < long; n++ {
		turn := float64(n) / 40
		p.mouse(moved, at[2]+120*math.Cos(turn), at[3]+90*math.Sin(turn), left)
	}
	seconds := time.Since(began).Seconds()
	end()
	p.mouse(released, at[2], at[3], left)
	return float64(*frames) / seconds, eval[float64](p, `window.drawn`) / seconds
}

// presented counts the frames that the browser presents until end is called.
func (p *tab) presented() (frames *int, end func()) {
	p.t.Helper()
	frames = new(int)
	done := make(chan bool, 1)
	ctx, cancel := context.WithTimeout(p.ctx, time.Minute)
	must(p.t, chromedp.Listen(ctx, func(ev any) { // until the context ends
		switch e := ev.(type) {
		case *tracing.EventDataCollected:
			for _, v := range e.Value {
				var event struct {
					Name string `json:"name"`
				}
				if json.Unmarshal([]byte(v), &event) == nil && event.Name == "DrawFrame" {
					*frames++
				}
			}
		case *tracing.EventTracingComplete:
			done <- true
		}
	}))
	_, err := chromedp.Call(ctx, tracing.Start, tracing.StartParams{TransferMode: tracing.StartTransferModeReportEvents,
		TraceConfig: &tracing.TraceConfig{IncludedCategories: []string{"disabled-by-default-devtools.timeline.frame", "devtools.timeline.frame"}}})
	must(p.t, err)
	return frames, func() {
		defer cancel()
		_, err := chromedp.Call(ctx, tracing.End, cdp.Empty{})
		must(p.t, err)
		<-done
	}
}
