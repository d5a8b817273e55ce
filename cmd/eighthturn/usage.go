package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// seeHelp is the hint of last resort.
func seeHelp(command string) string { return command + " --help says what there is" }

// knownCommand refuses a first word that is no command.
func knownCommand(root *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	var names []string
	words := map[string]string{} // what others might call a command
	for _, c := range root.Commands() {
		if c.Hidden {
			continue
		}
		names = append(names, c.Name())
		for _, w := range c.SuggestFor {
			words[w] = c.Name()
		}
	}
	word, hint := args[0], "commands are: "+strings.Join(names, ", ")
	if near := nearest(word, names); near != "" {
		hint = didYouMean(near)
	} else if name := words[strings.ToLower(word)]; name != "" {
		hint = didYouMean(name)
	} else if looksLikeLayout(word) {
		hint = "to draw it: eighthturn draw " + shellWord(word)
	}
	return misuse(root.CommandPath(), "no command is called "+quoted(word), hint)
}

// looksLikeLayout says whether a word where a command was wanted names a layout.
func looksLikeLayout(word string) bool {
	if strings.EqualFold(filepath.Ext(word), layoutEnding) {
		return true
	}
	info, err := os.Stat(word)
	return err == nil && info.Mode().IsRegular()
}

// shellWord is a file's name as it is typed: in quotes where it has blanks.
func shellWord(name string) string {
	if strings.ContainsAny(name, " \t#") {
		return `"` + name + `"`
	}
	return name
}

// nearest is the word of the list that is most like text, "" if none is near.
func nearest(text string, list []string) string {
	best, within := "", max(1, utf8.RuneCountInString(text)/3)+1
	for _, w := range list {
		if d := levenshtein.ComputeDistance(strings.ToLower(text), strings.ToLower(w)); d < within {
			best, within = w, d
		}
	}
	return best
}

func didYouMean(word string) string { return `did you mean "` + word + `"?` }

// oneLayout wants the name of one layout file and nothing more.
func oneLayout(cmd *cobra.Command, args []string) error {
	example := "for example " + cmd.CommandPath() + " harbor" + layoutEnding
	switch {
	case len(args) == 0:
		return misuse(cmd.CommandPath(), "no layout is named", example)
	case args[0] == "":
		return misuse(cmd.CommandPath(), "the layout's name is empty", example)
	case len(args) == 1:
		return nil
	}
	return misuse(cmd.CommandPath(), fmt.Sprintf("expected one layout, found %d: %s", len(args), quoted(strings.Join(args, " "))), tooManyHint(cmd, args))
}

// tooManyHint guesses what was meant by several names.
func tooManyHint(cmd *cobra.Command, args []string) string {
	whole := strings.Join(args, " ")
	if _, err := os.Stat(whole); err == nil || strings.Count(whole, layoutEnding) == 1 && strings.HasSuffix(whole, layoutEnding) {
		return `put a name with blanks in quotes: ` + cmd.CommandPath() + ` "` + whole + `"`
	}
	out := args[len(args)-1]
	if another := isFile(out) || strings.EqualFold(filepath.Ext(out), layoutEnding); len(args) == 2 && !another && cmd.Flags().Lookup(outputOption) != nil {
		return "write the output's name after -o: " + cmd.CommandPath() + " " + shellWord(args[0]) + " -o " + shellWord(out)
	}
	if width, height, ok := strings.Cut(strings.ToLower(out), "x"); ok && len(args) == 2 && cmd.Flags().Lookup(widthName) != nil && isCount(width) && isCount(height) {
		return "write the size as options: " + cmd.CommandPath() + " " + shellWord(args[0]) + " --" + widthName + " " + width + " --" + heightName + " " + height
	}
	return "run it once for each"
}

// isCount says whether text is a whole number.
func isCount(text string) bool { return text != "" && strings.Trim(text, "0123456789") == "" }

// flagProblem says what is wrong with an option. A first word that is no command is told first.
func flagProblem(cmd *cobra.Command, args []string, err error) error {
	if !cmd.HasParent() {
		if wrong := knownCommand(cmd, words(args)); wrong != nil {
			return wrong
		}
	}
	var (
		unknown *pflag.NotExistError
		empty   *pflag.ValueRequiredError
		bad     *pflag.InvalidValueError
		syntax  *pflag.InvalidSyntaxError
	)
	switch {
	case errors.As(err, &unknown):
		return unknownOption(cmd, unknown)
	case errors.As(err, &empty):
		f := empty.GetFlag()
		return misuse(cmd.CommandPath(), "a value is missing after the option "+typed(f), "for example "+typed(f)+" "+exampleValue(f))
	case errors.As(err, &bad):
		return badValue(cmd, bad)
	case errors.As(err, &syntax):
		return misuse(cmd.CommandPath(), quoted(syntax.GetSpecifiedFlag())+" is not an option", seeHelp(cmd.CommandPath()))
	}
	return misuse(cmd.CommandPath(), err.Error(), seeHelp(cmd.CommandPath()))
}

// words are the arguments that are no options.
func words(args []string) []string {
	var list []string
	for _, a := range args {
		if !strings.HasPrefix(a, "-") {
			list = append(list, a)
		}
	}
	return list
}

// unknownOption answers an option that a command does not have.
func unknownOption(cmd *cobra.Command, e *pflag.NotExistError) error {
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	typed, word := "--"+e.GetSpecifiedName(), e.GetSpecifiedName()
	if group := e.GetSpecifiedShortnames(); group != "" {
		typed, word = "-"+group, group // -view: one hyphen too few
	}
	hint := seeHelp(cmd.CommandPath())
	if near := nearest(word, names); near != "" && utf8.RuneCountInString(word) > 1 {
		hint = didYouMean("--" + near)
	} else if f := cmd.Flags().Lookup(outputOption); f != nil && slices.Contains(f.Annotations[cobra.BashCompFilenameExt], strings.ToLower(word)) {
		hint = "the ending of the output's name says what is written: -o harbor." + strings.ToLower(word)
	}
	return misuse(cmd.CommandPath(), "no option is called "+quoted(typed), hint)
}

// badValue answers a value that an option does not take.
func badValue(cmd *cobra.Command, e *pflag.InvalidValueError) error {
	f := e.GetFlag()
	if f.Value.Type() == "bool" {
		return misuse(cmd.CommandPath(), fmt.Sprintf("the option %s takes no value, found %s", typed(f), quoted(e.GetValue())), "write "+typed(f)+" alone, or leave it out")
	}
	message, hint := e.Unwrap().Error(), ""
	var p *problem
	if errors.As(e, &p) {
		message, hint = p.message, p.hint
	}
	return misuse(cmd.CommandPath(), message, hint)
}

// typed is an option as it is typed.
func typed(f *pflag.Flag) string {
	if f.Shorthand != "" {
		return "-" + f.Shorthand
	}
	return "--" + f.Name
}

// exampleValue is a value that an option takes.
func exampleValue(f *pflag.Flag) string {
	if c, ok := f.Value.(*choice); ok {
		return c.words[len(c.words)-1]
	}
	value, _ := pflag.UnquoteUsage(f)
	return value
}
