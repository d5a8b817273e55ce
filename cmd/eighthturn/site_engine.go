package main

import (
	"bytes"
	"compress/gzip"
	"errors"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"eighthturn/internal/preview"
)

// startName is the script by which the engine's language starts it in a browser, as it comes with the language.
const startName = "wasm_exec.js"

// engine is the part that browsers run: of the folder that is named, else of that which came with the program, else built where this is
// the program's own source.
func (c *console) engine(folder string) (*preview.Engine, error) {
	if folder != "" {
		return engineIn(folder)
	}
	for _, folder := range engineFolders() {
		if _, err := os.Stat(filepath.Join(folder, preview.EngineName)); err == nil {
			return engineIn(folder)
		}
	}
	root, goes := sourceTree()
	if !goes {
		return nil, &problem{faulty, "eighthturn site", "the engine, the part that browsers run, is not beside this program",
			"take the folder engine out of the archive that eighthturn came in, and name it with --" + engineOption}
	}
	_, _ = io.WriteString(c.err, "building the engine …\n") // nothing is lost where that is not seen
	return builtEngine(root)
}

// engineFolders are where installers put the engine: beside the program, or where systems keep what programs share.
func engineFolders() []string {
	own, err := os.Executable()
	if err != nil {
		return nil
	}
	if whole, err := filepath.EvalSymlinks(own); err == nil {
		own = whole
	}
	beside := filepath.Dir(own)
	return []string{filepath.Join(beside, "engine"), filepath.Join(beside, "..", "share", "eighthturn", "engine")}
}

// engineIn reads the engine in a folder.
func engineIn(folder string) (*preview.Engine, error) {
	const hint = "name the folder engine of the archive that eighthturn came in"
	e := &preview.Engine{}
	for _, part := range []struct {
		name    string
		content *[]byte
	}{{preview.EngineName, &e.Packed}, {startName, &e.Start}, {preview.LicensesName, &e.Licenses}} {
		b, err := os.ReadFile(filepath.Join(folder, part.name))
		switch {
		case errors.Is(err, fs.ErrNotExist) && part.name == preview.LicensesName:
		case errors.Is(err, fs.ErrNotExist):
			return nil, &problem{faulty, folder, "there is no engine in this folder: it has no " + part.name, hint}
		case err != nil:
			return nil, &problem{faulty, filepath.Join(folder, part.name), systemText(err), hint}
		}
		*part.content = b
	}
	if err := e.Check(); err != nil {
		return nil, &problem{faulty, filepath.Join(folder, preview.EngineName), err.Error(), hint}
	}
	return e, nil
}

// sourceTree is the folder of the program's own source that this folder lies in, and whether it can be built here.
func sourceTree() (root string, goes bool) {
	if _, err := exec.LookPath("go"); err != nil {
		return "", false
	}
	folder, err := os.Getwd()
	for err == nil {
		if b, err := os.ReadFile(filepath.Join(folder, "go.mod")); err == nil {
			return folder, strings.HasPrefix(string(b), "module eighthturn\n")
		}
		if filepath.Dir(folder) == folder {
			break
		}
		folder = filepath.Dir(folder)
	}
	return "", false
}

// builtEngine builds the engine from its source, as releases are built.
func builtEngine(root string) (*preview.Engine, error) {
	within, err := os.MkdirTemp("", "eighthturn-engine-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(within)
	run := func(arguments ...string) (string, error) {
		cmd := exec.Command("go", arguments...)
		cmd.Dir, cmd.Env = root, append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
		var said bytes.Buffer
		cmd.Stderr = &said
		out, err := cmd.Output()
		if err != nil {
			return "", &problem{faulty, root, "the engine cannot be built: " + strings.TrimSpace(said.String()), "see that go build ./... works here"}
		}
		return strings.TrimSpace(string(out)), nil
	}
	made := filepath.Join(within, "engine.wasm")
	if _, err := run("build", "-trimpath", "-gcflags", "all=-l", "-ldflags", "-s -w", "-o", made, "./cmd/engine"); err != nil {
		return nil, err
	}
	goroot, err := run("env", "GOROOT")
	if err != nil {
		return nil, err
	}
	e := &preview.Engine{}
	if e.Start, err = os.ReadFile(filepath.Join(goroot, "lib", "wasm", startName)); err != nil {
		return nil, &problem{faulty, goroot, "this Go has no " + startName, "use the version of Go that go.mod names"}
	}
	plain, err := os.ReadFile(made)
	if err != nil {
		return nil, err
	}
	var packed bytes.Buffer
	w, _ := gzip.NewWriterLevel(&packed, gzip.BestCompression) // it is a level
	if _, err := w.Write(plain); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	e.Packed = packed.Bytes()
	return e, nil
}
