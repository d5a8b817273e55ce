package main

import (
	_ "embed"
	"fmt"
	"strings"
)

//go:embed equal.txt
var equalText string

// entry is a breakage that is listed as changing nothing.
type entry struct {
	line      int // of the list, from 1
	path, key string
}

// equals reads the breakages that change nothing, a line each: the package, a tab, the key, a tab, the reason.
func equals(text string) ([]entry, error) {
	var list []entry
	known := map[string]int{}
	for i, line := range strings.Split(strings.TrimSpace(text), "\n") {
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		parts := strings.Split(line, "\t")
		if len(parts) != 3 || strings.TrimSpace(parts[2]) == "" {
			return nil, fmt.Errorf("equal.txt:%d: wanted a package, a breakage and the reason, with tabs between them", i+1)
		}
		name := parts[0] + "\t" + parts[1]
		if first := known[name]; first > 0 {
			return nil, fmt.Errorf("equal.txt:%d: this breakage stands in line %d already", i+1, first)
		}
		known[name] = i + 1
		list = append(list, entry{i + 1, parts[0], parts[1]})
	}
	return list, nil
}

// same are the breakages of a package that are listed, by their numbers; beside them stands what is said of entries that name none.
func (d *folder) same(list []entry) (map[int]bool, []string) {
	ids := map[string]int{}
	for _, m := range d.mutants {
		ids[m.key()] = m.id
	}
	listed := map[int]bool{}
	var idle []string
	for _, e := range list {
		if e.path != d.path {
			continue
		}
		if id := ids[e.key]; id > 0 {
			listed[id] = true
			continue
		}
		idle = append(idle, fmt.Sprintf("equal.txt:%d: nothing can be broken so any more: %s%s", e.line, e.key, d.alike(e.key)))
	}
	return listed, idle
}

// alike lists what is broken in the function of a key, to the same.
func (d *folder) alike(key string) string {
	where, _, _ := strings.Cut(key, ": ")
	_, is, _ := strings.Cut(key, " -> ")
	var out strings.Builder
	for _, m := range d.mutants {
		if k := m.key(); strings.HasPrefix(k, where+": ") && strings.Contains(k, " -> "+is) {
			out.WriteString("\n\tthere is " + k)
		}
	}
	return out.String()
}
