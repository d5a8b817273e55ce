package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// inUSSpelling is a word as help spells it; options take the British spelling too.
func inUSSpelling(word string) string {
	return strings.NewReplacer("colour", "color", "grey", "gray", "neighbour", "neighbor").Replace(strings.ToLower(word))
}

// choice is the value of an option that takes one of a few words in US spelling, or in British; it holds the word's index.
type choice struct {
	option string
	words  []string
	index  int
}

func (c *choice) String() string {
	if c.words == nil {
		return ""
	}
	return c.words[c.index]
}

func (c *choice) Type() string { return "word" }

func (c *choice) Set(text string) error {
	for i, w := range c.words {
		if strings.EqualFold(w, inUSSpelling(text)) {
			c.index = i
			return nil
		}
	}
	list := oneOfThese(c.words)
	hint := ""
	if near := nearest(text, c.words); near != "" {
		hint = didYouMean(near)
	}
	return &problem{message: fmt.Sprintf("after --%s: found %s, expected %s", c.option, quoted(text), list), hint: hint}
}

// complete offers the words to a shell.
func (c *choice) complete(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return c.words, cobra.ShellCompDirectiveNoFileComp
}

// prefixOption is the name of the option for the beginning of ids.
const prefixOption = "id-prefix"

// maxPrefix is how long the text before the ids of a picture may be.
const maxPrefix = 40

// idPrefix is the value of an option that takes the beginning of ids.
type idPrefix struct{ text string }

func (p *idPrefix) String() string { return p.text }
func (p *idPrefix) Type() string   { return "text" }

func (p *idPrefix) Set(text string) error {
	switch {
	case text == "":
		return &problem{message: "the text after --id-prefix is empty", hint: "for example --id-prefix harbor-"}
	case strings.ContainsFunc(text, func(r rune) bool { return !inID(r) }):
		return &problem{message: quoted(text) + " cannot begin an id: only letters a to z, digits, - and _ are allowed", hint: "for example --id-prefix harbor-"}
	case !isLetter(rune(text[0])):
		return &problem{message: fmt.Sprintf("%s cannot begin an id: a letter comes first", quoted(text)), hint: "for example --id-prefix a" + text}
	case len(text) > maxPrefix:
		return &problem{message: fmt.Sprintf("the text after --id-prefix has %d letters; the limit is %d", len(text), maxPrefix)}
	}
	p.text = text
	return nil
}

func isLetter(r rune) bool { return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' }

func inID(r rune) bool { return isLetter(r) || r >= '0' && r <= '9' || r == '-' || r == '_' }
