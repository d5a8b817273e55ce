package quilt

import (
	"testing"
	"unsafe"
)

// TestRecordsAreSmall: large tops cost what their records take, since most of the time memory is touched for the first time.
func TestRecordsAreSmall(t *testing.T) {
	for _, r := range []struct {
		name      string
		size, max uintptr
	}{
		{"patch", unsafe.Sizeof(Patch{}), 56},
		{"face", unsafe.Sizeof(Face{}), 32},
		{"seam", unsafe.Sizeof(Seam{}), 40},
	} {
		if r.size > r.max {
			t.Errorf("a %s takes %d bytes, more than %d", r.name, r.size, r.max)
		}
	}
}
