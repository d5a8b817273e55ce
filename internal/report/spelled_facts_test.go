package report

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/summary"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/internal/quilttest/spelled"
	"eighthturn/layout"
)

// fact is something that a plan says and that can be made to be otherwise, for as long as nobody undoes it.
type fact struct {
	name  string
	alter func() (undo func())
}

// facts are those of a value, but for what lies deeper than that: numbers that are none, one and two, lengths that are nothing, the other
// answer to a question, and lists of the first none, one and two. Of a list the first of its parts is looked at, of a plan's own lists the last
// one, too.
func facts(name string, v reflect.Value, depth int) (list []fact) {
	set := func(label string, to any) {
		list = append(list, fact{name + label, func() func() {
			was := reflect.New(v.Type()).Elem()
			was.Set(v)
			v.Set(reflect.ValueOf(to).Convert(v.Type()))
			return func() { v.Set(was) }
		}})
	}
	switch {
	case depth > 5:
	case v.Kind() == reflect.Pointer && !v.IsNil():
		return facts(name, v.Elem(), depth)
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				list = append(list, facts(name+" "+f.Name, v.Field(i), depth+1)...)
			}
		}
	case v.Kind() == reflect.Slice && v.Len() > 0:
		for n := range min(3, v.Len()) {
			set(fmt.Sprintf(", the first %d", n), v.Slice(0, n).Interface())
		}
		list = append(list, facts(name+" first", v.Index(0), depth+1)...)
		if last := v.Len() - 1; last > 0 && depth < 2 {
			list = append(list, facts(name+" last", v.Index(last), depth+1)...)
		}
	case v.Kind() == reflect.Bool:
		set("", !v.Bool())
	case v.Type() == reflect.TypeFor[measure.NM]() && v.Int() != 0:
		set(" 0", 0)
	case v.Kind() == reflect.Int || v.Kind() == reflect.Int32:
		for n := range 3 {
			if v.Int() != int64(n) {
				set(fmt.Sprintf(" %d", n), n)
			}
		}
	}
	return list
}

// TestSpelledFacts: whatever a plan says otherwise is said otherwise, by as many lines as somebody has looked at; a fact that no line follows
// stands here with none.
func TestSpelledFacts(t *testing.T) {
	b := spelled.New()
	for _, l := range []struct{ name, text string }{
		{"webs", "strip 4\n" + sixFabrics + "strip-set shore rust 1 3/4 cream rest\nblock W web wedges navy rust kites cream\nblock V web wedges shore reversed shore kites cream\ngrid\n W V\n V W\nborder 12 1/2 plum\nborder 15 teal lengthwise corners plum\nbinding 2 1/2 moss\n"},
		{"rings", "side 6\n" + strings.ReplaceAll(strings.Replace(sixFabrics, "#f4ead7", "#f4ead7 from 3 fat-quarters", 1), "#5d6433", "#5d6433 on-hand 1/8 yd") + "block R ring wedges navy corners cream\nblock T tumblers pieces plum teal about 3\nblock H halves pieces moss rust\ngrid\n R H T\n H R T\nsash 1 moss posts rust\nbacking teal\non-hand corners cream 3\n"},
	} {
		p := &Plans{Top: lay.Top(t, l.text)}
		design, _, _ := layout.Read(l.text)
		summed := summary.Build(design, p.Top)
		for _, plan := range []spokenPlan{
			{"cut", newCuts(p).Plan, func() document.Document { return Cutting(p) }},
			{"sewn", newSewer(p).Plan, func() document.Document { return Sewing(p) }},
			{"seen", p.Values(), func() document.Document { return Values(p) }},
			{"brought", newCuts(p).Plan, func() document.Document { return Class(p) }},
			{"left", p.Leftovers(), func() document.Document { return Leftovers(p) }},
			{"checked", summed, func() document.Document { return Check(l.name, summed) }},
		} {
			plan.spell(b, l.name)
		}
	}
	keep(t, b, "facts")
}

// spokenPlan is a plan and the report that is made of it.
type spokenPlan struct {
	name  string
	value any
	said  func() document.Document
}

// spell spells out how the report follows each fact of the plan.
func (s *spokenPlan) spell(b *spelled.Book, layout string) {
	lines := func() (list []string) {
		defer func() {
			if recover() != nil {
				list = nil // no plan is such
			}
		}()
		page := spelled.New()
		page.Document(s.said())
		return strings.Split(page.Page(), "\n")
	}
	before := map[string]int{}
	for _, line := range lines() {
		before[line]++
	}
	for _, f := range facts(layout+" "+s.name, reflect.ValueOf(s.value), 0) {
		undo := f.alter()
		now := lines()
		undo()
		if text := otherLines(before, now); text != "" {
			b.Line("%s: %s", f.name, text)
		}
	}
}

// otherLines says how many lines are others than before, the first and the last of them; "" where none are, or nothing can be said.
func otherLines(before map[string]int, now []string) string {
	left, others := map[string]int{}, []string{}
	for line, n := range before {
		left[line] = n
	}
	for _, line := range now {
		if left[line]--; left[line] < 0 {
			others = append(others, strings.TrimSpace(line))
		}
	}
	gone := 0
	for _, n := range left {
		gone += max(n, 0)
	}
	switch {
	case now == nil || gone+len(others) == 0:
		return ""
	case len(others) == 0:
		return fmt.Sprintf("%d lines are gone", gone)
	}
	text := fmt.Sprintf("%d lines for %d: %.90s", len(others), gone, others[0])
	if last := len(others) - 1; last > 0 {
		text += fmt.Sprintf(" … %.90s", others[last])
	}
	return text
}

// TestPlansAreLeft: reports leave the plans that they are made from as they are, and say the same when they are made again, after all others.
func TestPlansAreLeft(t *testing.T) {
	kept := map[string]bool{"web": true, "ring": true, "dealt": true, "precuts": true, "kits": true, "cut-already": true, "stripes": true}
	tried := 0
	for _, c := range spelledLayouts(t) {
		if !kept[c.name] {
			continue
		}
		tried++
		design, _, _ := layout.Read(c.text)
		p := c.laidOut(quilt.Lay(design))
		plans := func() string {
			text, err := json.Marshal([]any{p.Cuts(), p.One(), p.Steps(), p.Values(), p.Leftovers(), p.Top})
			if err != nil {
				t.Fatal(err)
			}
			return string(text)
		}
		said := func() string {
			b := spelled.New()
			spellPlans(b, p, design, false)
			return b.Page()
		}
		before := plans()
		first := said()
		if said() != first {
			t.Errorf("%s: a report is another when it is made again", c.name)
		}
		if plans() != before {
			t.Errorf("%s: reports have changed a plan", c.name)
		}
	}
	if tried != len(kept) {
		t.Errorf("%d layouts were tried", tried)
	}
}
