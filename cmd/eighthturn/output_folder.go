package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

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
		return misuse(cmd.CommandPath(), "the name behind --"+option+" is empty", hint)
	}
	return nil
}

// namedFigure is a picture and the name of its file.
type namedFigure struct {
	file   string
	figure *diagram.Figure
}

// draw draws pictures into the folder, which is made where it is not there. Nothing is drawn if one of them would be refused.
func (d pictureFolder) draw(c *console, pictures []namedFigure, units measure.System) error {
	if err := d.make(); err != nil {
		return err
	}
	for _, check := range []bool{true, false} {
		for _, p := range pictures {
			out := d.target(p.file)
			if check {
				if err := files.Check(out.path, out.options); err != nil {
					return out.problem(err)
				}
				continue
			}
			err := c.write(out, func(w io.Writer) error { return diagram.SVG(w, p.figure, diagram.Options{Units: units}) })
			if err != nil {
				return err
			}
		}
	}
	return nil
}

// make makes the folder, unless it is there.
func (d pictureFolder) make() error {
	err := os.Mkdir(d.path, 0o777)
	info, statErr := os.Stat(d.path)
	switch {
	case err == nil || statErr == nil && info.IsDir():
		return nil
	case statErr == nil:
		return &problem{faulty, d.path, "this is a file, not a folder", "name a folder behind " + d.option}
	case errors.Is(err, fs.ErrNotExist):
		return &problem{faulty, filepath.Dir(d.path), "there is no such folder", "make it first, or name another behind " + d.option}
	case errors.Is(err, fs.ErrPermission):
		return &problem{faulty, d.path, "this folder cannot be made where it is wanted", "name one in another place behind " + d.option}
	}
	return &problem{faulty, d.path, "this folder cannot be made: " + systemText(err), "name another behind " + d.option}
}

// target is one of the folder's files.
func (d pictureFolder) target(file string) target {
	return target{
		path: filepath.Join(d.path, file), what: d.what, example: d.what + pictureEnding, option: d.option,
		options: files.Options{Force: d.force, Ours: d.ours},
	}
}
