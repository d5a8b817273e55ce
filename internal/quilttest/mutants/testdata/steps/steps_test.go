package steps

import "testing"

func TestCount(t *testing.T) {
	Share(3)
	if Count(9, false) != 9 || Count(2, true) != 2 || Count(9, true) != 3 || Start() != 5 {
		t.Error("miscounted")
	}
}
