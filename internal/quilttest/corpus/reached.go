package main

import (
	"fmt"
	"strconv"
	"strings"
)

// reached are stretches of code that were run, by their places, each with its number of statements.
type reached map[string]int

// profiled reads what was run from a profile as go test -coverprofile writes it: a line for each stretch, its place, its statements and
// how often it was run.
func profiled(text string) (reached, error) {
	r := reached{}
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		words := strings.Fields(line)
		if strings.HasPrefix(line, "mode:") {
			continue
		}
		if len(words) != 3 {
			return nil, fmt.Errorf("no line of a profile: %q", line)
		}
		n, err := strconv.Atoi(words[1])
		if err != nil {
			return nil, err
		}
		if words[2] != "0" && !strings.Contains(words[0], "/quilttest/") {
			r[words[0]] = n
		}
	}
	return r, nil
}

// statements is how many they are.
func (r reached) statements() (n int) {
	for _, s := range r {
		n += s
	}
	return n
}

// beyond is how many statements others lack.
func (r reached) beyond(other reached) (n int) {
	for place, s := range r {
		if other[place] == 0 {
			n += s
		}
	}
	return n
}

func (r reached) add(other reached) {
	for place, s := range other {
		r[place] = s
	}
}
