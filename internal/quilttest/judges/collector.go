package judges

import (
	"os"
	"runtime/debug"
	"slices"
	"strings"
)

// Tests make much and keep little: collecting what is left over less often costs a fifth less of all their time. What is
// measured, and what GOGC says, stays as it is.
func init() {
	measured := slices.ContainsFunc(os.Args, func(arg string) bool { return strings.HasPrefix(arg, "-test.bench") })
	if os.Getenv("GOGC") == "" && !measured {
		debug.SetGCPercent(400)
	}
}
