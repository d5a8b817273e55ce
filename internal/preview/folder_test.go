package preview

import (
	"context"
	"encoding/json"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// aFolder is a gallery's server without a network, of a new folder with some files.
func aFolder(t *testing.T, beginnings []Beginning, texts map[string]string) *folder {
	t.Helper()
	path := t.TempDir()
	for name, text := range texts {
		put(t, filepath.Join(path, name), text)
	}
	ctx, end := context.WithCancel(context.Background())
	f := newFolder(ctx, path, beginnings, Options{Output: &lockedBuffer{}})
	t.Cleanup(func() {
		f.mu.Lock()
		defer f.mu.Unlock()
		end()
	})
	return f
}

var twoBeginnings = []Beginning{{"webs", "whole webs", titled("My webs")}, {"rings", "rings", titled("My rings")}}

// list is the listing that a page is sent.
func (f *folder) list(t *testing.T) (l listing) {
	t.Helper()
	must(t, json.Unmarshal([]byte(body(ask(f.site, "/layouts", nil))), &l))
	return l
}

// TestFolderIsListed: every layout and nothing else, with its title and a picture; new and deleted files follow.
func TestFolderIsListed(t *testing.T) {
	t.Parallel()
	f := aFolder(t, nil, map[string]string{"b.quilt": titled("Boats"), "a & b?.quilt": titled("Anchors"), "broken.quilt": "nonsense", "notes.txt": lanterns, ".hidden.quilt": lanterns})
	must(t, os.Mkdir(filepath.Join(f.path, "folder.quilt"), 0o755))
	l := f.list(t)
	var titles []string
	for _, q := range l.Layouts {
		titles = append(titles, q.Title)
		r := ask(f.site, "/"+q.Picture, nil)
		if good := q.File != "broken.quilt"; good != (q.Picture != "") || good && (r.StatusCode != 200 || r.Header.Get("Content-Type") != "image/png" || !strings.HasPrefix(body(r), "\x89PNG")) {
			t.Errorf("%s has the picture %q: %d", q.File, q.Picture, r.StatusCode)
		}
	}
	if got := strings.Join(titles, ", "); got != "Anchors, Boats, broken.quilt" {
		t.Errorf("listed are %s", got)
	}
	if l.Layouts[2].About != "1 error" || l.Token != "" || len(l.Beginnings) != 0 {
		t.Errorf("the listing is %+v", l)
	}
	must(t, os.Remove(filepath.Join(f.path, "b.quilt")))
	put(t, filepath.Join(f.path, "c.quilt"), titled("Cables"))
	if l = f.list(t); len(l.Layouts) != 3 || l.Layouts[2].Title != "Cables" {
		t.Errorf("after one went and one came: %+v", l.Layouts)
	}
	if len(f.looked) != 3 {
		t.Errorf("%d texts are kept of 3", len(f.looked))
	}
}

// TestLayoutsOfAFolder: each is followed under its own address, and nothing beside the folder's own layouts is.
func TestLayoutsOfAFolder(t *testing.T) {
	t.Parallel()
	f := aFolder(t, nil, map[string]string{"b.quilt": titled("Boats"), "a & b?.quilt": titled("Anchors"), "notes.txt": lanterns})
	put(t, filepath.Join(filepath.Dir(f.path), "outside.quilt"), lanterns)
	at := func(path string) *http.Response {
		return ask(f.site, "/", func(r *http.Request) { r.URL, _ = r.URL.Parse(path) })
	}
	for _, want := range []string{"Boats", "Anchors"} {
		for _, q := range f.list(t).Layouts {
			if q.Title != want {
				continue
			}
			text := ""
			for until := time.Now().Add(20 * time.Second); !strings.Contains(text, want) && time.Now().Before(until); time.Sleep(5 * time.Millisecond) {
				text = body(at("/" + q.Address + "state"))
			}
			if !strings.Contains(text, want) {
				t.Errorf("%s shows %.200s", q.Address, text)
			}
			if page := body(at("/" + q.Address)); !strings.Contains(page, `id="switcher"`) || !strings.Contains(page, want) {
				t.Errorf("the page of %s is %.300s", q.Address, page)
			}
		}
	}
	for _, path := range []string{"/quilt/notes.txt/", "/quilt/none.quilt/", "/quilt/..%2Foutside.quilt/", "/quilt/../outside.quilt/", "/quilt/b.quilt", "/quilt/", "/quilt//", "/quilt/b.quilt/nothing", "/state", "/events", "/quilt/b.quilt/..%2f..%2flayouts"} {
		if r := at(path); r != nil && r.StatusCode == http.StatusOK {
			t.Errorf("%s is answered: %.100s", path, body(r))
		}
	}
	if strings.Contains(body(ask(aSite(t, Options{}), "/", nil)), "switcher") {
		t.Error("a layout by itself has a menu of others")
	}
}

// TestFewAreFollowed: of many layouts that pages ask for, the newest few are followed.
func TestFewAreFollowed(t *testing.T) {
	t.Parallel()
	texts := map[string]string{}
	for _, name := range strings.Split("abcdefghi", "") {
		texts[name+".quilt"] = titled(name)
	}
	f := aFolder(t, nil, texts)
	for name := range texts {
		if f.room(name) == nil {
			t.Errorf("%s is not followed", name)
		}
	}
	if f.room("a.quilt") == nil || len(f.rooms) > maxFollowed {
		t.Errorf("%d layouts are followed", len(f.rooms))
	}
}

// TestWhoIsLetIntoAFolder asks the gallery and a layout in it for everything in requests.
func TestWhoIsLetIntoAFolder(t *testing.T) {
	t.Parallel()
	f := aFolder(t, twoBeginnings, map[string]string{"b.quilt": lanterns})
	for _, path := range []string{"/", "/layouts", "/gallery.js", "/gallery.css", "/quilt/b.quilt/", "/quilt/b.quilt/main.js"} {
		for _, q := range requests {
			if r := ask(f.site, path, q.change); r.StatusCode != q.status && (q.name != "method: POST" || r.StatusCode != 403) {
				t.Errorf("%s, %s: %d, wanted %d", path, q.name, r.StatusCode, q.status)
			}
		}
	}
	for _, q := range requests {
		if r := ask(f.site, "/begin", q.change); r.StatusCode == 200 {
			t.Errorf("/begin, %s: it is answered", q.name)
		}
	}
	keyed := newFolder(t.Context(), f.path, twoBeginnings, Options{Secret: true})
	for _, path := range []string{"/", "/layouts", "/quilt/b.quilt/", "/quilt/b.quilt/state"} {
		if r := ask(keyed.site, path, nil); r.StatusCode != http.StatusUnauthorized {
			t.Errorf("%s without the key: %d", path, r.StatusCode)
		}
	}
	if r := keyed.beginning(`{"begin":"rings","file":"new"}`); r.StatusCode != http.StatusUnauthorized {
		t.Errorf("a copy without the key: %d", r.StatusCode)
	}
	written := newFolder(t.Context(), f.path, nil, Options{Edit: true})
	for path, want := range map[string]int{"/quilt/b.quilt/edit": 403, "/quilt/b.quilt/state": 405, "/edit": 405, "/begin": 405} {
		posted := func(r *http.Request) { r.URL.Path = path }
		if r := written.beginning(`{"do":"tidy"}`, posted); r.StatusCode != want {
			t.Errorf("%s, posted with the gallery's token: %d, wanted %d", path, r.StatusCode, want)
		}
	}
}

// beginning is a request for a copy as the page sends it.
func (f *folder) beginning(text string, change ...func(*http.Request)) *http.Response {
	return ask(f.site, "/begin", func(r *http.Request) {
		r.Method, r.ContentLength, r.Body = http.MethodPost, int64(len(text)), readCloser{strings.NewReader(text)}
		r.Header.Set("Origin", "http://127.0.0.1:8000")
		r.Header.Set("Content-Type", "application/json")
		r.Header.Set(tokenHeader, f.token)
		for _, c := range change {
			c(r)
		}
	})
}

type readCloser struct{ *strings.Reader }

func (readCloser) Close() error { return nil }

// TestBeginACopy: the gallery's own page begins a copy under a new name; no file is ever replaced, and nobody else writes anything.
func TestBeginACopy(t *testing.T) {
	t.Parallel()
	f := aFolder(t, twoBeginnings, map[string]string{"there.quilt": "the old text"})
	must(t, os.Symlink("nowhere.quilt", filepath.Join(f.path, "link.quilt")))
	before, _ := os.ReadDir(f.path)
	good := `{"begin":"rings","file":"new one"}`
	for name, r := range map[string]*http.Response{
		"no token":         f.beginning(good, header(tokenHeader, "")),
		"another token":    f.beginning(good, header(tokenHeader, strings.Repeat("0", 32))),
		"no origin":        f.beginning(good, func(r *http.Request) { r.Header.Del("Origin") }),
		"foreign origin":   f.beginning(good, header("Origin", "http://evil.example")),
		"another program":  f.beginning(good, header("Origin", "http://127.0.0.1:3000")),
		"foreign host":     f.beginning(good, host("evil.example:8000")),
		"foreign site":     f.beginning(good, header("Sec-Fetch-Site", "cross-site")),
		"plain text":       f.beginning(good, header("Content-Type", "text/plain")),
		"a form":           f.beginning(good, header("Content-Type", "application/x-www-form-urlencoded")),
		"PUT":              f.beginning(good, method("PUT")),
		"unknown length":   f.beginning(good, func(r *http.Request) { r.ContentLength = -1 }),
		"too long":         f.beginning(good + strings.Repeat(" ", maxBeginBytes)),
		"no JSON":          f.beginning("rings"),
		"no beginning":     f.beginning(`{"begin":"nothing","file":"x"}`),
		"no name":          f.beginning(`{"begin":"rings","file":""}`),
		"a path":           f.beginning(`{"begin":"rings","file":"../x"}`),
		"an absolute path": f.beginning(`{"begin":"rings","file":"/tmp/x"}`),
		"hidden":           f.beginning(`{"begin":"rings","file":".x"}`),
		"backslash":        f.beginning(`{"begin":"rings","file":"a\\b"}`),
		"a device":         f.beginning(`{"begin":"rings","file":"nul"}`),
		"a line":           f.beginning(`{"begin":"rings","file":"a\nb"}`),
		"there already":    f.beginning(`{"begin":"rings","file":"there.quilt"}`),
		"a link":           f.beginning(`{"begin":"rings","file":"link"}`),
	} {
		if r.StatusCode < 400 || r.StatusCode >= 500 || strings.TrimSpace(body(r)) == "" {
			t.Errorf("%s: %d", name, r.StatusCode)
		}
	}
	after, _ := os.ReadDir(f.path)
	if old, _ := os.ReadFile(filepath.Join(f.path, "there.quilt")); len(after) != len(before) || string(old) != "the old text" {
		t.Fatalf("refused requests leave %v", after)
	}
	r := f.beginning(good)
	if text := body(r); r.StatusCode != 200 || text != `{"address":"quilt/new%20one.quilt/"}` {
		t.Fatalf("a copy: %d, %s", r.StatusCode, text)
	}
	if text, err := os.ReadFile(filepath.Join(f.path, "new one.quilt")); err != nil || string(text) != titled("My rings") {
		t.Errorf("the copy says %.80q: %v", text, err)
	}
	if r := f.beginning(good); r.StatusCode != http.StatusConflict {
		t.Errorf("the same again: %d", r.StatusCode)
	}
	if l := f.list(t); len(l.Layouts) != 2 || len(l.Beginnings) != 2 || l.Beginnings[1].Title != "My rings" || l.Token != f.token {
		t.Errorf("listed are %+v", l)
	}
	must(t, os.RemoveAll(f.path))
	if r := f.beginning(good); r.StatusCode != 500 || !strings.Contains(body(r), "cannot be written") {
		t.Errorf("without the folder: %d", r.StatusCode)
	}
	if looks := aFolder(t, nil, nil); looks.beginning(good, header(tokenHeader, looks.token)).StatusCode != 405 {
		t.Error("a folder that is only looked at writes a copy")
	}
}
