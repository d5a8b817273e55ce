package main

import (
	"fmt"
	"regexp"
	"strings"

	"github.com/rivo/uniseg"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"eighthturn/layout"
)

// pageWidth is how many columns of a terminal help and lists take.
const pageWidth = 80

// helpText is the help of the program or of a command.
func helpText(cmd *cobra.Command) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n\n", cmd.CommandPath(), cmd.Short)
	fmt.Fprintf(&b, "  %s\n\n", howToCall(cmd))
	if cmd.Long != "" {
		for _, paragraph := range strings.Split(strings.TrimSpace(cmd.Long), "\n") {
			b.WriteString(wrapped(paragraph, ""))
		}
		b.WriteByte('\n')
	}
	writeCommands(&b, cmd)
	writeOptions(&b, cmd)
	writeExamples(&b, cmd)
	return b.String()
}

// howToCall is the one line that shows how a command is typed.
func howToCall(cmd *cobra.Command) string {
	if !cmd.HasParent() {
		return cmd.Name() + " COMMAND FILE"
	}
	return cmd.Parent().CommandPath() + " " + cmd.Use
}

// writeCommands lists the commands of each group; those of the library have none and go last.
func writeCommands(b *strings.Builder, cmd *cobra.Command) {
	rows := map[string][][]string{}
	wide := 0
	for _, c := range cmd.Commands() {
		if !c.Hidden {
			wide = max(wide, len(c.Name()))
		}
	}
	for _, c := range cmd.Commands() {
		if !c.Hidden {
			rows[c.GroupID] = append(rows[c.GroupID], []string{fmt.Sprintf("%-*s", wide, c.Name()), c.Short})
		}
	}
	for _, g := range append(cmd.Groups(), &cobra.Group{ID: "", Title: "Commands"}) {
		if len(rows[g.ID]) > 0 {
			fmt.Fprintf(b, "%s\n%s\n", g.Title, aligned(rows[g.ID], "  "))
		}
	}
}

// writeOptions lists the options in the order in which a command defines them, help last.
func writeOptions(b *strings.Builder, cmd *cobra.Command) {
	cmd.InitDefaultHelpFlag()
	flags := cmd.Flags()
	flags.SortFlags = false
	b.WriteString("Options\n")
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Name != "help" && !f.Hidden {
			writeOption(b, f)
		}
	})
	writeOption(b, &pflag.Flag{Name: "help", Shorthand: "h", Usage: "show this text", Value: flags.Lookup("help").Value})
	b.WriteByte('\n')
}

// optionColumn is where what an option does begins.
const optionColumn = 24

func writeOption(b *strings.Builder, f *pflag.Flag) {
	value, usage := pflag.UnquoteUsage(f)
	name := "    --" + f.Name
	if f.Shorthand != "" {
		name = "-" + f.Shorthand + ", --" + f.Name
	}
	if value != "" {
		name += " " + value
	}
	text := wrapped(usage, strings.Repeat(" ", optionColumn))
	if len(name)+3 < optionColumn {
		b.WriteString("  " + name + text[len(name)+2:])
	} else {
		b.WriteString("  " + name + "\n" + text)
	}
}

func writeExamples(b *strings.Builder, cmd *cobra.Command) {
	if cmd.Example == "" {
		return
	}
	b.WriteString("Examples\n")
	for _, line := range strings.Split(cmd.Example, "\n") {
		b.WriteString(wrapped(strings.TrimSpace(line), "  "+line[:len(line)-len(strings.TrimLeft(line, " "))]))
	}
}

// unbroken is text that wrapped keeps on one line.
func unbroken(text string) string { return strings.ReplaceAll(text, " ", "\u00a0") }

// mixedNumber is a whole number before a fraction, which stay together.
var mixedNumber = regexp.MustCompile(`(\d) (\d+/\d)`)

// wrapped is text in lines of at most pageWidth columns, each indented; a longer word has a line of its own.
func wrapped(text, indent string) string {
	var b strings.Builder
	line, width := indent, len(indent)
	text = strings.ReplaceAll(text, "-o ", "-o\u00a0") // an option with what stands behind it
	text = mixedNumber.ReplaceAllString(text, "$1\u00a0$2")
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\t' }) {
		word = strings.ReplaceAll(word, "\u00a0", " ")
		w := uniseg.StringWidth(word)
		if width > len(indent) && width+1+w > pageWidth {
			b.WriteString(line + "\n")
			line, width = indent, len(indent)
		}
		if width > len(indent) {
			line, width = line+" ", width+1
		}
		line, width = line+word, width+w
	}
	return b.String() + line + "\n"
}

// aligned is rows of cells in columns, three blanks between them; the last cell of a row is not padded. Cells are made
// visible first. A cell that begins with a blank stands at the right of its column.
func aligned(rows [][]string, indent string) string {
	var widths []int
	for _, row := range rows {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], columns(cell))
		}
	}
	var b strings.Builder
	for _, row := range rows {
		line := indent
		for i, cell := range row {
			if i > 0 {
				line += "   "
			}
			pad := strings.Repeat(" ", widths[i]-columns(cell))
			if strings.HasPrefix(cell, " ") {
				line += pad + shown(cell)
			} else {
				line += shown(cell) + pad
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}

// labelled is rows of a label and a text; the texts stand in a column, in as many lines as they need.
func labelled(rows [][2]string, indent string) string {
	wide := 0
	for _, row := range rows {
		wide = max(wide, columns(row[0]))
	}
	var b strings.Builder
	column := len(indent) + wide + 3
	for _, row := range rows {
		lines := wrapped(layout.Visible(row[1]), strings.Repeat(" ", column))
		b.WriteString(indent + shown(row[0]) + strings.Repeat(" ", wide-columns(row[0])) + lines[len(indent)+wide:])
	}
	return b.String()
}

// shown is a cell as it is written.
func shown(cell string) string { return layout.Visible(strings.TrimPrefix(cell, " ")) }

// columns is how many columns of a terminal a cell takes.
func columns(cell string) int { return uniseg.StringWidth(shown(cell)) }
