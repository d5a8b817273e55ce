package main

import (
	"fmt"
	"strings"
)

// plural writes "1 block", "3 blocks", "no blocks".
func plural(n int, what string) string {
	switch n {
	case 0:
		return "no " + what + "s"
	case 1:
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// listed joins words as a sentence does: "a", "a and b", "a, b and c".
func listed(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// mapped is a list with each entry put into another form; without entries it is empty, never nil.
func mapped[A, B any](list []A, form func(A) B) []B {
	out := make([]B, len(list))
	for i, a := range list {
		out[i] = form(a)
	}
	return out
}
