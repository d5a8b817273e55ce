//go:build judges

package preview

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// startFolder shows a new folder with some layouts.
func startFolder(t *testing.T, beginnings []Beginning, texts map[string]string) (path, address string) {
	t.Helper()
	path = t.TempDir()
	for name, text := range texts {
		put(t, filepath.Join(path, name), text)
	}
	ctx, cancel := context.WithCancel(context.Background())
	addresses, ended := make(chan string, 1), make(chan error, 1)
	o := Options{NoOpen: true, Output: &lockedBuffer{}, opened: func(a string) { addresses <- a }}
	go func() { ended <- RunFolder(ctx, path, beginnings, o) }()
	t.Cleanup(func() { cancel(); must(t, <-ended) })
	return path, <-addresses
}

// TestGallery: the layouts of a folder are seen, come and go, lead to their pages and from one to the next; a copy is begun with the
// keyboard alone, and a name that is taken is said.
func TestGallery(t *testing.T) {
	path, address := startFolder(t, []Beginning{{"webs", "whole webs", titled("My webs")}}, map[string]string{"a.quilt": titled("Anchors"), "b.quilt": titled("Boats")})
	p := newTab(t)
	p.do(chromedp.Navigate(address))
	seen := `[...document.querySelectorAll('#layouts img')].filter((e) => e.complete && e.naturalWidth > 100).length`
	p.until(seen + ` === 2`)
	put(t, filepath.Join(path, "c.quilt"), titled("Cables"))
	p.until(seen + ` === 3`)
	must(t, os.Remove(filepath.Join(path, "a.quilt")))
	p.until(seen + ` === 2 && !document.body.innerText.includes('Anchors')`)
	p.picture("gallery")
	p.do(chromedp.Click(chromedp.CSS(`#layouts a`)))
	p.until(`document.getElementById('title')?.innerText === 'Boats' && document.querySelector('.pane svg path')`)
	p.do(chromedp.Click(chromedp.CSS(`#switcher .opener`)))
	p.until(`document.querySelectorAll('#layouts img').length === 2`)
	if got := p.text("#layouts"); !strings.Contains(got, "All quilts in this folder") || !strings.Contains(got, "Boats") || !strings.Contains(got, "Cables") {
		t.Errorf("the menu says %q", got)
	}
	p.picture("switcher")
	eval[bool](p, `(document.querySelector('#layouts a:last-child').click(), true)`)
	p.until(`document.getElementById('title')?.innerText === 'Cables' && document.querySelector('.pane svg path')`)
	p.watching()
	put(t, filepath.Join(path, "c.quilt"), strings.Replace(titled("Cables"), "#b5532a", "#123456", 1))
	p.until(`document.querySelector('g[fill="#123456"] path')`)
	p.key("r")
	p.until(reporting)
	if wrong := eval[int](p, `performance.getEntriesByType('resource').filter((e) => e.responseStatus >= 400).length`); wrong > 0 {
		t.Errorf("%d addresses of a layout's page lead nowhere", wrong)
	}
	p.do(chromedp.Navigate(address))
	p.until(`document.querySelectorAll('#beginnings img').length === 1`)
	eval[bool](p, `(document.querySelector('#beginnings button').focus(), true)`)
	p.key("\r")
	p.until(`document.getElementById('naming').open && document.activeElement.id === 'name'`)
	p.picture("naming")
	eval[bool](p, `(document.getElementById('name').value = 'b', true)`)
	p.key(kb.Enter)
	p.until(`document.getElementById('naming-fault').textContent.includes('already there')`)
	eval[bool](p, `(document.getElementById('name').value = 'begun here', true)`)
	p.key(kb.Enter)
	p.until(`document.getElementById('title')?.innerText === 'My webs' && document.querySelector('.pane svg path')`)
	if text, err := os.ReadFile(filepath.Join(path, "begun here.quilt")); err != nil || string(text) != titled("My webs") {
		t.Errorf("the copy says %.80q: %v", text, err)
	}
}
