package main

import (
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"eighthturn/internal/quilttest/golden"
)

// manualFile is the page that packages take.
const manualFile = "eighthturn.1"

func TestManualIsThePageOfHelp(t *testing.T) {
	golden.Text(t, manualFile, []byte(manualPage(rootCommand(testConsole(), nil))))
}

// Every command and option is in the manual, and nothing in it steers man by accident.
func TestManualIsWhole(t *testing.T) {
	root := rootCommand(testConsole(), nil)
	for _, wrong := range manualFaults(manualPage(root), root) {
		t.Error(wrong)
	}
}

func manualFaults(page string, root *cobra.Command) []string {
	var list []string
	for _, cmd := range root.Commands() {
		if cmd.Name() != "help" && !strings.Contains(page, "\n.SS \""+roff(howToCall(cmd))) {
			list = append(list, "no section for "+cmd.Name())
		}
		for _, word := range strings.Fields(helpText(cmd)) {
			if option := strings.Trim(word, ",;."); strings.HasPrefix(option, "--") && option != "--help" && !strings.Contains(page, roff(option)) {
				list = append(list, cmd.Name()+": no "+option)
			}
		}
	}
	for _, line := range strings.Split(page, "\n") {
		known := strings.Fields(".TH .SH .SS .PP .TP .B .I .RS .RE .nh .ad")
		name, _, _ := strings.Cut(line, " ")
		control := strings.HasPrefix(line, ".") || strings.HasPrefix(line, "'")
		if control && !strings.Contains(" "+strings.Join(known, " ")+" ", " "+name+" ") {
			list = append(list, "a line steers man: "+line)
		}
	}
	return list
}

func TestManualIsWholeCatches(t *testing.T) {
	root := rootCommand(testConsole(), nil)
	page := manualPage(root)
	for what, spoilt := range map[string]string{
		"a section left out": strings.Replace(page, ".SS \"eighthturn tidy", ".PP \"eighthturn tidy", 1),
		"an option left out": strings.ReplaceAll(page, roff("--legend"), "legend"),
		"a line that steers": page + ".so /etc/hostname\n",
		"a quote that does":  page + "'tis\n",
	} {
		if len(manualFaults(spoilt, root)) == 0 {
			t.Errorf("%s goes unseen", what)
		}
	}
}

func TestRoff(t *testing.T) {
	for text, want := range map[string]string{
		`a\b`: `a\eb`, "--x": `\-\-x`, ".x": `\&.x`, "it's": `it\(aqs`, "'x": `\(aqx`, "a\nb": "a b", "~/x^`": `\(ti/x\(ha\(ga`,
	} {
		if got := roff(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	var p page
	p.macro("B", `say "x"`, ".y")
	if got, want := p.String(), ".B \"say \\(dqx\\(dq\" \".y\"\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
