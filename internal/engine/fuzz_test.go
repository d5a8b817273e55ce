package engine

import (
	"archive/zip"
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"eighthturn/internal/files"
)

// FuzzTake hands any files to a folder, as they are and packed in a zip file: nothing that is there is replaced, what is taken has its own
// bytes under a name that any system has files of, what is left says why, and all of it goes out and comes in again.
func FuzzTake(f *testing.F) {
	for _, name := range []string{"a.quilt", "x/b.quilt", `c\..\d.QUILT`, "blue.PNG", ".quilt", "con.quilt", "a.doc", "..", "e\u202e.quilt", "\xff.jpg"} {
		f.Add(name, []byte("side 6\n"), "a.quilt", []byte("other"))
	}
	packed := zipped(f, map[string]string{"a.quilt": "side 5", "x/blue.png": photo(f), "torn.jpg": "\xff\xd8\xff"})
	f.Add("blue.png", []byte(photo(f)), "all.zip", packed)
	f.Add("all.zip", packed[:len(packed)-9], "A.ZIP", bytes.Replace(packed, []byte("torn.jpg"), []byte("../.jpg"), -1))
	f.Fuzz(func(t *testing.T, name string, content []byte, other string, rest []byte) {
		if len(content)+len(rest) > 1<<15 || bytes.Contains(content, []byte("PK")) && bytes.Contains(rest, []byte("PK")) {
			return
		}
		s := newStore()
		h, unkept := s.page()
		if err := h.Create("a.quilt", "mine"); err != nil {
			t.Fatal(err)
		}
		told := []Taken{h.Take(name, content), h.Take(other, rest)}
		if utf8.ValidString(name) && utf8.ValidString(other) { // zip has no other names
			told = append(told, h.Take("both.zip", bothZipped(t, name, content, other, rest)))
		}
		for _, err := range []error{wrongTaken(h, told), wrongAgain(h)} {
			if err != nil {
				t.Error(err)
			}
		}
		if len(unkept) > 0 || len(s.files) != len(h.List("")) {
			t.Errorf("%q are not kept, %d of %d are", unkept, len(s.files), len(h.List("")))
		}
	})
}

func bothZipped(t testing.TB, name string, content []byte, other string, rest []byte) []byte {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for i, n := range []string{name, other} {
		f, err := w.Create(n)
		if err == nil && !strings.HasSuffix(n, "/") {
			_, err = f.Write([][]byte{content, rest}[i])
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

// wrongTaken says what of a folder into which files were taken is not as was told.
func wrongTaken(h *Held, told []Taken) error {
	if says(h, "a.quilt") != "mine" {
		return fmt.Errorf("a.quilt now says %q", says(h, "a.quilt"))
	}
	known := []string{"a.quilt"}
	for _, t := range told {
		known = append(known, t.Taken...)
		for _, l := range t.Left {
			if !strings.HasSuffix(l.Why, ".") || !utf8.ValidString(l.Name) || strings.ContainsAny(l.Name, "\n\r\x1b") {
				return fmt.Errorf("%q is left: %q", l.Name, l.Why)
			}
		}
	}
	for _, e := range h.List("") {
		if n := e.Name(); !slices.Contains(known, n) || !files.IsFileName(n) || strings.ContainsAny(n, `/\`) || !utf8.ValidString(n) {
			return fmt.Errorf("a file %q, told were %q", n, known)
		}
	}
	for _, n := range known {
		if h.file(n) == nil {
			return fmt.Errorf("%q was taken, and is not there", n)
		}
	}
	return nil
}

// wrongAgain says what of a folder is lost when it goes out as a zip file and comes in elsewhere.
func wrongAgain(h *Held) error {
	all, err := h.Zip()
	if err != nil {
		return err
	}
	next, _ := newStore().page()
	if got := next.Take("all.zip", all); len(got.Left) > 0 || len(got.Taken) != len(h.List("")) {
		return fmt.Errorf("of %d files %q came in again", len(h.List("")), got)
	}
	for _, e := range h.List("") {
		if !bytes.Equal(h.content(e.Name()), next.content(e.Name())) {
			return fmt.Errorf("%q comes in as other bytes", e.Name())
		}
	}
	return nil
}

// TestWrongTakenIsNoticed: a file that is replaced, one that nobody was told of, one that is not there, and one without a reason.
func TestWrongTakenIsNoticed(t *testing.T) {
	for name, told := range map[string][]Taken{
		"a.quilt": {{Taken: []string{"gone.quilt"}}}, "b.quilt": nil, "aux.quilt": {{Taken: []string{"aux.quilt"}}}, `x\c.quilt`: {{Taken: []string{`x\c.quilt`}}}, "mine": {{Left: []Left{{"x", "no"}}}},
	} {
		h, _ := newStore().page()
		if err := h.Create("a.quilt", "mine"); err != nil {
			t.Fatal(err)
		}
		h.Hold(name, []byte("mine"), "7")
		if wrongTaken(h, told) == nil {
			t.Errorf("%s, told %q, goes through", name, told)
		}
	}
	h, _ := newStore().page()
	h.Hold("c.doc", nil, "1")
	h.Hold("c.doc", []byte("x"), "2")
	if wrongAgain(h) == nil {
		t.Error("a file that does not come in again is not noticed")
	}
}
