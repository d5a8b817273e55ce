package preview

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// saveStyle is a way in which editors and tools put new text into a file.
type saveStyle struct {
	name  string
	save  func(t testing.TB, file, text string)
	takes time.Duration // with its pauses, where it has any
	// prepare makes the file what the style needs before the first save, if that is more
	// than an ordinary file.
	prepare func(t testing.TB, file, text string)
}

// saveStyles are the ways of saving on systems like this one. Which editor uses which is
// common knowledge among their users, without a source.
func saveStyles() []saveStyle {
	return []saveStyle{
		{name: "in place", save: func(t testing.TB, file, text string) { put(t, file, text) }},
		{name: "new file renamed over", save: renameOver("quilt-new.tmp")},
		{name: "hidden new file renamed over", save: renameOver(".goutputstream-ABC123")},
		{name: "renamed away, then over", save: func(t testing.TB, file, text string) {
			put(t, file+"___new___", text)
			must(t, os.Rename(file, file+"___old___"))
			must(t, os.Rename(file+"___new___", file))
			must(t, os.Remove(file+"___old___"))
		}},
		{name: "backup dance", takes: 6 * time.Millisecond, save: backupDance},
		{name: "lock link and backup copy", save: lockAndBackup},
		{name: "swap file beside it", save: func(t testing.TB, file, text string) {
			swap := filepath.Join(filepath.Dir(file), "."+filepath.Base(file)+".swp")
			put(t, swap, "what is being typed")
			put(t, file, text)
			must(t, os.Remove(swap))
		}},
		{name: "backup beside it, in place", save: func(t testing.TB, file, text string) {
			old, err := os.ReadFile(file)
			must(t, err)
			put(t, file+".bck", string(old))
			put(t, file, text)
			must(t, os.Remove(file+".bck"))
		}},
		{name: "deleted and written anew", takes: 101 * time.Millisecond, save: func(t testing.TB, file, text string) {
			must(t, os.Remove(file))
			time.Sleep(100 * time.Millisecond)
			put(t, file, text)
		}},
		{name: "in pieces", takes: time.Duration(len(lanterns)/64+1) * 1200 * time.Microsecond, save: inPieces},
		{name: "half, a pause, the rest", takes: 101 * time.Millisecond, save: func(t testing.TB, file, text string) {
			f, err := os.Create(file)
			must(t, err)
			_, err = f.WriteString(text[:len(text)/2])
			must(t, err)
			time.Sleep(100 * time.Millisecond)
			_, err = f.WriteString(text[len(text)/2:])
			must(t, err)
			must(t, f.Close())
		}},
		{name: "written over, then cut", save: func(t testing.TB, file, text string) {
			f, err := os.OpenFile(file, os.O_WRONLY, 0)
			must(t, err)
			_, err = f.WriteString(text)
			must(t, err)
			must(t, f.Truncate(int64(len(text))))
			must(t, f.Close())
		}},
		{name: "through a map of memory's dates: old time restored", save: func(t testing.TB, file, text string) {
			old := time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC)
			put(t, file+".co", text)
			must(t, os.Chtimes(file+".co", old, old))
			must(t, os.Rename(file+".co", file))
		}},
		{name: "many events", save: func(t testing.TB, file, text string) {
			put(t, file, text)
			for range 5 {
				must(t, os.Chmod(file, 0o600))
				must(t, os.Chmod(file, 0o644))
				put(t, file, text)
			}
		}},
		{name: "link to a file elsewhere", prepare: linkElsewhere, save: func(t testing.TB, file, text string) {
			target, err := os.Readlink(file)
			must(t, err)
			put(t, target, text)
		}},
		{name: "link to a file elsewhere, renamed over there", prepare: linkElsewhere, save: func(t testing.TB, file, text string) {
			target, err := os.Readlink(file)
			must(t, err)
			renameOver("new")(t, target, text)
		}},
		{name: "link turned to another file", prepare: linkElsewhere, save: func(t testing.TB, file, text string) {
			other := filepath.Join(t.TempDir(), "other.quilt")
			put(t, other, text)
			must(t, os.Symlink(other, file+".new"))
			must(t, os.Rename(file+".new", file))
		}},
		{name: "folder behind two links swapped", prepare: func(t testing.TB, file, text string) { swapFolder(t, file, text) }, save: swapFolder},
		{name: "through a second name", prepare: func(t testing.TB, file, text string) {
			put(t, file, text)
			must(t, os.Link(file, filepath.Join(filepath.Dir(file), "..", filepath.Base(filepath.Dir(file))+"-second")))
		}, save: func(t testing.TB, file, text string) {
			put(t, filepath.Join(filepath.Dir(file), "..", filepath.Base(filepath.Dir(file))+"-second"), text)
		}},
		{name: "folder moved away and made anew", save: func(t testing.TB, file, text string) {
			folder := filepath.Dir(file)
			must(t, os.Rename(folder, folder+fmt.Sprint("-old", time.Now().UnixNano())))
			must(t, os.Mkdir(folder, 0o755))
			put(t, file, text)
		}},
	}
}

func renameOver(name string) func(t testing.TB, file, text string) {
	return func(t testing.TB, file, text string) {
		temporary := filepath.Join(filepath.Dir(file), name)
		put(t, temporary, text)
		must(t, os.Rename(temporary, file))
	}
}

// backupDance tries the folder with a throw-away file, keeps the old text under another name
// and writes a new file.
func backupDance(t testing.TB, file, text string) {
	probe := filepath.Join(filepath.Dir(file), "4913")
	put(t, probe, "")
	must(t, os.Remove(probe))
	must(t, os.Rename(file, file+"~"))
	time.Sleep(5 * time.Millisecond)
	put(t, file, text)
	must(t, os.Remove(file+"~"))
}

// lockAndBackup keeps a link to nowhere beside the file while it is written.
func lockAndBackup(t testing.TB, file, text string) {
	lock := filepath.Join(filepath.Dir(file), ".#"+filepath.Base(file))
	must(t, os.Symlink("somebody@somewhere.1234:5678", lock))
	old, err := os.ReadFile(file)
	must(t, err)
	put(t, file+"~", string(old))
	put(t, file, text)
	must(t, os.Remove(lock))
}

func inPieces(t testing.TB, file, text string) {
	f, err := os.Create(file)
	must(t, err)
	for len(text) > 0 {
		n := min(64, len(text))
		_, err := f.WriteString(text[:n])
		must(t, err)
		text = text[n:]
		time.Sleep(time.Millisecond)
	}
	must(t, f.Close())
}

func linkElsewhere(t testing.TB, file, text string) {
	target := filepath.Join(t.TempDir(), "target.quilt")
	put(t, target, text)
	must(t, os.RemoveAll(file))
	must(t, os.Symlink(target, file))
}

// swapFolder is how containers give out new settings: file → ..data/file, ..data → a folder
// that is made anew each time.
func swapFolder(t testing.TB, file, text string) {
	folder, name := filepath.Dir(file), filepath.Base(file)
	fresh, err := os.MkdirTemp(folder, "..made")
	must(t, err)
	put(t, filepath.Join(fresh, name), text)
	must(t, os.Symlink(filepath.Base(fresh), filepath.Join(folder, "..data_new")))
	must(t, os.Rename(filepath.Join(folder, "..data_new"), filepath.Join(folder, "..data")))
	if _, err := os.Readlink(file); err != nil {
		must(t, os.RemoveAll(file))
		must(t, os.Symlink(filepath.Join("..data", name), file))
	}
}

// TestEverySaveStyle saves three times in each style, with events and without: each save is one revision, and it is shown within a
// second. Where the machine held up the save itself, what stood in the file meanwhile may be shown before, and nothing is timed.
func TestEverySaveStyle(t *testing.T) {
	for _, deaf := range []bool{false, true} {
		for _, s := range saveStyles() {
			t.Run(fmt.Sprintf("%s/events %v", s.name, !deaf), func(t *testing.T) {
				t.Parallel()
				folder := filepath.Join(t.TempDir(), "quilts")
				must(t, os.Mkdir(folder, 0o755))
				file := filepath.Join(folder, "quilt.quilt")
				put(t, file, titled("save 0"))
				if s.prepare != nil {
					s.prepare(t, file, titled("save 0"))
				}
				r := startOn(t, file, Options{NoEvents: deaf})
				r.next()
				for n := range 3 {
					title := fmt.Sprintf("save %d%s", n+1, strings.Repeat("!", n*20))
					began := time.Now()
					s.save(t, file, titled(title))
					saved := time.Now()
					heldUp := saved.Sub(began) > s.takes+heldUpFrom
					got := r.next()
					for heldUp && !got.shows(titled(title)) {
						got = r.next()
					}
					if !got.shows(titled(title)) {
						t.Fatalf("save %d (begun %v ago, done in %v) shows %q: %s", n+1, time.Since(began), saved.Sub(began), got.titleShown(), got.line(got.timings))
					}
					if late := time.Since(saved); late > time.Second+slack && !heldUp {
						t.Errorf("save %d was shown %v after it", n+1, late)
					}
				}
				r.nothing(400 * time.Millisecond)
			})
		}
	}
}

// slack is what a busy machine may take longer.
const slack = time.Second

// heldUpFrom is how much longer a save takes where the machine held it up: as long as the preview waits for more of a text that
// reads well.
const heldUpFrom = quietGood

// TestFalseAlarms changes everything about a file but its text: nothing new is shown.
func TestFalseAlarms(t *testing.T) {
	t.Parallel()
	r := start(t, lanterns, Options{})
	r.next()
	beside := filepath.Join(filepath.Dir(r.file), "other.quilt")
	must(t, os.Chmod(r.file, 0o600))
	must(t, os.Chtimes(r.file, time.Now(), time.Now()))
	put(t, r.file, lanterns)
	put(t, beside, titled("another"))
	must(t, os.Rename(beside, beside+"~"))
	r.nothing(700 * time.Millisecond)
}

// TestSameSizeWithinASecond: neither the size nor the date tells these two apart.
func TestSameSizeWithinASecond(t *testing.T) {
	t.Parallel()
	r := start(t, titled("Stan"), Options{NoEvents: true})
	r.next()
	at := time.Date(2020, 2, 2, 2, 2, 2, 0, time.UTC)
	for _, title := range []string{"Stun", "Stan", "Sten"} {
		put(t, r.file, titled(title))
		must(t, os.Chtimes(r.file, at, at))
		if got := r.next(); got.titleShown() != title {
			t.Fatalf("shown %q, saved %q", got.titleShown(), title)
		}
	}
}

// TestDeletedAndBack: a missing file is told after a while, the picture stays, and the file
// is taken up again when it is back, faulty or not.
func TestDeletedAndBack(t *testing.T) {
	t.Parallel()
	for _, deaf := range []bool{false, true} {
		r := start(t, lanterns, Options{NoEvents: deaf})
		first := r.next()
		must(t, os.Remove(r.file))
		gone := r.next()
		if !strings.Contains(gone.problem, "does not exist") || gone.picture != first.picture {
			t.Fatalf("after the file went: %s", gone.line(gone.timings))
		}
		put(t, r.file, strings.Replace(lanterns, "cream", "craem", 1))
		if bad := r.next(); bad.errors == 0 || bad.picture != first.picture {
			t.Fatalf("after it came back with a fault: %s", bad.line(bad.timings))
		}
		put(t, r.file, titled("mended"))
		if good := r.next(); good.titleShown() != "mended" || good.errors != 0 || good.problem != "" {
			t.Fatalf("after it was mended: %s", good.line(good.timings))
		}
	}
}

// TestFollowsTheName: a file renamed away is no longer followed, whatever is written to it.
func TestFollowsTheName(t *testing.T) {
	t.Parallel()
	r := start(t, lanterns, Options{})
	r.next()
	must(t, os.Rename(r.file, r.file+".away"))
	if gone := r.next(); gone.problem == "" {
		t.Fatal("the file is gone and nothing says so")
	}
	put(t, r.file+".away", titled("away"))
	r.nothing(700 * time.Millisecond)
	put(t, r.file, titled("back"))
	if got := r.next(); got.titleShown() != "back" {
		t.Fatalf("shown %q", got.titleShown())
	}
}

// TestUnfitFiles: what cannot be a layout is told, without waiting for it or reading it all.
func TestUnfitFiles(t *testing.T) {
	t.Parallel()
	for name, make := range map[string]func(file string) error{
		"folder":        func(f string) error { return os.Mkdir(f, 0o755) },
		"circle":        func(f string) error { return os.Symlink(filepath.Base(f), f) },
		"link to none":  func(f string) error { return os.Symlink("nowhere", f) },
		"not ordinary":  func(f string) error { return os.Symlink("/dev/zero", f) },
		"pipe":          makePipe,
		"far too large": func(f string) error { return os.WriteFile(f, nil, 0o644) },
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			file := filepath.Join(t.TempDir(), "a.quilt")
			must(t, make(file))
			if name == "far too large" {
				must(t, os.Truncate(file, 5<<30)) // a hole of five gigabytes
			}
			r := startOn(t, file, Options{})
			if got := r.next(); got.problem == "" {
				t.Fatalf("nothing is said: %s", got.line(got.timings))
			}
			must(t, os.RemoveAll(file))
			put(t, file, titled("a layout at last"))
			for got := r.next(); got.titleShown() != "a layout at last"; got = r.next() {
				if got.problem == "" {
					t.Fatalf("shown: %s", got.line(got.timings))
				}
			}
		})
	}
}

// TestHalfNeverFinished: a text that breaks off is shown with its fault after a while.
func TestHalfNeverFinished(t *testing.T) {
	t.Parallel()
	r := start(t, lanterns, Options{})
	r.next()
	put(t, r.file, lanterns[:len(lanterns)/3])
	if got := r.next(); got.errors == 0 {
		t.Fatalf("half a layout: %s", got.line(got.timings))
	}
	put(t, r.file, "")
	if got := r.next(); got.errors == 0 || got.picture == nil {
		t.Fatalf("an empty layout: %s", got.line(got.timings))
	}
	put(t, r.file, lanterns)
	if got := r.next(); got.errors != 0 {
		t.Fatalf("the whole of it again: %s", got.line(got.timings))
	}
}
