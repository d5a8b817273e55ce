package preview

import (
	"flag"
	"os"
	"testing"
)

// atTheEnd is what tests that share something leave to be closed.
var atTheEnd []func()

func TestMain(m *testing.M) {
	flag.Parse()
	_ = flag.Set("test.parallel", "12") // they mostly wait
	code := m.Run()
	for _, end := range atTheEnd {
		end()
	}
	os.Exit(code)
}
