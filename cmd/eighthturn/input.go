package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"eighthturn/layout"
	"eighthturn/svgout"
)

// layoutEnding is how the names of layouts end, by custom; any other will do to read one.
const layoutEnding = ".quilt"

// layoutNames are the names that layouts are written under: their own, and that of any text.
func layoutNames() outputNames {
	return outputNames{what: "layout", endings: []string{layoutEnding, ".txt"}, example: "harbor"}
}

// stdio is the name that stands for standard input and standard output.
const stdio = "-"

// source is a layout as it was read.
type source struct {
	path string      // "" for standard input
	name string      // for messages
	info os.FileInfo // nil for standard input
	text string

	madeFrom []os.FileInfo // the layout's file and those of its photos, which nothing may replace
}

// read reads a layout from a file, from a pipe or from standard input.
func (c *console) read(file string) (*source, error) {
	if file == stdio {
		return c.readStandard()
	}
	s := &source{path: file, name: file}
	f, err := openLayout(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if s.info, err = f.Stat(); err != nil {
		return nil, unreadable(file, err)
	}
	if !s.info.Mode().IsRegular() {
		s.text, err = readPipe(f)
	} else {
		s.text, err = readAll(f)
	}
	if err != nil {
		return nil, unreadable(file, err)
	}
	s.madeFrom = []os.FileInfo{s.info}
	return s, s.isLayout()
}

func (c *console) readStandard() (*source, error) {
	s := &source{name: "standard input"}
	if isDevice(c.in) && terminal(c.err) {
		c.complain("", "type or paste the layout; press Control-D to end it\n")
	}
	var err error
	if s.text, err = readAll(c.in); err != nil {
		return nil, unreadable(s.name, err)
	}
	return s, s.isLayout()
}

// openLayout opens a file or a pipe, and nothing else. It does not wait for a pipe's other end.
func openLayout(file string) (*os.File, error) {
	info, err := os.Stat(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, noSuchFile(file)
	case err != nil:
		return nil, unreadable(file, err)
	case info.IsDir():
		return nil, &problem{faulty, file, "this is a folder, not a layout", layoutsIn(file)}
	case !readable(info.Mode()):
		return nil, &problem{faulty, file, "this is a device, not a layout", ""}
	}
	f, err := os.OpenFile(file, os.O_RDONLY|syscall.O_NONBLOCK, 0)
	if err != nil {
		return nil, unreadable(file, err)
	}
	if info, err := f.Stat(); err != nil || !readable(info.Mode()) { // it was changed in the meantime
		f.Close()
		return nil, &problem{faulty, file, "this file is gone", ""}
	}
	return f, nil
}

func readable(mode fs.FileMode) bool { return mode.IsRegular() || mode&fs.ModeNamedPipe != 0 }

// readAll reads all that a layout may have, and a byte more where there is more.
func readAll(r io.Reader) (string, error) {
	b, err := io.ReadAll(io.LimitReader(r, layout.MaxBytes+1))
	return string(b), err
}

// pipeTimeout is how long a pipe may stand without anyone who writes into it.
const pipeTimeout = 2 * time.Second

// readPipe reads a pipe that was opened without waiting: until its writer comes, it looks as if it were at its end.
func readPipe(f *os.File) (string, error) {
	for until := time.Now().Add(pipeTimeout); ; time.Sleep(20 * time.Millisecond) {
		text, err := readAll(f)
		if text != "" || err != nil {
			return text, err
		}
		if time.Now().After(until) {
			return "", errors.New("this pipe is empty")
		}
	}
}

// isLayout answers what cannot be a layout before anyone reads it as one.
func (s *source) isLayout() error {
	switch {
	case len(s.text) > layout.MaxBytes:
		return &problem{faulty, s.name, fmt.Sprintf("this is longer than a layout may be, %d MB", layout.MaxBytes>>20), "a layout is the text that you wrote; is this another file?"}
	case bytes.Contains([]byte(s.text[:min(len(s.text), 1000)]), []byte(svgout.Marker)):
		hint := "name the layout that it was drawn from"
		if layoutOfPicture := strings.TrimSuffix(s.path, filepath.Ext(s.path)) + layoutEnding; isFile(layoutOfPicture) {
			hint = didYouMean(layoutOfPicture)
		}
		return &problem{faulty, s.name, "this is a picture that eighthturn drew, not a layout", hint}
	}
	return nil
}

func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode().IsRegular()
}

// unreadable is a file that is there and cannot be read.
func unreadable(file string, err error) *problem {
	if errors.Is(err, fs.ErrPermission) {
		return &problem{faulty, file, "you may not read this file", "its owner can allow it"}
	}
	return &problem{faulty, file, systemText(err), ""}
}

// noSuchFile is a file that is not there, with the one that was meant, most likely.
func noSuchFile(file string) *problem {
	folder := filepath.Dir(file)
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return &problem{faulty, file, "there is no folder " + quoted(folder), ""}
	}
	hint := layoutsIn(folder)
	if near := nearest(filepath.Base(file), namesIn(folder)); near != "" {
		hint = didYouMean(filepath.Join(folder, near))
	} else if isFile(file + layoutEnding) {
		hint = didYouMean(file + layoutEnding)
	}
	return &problem{faulty, file, "there is no such file", hint}
}

// namesIn are the names of the files in a folder, of the first hundred in the order of the alphabet.
func namesIn(folder string) []string {
	list, _ := os.ReadDir(folder) // a folder that cannot be listed gives no hints
	var names []string
	for _, e := range list {
		if e.Type().IsRegular() && len(names) < 100 {
			names = append(names, e.Name())
		}
	}
	return names
}

// layoutsIn names the layouts in a folder for a hint, three of them at the most.
func layoutsIn(folder string) string {
	var names []string
	for _, name := range namesIn(folder) {
		if strings.HasSuffix(name, layoutEnding) {
			names = append(names, shellWord(filepath.Join(folder, name)))
		}
	}
	switch {
	case len(names) == 0:
		return ""
	case len(names) > 3:
		return "layouts there: " + strings.Join(names[:3], ", ") + ", …"
	}
	return "layouts there: " + strings.Join(names, ", ")
}
