package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"sync/atomic"
	"syscall"

	"eighthturn/internal/files"
	"eighthturn/layout"
)

// console is where the program reads and writes.
type console struct {
	in, out, err *os.File
	failed       error // of help, which cannot return one

	unfinished files.Unfinished // what is being written
	ends       bool             // with the program, when somebody asks for that
	endsItself atomic.Bool      // once, when somebody asks the program to end
}

// Exit codes.
const (
	done     = 0
	faulty   = 1 // faults in a layout, or a file that cannot be read or written
	misusing = 2 // an unknown command or option, a bad value, no file named
)

// problem is what stops a command: one sentence, and what to type instead.
type problem struct {
	code          int
	where         string // the command or the file
	message, hint string
}

func (p *problem) Error() string { return p.message }

// misuse is a problem with what was typed.
func misuse(command, message, hint string) *problem {
	return &problem{misusing, command, message, hint}
}

// reported ends a command whose problems were all shown.
type reported struct{ code int }

func (*reported) Error() string { return "reported" }

// show writes a problem to standard error in the form that faults have.
func (c *console) show(p *problem) {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: error: %s\n", layout.Visible(p.where), layout.Visible(p.message))
	if p.hint != "" {
		fmt.Fprintf(&b, "       %s\n", layout.Visible(p.hint))
	}
	c.complain(p.where, b.String())
}

// complain writes messages of a place to standard error; where that is a terminal the severities stand out.
func (c *console) complain(where, text string) {
	if terminal(c.err) && os.Getenv("NO_COLOR") == "" {
		text = emphasised(layout.Visible(where), text)
	}
	_, _ = io.WriteString(c.err, text) // there is nowhere left to complain
}

// terminal says whether a file is a terminal that understands emphasis.
func terminal(f *os.File) bool {
	switch os.Getenv("TERM") {
	case "", "dumb":
		return false
	}
	return isDevice(f)
}

// isDevice says whether a file is a terminal or another device.
func isDevice(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&fs.ModeCharDevice != 0
}

// emphasised is messages with the word for each one's severity in bold.
func emphasised(where, text string) string {
	lines := strings.SplitAfter(text, "\n")
	for i, line := range lines {
		rest, ok := strings.CutPrefix(line, where+":")
		if !ok {
			continue
		}
		place := len(rest) - len(strings.TrimLeft(rest, "0123456789: "))
		for _, word := range []string{"error:", "warning:", "note:"} {
			if after, ok := strings.CutPrefix(rest[place:], word); ok {
				lines[i] = where + ":" + rest[:place] + "\x1b[1m" + word + "\x1b[0m" + after
			}
		}
	}
	return strings.Join(lines, "")
}

// print writes to standard output.
func (c *console) print(text string) error {
	_, err := io.WriteString(c.out, text)
	return standardOutput(err)
}

// standardOutput is an error of standard output. Where nobody reads on there is none: the system ends the program, and
// nothing is said.
func standardOutput(err error) error {
	if err == nil {
		return nil
	}
	return &problem{code: faulty, where: "standard output", message: systemText(err)}
}

// systemText says what the operating system had against it, without the path, which stands before it.
func systemText(err error) string {
	var path *fs.PathError
	var link *os.LinkError
	var number syscall.Errno
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return "the disk is full"
	case errors.Is(err, syscall.EROFS):
		return "this disk is read-only"
	case errors.Is(err, syscall.EISDIR):
		return "this is a folder"
	case errors.Is(err, syscall.ENAMETOOLONG):
		return "this name is too long"
	case errors.As(err, &number):
		return number.Error()
	case errors.As(err, &path):
		return path.Err.Error()
	case errors.As(err, &link):
		return link.Err.Error()
	}
	return err.Error()
}

// quoted is the user's words in quotes, cut where they are long.
func quoted(text string) string {
	const longest = 60
	if runes := []rune(text); len(runes) > longest {
		text = string(runes[:longest]) + "…"
	}
	return `"` + text + `"`
}
