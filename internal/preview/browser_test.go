//go:build judges

package preview

import (
	"context"
	"fmt"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"

	"eighthturn/internal/quilttest/judges"
)

// browser is the one Chromium that all tests of a run share.
type browser struct {
	once sync.Once
	ctx  context.Context
	err  error
}

var chromium browser

func (b *browser) launch(path string) {
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.WindowSize(1400, 900),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("hide-scrollbars", true),
		chromedp.Flag("renderer-process-limit", "1")) // a process for each page costs a sixth more
	allocator, endAllocator := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, end := chromedp.NewContext(allocator)
	b.ctx = ctx
	atTheEnd = append(atTheEnd, func() {
		_ = chromedp.Cancel(ctx) // waits until the process is gone
		end()
		endAllocator()
	})
	b.err = chromedp.Do(ctx)
}

// tab is one page of the browser.
type tab struct {
	t   testing.TB
	ctx context.Context
}

// need is a browser, which must be there.
func need(t testing.TB) context.Context {
	t.Helper()
	path := judges.Program(t, "pages are tried in a real browser", "chromium", "chromium-browser", "google-chrome", "chrome")
	chromium.once.Do(func() { chromium.launch(path) })
	if chromium.err != nil {
		t.Fatalf("the browser does not start: %v", chromium.err)
	}
	return chromium.ctx
}

// newTab opens a page in a browser session of its own.
func newTab(t testing.TB) *tab {
	t.Helper()
	return openTab(t, need(t), chromedp.WithNewBrowserContext())
}

// beside opens another page of the same session.
func (p *tab) beside() *tab {
	p.t.Helper()
	return openTab(p.t, p.ctx)
}

func openTab(t testing.TB, parent context.Context, options ...chromedp.ContextOption) *tab {
	t.Helper()
	ctx, end := chromedp.NewContext(parent, options...)
	t.Cleanup(end)
	p := &tab{t, ctx}
	must(t, chromedp.Do(ctx)) // the page lives as long as the context of its first step
	p.do(chromedp.EmulateViewport(1400, 900))
	return p
}

// patience is how long one thing may take in the browser.
const patience = 15 * time.Second

func (p *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	if err := chromedp.Do(ctx, steps...); err != nil {
		p.t.Fatal(err)
	}
}

// load opens an address and waits for its first picture or fault.
func (p *tab) load(address string) {
	p.t.Helper()
	p.do(chromedp.Navigate(address))
	p.until(`document.getElementById('waiting').hidden`)
}

// asked is the value of an expression in the page, or what the browser says of it.
func asked[T any](p *tab, expression string) (T, error) {
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	return chromedp.Run(ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
}

// eval is the value of an expression in the page.
func eval[T any](p *tab, expression string) T {
	p.t.Helper()
	v, err := asked[T](p, expression)
	if err != nil {
		p.t.Fatalf("%s: %v", expression, err)
	}
	return v
}

// until waits for an expression to be true. A page that is just being left for another one cannot be asked: the next one is.
func (p *tab) until(expression string) {
	p.t.Helper()
	for deadline := time.Now().Add(patience); ; time.Sleep(10 * time.Millisecond) {
		holds, err := asked[bool](p, "Boolean("+expression+")")
		if holds && err == nil {
			return
		}
		if time.Now().After(deadline) {
			p.t.Fatalf("%s did not become true (%v); the page says: %s", expression, err, eval[string](p, "document.title + ' / ' + document.body.innerText"))
		}
	}
}

func (p *tab) key(keys string, options ...chromedp.KeyOption) {
	p.t.Helper()
	p.do(chromedp.KeyEvent(keys, options...))
}

func (p *tab) mouse(kind input.DispatchMouseEventType, x, y float64, options ...chromedp.MouseOption) {
	p.t.Helper()
	p.do(chromedp.MouseEvent(kind, x, y, options...))
}

// wheel turns the wheel at a place; up is nearer.
func (p *tab) wheel(x, y, up float64) {
	p.t.Helper()
	p.mouse(input.DispatchMouseEventTypeMouseWheel, x, y, func(e *input.DispatchMouseEventParams) { e.DeltaY, e.DeltaX = -up, 0.001 })
}

func (p *tab) dark(on bool) {
	p.t.Helper()
	value := "light"
	if on {
		value = "dark"
	}
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: value}},
	})
	if err != nil {
		p.t.Fatal(err)
	}
}

// picture writes what the page looks like into the folder that EIGHTHTURN_SHOTS names, if
// it names one.
func (p *tab) picture(name string) {
	p.t.Helper()
	folder := os.Getenv("EIGHTHTURN_SHOTS")
	if folder == "" {
		return
	}
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	b, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	if err != nil {
		p.t.Fatal(err)
	}
	put(p.t, folder+"/"+name+".png", string(b))
}

// press clicks what does something, after the menu that holds it if it is folded away.
func (p *tab) press(action string) {
	p.t.Helper()
	button := `document.querySelector('[data-action=` + action + `]')`
	if !eval[bool](p, button+`.checkVisibility()`) {
		eval[bool](p, `(`+button+`.closest('.menu').querySelector('.opener').click(), true)`)
	}
	p.do(chromedp.Click(chromedp.CSS(`[data-action=` + action + `]`)))
}

// text is an element's visible text.
func (p *tab) text(selector string) string {
	p.t.Helper()
	return strings.TrimSpace(eval[string](p, fmt.Sprintf("document.querySelector(%q)?.innerText ?? ''", selector)))
}

func navigate(address string) chromedp.Action[chromedp.Void] { return chromedp.Navigate(address) }

// touch puts a finger down at a place, moves it to another, and lifts it.
func (p *tab) touch(from, to []float64) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	send := func(kind input.DispatchTouchEventType, at ...*input.TouchPoint) {
		if _, err := chromedp.Call(ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: at}); err != nil {
			p.t.Fatal(err)
		}
	}
	send(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: from[0], Y: from[1]})
	if from[0] != to[0] || from[1] != to[1] {
		send(input.DispatchTouchEventTypeTouchMove, &input.TouchPoint{X: (from[0] + to[0]) / 2, Y: (from[1] + to[1]) / 2})
		send(input.DispatchTouchEventTypeTouchMove, &input.TouchPoint{X: to[0], Y: to[1]})
	}
	send(input.DispatchTouchEventTypeTouchEnd)
}
