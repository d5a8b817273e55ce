package measure

import (
	"fmt"
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Reading is a length as written: a number and the unit behind it, if there was one.
type Reading struct {
	number *big.Rat
	unit   NM  // 0 where none was written
	Bytes  int // how much of the text it took
}

// ReadingOf is a length as if it had been written, to the last nanometre.
func ReadingOf(nm NM) Reading { return Reading{number: new(big.Rat).SetInt64(int64(nm)), unit: 1} }

// HasUnit says whether a unit stood behind the number.
func (r Reading) HasUnit() bool { return r.unit != 0 }

// In is the length that was written; a bare number counts units of the system.
func (r Reading) In(s System) Length {
	unit := r.unit
	if unit == 0 {
		unit = s.Unit()
	}
	return Length{new(big.Rat).Mul(r.number, new(big.Rat).SetInt64(int64(unit)))}
}

// Problem says what is wrong with a length and where in the text, in bytes.
type Problem struct {
	Start, End    int
	Message, Hint string
}

func (p *Problem) Error() string { return p.Message }

// MaxDigits is the most digits that a whole number, or the decimals behind one, may have.
const MaxDigits = 6

// maxDenominator is the largest number below a fraction's line.
const maxDenominator = 1000

// IsSpace says whether r parts words: the blanks that keyboards and web pages give.
func IsSpace(r rune) bool {
	switch r {
	case ' ', '\t', '\u00a0', '\u1680', '\u202f', '\u205f', '\u3000', '\v', '\f':
		return true
	}
	return r >= '\u2000' && r <= '\u200a'
}

// StartsNumber says whether a length could begin at the start of text.
func StartsNumber(text string) bool {
	r, size := utf8.DecodeRuneInString(text)
	if r == '-' || r == '+' || r == '−' || r == '.' || r == ',' {
		next, _ := utf8.DecodeRuneInString(text[size:])
		_, _, vulgar := vulgarFraction(next)
		return unicode.IsDigit(next) || vulgar
	}
	_, _, vulgar := vulgarFraction(r)
	return unicode.IsDigit(r) || vulgar
}

// vulgarFraction is what a single-letter fraction stands for.
func vulgarFraction(r rune) (upper, lower int64, ok bool) {
	const letters = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒"
	const values = "121323143415253545165617183858781911"
	at := 0
	for _, letter := range letters {
		if letter == r {
			upper, lower = int64(values[at]-'0'), int64(values[at+1]-'0')
			if letter == '⅒' {
				lower = 10
			}
			return upper, lower, true
		}
		at += 2
	}
	return 0, 0, false
}

// reader walks over one length.
type reader struct {
	text string
	at   int
}

// Read reads the length at the start of text: `3 1/2`, `3-1/2`, `3½`, `3 ½`, `3.5` or
// `3,5`, then nothing or a unit. What follows the length is left. The error is a *Problem.
func Read(text string) (Reading, error) {
	r := &reader{text: text}
	number, err := r.number()
	if err != nil {
		return Reading{}, err
	}
	unit, err := r.unit()
	if err != nil {
		return Reading{}, err
	}
	return Reading{number: number, unit: unit, Bytes: r.at}, nil
}

// ReadCount reads a whole number without a unit, from 0 up to MaxDigits digits.
func ReadCount(text string) (int, error) {
	n := 0
	for i, c := range text {
		if c < '0' || c > '9' || i >= MaxDigits {
			return 0, fmt.Errorf("expected a whole number, found %q", text)
		}
		n = n*10 + int(c-'0')
	}
	if text == "" {
		return 0, fmt.Errorf("expected a whole number")
	}
	return n, nil
}

func (r *reader) rest() string { return r.text[r.at:] }

func (r *reader) peek() rune {
	c, _ := utf8.DecodeRuneInString(r.rest())
	return c
}

func (r *reader) fault(start int, hint, format string, args ...any) error {
	end := r.wordEnd(start)
	return &Problem{Start: start, End: end, Message: fmt.Sprintf(format, args...), Hint: hint}
}

// wordEnd is where the word at or behind the byte at start ends.
func (r *reader) wordEnd(start int) int {
	word := strings.TrimLeftFunc(r.text[start:], IsSpace)
	return len(r.text) - len(strings.TrimLeftFunc(word, func(c rune) bool { return !IsSpace(c) }))
}

// number reads the number without its unit.
func (r *reader) number() (*big.Rat, error) {
	switch c := r.peek(); {
	case c == '-' || c == '−':
		return nil, r.fault(0, "", "a length cannot be below 0, found %q", r.text[:r.wordEnd(0)])
	case c == '+' || c == '.' || c == ',':
		return nil, r.fault(0, "write a length as 3 1/2 or 0.5", "expected a length, found %q", r.text[:r.wordEnd(0)])
	}
	if f, size, ok := r.vulgar(0); ok {
		r.at += size
		return f, r.noMore(0)
	}
	whole, err := r.digits()
	if err != nil {
		return nil, err
	}
	return r.afterWhole(whole)
}

// afterWhole reads what may follow a whole number: decimals or a fraction.
func (r *reader) afterWhole(whole *big.Rat) (*big.Rat, error) {
	switch r.peek() {
	case '.', ',':
		if strings.HasPrefix(r.rest(), ".") && !startsDigit(r.rest()[1:]) || strings.HasPrefix(r.rest(), ",") && !startsDigit(r.rest()[1:]) {
			return nil, r.fault(0, "", "expected digits after %q, found %q", r.text[r.at:r.at+1], r.text[:r.wordEnd(r.at)])
		}
		return r.decimals(whole)
	case '/', '⁄':
		return r.overLine(whole, 0)
	}
	return r.mixed(whole)
}

func startsDigit(text string) bool { return text != "" && text[0] >= '0' && text[0] <= '9' }

// digits reads a run of ASCII digits.
func (r *reader) digits() (*big.Rat, error) {
	start := r.at
	n := int64(0)
	for startsDigit(r.rest()) {
		if r.at-start >= MaxDigits {
			return nil, r.fault(start, "", "a number may have at most %d digits", MaxDigits)
		}
		n = n*10 + int64(r.text[r.at]-'0')
		r.at++
	}
	if r.at == start {
		return nil, r.fault(start, "write a length as 3 1/2 or 3.5", "expected a length, found %q", r.text[start:r.wordEnd(start)])
	}
	return new(big.Rat).SetInt64(n), nil
}

// decimals reads `.5` or `,5` behind a whole number.
func (r *reader) decimals(whole *big.Rat) (*big.Rat, error) {
	r.at++
	start := r.at
	part, err := r.digits()
	if err != nil {
		return nil, err
	}
	scale := int64(1)
	for range r.at - start {
		scale *= 10
	}
	part.Quo(part, new(big.Rat).SetInt64(scale))
	return part.Add(part, whole), r.noMore(0)
}

// overLine reads the `/4` of a fraction whose upper number was read, and checks that the
// fraction that starts at the given byte is below one.
func (r *reader) overLine(upper *big.Rat, start int) (*big.Rat, error) {
	_, size := utf8.DecodeRuneInString(r.rest())
	r.at += size
	lower, err := r.digits()
	if err != nil {
		return nil, err
	}
	end := r.at
	switch over := upper.Num().Int64(); {
	case lower.Sign() == 0:
		return nil, &Problem{start, end, fmt.Sprintf("the fraction %q has 0 below its line", r.text[start:end]), ""}
	case lower.Num().Int64() > maxDenominator:
		return nil, &Problem{start, end, fmt.Sprintf("the bottom number of a fraction may be at most %d", maxDenominator), ""}
	case upper.Cmp(lower) >= 0:
		return nil, &Problem{start, end, fmt.Sprintf("the fraction %q is not below one", r.text[start:end]), mixedHint(r.text[:start], over, lower.Num().Int64())}
	}
	return upper.Quo(upper, lower), r.noMore(start)
}

// mixedHint spells an improper fraction, with the whole number before it, as one length.
func mixedHint(before string, upper, lower int64) string {
	whole, _ := ReadCount(strings.TrimFunc(strings.TrimRight(before, "-"), IsSpace)) // 0 where there is none
	total := int64(whole) + upper/lower
	if upper%lower == 0 {
		return fmt.Sprintf("write %d", total)
	}
	return fmt.Sprintf("write %d %d/%d", total, upper%lower, lower)
}

// mixed reads the fraction that may follow a whole number, directly, after a hyphen or
// after spaces.
func (r *reader) mixed(whole *big.Rat) (*big.Rat, error) {
	next := r.at
	if strings.HasPrefix(r.rest(), "-") {
		next++
	} else {
		next += len(r.rest()) - len(strings.TrimLeftFunc(r.rest(), IsSpace))
	}
	if f, size, ok := r.vulgar(next); ok {
		r.at = next + size
		return f.Add(f, whole), r.noMore(0)
	}
	if next == r.at || !startsFraction(r.text[next:]) {
		return whole, nil
	}
	r.at = next
	upper, err := r.digits()
	if err != nil {
		return nil, err
	}
	part, err := r.overLine(upper, next)
	if err != nil {
		return nil, err
	}
	return part.Add(part, whole), nil
}

// startsFraction says whether digits and a fraction's line stand at the start of text.
func startsFraction(text string) bool {
	rest := strings.TrimLeft(text, "0123456789")
	return rest != text && (strings.HasPrefix(rest, "/") || strings.HasPrefix(rest, "⁄"))
}

// vulgar reads one of the single-letter fractions at the given byte.
func (r *reader) vulgar(at int) (*big.Rat, int, bool) {
	c, size := utf8.DecodeRuneInString(r.text[at:])
	upper, lower, ok := vulgarFraction(c)
	if !ok {
		return nil, 0, false
	}
	return big.NewRat(upper, lower), size, true
}

// noMore refuses a second fraction or point behind a number that is complete.
func (r *reader) noMore(start int) error {
	rest := strings.TrimLeftFunc(r.rest(), IsSpace)
	c, _ := utf8.DecodeRuneInString(rest)
	_, _, vulgar := vulgarFraction(c)
	directly := r.rest() != "" && strings.ContainsRune("/⁄.,0123456789", r.peek())
	if !vulgar && !directly && !startsFraction(rest) {
		return nil
	}
	end := r.wordEnd(len(r.text) - len(rest))
	return &Problem{start, end, fmt.Sprintf("%q is not one length", r.text[start:end]), "write a length as 3 1/2 or 3.5"}
}

// unitOf is the unit that a word stands for.
func unitOf(word string) (NM, bool) {
	switch word {
	case "in", "in.", "inch", "inches":
		return Inch, true
	case "cm":
		return Centimetre, true
	case "mm":
		return Millimetre, true
	case "m":
		return Metre, true
	case "yd", "yd.", "yard", "yards":
		return Yard, true
	}
	return 0, false
}

// UnitWords are the words that may stand behind a number, in the order help shows them.
func UnitWords() []string {
	return []string{"in", "inch", "inches", "cm", "mm", "m", "yd", "yard", "yards"}
}

// unit reads a unit if there is one; 0 if not.
func (r *reader) unit() (NM, error) {
	for _, mark := range []string{`"`, "”", "″", "''", "′′", "’’"} {
		if strings.HasPrefix(r.rest(), mark) {
			r.at += len(mark)
			return Inch, r.atWordEnd("")
		}
	}
	rest := r.rest()
	word := strings.TrimLeftFunc(rest, IsSpace)
	gap := len(rest) - len(word)
	if fields := strings.FieldsFunc(word, IsSpace); len(fields) > 0 {
		word = fields[0]
	}
	if unit, ok := unitOf(strings.ToLower(word)); ok {
		r.at += gap + len(word)
		return unit, nil
	}
	if gap == 0 {
		return 0, r.atWordEnd(word)
	}
	return 0, nil
}

// atWordEnd refuses letters glued to a number.
func (r *reader) atWordEnd(glued string) error {
	if r.rest() == "" || IsSpace(r.peek()) {
		return nil
	}
	word := r.text[:r.wordEnd(r.at)]
	hint := "units are in, cm, mm, m and yd"
	if strings.HasPrefix(glued, "'") || strings.HasPrefix(glued, "′") || strings.HasPrefix(glued, "’") {
		hint = "feet are not used; write inches or yards"
	}
	return &Problem{0, r.wordEnd(r.at), fmt.Sprintf("%q is not a length", word), hint}
}
