//go:build judges

package grammar_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// TestExtensionStartsTheServer runs the extension in Node with stand-ins for the editor and its client, which say what they are asked for.
func TestExtensionStartsTheServer(t *testing.T) {
	node := judges.Program(t, "npm brings it", "node", "nodejs")
	folder := t.TempDir()
	source, err := os.ReadFile("../editor/extension.js")
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"extension.js":                               string(source),
		"node_modules/vscode/index.js":               `exports.workspace = { getConfiguration: (s) => ({ get: (n) => process.env.PROGRAM }) };`,
		"node_modules/vscode-languageclient/node.js": `exports.LanguageClient = class { constructor(...a) { this.a = a; } start() { console.log(JSON.stringify(this.a)); } stop() { console.log("stopped"); } };`,
		"try.js": `const e = require("./extension.js"); e.deactivate(); e.activate(); e.deactivate();`,
	} {
		path := filepath.Join(folder, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for given, program := range map[string]string{"": "eighthturn", "/opt/eighthturn": "/opt/eighthturn"} {
		cmd := exec.Command(node, "try.js")
		cmd.Dir, cmd.Env = folder, append(os.Environ(), "PROGRAM="+given)
		got, err := cmd.CombinedOutput()
		want := `["eighthturn","eighthturn",{"command":"` + program + `","args":["lsp"]},{"documentSelector":[{"language":"quilt"}]}]` + "\nstopped\n"
		if err != nil || string(got) != want {
			t.Errorf("%v, %s", err, got)
		}
	}
}
