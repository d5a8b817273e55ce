package main

import (
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// TestNotice: NOTICE names every module that a released program holds, on any system, and no other.
func TestNotice(t *testing.T) {
	modules := map[string]bool{}
	for _, system := range []string{"linux", "darwin", "windows"} {
		list := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}{{end}}{{end}}", ".")
		list.Env = append(os.Environ(), "CGO_ENABLED=0", "GOOS="+system)
		out, err := list.Output()
		if err != nil {
			t.Fatal(err)
		}
		for _, module := range strings.Fields(string(out)) {
			modules[module] = true
		}
	}
	if len(modules) < 10 {
		t.Fatalf("only %d modules are found", len(modules))
	}
	notice, err := os.ReadFile("../../NOTICE")
	if err != nil {
		t.Fatal(err)
	}
	lacks, idle := unnamed(string(notice), modules)
	if len(lacks) > 0 || len(idle) > 0 {
		t.Errorf("NOTICE lacks %v; the program does not hold %v", lacks, idle)
	}
	for module := range modules {
		lacks, _ := unnamed(strings.ReplaceAll(string(notice), module, "another.org/module"), modules)
		if !slices.Contains(lacks, module) {
			t.Errorf("a NOTICE without %s was not noticed", module)
		}
	}
	if _, idle := unnamed(string(notice)+"example.org/gone MIT\n", modules); !slices.Contains(idle, "example.org/gone") {
		t.Error("a module too many in NOTICE was not noticed")
	}
}

// unnamed is what a notice lacks, and what it names for nothing.
func unnamed(notice string, modules map[string]bool) (lacks, idle []string) {
	named := map[string]bool{}
	for _, line := range regexp.MustCompile(`(?m)^[a-z0-9.-]+\.[a-z]+/\S+`).FindAllString(notice, -1) {
		named[line] = true
		if !modules[line] {
			idle = append(idle, line)
		}
	}
	for module := range modules {
		if !named[module] {
			lacks = append(lacks, module)
		}
	}
	slices.Sort(lacks)
	return lacks, idle
}
