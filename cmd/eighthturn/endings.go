package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/files"
)

// folderEnding is how the name of a folder ends that need not be there yet.
const folderEnding = "/"

// outputNames are the names that a command writes under: the one place for which kind of file a name asks for.
type outputNames struct {
	what    string   // is written, for messages: "picture"
	endings []string // of files, in lower case and with the dot, the usual one first
	folder  string   // what a folder gets: "SVG files"; "" where none is written
	example string   // a name without its ending
}

// flag adds the option for the output's name, for which a shell offers names that end in the right way.
func (n outputNames) flag(cmd *cobra.Command, name *string, usage string) {
	f := cmd.Flags()
	f.StringVarP(name, outputOption, "o", "", usage)
	var bare []string
	for _, e := range n.endings {
		for _, as := range append([]string{e}, alike(e)...) {
			bare = append(bare, as[1:])
		}
	}
	_ = f.SetAnnotation(outputOption, cobra.BashCompFilenameExt, bare) // fails only for an option that is not there
}

// alike are other ways to write an ending.
func alike(ending string) []string {
	switch ending {
	case jpegEnding:
		return []string{".jpeg"}
	case htmlEnding:
		return []string{".htm"}
	}
	return nil
}

// ending says what kind of file a name asks for: how it ends, in lower case and written in the usual way; folderEnding for a folder's name,
// "" for standard output, for no name, and for one without an ending.
func ending(name string) string {
	if name == "" || name == stdio {
		return ""
	}
	if isFolder(name) {
		return folderEnding
	}
	e := strings.ToLower(filepath.Ext(name))
	for _, usual := range []string{jpegEnding, htmlEnding} {
		if slices.Contains(alike(usual), e) {
			return usual
		}
	}
	return e
}

// isFolder says whether a name is a folder's: one that is there, or one with / behind it.
func isFolder(path string) bool {
	if path != "" && os.IsPathSeparator(path[len(path)-1]) {
		return true
	}
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// notFile says whether something stands under a name that is no ordinary file: a folder, a link, a device.
func notFile(name string) bool {
	info, err := os.Lstat(name)
	return err == nil && !info.Mode().IsRegular()
}

// check refuses a name of a file that is not written. What is no ordinary file is refused later, with what stands there.
func (n outputNames) check(cmd *cobra.Command, name string) error {
	switch {
	case name == "" && cmd.Flags().Changed(outputOption):
		return misuse(cmd.CommandPath(), "the name after -o is empty", "for example -o "+n.example+n.endings[0])
	case name == "" || name == stdio || isFolder(name) || notFile(name):
		return nil
	case slices.Contains(n.endings, ending(name)) && filepath.Base(name) == filepath.Ext(name):
		folder := strings.TrimSuffix(name, filepath.Base(name))
		return misuse(cmd.CommandPath(), quoted(name)+" is an ending without a name", "put a name before the dot: for example -o "+shellWord(folder+n.example+filepath.Ext(name)))
	case slices.Contains(n.endings, ending(name)):
		return nil
	}
	example := beside(name, n.endings[0])
	if !files.IsFileName(strings.TrimPrefix(example, filepath.VolumeName(example))) {
		example = n.example + n.endings[0]
	}
	return misuse(cmd.CommandPath(), quoted(name)+" is not a name for a "+n.what, n.list()+": for example -o "+shellWord(example))
}

// list says how names end.
func (n outputNames) list() string {
	text := "names end in " + oneOfThese(n.endings)
	if n.folder != "" {
		text += ", that of a folder of " + n.folder + " in " + folderEnding
	}
	return text
}

// oneOfThese is a list of words of which one is wanted.
func oneOfThese(list []string) string {
	if len(list) == 1 {
		return list[0]
	}
	last := len(list) - 1
	return strings.Join(list[:last], ", ") + " or " + list[last]
}
