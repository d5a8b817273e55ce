package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// What starting costs, beside a program that prints one line: both are built as released programs are, and run in turn. The
// aim is a ratio below 2. Run it with -benchtime 300x.
func BenchmarkStart(b *testing.B) {
	folder := b.TempDir()
	source := filepath.Join(folder, "line.go")
	if err := os.WriteFile(source, []byte("package main\n\nimport \"fmt\"\n\nfunc main() { fmt.Println(\"one line\") }\n"), 0o600); err != nil {
		b.Fatal(err)
	}
	line, program := released(b, source, filepath.Join(folder, "line")), released(b, ".", filepath.Join(folder, "eighthturn"))
	var times [2]time.Duration
	for b.Loop() {
		times[0] += processorTime(b, line)
		times[1] += processorTime(b, program, "--version")
	}
	b.ReportMetric(float64(times[0].Microseconds())/float64(b.N), "line-µs/op")
	b.ReportMetric(float64(times[1].Microseconds())/float64(b.N), "eighthturn-µs/op")
	b.ReportMetric(float64(times[1])/float64(times[0]), "ratio")
}

// released builds a program as releases are built, and copies it in one piece: how a file was written decides how the system
// holds its pages, and a large program that the linker has just written starts up to half as slowly again.
func released(b *testing.B, source, to string) string {
	build := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", to+".linked", source)
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		b.Fatalf("%v\n%s", err, out)
	}
	program, err := os.ReadFile(to + ".linked")
	if err != nil {
		b.Fatal(err)
	}
	if err := os.WriteFile(to, program, 0o700); err != nil {
		b.Fatal(err)
	}
	return to
}

func processorTime(b *testing.B, program string, args ...string) time.Duration {
	run := exec.Command(program, args...)
	if err := run.Run(); err != nil {
		b.Fatal(err)
	}
	return run.ProcessState.UserTime() + run.ProcessState.SystemTime()
}
