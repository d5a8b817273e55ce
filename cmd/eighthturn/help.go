package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"eighthturn/internal/render"
)

// helpText is the help of the program or of a command.
func helpText(cmd *cobra.Command) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n\n", cmd.CommandPath(), cmd.Short)
	fmt.Fprintf(&b, "  %s\n\n", howToCall(cmd))
	if cmd.Long != "" {
		for _, paragraph := range strings.Split(strings.TrimSpace(cmd.Long), "\n") {
			b.WriteString(render.Wrapped(paragraph, ""))
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
			fmt.Fprintf(b, "%s\n%s\n", g.Title, render.Aligned(rows[g.ID], "  "))
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
	text := render.Wrapped(usage, strings.Repeat(" ", optionColumn))
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
		b.WriteString(render.Wrapped(strings.TrimSpace(line), "  "+line[:len(line)-len(strings.TrimLeft(line, " "))]))
	}
}
