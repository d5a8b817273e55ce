package files

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// TestAbandonedSetLeavesNothing: whenever a set of many files is abandoned, also while one of them is just begun, nothing of it is left, or all
// of it is there.
func TestAbandonedSetLeavesNothing(t *testing.T) {
	t.Parallel()
	const number = 40
	var list []File
	for i := range number {
		list = append(list, File{fmt.Sprintf("%d.svg", i), func(w io.Writer) error {
			_, err := io.WriteString(w, "a picture")
			return err
		}})
	}
	for round := range 40 {
		within := t.TempDir()
		var u Unfinished
		go func() { _ = WriteSet(filepath.Join(within, "maps"), Options{Unfinished: &u}, list) }() // once abandoned it waits for the program's end
		time.Sleep(time.Duration(round) * 97 * time.Microsecond)
		u.Abandon()
		time.Sleep(2 * time.Millisecond) // whoever still writes has time to
		there, _ := os.ReadDir(within)
		for _, e := range there {
			if files, _ := os.ReadDir(filepath.Join(within, e.Name())); e.Name() != "maps" || len(files) != number {
				t.Errorf("round %d: %s is there with %d files", round, e.Name(), len(files))
			}
		}
	}
}
