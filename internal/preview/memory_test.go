package preview

import (
	"fmt"
	"runtime"
	"strings"
	"testing"
)

// heapNow is what is in use.
func heapNow() uint64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// TestLargeSavesStayFlat: saves of a large layout, each studied, leave no more in use than the first: of older pictures stays what pages
// were sent of them, and no top, no plan and no report.
func TestLargeSavesStayFlat(t *testing.T) {
	s := newSite("/somewhere/quilt.quilt", Options{})
	empty := heapNow()
	save := func(n int) {
		publishing(t, s, strings.Replace(quiltOf(60, 60, false), "strip 4", fmt.Sprintf("strip %d 1/2", 3+n), 1))
		s.state.answer(0)
		ask(s, "/report", query("tab=2"))
	}
	save(0)
	first := heapNow()
	for n := range 7 {
		save(n + 1)
	}
	after := heapNow()
	t.Logf("in use: before %d KB, after one save %d KB, after eight %d KB", empty>>10, first>>10, after>>10)
	if after > first+(first-empty)/2 {
		t.Errorf("it grew from %d to %d bytes", first, after)
	}
	runtime.KeepAlive(s)
}
