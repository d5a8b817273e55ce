package judges

import "testing"

func TestSome(t *testing.T) {
	list := []int{0, 1, 2, 3, 4, 5, 6}
	if got := Some(list, 3); On && len(got) != 7 || !On && (len(got) != 3 || got[0] != 0 || got[1] != 2 || got[2] != 4) {
		t.Errorf("of seven: %v", got)
	}
	if got := Some(list, 9); len(got) != 7 {
		t.Errorf("nine of seven: %v", got)
	}
	if got := Of(2, 5); On && got != 5 || !On && got != 2 {
		t.Errorf("two, or five of them: %d", got)
	}
}
