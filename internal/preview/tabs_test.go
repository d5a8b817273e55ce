//go:build judges

package preview

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestEightTabs: all of them load and follow, though a browser opens six connections.
func TestEightTabs(t *testing.T) {
	r := start(t, lanterns, Options{})
	tabs := []*tab{newTab(t)}
	for range 7 {
		tabs = append(tabs, tabs[0].beside())
	}
	for _, p := range tabs {
		p.load(r.address)
	}
	for n := range 2 {
		put(t, r.file, titled(fmt.Sprintf("save %d", n)))
		for _, p := range tabs {
			p.until(fmt.Sprintf(`document.getElementById('title').innerText === 'save %d'`, n))
		}
	}
	// The one that listens for all goes, and another takes its place.
	p := tabs[0]
	p.do(chromedp.Navigate("about:blank"))
	put(t, r.file, titled("without the first"))
	for _, p := range tabs[1:] {
		p.until(`document.getElementById('title').innerText === 'without the first'`)
	}
}

// TestRestarted: a page notices that the preview ended, keeps its picture, and follows the
// next preview at the same address; another file there is told and not shown.
func TestRestarted(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	p.watching()
	must(t, r.end())
	p.until(`document.documentElement.classList.contains('disconnected') && document.getElementById('connection').innerText !== '' && document.title.startsWith('…')`)
	if !eval[bool](p, `!!document.querySelector('g[fill="#b5532a"] path')`) {
		t.Error("the picture is gone")
	}
	p.picture("away")
	put(t, r.file, strings.Replace(lanterns, "#b5532a", "#123456", 1))
	port := portOf(t, r.address)
	again := startOn(t, r.file, Options{Port: port})
	p.until(`document.querySelector('g[fill="#123456"] path') && !document.documentElement.classList.contains('disconnected')`)
	put(t, r.file, titled("after the restart"))
	p.until(`document.getElementById('title').innerText === 'after the restart'`)
	must(t, again.end())
	p.until(`document.documentElement.classList.contains('disconnected')`)
	other := start(t, titled("another quilt"), Options{Port: port})
	p.until(`document.getElementById('connection').innerText.includes('another layout')`)
	if got := p.text("#title"); got != "after the restart" {
		t.Errorf("the page shows %q", got)
	}
	p.do(chromedp.Reload())
	p.until(`document.getElementById('title')?.innerText === 'another quilt'`)
	must(t, other.end())
}

func portOf(t *testing.T, address string) (port int) {
	t.Helper()
	_, err := fmt.Sscanf(address, "http://127.0.0.1:%d/", &port)
	must(t, err)
	return port
}
