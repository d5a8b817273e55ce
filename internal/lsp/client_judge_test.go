//go:build judges

package lsp

import (
	"context"
	"errors"
	"os"
	"os/exec"
	"testing"
	"time"

	"eighthturn/internal/quilttest/judges"
)

// TestProtocolsOwnClient writes a layout through the library that the protocol's authors give to editors (vscode-languageserver-protocol, from
// npm): an error is told, its hint applied, words are completed and colored, a fabric is renamed and gets another color, the text is tidied.
func TestProtocolsOwnClient(t *testing.T) {
	const want = `positions utf-16
error no fabric, pool or strip set is called "nvay" | did you mean "navy"?
tokens true true
action quickfix did you mean "navy"?
left 0
offered true false
colors 2 #ff8000
hover **navy** #ff8000, value L* 67
tokens true true
line strip   4
line fabric  chalk  #f4ead7  "🌙 light"
line fabric  navy   #ff8000
line block   W  web  wedges navy  kites chalk
line grid
line   W W
line   W W
left 0
unknown -32601
ended 0
`
	if got := saidBy(t, "client.cjs"); got != want {
		t.Errorf("it says\n%s\nwant\n%s", got, want)
	}
}

// TestExtension loads the extension for editors with the library that it is packed with (vscode-languageclient, from npm) and a stand-in for
// the editor's own module: it starts the program that the settings name as a language server for layouts alone, hands on its faults, and
// ends it.
func TestExtension(t *testing.T) {
	const want = `error 3 19 no fabric, pool or strip set is called "nvay" | did you mean "navy"?
ended
`
	if got := saidBy(t, "extension.cjs"); got != want {
		t.Errorf("it says\n%s\nwant\n%s", got, want)
	}
}

// saidBy is what a script of testdata/lsp says, which starts the server by itself.
func saidBy(t *testing.T, script string) string {
	t.Helper()
	node := judges.Program(t, "npm brings it", "node", "nodejs")
	if _, err := os.Stat("../../testdata/lsp/node_modules/vscode-languageclient"); err != nil {
		t.Fatal("its library is missing: npm ci in testdata/lsp")
	}
	for _, read := range []string{"../../testdata/lsp/" + script, "../../layout/editor/extension.js"} { // so that what they change to is tried anew
		if _, err := os.ReadFile(read); err != nil {
			t.Fatal(err)
		}
	}
	server, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute) // a stop for what hangs, no measure
	defer cancel()
	cmd := exec.CommandContext(ctx, node, script)
	cmd.Dir = "../../testdata/lsp"
	cmd.Env = append(os.Environ(), "EIGHTHTURN_SERVES=1", "SERVER="+server)
	got, err := cmd.Output()
	if err != nil {
		var failed *exec.ExitError
		if errors.As(err, &failed) {
			t.Errorf("%v\n%s", err, failed.Stderr)
		}
		t.Errorf("%s: %v", script, err)
	}
	return string(got)
}
