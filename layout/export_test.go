package layout

// What the tests of the language look at from inside.
var (
	Windows1252 = windows1252
	Likeness    = likeness
	NearestWord = nearest
	NoteParts   = noteParts
)

// OtherWord is the statement that goes by another word, "" if there is none.
func OtherWord(word string) string {
	if s := theLanguage().elsewhere(word); s != nil {
		return s.Word
	}
	return ""
}

// OptionWords are the words with which statements go on.
func OptionWords() []string { return optionWords(everyStatement()) }

// OwnWords are the words that cannot be names.
func OwnWords() map[string]bool { return theLanguage().reserved }

// Aliases are the words that a statement goes by elsewhere.
func (s Statement) Aliases() []string { return s.aliases }

// After is the statements that are checked before a statement.
func (s Statement) After() []string { return s.after }

// Next is what may follow a complete statement.
func (s Statement) Next() string { return s.next }

// SetNext and SetAfter spoil an entry.
func (s *Statement) SetNext(next string)      { s.next = next }
func (s *Statement) SetAfter(words ...string) { s.after = words }
