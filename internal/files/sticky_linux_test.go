package files

import (
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// Another user's file in a folder where only its owner may replace it: the refusal says so, not that the folder takes no
// files. The file is written by a copy of this program as nobody, which only root can start.
func TestFileOfAnotherUserInAStickyFolder(t *testing.T) {
	folder := t.TempDir()
	path := put(t, folder, "old.svg", "made here, old\n")
	for _, c := range []struct {
		mode fs.FileMode
		want Reason
	}{{0o777, None}, {0o777 | fs.ModeSticky, IsOthers}} {
		if err := os.Chmod(folder, c.mode); err != nil {
			t.Fatal(err)
		}
		err := notRenamed(path, info(t, path), &os.LinkError{Op: "rename", Err: syscall.EPERM})
		var refused *Refusal
		if errors.As(err, &refused) != (c.want != None) || refused != nil && refused.Reason != c.want {
			t.Errorf("%v: got %v, want the reason %v", c.mode, err, c.want)
		}
	}
	if os.Geteuid() != 0 {
		return
	}
	for above := folder; above != "/"; above = filepath.Dir(above) {
		if above != folder && strings.HasPrefix(above, os.TempDir()+"/") {
			if err := os.Chmod(above, 0o755); err != nil {
				t.Fatal(err)
			}
		}
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	program := filepath.Join(folder, "program")
	if err := os.Link(self, program); err != nil {
		content, readErr := os.ReadFile(self)
		if readErr != nil || os.WriteFile(program, content, 0o755) != nil {
			t.Fatal(err, readErr)
		}
	}
	child := exec.Command(program)
	child.Dir = folder
	child.Env = append(os.Environ(), childPath+"="+path)
	child.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
	out, err := child.CombinedOutput()
	if err == nil || !strings.Contains(string(out), IsOthers.String()) || strings.Contains(string(out), "stage") { // it is refused before the work
		t.Errorf("%v: %s", err, out)
	}
	wantContent(t, path, "made here, old\n")
	wantNothingUnfinished(t, folder)
}

// In a sticky folder the file's owner, the folder's and the superuser may replace a file (POSIX.1-2024, rename).
func TestWhoMayReplaceInAStickyFolder(t *testing.T) {
	const ann, ben, cleo = 1001, 1002, 1003
	for _, c := range []struct {
		user, file, folder uint32
		want               bool
	}{{ann, ann, ben, true}, {ann, ben, ann, true}, {superuser, ann, ben, true}, {ann, ben, cleo, false}, {ann, superuser, superuser, false}} {
		if mayReplace(c.user, c.file, c.folder) != c.want {
			t.Errorf("%+v: got %v", c, !c.want)
		}
	}
}
