//go:build judges

package main

import (
	"bytes"
	"os/exec"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// groff judges: it warns of nothing, and what it shows has the words of help.
func TestManualByGroff(t *testing.T) {
	groff := judges.Program(t, "Debian's groff", "groff")
	page := manualPage(rootCommand(testConsole(), nil))
	shown, said := throughGroff(t, groff, page)
	if said != "" {
		t.Errorf("groff says:\n%s", said)
	}
	for _, words := range []string{"--usable-width LENGTH", "-o, --output NAME", "eighthturn values harbor.quilt --try rust=#7a2f16", "FABRIC=COLOR"} {
		if !strings.Contains(strings.Join(strings.Fields(shown), " "), words) {
			t.Errorf("%q is not shown", words)
		}
	}
	if _, said := throughGroff(t, groff, page+".nosuchmacro\n"); said == "" {
		t.Error("groff lets an unknown macro pass, so it judges nothing")
	}
}

func throughGroff(t *testing.T, groff, page string) (shown, said string) {
	t.Helper()
	cmd := exec.Command(groff, "-man", "-Tascii", "-ww", "-P-cbou")
	var out, complaints bytes.Buffer
	cmd.Stdin, cmd.Stdout, cmd.Stderr = strings.NewReader(page), &out, &complaints
	if err := cmd.Run(); err != nil {
		t.Fatal(err)
	}
	return out.String(), complaints.String()
}
