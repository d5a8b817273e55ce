package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/measure"
)

// measureOption is the value of an option that takes a length as a layout does; a bare number is in the units asked for.
type measureOption struct {
	option, text string
	most         measure.NM // what the option takes at the most; 0 for longest
	example      string     // a length with its unit for the hint; "" for one that most options take
	orNone       bool       // the option takes the word none too
	none         bool       // and was given it
	reading      measure.Reading
}

func (m *measureOption) String() string { return m.text }
func (m *measureOption) Type() string   { return "length" }

// longest is beyond any cloth.
const longest = 1000 * measure.Yard

// Set refuses what is no length, and what is too long whichever units a bare number counts; withinMost refuses the rest.
func (m *measureOption) Set(text string) error {
	written := strings.TrimSpace(text)
	if m.none = m.orNone && strings.EqualFold(written, "none"); m.none {
		m.text, m.reading = "", measure.Reading{}
		return nil
	}
	r, err := measure.Read(written)
	if err != nil || strings.TrimSpace(written[r.Bytes:]) != "" || r.In(measure.Inches).Sign() <= 0 || m.tooLong(r, measure.Centimetres) {
		return m.wrong(text)
	}
	m.text, m.reading = text, r
	return nil
}

// withinMost refuses a length that is more than the option takes, where a bare number counts units of the system.
func (m *measureOption) withinMost(s measure.System) error {
	if m.text != "" && m.tooLong(m.reading, s) {
		return m.wrong(m.text)
	}
	return nil
}

func (m *measureOption) tooLong(r measure.Reading, s measure.System) bool {
	most := m.most
	if most == 0 {
		most = longest
	}
	return r.In(s).Cmp(measure.Of(most)) > 0
}

func (m *measureOption) wrong(text string) *problem {
	return &problem{message: fmt.Sprintf("after --%s: found %s, expected a length above 0 and up to %s%s", m.option, quoted(text), m.limit(), m.orWord()), hint: m.hint()}
}

// orWord names the word that the option takes beside lengths, "" if it takes none.
func (m *measureOption) orWord() string {
	if m.orNone {
		return ", or none"
	}
	return ""
}

// limit is the most that the option takes, in either system.
func (m *measureOption) limit() string {
	if m.most == 0 {
		return fmt.Sprintf("%d yards", longest/measure.Yard)
	}
	return measure.Text(m.most, measure.Inches) + " (" + measure.Text(m.most, measure.Centimetres) + ")"
}

// hint says what to type.
func (m *measureOption) hint() string {
	if m.example == "" {
		return fmt.Sprintf(`for example --%s 3.5 or --%s "3 1/2 in"`, m.option, m.option)
	}
	return fmt.Sprintf(`for example --%s "%s"`, m.option, m.example)
}

// in is the length where a bare number counts units of the system; 0 if the option was not given.
func (m *measureOption) in(s measure.System) measure.NM {
	if m.text == "" {
		return 0
	}
	return max(1, m.reading.In(s).NM())
}

// withinMost is what is wrong with the first of some lengths that is more than its option takes, nil if none is.
func withinMost(cmd *cobra.Command, s measure.System, list ...*measureOption) error {
	for _, m := range list {
		if err := m.withinMost(s); err != nil {
			return misuse(cmd.CommandPath(), err.Error(), m.hint())
		}
	}
	return nil
}

// numberOption is the value of an option that takes a whole number from a least to a most.
type numberOption struct {
	option         string
	least, most, n int
	example        int
	counts         string // things, "" for a bare number
}

func (o *numberOption) Type() string { return "number" }

func (o *numberOption) String() string {
	if o.n == 0 {
		return ""
	}
	return strconv.Itoa(o.n)
}

func (o *numberOption) Set(text string) error {
	n, err := measure.ReadCount(strings.TrimSpace(text))
	if err != nil || n < o.least || n > o.most {
		return &problem{message: fmt.Sprintf("after --%s: found %s, expected %s", o.option, quoted(text), o.expected()), hint: fmt.Sprintf("for example --%s %d", o.option, o.example)}
	}
	o.n = n
	return nil
}

func (o *numberOption) expected() string {
	if o.counts == "" {
		return fmt.Sprintf("a number from %d to %d", o.least, o.most)
	}
	return fmt.Sprintf("%d to %d %s", o.least, o.most, o.counts)
}
