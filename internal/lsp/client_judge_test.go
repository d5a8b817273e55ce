//go:build judges

package lsp

import (
	"context"
	"os"
	"os/exec"
	"testing"
	"time"

	"eighthturn/internal/quilttest/judges"
)

// TestProtocolsOwnClient writes a layout through the library that the protocol's authors give to editors (vscode-languageserver-protocol, from
// npm): an error is told, its hint applied, words are completed and colored, a fabric is renamed and gets another color, the text is tidied.
func TestProtocolsOwnClient(t *testing.T) {
	node := judges.Program(t, "npm brings it", "node", "nodejs")
	if _, err := os.Stat("../../testdata/lsp/node_modules"); err != nil {
		t.Fatal("its library is missing: npm ci in testdata/lsp")
	}
	server, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute) // a stop for what hangs, no measure
	defer cancel()
	cmd := exec.CommandContext(ctx, node, "client.cjs")
	cmd.Dir = "../../testdata/lsp"
	cmd.Env = append(os.Environ(), "EIGHTHTURN_SERVES=1", "SERVER="+server)
	got, err := cmd.CombinedOutput()
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
	if err != nil || string(got) != want {
		t.Errorf("%v\n%s\nwant\n%s", err, got, want)
	}
}
