package files

import (
	"strings"
	"testing"
)

// TestPhotoTime: a photo that takes longer than it may is refused in a sentence, and is read once there is time.
func TestPhotoTime(t *testing.T) {
	a := In(t.TempDir())
	if _, err := a.clothWithin(0, "sea.jpg"); err == nil || !strings.Contains(err.Error(), "too long") {
		t.Errorf("%v", err)
	}
	if _, err := a.Cloth("sea.jpg"); err == nil || strings.Contains(err.Error(), "too long") {
		t.Errorf("%v of a photo that is not there", err)
	}
}
