package main

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/report"
	"eighthturn/samples"
)

// shares is a report that no command is written for.
func shares() report.Report {
	return report.Report{
		Name: "shares", Title: "Shares", Short: "how much of the top each fabric shows",
		Make: func(p *report.Plans) document.Document {
			t := document.Table{Columns: []document.Column{{Title: "fabric"}, {Title: "faces", Kind: document.Counts}}}
			for i, faces := range p.FacesByFabric() {
				t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{{Text: document.Plain(p.Top.Fabrics[i].Name)}, {Number: strings.Repeat("1", min(len(faces), 3))}}})
			}
			return document.Document{Title: "Shares", Sections: []document.Section{{ID: "shares", Title: "Fabrics", Blocks: []document.Block{t}}}}
		},
		Plan: func(p *report.Plans) any {
			return struct {
				Title string `json:"title"`
			}{p.Top.Title}
		},
	}
}

// A report that is one line in the list has its command in every form, though no file is written for it.
func TestReportsHaveCommands(t *testing.T) {
	file := filepath.Join(t.TempDir(), "lap.quilt")
	if err := os.WriteFile(file, []byte(samples.All()[0].Text), 0o600); err != nil {
		t.Fatal(err)
	}
	for form, holds := range map[string]string{"": "Fabrics\n", "--markdown": "| fabric |", "--csv": "fabric,faces\n", "--json": `"format": 1`} {
		c := testConsole()
		cmd := reportCommand(c, shares())
		args := []string{file}
		if form != "" {
			args = append(args, form)
		}
		cmd.SetArgs(args)
		path := filepath.Join(t.TempDir(), "out")
		var err error
		if c.out, err = os.Create(path); err != nil {
			t.Fatal(err)
		}
		if err := cmd.Execute(); err != nil {
			t.Fatalf("%q: %v", form, err)
		}
		c.out.Close()
		b, _ := os.ReadFile(path)
		out := string(b)
		if !strings.Contains(out, holds) {
			t.Errorf("%q: %q is not in %q", form, holds, out)
		}
		if form == "--csv" {
			if rows, err := csv.NewReader(strings.NewReader(out)).ReadAll(); err != nil || len(rows) < 3 {
				t.Errorf("%d rows, %v", len(rows), err)
			}
		}
	}
	for _, r := range report.Reports() {
		found := false
		for _, cmd := range commands(testConsole()) {
			found = found || cmd.Name() == r.Name
		}
		if !found || r.Title == "" || r.Short == "" || r.Make == nil || r.Plan == nil {
			t.Errorf("the report %q lacks a command, or part of its line", r.Name)
		}
	}
}
