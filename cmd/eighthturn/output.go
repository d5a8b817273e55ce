package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"eighthturn/internal/files"
)

// Options of every command that writes a file.
const (
	outputOption = "output"
	forceOption  = "force"
)

// target is where a command writes.
type target struct {
	path    string // stdio for standard output
	options files.Options
	what    string // it is, for messages: "picture"
	example string // a name it could have
	option  string // names the folder it goes into; "" where -o names the file
}

// another says how to write somewhere else.
func (t target) another() string {
	if t.option != "" {
		return "name another folder after " + t.option
	}
	return "give another name with -o"
}

// beside is a layout's name with another ending.
func beside(path, ending string) string {
	name := strings.TrimSuffix(path, filepath.Ext(path))
	if name == "" || os.IsPathSeparator(name[len(name)-1]) { // a name that is all ending
		name = path
	}
	return name + ending
}

// write writes the target whole or not at all.
func (c *console) write(t target, write func(io.Writer) error) error {
	if t.path == stdio {
		return standardOutput(write(c.out))
	}
	t.options.Unfinished = &c.unfinished
	if err := files.Write(t.path, t.options, write); err != nil {
		return t.problem(err)
	}
	return nil
}

// problem says why a file was not written and what to do.
func (t target) problem(err error) *problem {
	var refused *files.Refusal
	switch {
	case errors.As(err, &refused):
		message, hint := t.refusal(refused)
		return &problem{faulty, refused.Path, message, hint}
	case errors.Is(err, fs.ErrPermission):
		return &problem{faulty, t.path, "you may not make files in this folder", t.elsewhere()}
	}
	return &problem{faulty, t.path, systemText(err), ""}
}

// elsewhere says how to write into another folder.
func (t target) elsewhere() string {
	if t.option != "" {
		return t.another()
	}
	return "name a file in another folder with -o"
}

// isStream says whether a link is one of the system's names for what a program has open, as /dev/stdout.
func isStream(link string) bool {
	path, err := filepath.Abs(link)
	return err == nil && (strings.HasPrefix(path, "/dev/") || strings.HasPrefix(path, "/proc/"))
}

// refusal puts a refusal into words.
func (t target) refusal(r *files.Refusal) (message, hint string) {
	switch r.Reason {
	case files.IsLink:
		if to, err := os.Readlink(r.Path); t.option == "" && isStream(r.Path) {
			hint = "-o - writes to standard output"
		} else if err == nil {
			hint = "name the file itself: it leads to " + to
		}
		return "this is a link to another file, and nothing is written through it", hint
	case files.IsFolder:
		return "this is a folder", "name a file in it: -o " + shellWord(filepath.Join(r.Path, t.example))
	case files.IsDevice:
		return "this is a device or a pipe, not a file", "-o - writes to standard output"
	case files.IsSource:
		what := "a photo that the layout names"
		if there, err := os.Stat(r.Path); err == nil && os.SameFile(there, t.options.Never[0]) {
			what = "the layout itself"
		}
		return "this is " + what + ", and no " + t.what + " may replace it", "give the " + t.what + " another name with -o"
	case files.IsReadOnly:
		return "this file is read-only", t.another() + ", or add --force to replace it"
	case files.IsOthers:
		return "this file belongs to somebody else, and in this folder only they may replace it", t.another()
	case files.NotFileName:
		return "Windows takes this name for a device or for a part of a file", t.another() + ", without colons and other than CON, NUL or COM1"
	case files.NotOurs:
		message = "a file of this name already exists"
		if t.options.Ours != nil {
			message += ", and no " + t.what + " of eighthturn's"
		}
		return message, t.another() + ", or add --force to replace it"
	case files.NoFolder:
		return "there is no such folder", "make it first, or name another with -o"
	case files.NotFolder:
		return "this is a file, not a folder", "name a file in a folder with -o"
	}
	return r.Reason.String(), ""
}
