package main

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/samples/starters"
)

// FuzzCommand runs any command with any options, one a line, in a folder with a layout of any text: it ends with one of the exit codes, whatever fails
// says why in a sentence and leaves the folder as it was, nothing that was there is replaced unasked, and nothing on the screen is a
// terminal's own sign.
func FuzzCommand(f *testing.F) {
	text := starters.All()[0].Text
	for _, args := range []string{
		"draw\na.quilt\n-o\nb.png\n--pixels\n200", "draw\na.quilt\n--view\nvalue\n-o\n-", "check\na.quilt\n--json", "cuts\na.quilt\n--csv\n--copies\n2", "tidy\na.quilt\n--write",
		"palette\nrose.png\n--number\n3", "fit\na.quilt\n--bed\nqueen", "words\nkites", "palette\n--hue\nteal\n-o\nnew.gpl", "new\nweb\nb.quilt", "leftovers\na.quilt\n-o\nc.quilt",
		"sew\na.quilt\n--why", "values\na.quilt\n--try\nrust #123456", "templates\na.quilt\n-o\nt.dxf", "quilting\na.quilt\n-o\nq.svg", "audition\na.quilt\nwedges\nnavy\nred", "motifs\na.quilt\nrose",
		"draw\na.quilt\n-o\na.quilt\n--force", "cuts\na.quilt\n--usable-width\n1/0", "\x1b[2J", "check\na.quilt\x07",
	} {
		f.Add(args, text)
	}
	for _, text := range judges.Some(invent.Printed(), 1) {
		f.Add("check\na.quilt", text)
	}
	nothing, err := os.Open(os.DevNull)
	if err != nil {
		f.Fatal(err)
	}
	f.Cleanup(func() { nothing.Close() })
	photo, err := os.ReadFile(twoColours(f))
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, line, text string) {
		args := strings.Split(line, "\n")
		if len(line) > 300 || len(text) > 2000 || slices.ContainsFunc(args, leadsAway) {
			return // they serve, take long, or leave the folder
		}
		t.Chdir(t.TempDir())
		t.Setenv("NO_COLOR", "1")
		t.Setenv("TERM", "dumb")
		for name, content := range map[string]string{"a.quilt": text, "rose.png": string(photo)} {
			if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		before := inFolder(t)
		r := ranWith(t, nothing, args)
		if err := wrongRun(&r, args, before, inFolder(t)); err != nil {
			t.Errorf("%q: %v\n%.2000s%.2000s\n%s", args, err, r.out, r.err, text)
		}
	})
}

// away is a slash that may lead to other folders: not within a fraction, nor at the end of a folder's name.
var away = regexp.MustCompile(`(^|[^0-9])/|[~\\]|\.\.`)

func leadsAway(arg string) bool {
	if slices.Contains([]string{"preview", "site", "lsp", "booklet"}, arg) {
		return true
	}
	folder, is := strings.CutSuffix(arg, "/")
	return strings.ContainsRune(arg, 0) || away.MatchString(arg) && !(is && folder != "" && !away.MatchString(folder))
}

// inFolder are the files of the working folder with what they say.
func inFolder(t testing.TB) map[string]string {
	t.Helper()
	list := map[string]string{}
	err := filepath.WalkDir(".", func(path string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		b, err := os.ReadFile(path)
		list[path] = string(b)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// ranWith is what a run of the program in the working folder said, with standard input that is at its end.
func ranWith(t testing.TB, in *os.File, args []string) ran {
	t.Helper()
	folder := t.TempDir()
	var said [2]*os.File
	for i := range said {
		f, err := os.Create(filepath.Join(folder, fmt.Sprint(i)))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		said[i] = f
	}
	r := ran{code: run(args, &console{in: in, out: said[0], err: said[1]})}
	for i, to := range []*string{&r.out, &r.err} {
		b, err := os.ReadFile(said[i].Name())
		if err != nil {
			t.Fatal(err)
		}
		*to = string(b)
	}
	return r
}

// wrongRun says what of a run of the program is not as every run is.
func wrongRun(r *ran, args []string, before, after map[string]string) error {
	if r.code != done && r.code != faulty && r.code != misusing {
		return fmt.Errorf("the exit code is %d", r.code)
	}
	if r.code == misusing && !strings.Contains(r.err, ": error: ") || r.code != done && r.out+r.err == "" {
		return fmt.Errorf("exit code %d, and nothing says why", r.code)
	}
	if r.code != done && !maps.Equal(before, after) {
		return fmt.Errorf("exit code %d, and the folder has %q", r.code, slices.Sorted(maps.Keys(after)))
	}
	asked := slices.ContainsFunc(args, func(a string) bool {
		return strings.HasPrefix(a, "--force") || strings.HasPrefix(a, "-") && strings.Contains(a, "f") || a == "tidy"
	})
	for name, content := range before {
		if after[name] != content && !asked {
			return fmt.Errorf("%s is another, unasked", name)
		}
	}
	raw := slices.ContainsFunc(args, func(a string) bool { return strings.HasPrefix(a, "-") && strings.HasSuffix(a, "-") || a == "-" }) // a picture goes there
	for what, said := range map[string]string{"standard output": r.out, "standard error": r.err} {
		if raw && what == "standard output" {
			continue
		}
		sign := strings.IndexFunc(said, func(c rune) bool { return unicode.IsControl(c) && c != '\n' && c != '\t' && c != '\r' })
		if sign >= 0 || !utf8.ValidString(said) {
			return fmt.Errorf("%s has a sign for terminals, or no text", what)
		}
	}
	return nil
}

// TestWrongRunIsNoticed: a file that is left behind, one that is replaced, a refusal without words, a sign for terminals.
func TestWrongRunIsNoticed(t *testing.T) {
	was := map[string]string{"a.quilt": "a"}
	more := map[string]string{"a.quilt": "a", "b.svg": ""}
	if err := wrongRun(&ran{code: misusing, err: "eighthturn: error: no"}, []string{"x"}, was, was); err != nil {
		t.Error(err)
	}
	for i, r := range []ran{{code: 3, err: "x"}, {code: misusing, err: "no"}, {code: faulty}, {code: done, out: "\x1b[2J"}, {code: done, out: "\xff"}} {
		if wrongRun(&r, []string{"x"}, was, was) == nil {
			t.Errorf("%d: %+v goes through", i, r)
		}
	}
	if wrongRun(&ran{code: faulty, err: "a.quilt: error: x"}, []string{"x"}, was, more) == nil || wrongRun(&ran{}, []string{"draw"}, was, map[string]string{"a.quilt": "b"}) == nil {
		t.Error("a folder that is changed goes through")
	}
	for _, arg := range []string{"/tmp", "preview", "-o/tmp/a", "--o=/a", "../a", "a/b", "~/a", "/", "a/../"} {
		if !leadsAway(arg) {
			t.Errorf("%q does not lead away", arg)
		}
	}
	for _, arg := range []string{"1/2", "3 1/4 in", "folder/", "a.quilt"} {
		if leadsAway(arg) {
			t.Errorf("%q leads away", arg)
		}
	}
}
