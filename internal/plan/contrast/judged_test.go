package contrast

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// Judges: what a quilt teacher would say of whole quilts.

// judgement is one row of the table of what a teacher would say.
type judgement struct {
	file     string
	good     bool
	loss     LossOf   // the first one, "" for none
	names    []string // fabrics that it must name
	change   ChangeOf // the first one, "" for any
	why      string
	cameOut  LossOf // where the study tells another loss first, with the reason
	excepted string
	says     string // what else it must say: complement, or "" for nothing
	firstRun string // right, unclear or wrong, with what came out; "" where that was not noted
}

// judgements reads the table.
func judgements(t *testing.T) []judgement {
	t.Helper()
	file, err := os.Open("../../../testdata/values/judged.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment, reader.FieldsPerRecord = '#', -1
	rows, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []judgement
	for _, row := range rows {
		j := judgement{file: row[0], good: row[1] == "good", loss: LossOf(row[2]), names: strings.Fields(row[3]), change: ChangeOf(row[4]), why: row[5]}
		if len(row) > 7 {
			j.cameOut, j.excepted = LossOf(row[6]), row[7]
		}
		if len(row) > 9 {
			j.says, j.firstRun = row[8], row[9]
		}
		list = append(list, j)
	}
	return list
}

// judgedTop lays out one of the layouts that were judged.
func judgedText(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile("../../../testdata/values/judged/" + name + ".quilt")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestWhatATeacherSays holds the first loss, what it names and the first change against the table, whose judgements were
// written down before any layout was run.
func TestWhatATeacherSays(t *testing.T) {
	list := judgements(t)
	first := map[string]int{}
	for _, j := range list {
		if word, _, _ := strings.Cut(j.firstRun, ":"); word != "" {
			first[word]++
		}
		if fault := judgedApart(j, Study(lay.Top(t, judgedText(t, j.file)), Options{Palettes: palettes.All()})); fault != "" {
			t.Errorf("%s: %s (%s)", j.file, fault, j.why)
		}
	}
	t.Logf("run for the first time: %v", first)
	if files, err := filepath.Glob("../../../testdata/values/judged/*.quilt"); err != nil || len(files) != len(list) || len(list) < 68 {
		t.Errorf("%d judgements of %d layouts: %v", len(list), len(files), err)
	}
}

// judgedApart says where a study and a judgement part, "" for nowhere.
func judgedApart(j judgement, r *Report) string {
	want := j.loss
	if j.excepted != "" {
		want = j.cameOut
	}
	var first LossOf
	if len(r.Losses) > 0 {
		first = r.Losses[0].Of
	}
	switch {
	case j.excepted != "" && want == j.loss:
		return "it came out as was said: take the exception out"
	case j.says == "complement" && !slices.ContainsFunc(r.Figures, func(f Figure) bool { return f.Complement != nil }):
		return "the figures between those that are meant go unsaid"
	case first != want:
		return "the first loss is " + string(first) + ", expected " + string(want)
	case first == "":
		return ""
	}
	named := namesIn(r, &r.Losses[0])
	if j.excepted != "" {
		named = nil
		for i := range r.Losses {
			named = append(named, namesIn(r, &r.Losses[i])...)
		}
	}
	for _, name := range j.names {
		if !slices.Contains(named, name) {
			return "it does not name " + name
		}
	}
	if j.change != "" && (len(r.Changes) == 0 || r.Changes[0].Of != j.change) {
		return "the first change is not " + string(j.change)
	}
	return ""
}

// namesIn are the fabrics that a loss names.
func namesIn(r *Report, l *Loss) []string {
	if l.Of == LossOfScrap {
		return []string{r.Stray[l.Scrap].Fabric}
	}
	f := &r.Figures[l.Figure]
	lacks := f.Lacks
	if l.Of == LossOfRim {
		lacks = f.Rim.Lacks
	}
	var names []string
	for _, lack := range lacks {
		names = append(names, lack.Names[:]...)
	}
	return names
}

// TestTeacherNotices: a study of other colors is held to its judgement and found apart.
func TestTeacherNotices(t *testing.T) {
	spoilt := map[string][2]string{ // by layout, what stands there and what spoils it, or mends it
		"g1":  {"#1f2f52", "#f0e6d0"},
		"g4":  {"#4b2440", "#aaa7a3"},
		"n06": {"#2e2c33", "#e6dccb"},
		"b2":  {"#2f7d4a", "#f2f2e8"},
		"b7":  {"#b5522c", "#5c1f0c"},
		"b3":  {"#2f4a6a", "#f2ece2"},
		"m20": {"#dcd3c2", "#6a4c3a"},
		"m27": {"#f1f1ee", "#3a4a6e"},
		"m29": {"#c98fa0", "#fbe4ea"},
		"m31": {"#6f8f5e", "#dfe6d2"},
		"m32": {"#4f6a78", "#a5c0ce"},
	}
	for _, j := range judgements(t) {
		change, ok := spoilt[j.file]
		if !ok {
			continue
		}
		text := strings.Replace(judgedText(t, j.file), change[0], change[1], 1)
		if judgedApart(j, Study(lay.Top(t, text), Options{})) == "" {
			t.Errorf("%s in other colors goes unnoticed", j.file)
		}
	}
}
