package engine

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"context"
	"errors"
	"fmt"
	"image"
	"image/png"
	"io"
	"io/fs"
	"net/http"
	"strings"
	"testing"

	"eighthturn/internal/files"
	"eighthturn/layout"
)

// store is a keeper that several folders share, as pages share a browser's storage.
type store struct {
	files map[string]Changed
	count int
	full  error
}

func (s *store) Keep(name string, content []byte, over string) (string, error) {
	if s.full != nil {
		return "", s.full
	}
	if there := s.files[name]; there.Version != over {
		return "", &there
	}
	s.count++
	version := fmt.Sprint(s.count)
	if content == nil {
		version = ""
	}
	s.files[name] = Changed{content, version}
	return version, nil
}

// page is a folder in a page of its own, and what it could not keep.
func (s *store) page() (*Held, map[string]string) {
	unkept := map[string]string{}
	h := NewHeld(s, func(name string, content []byte, why error) {
		delete(unkept, name)
		if why != nil {
			unkept[name] = string(content)
		}
	})
	for name, f := range s.files {
		h.Hold(name, f.Content, f.Version)
	}
	return h, unkept
}

func newStore() *store { return &store{files: map[string]Changed{}} }

func says(h *Held, name string) string {
	f, err := h.Open(name)
	if err != nil {
		return "no file"
	}
	b, _ := io.ReadAll(f)
	return string(b)
}

// TestTwoPages: what one page has changed is never written over by another that has not seen it.
func TestTwoPages(t *testing.T) {
	s := newStore()
	one, _ := s.page()
	if err := one.Create("a.quilt", "first"); err != nil {
		t.Fatal(err)
	}
	two, _ := s.page()
	told := 0
	end := two.Follow("a.quilt", func() { told++ })
	if err := one.Update("a.quilt", "first", "second"); err != nil {
		t.Fatal(err)
	}
	if err := two.Update("a.quilt", "first", "mine"); !errors.Is(err, files.ErrChanged) {
		t.Errorf("an old text is written over: %v", err)
	}
	if got := says(two, "a.quilt"); got != "second" || told != 1 || string(s.files["a.quilt"].Content) != "second" {
		t.Errorf("then it has %q, told %d times", got, told)
	}
	if err := two.Update("a.quilt", "second", "third"); err != nil {
		t.Error(err)
	}
	if err := one.Remove("a.quilt"); !errors.Is(err, files.ErrChanged) || says(one, "a.quilt") != "third" {
		t.Errorf("a text that nobody has seen is removed: %v", err)
	}
	end()
	if err := one.Remove("a.quilt"); err != nil || len(one.List("")) != 0 {
		t.Errorf("it stays: %v", err)
	}
	if err := one.Create("a.quilt", "anew"); err != nil {
		t.Error(err)
	}
	if err := two.Create("a.quilt", "another"); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a name is taken twice: %v", err)
	}
	if told != 2 {
		t.Errorf("told %d times, the last after nobody asked", told)
	}
}

// TestNoRoom: where nothing can be kept, what was written is held and told, a page that takes over has it, and it is kept as soon as it can be.
func TestNoRoom(t *testing.T) {
	s := newStore()
	h, unkept := s.page()
	if err := h.Create("a.quilt", "kept"); err != nil {
		t.Fatal(err)
	}
	s.full = errors.New("no room")
	if err := h.Update("a.quilt", "kept", "more"); err != nil || says(h, "a.quilt") != "more" || unkept["a.quilt"] != "more" {
		t.Errorf("%v: it has %q, told is %q", err, says(h, "a.quilt"), unkept)
	}
	if err := h.Create("b.quilt", "new"); err != nil || unkept["b.quilt"] != "new" {
		t.Errorf("%v: told is %q", err, unkept)
	}
	next, left := s.page()
	for name, text := range unkept {
		next.Rescue(name, []byte(text))
	}
	next.Hold("a.quilt", []byte("kept"), s.files["a.quilt"].Version) // what the storage has is older
	if says(next, "a.quilt") != "more" || says(next, "b.quilt") != "new" {
		t.Errorf("the next has %q and %q", says(next, "a.quilt"), says(next, "b.quilt"))
	}
	s.full = nil
	for name, text := range unkept {
		left[name] = text
		if err := next.Update(name, text, text+"!"); err != nil {
			t.Error(err)
		}
	}
	if len(left) != 0 || string(s.files["a.quilt"].Content) != "more!" || string(s.files["b.quilt"].Content) != "new!" {
		t.Errorf("unkept still %q; kept %q", left, s.files)
	}
}

func zipped(t testing.TB, of map[string]string) []byte {
	t.Helper()
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for name, text := range of {
		f, err := w.Create(name)
		if err == nil {
			_, err = io.WriteString(f, text)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func photo(t testing.TB) string {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 64, 64))); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestTake: layouts and photos come in alone or as a zip file, whatever folders they lay in; nothing is replaced, and what is left says why.
func TestTake(t *testing.T) {
	h, _ := newStore().page()
	if err := h.Create("a.quilt", "mine"); err != nil {
		t.Fatal(err)
	}
	got := h.Take("all.zip", zipped(t, map[string]string{"x/a.quilt": "theirs", "b.quilt": "b", "x/blue.png": photo(t), "x/.hidden.quilt": "", "notes.doc": "", "torn.jpg": "no photo",
		"large.quilt": strings.Repeat("#", layout.MaxBytes+1), `c\..\d.quilt`: "d"}))
	if len(got.Taken) != 4 || len(got.Left) != 3 {
		t.Errorf("taken %q, left %q", got.Taken, got.Left)
	}
	for name, want := range map[string]string{"a.quilt": "mine", "a-2.quilt": "theirs", "b.quilt": "b", "d.quilt": "d", "blue.png": photo(t), ".hidden.quilt": "no file", "torn.jpg": "no file"} {
		if got := says(h, name); got != want {
			t.Errorf("%s says %.40q, want %.40q", name, got, want)
		}
	}
	if again := h.Take("a.quilt", []byte("theirs")); len(again.Taken) != 1 || again.Taken[0] != "a-2.quilt" {
		t.Errorf("taken again it is %q", again)
	}
	if other := h.Take("blue.png", []byte(photo(t)+" ")); len(other.Taken) != 0 {
		t.Errorf("another photo takes the name: %q", other)
	}
	for _, torn := range [][]byte{nil, []byte("PK"), zipped(t, map[string]string{"a.quilt": "a"})[:40]} {
		if got := h.Take("torn.zip", torn); len(got.Left) != 1 || len(got.Taken) != 0 {
			t.Errorf("of a torn file %q", got)
		}
	}
	cloth, err := h.Album("a.quilt").Cloth("cloth/blue.png")
	if err != nil || cloth.Pixels == 0 {
		t.Errorf("the photo says %v: %v", cloth, err)
	}
	if _, err := h.Album("a.quilt").Cloth("red.png"); err == nil || !strings.Contains(err.Error(), "no such photo") {
		t.Errorf("a photo that is not there: %v", err)
	}
	all, err := h.Zip()
	if err != nil {
		t.Fatal(err)
	}
	next, _ := newStore().page()
	if got := next.Take("quilts.zip", all); len(got.Taken) != 5 || len(got.Left) != 0 || says(next, "blue.png") != photo(t) {
		t.Errorf("out and in again: %q", got)
	}
}

// TestTakeOfLiars: what a zip file's head says of a file's size bounds what is read of it: one that is said to be too large is not read at
// all, and of one that holds more than is said no more than that is.
func TestTakeOfLiars(t *testing.T) {
	var packed, b bytes.Buffer
	z, err := flate.NewWriter(&packed, flate.BestSpeed)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := z.Write(make([]byte, 1<<20)); err != nil || z.Close() != nil {
		t.Fatal(err)
	}
	w := zip.NewWriter(&b)
	for name, says := range map[string]uint64{"large.quilt": 1 << 40, "more.quilt": 10, "less.quilt": 2 << 20} {
		f, err := w.CreateRaw(&zip.FileHeader{Name: name, Method: zip.Deflate, CompressedSize64: uint64(packed.Len()), UncompressedSize64: says})
		if err == nil {
			_, err = f.Write(packed.Bytes())
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	h, _ := newStore().page()
	got := h.Take("all.zip", b.Bytes())
	for _, l := range got.Left {
		if (l.Why == "It is too large.") != (l.Name == "large.quilt") {
			t.Errorf("%+v", l)
		}
	}
	if len(got.Taken) > 0 || len(got.Left) != 3 {
		t.Errorf("%+v", got)
	}
}

// TestAnswer: a request is answered as a server would, what flows is handed on at once, and what breaks is told.
func TestAnswer(t *testing.T) {
	h := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch r.URL.Path {
		case "/said":
			b, _ := io.ReadAll(r.Body)
			w.Header().Set("Content-Type", "text/x")
			fmt.Fprintf(w, "%s %s %s %s %s", r.Method, r.URL.Query().Get("q"), r.Host, r.Header.Get("X-Edit-Token"), b)
		case "/flows":
			for i := range 3 {
				fmt.Fprint(w, i)
				if http.NewResponseController(w).Flush() != nil {
					t.Error("it cannot be flushed")
				}
			}
			<-r.Context().Done()
		case "/breaks":
			panic("oh")
		default:
			http.Error(w, "nothing", http.StatusNotFound)
		}
	})
	ask := func(q Request) (int, string, string) {
		var b bytes.Buffer
		status, kind := 0, ""
		ctx, end := context.WithCancel(t.Context())
		Answer(ctx, h, q, func(s int, header http.Header) { status, kind = s, header.Get("Content-Type") }, writer(func(p []byte) {
			if b.Write(p); b.String() == "012" {
				end()
			}
		}))
		end()
		return status, kind, b.String()
	}
	for _, c := range []struct {
		q      Request
		status int
		says   string
	}{
		{Request{Address: "said?q=a%26b"}, 200, "GET a&b localhost  "},
		{Request{Address: "said?q=1", Posted: []byte("posted"), Token: "key"}, 200, "POST 1 localhost key posted"},
		{Request{Address: "flows"}, 200, "012"},
		{Request{Address: "elsewhere"}, 404, "nothing\n"},
		{Request{Address: "breaks"}, 500, "Something broke inside eighthturn. Please report it: oh"},
		{Request{Address: "%zz"}, 404, "There is nothing here.\n"},
	} {
		if status, _, said := ask(c.q); status != c.status || !strings.HasPrefix(said, c.says) {
			t.Errorf("%s: %d %q, want %d %q", c.q.Address, status, said, c.status, c.says)
		}
	}
}

type writer func([]byte)

func (w writer) Write(p []byte) (int, error) { w(p); return len(p), nil }
