// Package judges is what tests need that ask programs outside the project: whether they are asked at all, how much is tried,
// and where a program stands.
//
// Tests that need more than Go stand in files with the build tag judges. Under that tag a program that is missing is a
// failure, and laws that take long are tried on all that there is; without it, on a part.
package judges

import (
	"os/exec"
	"testing"
)

// Of is how many of something a law is tried on: few in the plain run, all of them under the tag.
func Of(few, all int) int {
	if On {
		return all
	}
	return few
}

// Program is the path of an outside program, the first of its names that is found. That there is none is a failure; what
// says where it comes from or what it is for.
func Program(t testing.TB, what string, names ...string) string {
	t.Helper()
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	t.Fatalf("%q is not found here: %s", names, what)
	return ""
}

// Some is a part of a list in the plain run, spread evenly over it, and all of it under the tag.
func Some[T any](list []T, few int) []T {
	if On || few >= len(list) {
		return list
	}
	var some []T
	for i := range few {
		some = append(some, list[i*len(list)/few])
	}
	return some
}
