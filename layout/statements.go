package layout

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// Statement is all that the language knows of one statement. Its nodes and what the design
// holds of it stand beside its entry.
type Statement struct {
	Word    string
	Form    string   // how it is written
	Summary string   // one line, in a quilter's words
	Once    bool     // may stand once in a layout
	Example string   // as one could type it
	Options []Option // the words that it goes on with, which cannot be names

	also    []string // other spellings, which are read too
	aliases []string // words that it goes by elsewhere
	hint    string   // what to type, where an example would not help
	next    string   // what may follow a complete one, "" for nothing
	like    string   // the statement whose columns it shares when tidied, "" for its own
	defines bool     // gives names or labels

	parse func(p *parser, c *cursor, keyword Span)
	check func(c *checker)
	after []string // the statements that are checked before it, given or not
}

// Option is a word with which a statement goes on.
type Option struct {
	Word    string
	Example string // as one could type it, "" if the word says all
}

// Statements is every statement of the language, in the order that help lists them.
func Statements() []Statement { return slices.Clone(everyStatement()) }

// Words are those that the statement may begin with, its own first.
func (s *Statement) Words() []string { return append([]string{s.Word}, s.also...) }

// everyStatement is made once, and no one changes it.
var everyStatement = sync.OnceValue(func() []Statement {
	return slices.Concat(textStatements(), sizeStatements(), paletteStatements(), fabricStatements(), motifStatements(), stripSetStatements(), scrapsStatements(), swapStatements(),
		websStatements(), turningStatements(), blockStatements(), gridStatements(), edgingStatements(), finishStatements(), onHandStatements(), valueStepStatements(), colorwayStatements(), quiltSizeStatements())
})

// language is the statements with what is looked up in them.
type language struct {
	statements []Statement
	words      []string        // that statements begin with
	byWord     map[string]int  // index of a statement
	roles      map[string]bool // of all kinds of block
	reserved   map[string]bool // words that cannot be names
}

// theLanguage is made once, and no one changes it.
var theLanguage = sync.OnceValue(func() *language {
	l := &language{statements: everyStatement(), byWord: map[string]int{}, roles: map[string]bool{}, reserved: map[string]bool{}}
	for i, s := range l.statements {
		l.words = append(l.words, s.Word)
		for _, w := range s.Words() {
			l.byWord[w], l.reserved[w] = i, true
		}
	}
	for _, w := range slices.Concat(roleWords(blocks.Kinds()), formerRoles(blocks.Kinds())) {
		l.roles[w], l.reserved[w] = true, true
	}
	for _, list := range [][]string{optionWords(l.statements), measure.UnitWords(), {"turned"}} {
		for _, w := range list {
			l.reserved[w] = true
		}
	}
	return l
})

// Reversed is the word for a strip set with its first fabric at the tip.
const Reversed = "reversed"

// optionWords are the words with which statements go on, beside roles and units.
func optionWords(statements []Statement) []string {
	words := []string{"cut", "finished", Reversed, "lengthwise", "crosswise", "from"} // of lengths and of the fabrics of roles, in any statement
	for i := range statements {
		for _, o := range statements[i].Options {
			words = append(words, o.Word)
		}
	}
	return words
}

// statement is the entry of a word, nil if no statement begins with it.
func (l *language) statement(word string) *Statement {
	i, ok := l.byWord[strings.ToLower(word)]
	if !ok {
		return nil
	}
	return &l.statements[i]
}

// option is an option as one could type it.
func (l *language) option(word string) string {
	for _, s := range l.statements {
		for _, o := range s.Options {
			if o.Word == word && o.Example != "" {
				return o.Example
			}
		}
	}
	return word
}

// elsewhere is the statement that goes by another word elsewhere, nil if there is none.
func (l *language) elsewhere(word string) *Statement {
	for i := range l.statements {
		if slices.Contains(l.statements[i].aliases, strings.ToLower(word)) {
			return &l.statements[i]
		}
	}
	return nil
}

// isReserved says whether a word is one of the language's own.
func (l *language) isReserved(word string) bool { return l.reserved[strings.ToLower(word)] }

// isRole says whether a word is a role of some kind of block.
func (l *language) isRole(word string) bool { return l.roles[strings.ToLower(word)] }

// exampleHints gives the messages from the one numbered on that have no hint of their own a
// statement of that sort as one could type it, but for messages about limits.
func (p *parser) exampleHints(from int, s *Statement) {
	for i := from; i < len(p.list); i++ {
		f := &p.list[i]
		if f.Severity != Error || strings.Contains(f.Message, "the limit is ") || strings.Contains(f.Message, " at most ") {
			continue
		}
		f.example = cmp.Or(s.hint, "for example "+s.Example)
		f.Hint = cmp.Or(f.Hint, f.example)
	}
}
