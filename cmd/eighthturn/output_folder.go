package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"eighthturn/internal/diagram"
	"eighthturn/internal/files"
	"eighthturn/internal/measure"
)

// pictureFolder is a folder that a command draws pictures into.
type pictureFolder struct {
	path   string
	option string // names it, as it is typed: "--maps"
	what   string // each picture is, for messages: "map"
	force  bool
	ours   func(head []byte) bool
}

// namesFolder refuses an option for a folder that names none.
func namesFolder(cmd *cobra.Command, option, path, example string) error {
	hint := "for example --" + option + " " + example
	switch {
	case path == stdio:
		return misuse(cmd.CommandPath(), "pictures go into a folder, not to standard output", hint)
	case path == "" && cmd.Flags().Changed(option):
		return misuse(cmd.CommandPath(), "the name after --"+option+" is empty", hint)
	case !isFolder(path) && slices.Contains(pictureNames().endings, ending(path)):
		return misuse(cmd.CommandPath(), quoted(path)+" is not a name for a folder of pictures", hint)
	}
	return nil
}

// namedFigure is a picture and the name of its file.
type namedFigure struct {
	file   string
	figure *diagram.Figure
}

// draw draws pictures into the folder, which is made where it is not there: all of them or none.
func (d pictureFolder) draw(c *console, pictures []namedFigure, units measure.System) error {
	list := make([]files.File, len(pictures))
	for i, p := range pictures {
		list[i] = files.File{Name: p.file, Write: func(w io.Writer) error { return diagram.SVG(w, p.figure, diagram.Options{Units: units}) }}
	}
	return c.writeSet(target{
		path: d.path, what: d.what, example: d.what + pictureEnding, option: d.option,
		options: files.Options{Force: d.force, Ours: d.ours},
	}, d.option, list)
}

// writeSet writes files into a folder, the target, all of them or none. The option is the one that names the folder.
func (c *console) writeSet(t target, option string, list []files.File) error {
	t.options.Unfinished = &c.unfinished
	folder := filepath.Clean(t.path)
	_, before := os.Stat(folder)
	err := files.WriteSet(folder, t.options, list)
	var failed *files.NotWritten
	switch {
	case err == nil:
		return nil
	case !errors.As(err, &failed):
		return &problem{faulty, folder, systemText(err), ""}
	case failed.Path == folder:
		return folderProblem(folder, option, before, failed.Err)
	}
	t.path = failed.Path
	return t.problem(failed.Err)
}

// folderProblem says why a folder takes no files. Before is what stood against it before it was made, nil if it was there.
func folderProblem(folder, option string, before, err error) *problem {
	var refused *files.Refusal
	switch {
	case errors.As(err, &refused):
		return &problem{faulty, folder, "this is a file, not a folder", "name a folder after " + option}
	case errors.Is(err, fs.ErrNotExist):
		return &problem{faulty, filepath.Dir(folder), "there is no such folder", "make it first, or name another after " + option}
	case errors.Is(err, fs.ErrPermission) && before != nil:
		return &problem{faulty, folder, "this folder cannot be made where it is wanted", "name one in another place after " + option}
	case errors.Is(err, fs.ErrPermission):
		return &problem{faulty, folder, "you may not make files in this folder", "name another folder after " + option}
	case before != nil:
		return &problem{faulty, folder, "this folder cannot be made: " + systemText(err), "name another after " + option}
	}
	return &problem{faulty, folder, systemText(err), ""}
}
