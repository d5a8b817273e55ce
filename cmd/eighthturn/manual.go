package main

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// manualCommand writes the manual page, for those who make packages.
func manualCommand(c *console) *cobra.Command {
	return &cobra.Command{
		Use:    "manual",
		Short:  "the manual page that man shows",
		Hidden: true,
		Long: "Writes the manual page for the program man, made from the same words as --help. Packages put it where " +
			"man finds it; you can view it without that.",
		Example: "eighthturn manual > eighthturn.1\n  then: man ./eighthturn.1\neighthturn manual | man -l -\n  shows it at once",
		Args:    nothingMore,
		RunE:    func(cmd *cobra.Command, _ []string) error { return c.print(manualPage(cmd.Root())) },
	}
}

// page is a manual page in the macros of man(7).
type page struct{ strings.Builder }

// manualPage is the manual page of the program. It bears no date: the same program has the same page.
func manualPage(root *cobra.Command) string {
	var p page
	p.macro("TH", strings.ToUpper(root.Name()), "1", "", root.Name(), "User commands")
	p.line(".nh")   // a broken name of a file or an option could not be typed
	p.line(".ad l") // and neither could one with its blanks stretched
	p.section("NAME")
	p.line(root.Name() + ` \- ` + roff(root.Short))
	p.section("SYNOPSIS")
	p.macro("B", root.Name())
	p.macro("I", "COMMAND FILE")
	p.section("DESCRIPTION")
	p.line(roff(root.Long))
	p.section("COMMANDS")
	for _, g := range root.Groups() {
		for _, cmd := range root.Commands() {
			if cmd.GroupID == g.ID && !cmd.Hidden {
				p.command(cmd)
			}
		}
	}
	for _, cmd := range root.Commands() {
		if cmd.Hidden && cmd.Long != "" {
			p.command(cmd)
		}
	}
	p.section("EXIT STATUS")
	p.tagged("0", "All went well.")
	p.tagged("1", "A layout has errors, or a file could not be read or written.")
	p.tagged("2", "What was typed is not understood: a command, an option or a value.")
	p.tagged("130", "It was stopped with Control-C; nothing is left half-written.")
	p.section("ENVIRONMENT")
	p.tagged("NO_COLOR", "If it is set, nothing is written in bold.")
	p.section("EXAMPLES")
	p.examples(root.Example)
	return p.String()
}

// command is a section of its own for a command: how it is called, what it does, its options and examples.
func (p *page) command(cmd *cobra.Command) {
	p.macro("SS", howToCall(cmd))
	p.line(roff(sentence(cmd.Short)))
	for _, paragraph := range strings.Split(strings.TrimSpace(cmd.Long), "\n") {
		p.macro("PP")
		p.line(roff(paragraph))
	}
	flags := cmd.Flags()
	flags.SortFlags = false
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Name != "help" && !f.Hidden {
			name, usage := optionText(f)
			p.tagged(name, sentence(usage))
		}
	})
	for _, sub := range cmd.Commands() {
		p.tagged(sub.Name(), sub.Long)
	}
	p.examples(cmd.Example)
}

// optionText is an option as it is typed, and what it does.
func optionText(f *pflag.Flag) (name, usage string) {
	value, usage := pflag.UnquoteUsage(f)
	name = "--" + f.Name
	if f.Shorthand != "" {
		name = "-" + f.Shorthand + ", " + name
	}
	if value != "" {
		name += " " + value
	}
	return name, usage
}

// examples are lines to type, each with what it does set in below.
func (p *page) examples(text string) {
	for _, line := range strings.Split(text, "\n") {
		if told := strings.TrimLeft(line, " "); told != line {
			p.macro("RS")
			p.line(roff(sentence(told)))
			p.macro("RE")
		} else if line != "" {
			p.macro("PP")
			p.macro("B", line)
		}
	}
}

func (p *page) section(name string) { p.macro("SH", name) }

// tagged is a word with what it means set in below.
func (p *page) tagged(tag, text string) {
	p.macro("TP")
	p.macro("B", tag)
	p.line(roff(text))
}

func (p *page) line(text string) { p.WriteString(text + "\n") }

// macro is a line that tells man what to do; each argument is one, blanks and quotes and all.
func (p *page) macro(name string, args ...string) {
	p.WriteString("." + name)
	for _, a := range args {
		p.WriteString(` "` + strings.ReplaceAll(strings.TrimPrefix(roff(a), `\&`), `"`, `\(dq`) + `"`)
	}
	p.WriteByte('\n')
}

// roff is text in which nothing steers man: backslashes, hyphens that are typed, and what could be a macro at the start
// of a line.
func roff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`, "^", `\(ha`, "~", `\(ti`, "`", `\(ga`, "\n", " ").Replace(text)
	if strings.HasPrefix(text, ".") {
		text = `\&` + text
	}
	return text
}

// sentence is what help says without full stop, as a sentence.
func sentence(text string) string {
	text = strings.ToUpper(text[:min(1, len(text))]) + text[min(1, len(text)):]
	if strings.HasSuffix(text, "?") {
		return text
	}
	return text + "."
}
