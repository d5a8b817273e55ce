package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"eighthturn/internal/measure"
	"eighthturn/internal/report/booklet"
)

// Names of the options of a class.
const (
	timeOption    = "time"
	sessionOption = "session"
)

// timesValue is the value of the option that gives the teacher's own times.
type timesValue struct{ times map[string]int }

func (v *timesValue) String() string { return "" }
func (v *timesValue) Type() string   { return "activity=minutes" }

func (v *timesValue) Set(text string) error {
	activity, minutes, _ := strings.Cut(text, "=")
	n, err := strconv.Atoi(strings.TrimSpace(minutes))
	if err != nil || n < 1 || n > booklet.MaxMinutes || !slices.Contains(booklet.Activities(), strings.TrimSpace(activity)) {
		return &problem{message: fmt.Sprintf("after --%s: found %s, expected one of %s with its minutes, 1 to %d", timeOption, quoted(text), measure.List(booklet.Activities()), booklet.MaxMinutes),
			hint: "for example --" + timeOption + " cutting=45"}
	}
	if v.times == nil {
		v.times = map[string]int{}
	}
	v.times[strings.TrimSpace(activity)] = n
	return nil
}

// maxSessions is how many lengths of sessions are taken.
const maxSessions = 50

// sessionsValue is the value of the option that gives the length of each session of a class.
type sessionsValue struct{ minutes []int }

func (v *sessionsValue) String() string { return "" }
func (v *sessionsValue) Type() string   { return "minutes" }

func (v *sessionsValue) Set(text string) error {
	n, err := strconv.Atoi(text)
	if err != nil || n < booklet.MinSession || n > booklet.MaxSession || len(v.minutes) == maxSessions {
		return &problem{message: fmt.Sprintf("after --%s: found %s, expected minutes from %d to %d, at most %d times", sessionOption, quoted(text), booklet.MinSession, booklet.MaxSession, maxSessions),
			hint: "for example --" + sessionOption + " 180"}
	}
	v.minutes = append(v.minutes, n)
	return nil
}

// addClass adds the options of a class handout.
func (o *printedPattern) addClass(cmd *cobra.Command) {
	f := cmd.Flags()
	f.BoolVar(&o.handout, "handout", false, "a class handout instead of the pattern: supply list, kits, class schedule")
	f.Var(&o.times, timeOption, "your own `ACTIVITY=MINUTES` for the class schedule: "+measure.List(booklet.Activities())+"; may be repeated")
	f.Var(&o.sessions, sessionOption, "the length of a class session in `MINUTES`; repeated for each session, the last one for those that follow")
}

// checkClass refuses options of a class where no handout is made.
func (o *printedPattern) checkClass(cmd *cobra.Command) error {
	for _, name := range []string{timeOption, sessionOption} {
		if !o.handout && cmd.Flags().Changed(name) {
			return misuse(cmd.CommandPath(), "--"+name+" works only with a class handout", "add --handout")
		}
	}
	return nil
}
