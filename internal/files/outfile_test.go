package files

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// text is what writes one text.
func text(s string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, s)
		return err
	}
}

func ours(head []byte) bool { return bytes.Contains(head, []byte("made here")) }

// put makes a file and gives its path.
func put(t *testing.T, folder, name, content string) string {
	t.Helper()
	path := filepath.Join(folder, name)
	if err := os.WriteFile(path, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func info(t *testing.T, path string) os.FileInfo {
	t.Helper()
	i, err := os.Lstat(path)
	if err != nil {
		t.Fatal(err)
	}
	return i
}

func wantContent(t *testing.T, path, want string) {
	t.Helper()
	got, err := os.ReadFile(path)
	if err != nil || string(got) != want {
		t.Errorf("%s holds %q (%v), want %q", filepath.Base(path), got, err, want)
	}
}

// wantNothingUnfinished sees that no file is left behind.
func wantNothingUnfinished(t *testing.T, folder string) {
	t.Helper()
	list, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range list {
		if strings.HasPrefix(e.Name(), unfinished) {
			t.Errorf("%s was left behind", e.Name())
		}
	}
}

func TestNewFile(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "new.svg")
	if err := Write(path, Options{}, text("new")); err != nil {
		t.Fatal(err)
	}
	wantContent(t, path, "new")
	wantNothingUnfinished(t, folder)
	plain, err := os.OpenFile(filepath.Join(folder, "plain"), os.O_CREATE|os.O_WRONLY, 0o666)
	if err != nil {
		t.Fatal(err)
	}
	plain.Close()
	if got, want := info(t, path).Mode(), info(t, plain.Name()).Mode(); got != want {
		t.Errorf("a new file has mode %v, one made by plain means has %v", got, want)
	}
}

func TestReplacedFileKeepsItsMode(t *testing.T) {
	for _, mode := range []fs.FileMode{0o600, 0o640, 0o755, 0o666} {
		folder := t.TempDir()
		path := put(t, folder, "old.svg", "made here")
		if err := os.Chmod(path, mode); err != nil {
			t.Fatal(err)
		}
		if err := Write(path, Options{Ours: ours}, text("new")); err != nil {
			t.Fatal(err)
		}
		wantContent(t, path, "new")
		if got := info(t, path).Mode(); got != mode {
			t.Errorf("mode %v became %v", mode, got)
		}
		wantNothingUnfinished(t, folder)
	}
}

func TestOursByItsHeadAlone(t *testing.T) {
	folder := t.TempDir()
	for _, c := range []struct {
		name, content string
		force, want   bool
	}{
		{"at the start", "made here", false, true},
		{"just within the head", strings.Repeat("x", headBytes-len("made here")) + "made here", false, true},
		{"just beyond it", strings.Repeat("x", headBytes-len("made here")+1) + "made here", false, false},
		{"empty", "", false, false},
		{"someone's letter", "Dear Ottoline", false, false},
		{"someone's letter, forced", "Dear Ottoline", true, true},
	} {
		path := put(t, folder, c.name, c.content)
		err := Write(path, Options{Ours: ours, Force: c.force}, text("new"))
		if got := err == nil; got != c.want {
			t.Errorf("%s: replaced %v (%v), want %v", c.name, got, err, c.want)
		}
		if !c.want {
			wantReason(t, err, NotOurs)
			wantContent(t, path, c.content)
		}
	}
	wantNothingUnfinished(t, folder)
}

func wantReason(t *testing.T, err error, want Reason) {
	t.Helper()
	var r *Refusal
	if !errors.As(err, &r) || r.Reason != want {
		t.Errorf("got %v, want: %v", err, want)
	}
}

// Force overrules whose file it is, and nothing else but the mark that it may only be read.
func TestRefused(t *testing.T) {
	folder := t.TempDir()
	letter := put(t, folder, "letter", "Dear Ottoline")
	readOnly := put(t, folder, "read-only", "made here")
	if err := os.Chmod(readOnly, 0o444); err != nil {
		t.Fatal(err)
	}
	inner := filepath.Join(folder, "inner")
	if err := os.Mkdir(inner, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, path       string
		reason, ifForced Reason
	}{
		{"a folder", inner, IsFolder, IsFolder},
		{"a folder's path", inner + string(filepath.Separator), IsFolder, IsFolder},
		{"the path of a folder that is not there", filepath.Join(folder, "none") + string(filepath.Separator), NoFolder, NoFolder},
		{"this folder", ".", IsFolder, IsFolder},
		{"no such folder", filepath.Join(folder, "none", "new.svg"), NoFolder, NoFolder},
		{"a file for a folder", filepath.Join(letter, "new.svg"), NotFolder, NotFolder},
		{"a letter", letter, NotOurs, None},
		{"a file to be read only", readOnly, IsReadOnly, None},
	} {
		o := Options{Ours: ours}
		wantReason(t, Check(c.path, o), c.reason)
		wantReason(t, Write(c.path, o, text("new")), c.reason)
		o.Force = true
		if c.ifForced != None {
			wantReason(t, Write(c.path, o, text("new")), c.ifForced)
		} else if err := Write(c.path, o, text("new")); err != nil {
			t.Errorf("%s, forced: %v", c.name, err)
		}
	}
	wantNothingUnfinished(t, folder)
}

// withoutLinks ends a test that needs links: Windows alone may refuse them to users.
func withoutLinks(t *testing.T, err error) {
	t.Helper()
	if runtime.GOOS != "windows" {
		t.Fatal(err)
	}
	t.Skip("no links may be made here: ", err)
}

func TestLinksAreRefused(t *testing.T) {
	folder := t.TempDir()
	target := put(t, folder, "target", "made here")
	for name, to := range map[string]string{"file": target, "folder": folder, "nothing": filepath.Join(folder, "none")} {
		link := filepath.Join(folder, "link to "+name)
		if err := os.Symlink(to, link); err != nil {
			withoutLinks(t, err)
		}
		for _, force := range []bool{false, true} {
			wantReason(t, Write(link, Options{Ours: ours, Force: force}, text("new")), IsLink)
		}
		if info(t, link).Mode()&fs.ModeSymlink == 0 {
			t.Errorf("the link to %s is a link no more", name)
		}
	}
	wantContent(t, target, "made here")
}

func TestSourceIsNeverReplaced(t *testing.T) {
	folder := t.TempDir()
	source := put(t, folder, "made.quilt", "made here")
	other := filepath.Join(folder, "other name")
	if err := os.Link(source, other); err != nil {
		withoutLinks(t, err)
	}
	for _, path := range []string{source, other, filepath.Join(folder, ".", "made.quilt")} {
		for _, force := range []bool{false, true} {
			o := Options{Ours: ours, Force: force, Never: []os.FileInfo{info(t, put(t, t.TempDir(), "other.svg", "x")), info(t, source)}}
			wantReason(t, Write(path, o, text("new")), IsSource)
		}
	}
	wantContent(t, source, "made here")
	if err := Write(source, Options{Ours: ours}, text("new")); err != nil {
		t.Fatal(err)
	}
	wantContent(t, other, "made here") // the other name keeps the file that was replaced
}

func TestNamesOfUnfinishedFiles(t *testing.T) {
	folder := t.TempDir()
	seen := map[string]bool{}
	for range 20 {
		f, err := create(folder)
		if err != nil {
			t.Fatal(err)
		}
		f.Close()
		if filepath.Dir(f.Name()) != folder || seen[f.Name()] {
			t.Errorf("%s is in another folder or made twice", f.Name())
		}
		seen[f.Name()] = true
		if _, err := os.OpenFile(f.Name(), os.O_WRONLY|os.O_CREATE|os.O_EXCL, newFileMode); !os.IsExist(err) {
			t.Errorf("a file that is there was opened: %v", err)
		}
	}
}
