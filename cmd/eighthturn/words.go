package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/blocks"
	"eighthturn/internal/render"
	"eighthturn/internal/report"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// vocabulary is words of the layout language, all of them or some.
type vocabulary struct{ report.Vocabulary }

// language is every word.
func language() vocabulary {
	return vocabulary{report.Vocabulary{Kinds: blocks.Kinds(), Statements: layout.Statements(), Palettes: palettes.All()}}
}

// Topics that words has by themselves.
const (
	kindsTopic      = "kinds"
	statementsTopic = "statements"
	palettesTopic   = "palettes"
)

func topics() []string { return []string{kindsTopic, statementsTopic, palettesTopic} }

// wordsCommand explains the words of the layout language.
func wordsCommand(c *console) *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:     "words [" + strings.Join(topics(), "|") + "|WORD]",
		Short:   "the words that layouts are written with",
		GroupID: toBegin,
		Long: "Explains the words of layouts: the kinds of block, each with a drawing and the fabrics it needs; the " +
			"statements that lines begin with; and the palettes with their fabrics from dark to light. With one word, " +
			"says what that word means.",
		Example: "eighthturn words\n  lists them all, a line for each\n" +
			"eighthturn words kinds\n  draws every kind of block\n" +
			"eighthturn words strip-set\n  says how that statement is written\n" +
			"eighthturn words kilnyard\n  lists the fabrics of a palette",
		SuggestFor: []string{"kinds", "blocks", "palettes", "language", "syntax", "reference", "statements", "explain"},
		Args:       oneWord,

		ValidArgsFunction: offerOne(everyWord),
		RunE: func(_ *cobra.Command, args []string) error {
			v := language()
			switch {
			case len(args) == 1:
				v = v.about(args[0])
			case !asJSON:
				return c.print(render.Text(report.WordList(v.Vocabulary)))
			}
			if asJSON {
				return c.print(prettyJSON(v.json()))
			}
			return c.print(render.Text(report.Words(v.Vocabulary)))
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "the same as JSON, for other programs")
	return cmd
}

// oneWord wants a topic or a word that is known, or nothing.
func oneWord(cmd *cobra.Command, args []string) error {
	if len(args) == 1 && !language().about(args[0]).empty() {
		return nil
	}
	return oneOf("word of layouts", everyWord())(cmd, args)
}

// everyWord is the topics, and every word that has an explanation.
func everyWord() []string { return append(topics(), language().names()...) }

// names is every word that completion and hints offer, each once.
func (v vocabulary) names() []string {
	var list []string
	add := func(name string) {
		if !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	for _, k := range v.Kinds {
		add(k.Name)
	}
	for _, k := range v.Kinds {
		for _, r := range k.Roles {
			add(r.Name)
		}
	}
	for _, s := range v.Statements {
		add(s.Word)
	}
	for _, p := range v.Palettes {
		add(p.Name)
	}
	return list
}

func (v vocabulary) empty() bool {
	return len(v.Kinds) == 0 && len(v.Statements) == 0 && len(v.Palettes) == 0
}

// about is the part of the words that a topic or a word has to do with. A word that names none of them may still stand in
// how statements are written, or in what they mean.
func (v vocabulary) about(word string) vocabulary {
	word = strings.ToLower(word)
	switch word {
	case kindsTopic:
		return vocabulary{report.Vocabulary{Kinds: v.Kinds}}
	case statementsTopic:
		return vocabulary{report.Vocabulary{Statements: v.Statements}}
	case palettesTopic:
		return vocabulary{report.Vocabulary{Palettes: v.Palettes}}
	}
	named := v.that(
		func(k *blocks.Kind) bool { return k.Name == word || k.Role(word) >= 0 },
		func(s layout.Statement) bool { return s.Word == word },
		func(p palettes.Palette) bool { return p.Name == word || hasFabric(p, word) },
	)
	if !named.empty() || word == "" {
		return named
	}
	return v.that(
		func(*blocks.Kind) bool { return false },
		func(s layout.Statement) bool { return hasWord(s.Form, word) || hasWord(s.Summary, word) },
		func(palettes.Palette) bool { return false },
	)
}

// that is the words for which the functions say yes.
func (v vocabulary) that(kind func(*blocks.Kind) bool, statement func(layout.Statement) bool, palette func(palettes.Palette) bool) vocabulary {
	return vocabulary{report.Vocabulary{Kinds: kept(v.Kinds, kind), Statements: kept(v.Statements, statement), Palettes: kept(v.Palettes, palette)}}
}

func kept[T any](list []T, keep func(T) bool) []T {
	var out []T
	for _, x := range list {
		if keep(x) {
			out = append(out, x)
		}
	}
	return out
}

func hasFabric(p palettes.Palette, name string) bool {
	return slices.ContainsFunc(p.Fabrics, func(s palettes.Swatch) bool { return s.Name == name })
}

// hasWord says whether a word stands in a text by itself.
func hasWord(text, word string) bool {
	return slices.Contains(strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(` []|/,;"…`, r) }), word)
}
