package main

import (
	"strings"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/render"
	"eighthturn/layout"
)

// cutsText is a plan for a terminal.
func cutsText(name string, plan *cutting.Plan) string {
	p := pageOf(plan)
	var b strings.Builder
	b.WriteString(name + ": what to cut and what to buy, for " + p.Quilts() + "\n")
	for _, s := range p.sections() {
		b.WriteString("\n" + layout.Visible(s.heading) + "\n")
		for _, text := range s.words {
			b.WriteString(listItem(text))
		}
		if len(s.rows) > 0 {
			b.WriteString(render.Aligned(s.rows, "  "))
		}
		for _, text := range s.notes {
			b.WriteString(listItem(text))
		}
	}
	return b.String()
}

// listItem is a sentence behind a dash, its further lines indented.
func listItem(text string) string {
	return "  - " + strings.TrimPrefix(render.Wrapped(layout.Visible(text), "    "), "    ")
}

// cutsMarkdown is a plan as Markdown (CommonMark, with tables as GitHub's has them).
func cutsMarkdown(plan *cutting.Plan) string {
	p := pageOf(plan)
	var b strings.Builder
	title := plan.Title
	if title == "" {
		title = "The quilt"
	}
	b.WriteString("# " + markdownText(title) + ": what to cut and what to buy\n")
	for _, s := range p.sections() {
		b.WriteString("\n## " + markdownText(s.heading) + "\n")
		b.WriteString(markdownList(s.words))
		b.WriteString(markdownTable(s.rows))
		b.WriteString(markdownList(s.notes))
	}
	return b.String()
}

func markdownList(list []string) string {
	if len(list) == 0 {
		return ""
	}
	var b strings.Builder
	b.WriteByte('\n')
	for _, text := range list {
		b.WriteString("- " + markdownText(text) + "\n")
	}
	return b.String()
}

func markdownTable(rows [][]string) string {
	var b strings.Builder
	for i, row := range rows {
		if i == 0 {
			b.WriteByte('\n')
		}
		var rule []string
		for _, cell := range row {
			b.WriteString("| " + markdownText(strings.TrimPrefix(cell, " ")) + " ")
			mark := "---"
			if strings.HasPrefix(cell, " ") {
				mark = "--:"
			}
			rule = append(rule, mark)
		}
		b.WriteString("|\n")
		if i == 0 {
			b.WriteString("| " + strings.Join(rule, " | ") + " |\n")
		}
	}
	return b.String()
}

// markdownText is text of which Markdown takes nothing for its own, and no terminal for orders.
func markdownText(text string) string {
	text = strings.ReplaceAll(layout.Visible(text), "\u00a0", " ")
	var b strings.Builder
	for _, r := range text {
		if strings.ContainsRune("\\`*_{}[]<>#|~!", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
