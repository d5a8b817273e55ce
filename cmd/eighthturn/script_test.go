package main

import (
	"bytes"
	"eighthturn/internal/render"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"eighthturn/internal/quilttest/golden"
)

// TestMain lets scripts start the program with exec; it is this test program under another name.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"eighthturn": main})
}

const scripts = "../../testdata/script"

// TestScripts runs the scripts. The option -update writes what the program says into those that compare it.
func TestScripts(t *testing.T) {
	golden.Watch(t, scripts)
	folder, err := filepath.Abs(scripts) // what runs in this process changes the working folder
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 folder,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       golden.Updating(t),
		Setup: func(e *testscript.Env) error {
			e.Setenv("NO_COLOR", "")
			e.Setenv("TERM", "dumb")
			return nil
		},
		Condition: condition,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"run": runCommand, "code": codeCommand, "json": jsonCommand, "width": widthCommand, "plain": plainCommand,
		},
	})
}

// condition adds [root]: the user to whom modes do not apply.
func condition(name string) (bool, error) {
	if name == "root" {
		return os.Geteuid() == 0, nil
	}
	return false, fmt.Errorf("no condition is called %q", name)
}

// one is held by what runs in this process: the working folder and the environment are those of one script.
var one sync.Mutex

// here runs the program in this process, in a script's folder and environment, and gives its exit code. A start of its own, by
// exec, takes several times as long as most commands do; those that read standard input or meet signals have it.
func here(ts *testscript.TestScript, args []string) int {
	one.Lock()
	defer one.Unlock()
	before, err := os.Getwd()
	ts.Check(err)
	ts.Check(os.Chdir(ts.MkAbs(".")))
	defer func() { ts.Check(os.Chdir(before)) }()
	for _, name := range []string{"NO_COLOR", "TERM"} {
		was := os.Getenv(name)
		ts.Check(os.Setenv(name, ts.Getenv(name)))
		defer func() { ts.Check(os.Setenv(name, was)) }()
	}
	nothing, err := os.Open(os.DevNull)
	ts.Check(err)
	defer nothing.Close()
	c := &console{in: nothing}
	var said sync.WaitGroup
	for _, end := range []struct {
		to   io.Writer
		from **os.File
	}{{ts.Stdout(), &c.out}, {ts.Stderr(), &c.err}} {
		heard, written, err := os.Pipe()
		ts.Check(err)
		*end.from = written
		said.Go(func() {
			_, _ = io.Copy(end.to, heard) // a pipe can always be read
			heard.Close()
		})
	}
	code := run(args, c)
	c.out.Close()
	c.err.Close()
	said.Wait()
	return code
}

// runCommand runs the program in this process, where it must end well: run eighthturn draw harbor.quilt
func runCommand(ts *testscript.TestScript, not bool, args []string) {
	if len(args) == 0 || args[0] != "eighthturn" {
		ts.Fatalf("usage: run eighthturn ARGUMENT …")
	}
	if code := here(ts, args[1:]); (code != done) != not {
		ts.Fatalf("exit code %d", code)
	}
}

// codeCommand runs a program that must end with the exit code: code 2 eighthturn draw; eighthturn runs in this process, but
// behind exec.
func codeCommand(ts *testscript.TestScript, not bool, args []string) {
	if not || len(args) < 2 {
		ts.Fatalf("usage: code NUMBER [exec] PROGRAM ARGUMENT …")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	command := args[1:]
	if command[0] == "eighthturn" {
		if got := here(ts, command[1:]); got != want {
			ts.Fatalf("exit code %d, want %d", got, want)
		}
		return
	}
	if command[0] == "exec" {
		command = command[1:]
	}
	got := 0
	if err := ts.Exec(command[0], command[1:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// jsonCommand looks into a report that the last program wrote: json quilt.borders.0.fabric rust
func jsonCommand(ts *testscript.TestScript, not bool, args []string) {
	if len(args) != 2 {
		ts.Fatalf("usage: json PATH VALUE")
	}
	text := ts.ReadFile("stdout")
	var value any
	decoder := json.NewDecoder(strings.NewReader(text))
	decoder.UseNumber()
	ts.Check(decoder.Decode(&value))
	for _, step := range strings.Split(args[0], ".") {
		value = into(ts, value, step)
	}
	got := fmt.Sprint(value)
	if (got == args[1]) == not {
		ts.Fatalf("%s is %q, want %q (not: %v)", args[0], got, args[1], not)
	}
}

// into is one step into a value: a name, a number in a list, or its length.
func into(ts *testscript.TestScript, value any, step string) any {
	switch v := value.(type) {
	case map[string]any:
		inner, ok := v[step]
		if !ok {
			ts.Fatalf("nothing is called %q", step)
		}
		return inner
	case []any:
		if step == "length" {
			return len(v)
		}
		i, err := strconv.Atoi(step)
		if err != nil || i >= len(v) {
			ts.Fatalf("no entry %q in a list of %d", step, len(v))
		}
		return v[i]
	}
	ts.Fatalf("nothing lies behind %q", step)
	return nil
}

// widthCommand sees that no line of a file is wider than a terminal: width stdout 80
func widthCommand(ts *testscript.TestScript, not bool, args []string) {
	if not || len(args) != 2 {
		ts.Fatalf("usage: width FILE COLUMNS")
	}
	most, err := strconv.Atoi(args[1])
	ts.Check(err)
	for _, line := range strings.Split(ts.ReadFile(args[0]), "\n") {
		if n := render.Columns(line); n > most {
			ts.Fatalf("%d columns: %s", n, line)
		}
	}
}

// plainCommand sees that nothing in a file steers a terminal: plain stderr
func plainCommand(ts *testscript.TestScript, not bool, args []string) {
	if len(args) != 1 {
		ts.Fatalf("usage: plain FILE")
	}
	text := ts.ReadFile(args[0])
	if plain := render.Harmless(text) == text && !bytes.ContainsRune([]byte(text), '\r'); plain == not {
		ts.Fatalf("plain: %v", plain)
	}
}
