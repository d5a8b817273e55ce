package booklet

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/document"
	"eighthturn/internal/quilt"
)

var (
	shortWord = regexp.MustCompile(`[0-9] ([a-z]{1,3})\b\.?`)
	wordSign  = regexp.MustCompile(`[0-9A-Za-z_]`)
	lightness = regexp.MustCompile(`\bL\* [0-9]`)
	capitals  = regexp.MustCompile(`\b[A-Z]{2,}\b`)
)

// english are short words that may stand behind a number and are no abbreviations.
func english() []string {
	return []string{"by", "of", "to", "and", "are", "is", "on", "or", "at", "the", "for", "its", "no", "so", "had", "has", "set", "row", "kit", "end", "web", "lie", "top"}
}

// wrongAbbreviations are those that are used and not explained, or explained and not used.
func wrongAbbreviations(d document.Document, r Reports) []string {
	used, explained := map[string]bool{}, map[string]bool{}
	for _, t := range tables(d, "Before you begin", "Abbreviation") {
		for _, row := range t.Rows {
			explained[row.Cells[0].Text.String()] = true
		}
	}
	named := map[string]bool{"PDF": true}
	for i := range r.Templates {
		named["T"+numeral(i+1)] = true
	}
	letters := fabricLetters(r)
	for _, l := range letters {
		named[l] = true
	}
	for _, b := range r.Sewing.Blocks {
		named[b.Label] = true
	}
	var wrong []string
	for _, text := range ownTexts(d) {
		for _, m := range shortWord.FindAllStringSubmatch(text, -1) {
			if !slices.Contains(english(), m[1]) && !layoutName(r, m[1]) {
				used[m[1]] = true
			}
		}
		used["L*"] = used["L*"] || lightness.MatchString(text)
		for _, c := range capitals.FindAllString(text, -1) {
			if explained[c] {
				used[c] = true
			}
			if !explained[c] && !named[c] && !strings.Contains(r.Top.Title, c) && !labelled(r, c) {
				wrong = append(wrong, "the abbreviation "+c+" is not explained: "+text)
			}
		}
	}
	for short, is := range used {
		if is && !explained[short] {
			wrong = append(wrong, "the abbreviation "+short+" is used and not explained")
		}
	}
	for short := range explained {
		if short != "A" && !strings.HasPrefix(short, "A to ") && !strings.HasPrefix(short, "A and ") && !used[short] {
			wrong = append(wrong, "the abbreviation "+short+" is explained and not used")
		}
	}
	slices.Sort(wrong)
	return wrong
}

// layoutName says whether a word is a name of the layout's.
func layoutName(r Reports, word string) bool {
	begins := func(name string) bool { // all of it, or up to a sign at which shortWord ends
		rest, ok := strings.CutPrefix(name, word)
		return ok && (rest == "" || !wordSign.MatchString(rest[:1]))
	}
	for _, f := range r.Top.Fabrics {
		if begins(f.Name) {
			return true
		}
	}
	return slices.ContainsFunc(r.Top.CutFacts.Sets, func(s quilt.Set) bool { return begins(s.Name) })
}

// labelled says whether capitals are a part of a name of the layout's.
func labelled(r Reports, c string) bool {
	for _, f := range r.Top.Fabrics {
		if strings.Contains(f.Name+" "+f.Print, c) {
			return true
		}
	}
	for _, s := range r.Top.CutFacts.Sets {
		if strings.Contains(s.Name, c) {
			return true
		}
	}
	for _, b := range r.Sewing.Blocks {
		if strings.Contains(b.Label, c) {
			return true
		}
	}
	return strings.Contains(r.Top.Credits.Level+r.Top.Credits.Designer+r.Top.Credits.Number+r.Top.Credits.Version+r.Top.Credits.Date+r.Top.Credits.Copyright, c) || slices.ContainsFunc(notesOf(r), func(n string) bool { return strings.Contains(n, c) })
}

func notesOf(r Reports) []string {
	var list []string
	for _, n := range r.Top.Credits.Notes {
		list = append(list, n.Text)
	}
	return list
}

var (
	figureCaption = regexp.MustCompile(`^Figure ([0-9]+)\.`)
	figuresOn     = regexp.MustCompile(`Figure ([0-9]+) to Figure ([0-9]+)`)
	figureNumber  = regexp.MustCompile(`Figure ([0-9]+)`)
)

// wrongFigures are references to no figure, and figures that nothing refers to.
func wrongFigures(d document.Document, _ Reports) []string {
	var wrong []string
	there, referred := map[string]bool{}, map[string]bool{}
	last := 0
	for _, text := range ownTexts(d) {
		if strings.ContainsAny(text, opens+defines+closes) {
			wrong = append(wrong, "a figure has no number: "+text)
		}
		own := ""
		if m := figureCaption.FindStringSubmatch(text); m != nil {
			own = m[1]
			if n, _ := strconv.Atoi(own); n != last+1 {
				wrong = append(wrong, fmt.Sprintf("Figure %s follows Figure %d", own, last))
			} else {
				last = n
			}
			there[own] = true
		}
		for _, m := range figuresOn.FindAllStringSubmatch(text, -1) {
			from, _ := strconv.Atoi(m[1])
			to, _ := strconv.Atoi(m[2])
			for n := from; n <= to; n++ {
				referred[strconv.Itoa(n)] = true
			}
		}
		for i, m := range figureNumber.FindAllStringSubmatch(text, -1) {
			if i > 0 || own == "" {
				referred[m[1]] = true
			}
		}
	}
	for n := range referred {
		if !there[n] {
			wrong = append(wrong, "Figure "+n+" is referred to and not there")
		}
	}
	for n := range there {
		if !referred[n] {
			wrong = append(wrong, "nothing refers to Figure "+n)
		}
	}
	slices.Sort(wrong)
	return wrong
}

var countedNoun = regexp.MustCompile(`(?:^|[^0-9./⁄ ] ?)\b([0-9]+) ((?:border )?(?:long |more |seam |fat |corner |stop |end |strip )?)([a-z-]+)\b`)

// nouns are what a pattern counts, one and several.
func nouns() map[string]string {
	list := map[string]string{}
	for _, n := range strings.Fields("wedge kite triangle square tumbler strip block column row unit set piece layer seam border quilt kit panel rectangle post place minute hour placement intersection step group line") {
		list[n] = n + "s"
	}
	list["sash"], list["half"], list["inch"] = "sashes", "halves", "inches"
	return list
}

// wrongPlurals are numbers whose noun has the wrong form.
func wrongPlurals(d document.Document, r Reports) []string {
	var wrong []string
	var sets []string // "shore 2" is the second set of that name
	for i := range r.Cuts.Sets {
		sets = append(sets, regexp.QuoteMeta(r.Cuts.Sets[i].Name))
	}
	numberedSet := regexp.MustCompile(`(?:` + strings.Join(append(sets, `\z.`), "|") + `) [0-9]+`)
	one, several := nouns(), map[string]bool{}
	for _, n := range one {
		several[n] = true
	}
	for _, text := range ownTexts(d) {
		text = numberedSet.ReplaceAllString(numberedName.ReplaceAllString(figureNumber.ReplaceAllString(text, "the figure"), "a fabric"), "a set")
		for _, m := range countedNoun.FindAllStringSubmatch(text, -1) {
			noun := m[3]
			if _, single := one[noun]; single && m[1] != "1" || several[noun] && m[1] == "1" {
				wrong = append(wrong, fmt.Sprintf("%q has the wrong number: %s", strings.TrimSpace(m[0]), text))
			}
		}
	}
	return wrong
}

// wrongAlternatives are pictures without a text for someone who cannot see them.
func wrongAlternatives(d document.Document, _ Reports) []string {
	var wrong []string
	var look func(list []document.Block)
	look = func(list []document.Block) {
		for _, b := range flat(list) {
			switch v := b.(type) {
			case document.Figure:
				if v.Alternative == "" && v.Of.Description == "" {
					wrong = append(wrong, "a figure has no alternative text: "+v.Caption.String())
				}
			case document.Picture:
				if v.Alternative == "" {
					wrong = append(wrong, "a picture has no alternative text: "+v.Caption.String())
				}
			}
		}
	}
	for _, p := range d.Sections {
		look(p.Blocks)
	}
	return wrong
}
