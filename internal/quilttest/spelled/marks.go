package spelled

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
)

// marked is how a mark looks, and where it is and what it says.
func marked(m *diagram.Mark) (look, where string) {
	switch {
	case m.Area != nil:
		return area(m.Area), places(m.Area.Outline)
	case m.Line != nil:
		return fmt.Sprintf("line %s %s-%s", stroke(m.Line.Stroke), ending(m.Line.Start), ending(m.Line.End)), places(m.Line.Points)
	case m.Words != nil:
		w := m.Words
		return words(w), fmt.Sprintf("%q %s%s", w.Text, at(w.At), rooms(w))
	}
	return "nothing", ""
}

func area(a *diagram.Area) string {
	look := "area " + stroke(a.Edge)
	if !a.Clear {
		look += " " + a.Fill.Hex()
	}
	look += flags(map[string]bool{"wrong side": a.Hatch, "clear": a.Clear})
	if a.Print != nil {
		look += fmt.Sprintf(" print of %s by %s from %s, turned %.3g", mm(a.Print.Across), mm(a.Print.Down), at(a.Repeat), a.Turn)
	}
	return look
}

func words(w *diagram.Words) string {
	look := fmt.Sprintf("words %g pt", w.Points) + flags(map[string]bool{"bold": w.Bold, "halo": w.Halo, "plate": w.Plate, "optional": w.Optional, "from": w.Anchor == diagram.Start, "up to": w.Anchor == diagram.End})
	if w.Quarters > 0 {
		look += fmt.Sprintf(" turned %d quarters", w.Quarters)
	}
	if w.Backing != nil {
		return look + " on " + w.Backing.Hex()
	}
	return look + " in " + w.Colour.Hex()
}

func rooms(w *diagram.Words) string {
	if w.Room == 0 && w.Across == 0 {
		return ""
	}
	return " in " + mm(w.Room) + " by " + mm(w.Across)
}

func stroke(s diagram.Stroke) string {
	return [...]string{"unlined", "thin", "cut", "sew", "partial", "trim", "fold", "grain", "dimension", "pressing", "frame", "window", "part frame", "next frame", "repeat", "gauge"}[s]
}

func ending(e diagram.Ending) string { return [...]string{"plain", "arrow", "dot", "bar"}[e] }

// mm is a length in millimeters, to a tenth.
func mm(nm measure.NM) string {
	text := strconv.FormatFloat(float64(nm)/float64(measure.Millimetre), 'f', 1, 64)
	text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

func at(p measure.Point) string { return mm(p.X) + "," + mm(p.Y) }

func places(list []measure.Point) string {
	texts := make([]string, len(list))
	for i, p := range list {
		texts[i] = at(p)
	}
	return strings.Join(texts, " ")
}

// flags are the words that are true, in the order of the alphabet.
func flags(list map[string]bool) string {
	var is []string
	for word, true := range list {
		if true {
			is = append(is, word)
		}
	}
	if len(is) == 0 {
		return ""
	}
	slices.Sort(is)
	return " (" + strings.Join(is, ", ") + ")"
}

func swatches(list []document.Swatch) string {
	text := ""
	for _, s := range list {
		text += " [" + s.Letter + s.Colour.Hex() + "]"
	}
	return text
}

// about is what something is about, in braces, and how much it asks for a look.
func about(a document.About, tone document.Tone) string {
	text := [...]string{"", " !", " !!"}[tone]
	for _, part := range []struct {
		sign string
		list []int
	}{{"p", a.Patches}, {"f", a.Faces}, {"s", a.Seams}} {
		if len(part.list) > 0 {
			text += " {" + part.sign + runs(part.list) + "}"
		}
	}
	if a.Place != nil {
		text += fmt.Sprintf(" {bytes %d to %d}", a.Place.Start, a.Place.End)
	}
	return text
}

// mostRuns is how many stretches of numbers are spelled out; of more the first ones, and how many numbers there are and what they come to.
const mostRuns = 12

// runs is numbers, those that rise by one as the first and the last of them.
func runs(list []int) string {
	var parts []string
	for i := 0; i < len(list); {
		n := i
		for n+1 < len(list) && list[n+1] == list[n]+1 {
			n++
		}
		part := strconv.Itoa(list[i])
		if n > i {
			part += "-" + strconv.Itoa(list[n])
		}
		parts = append(parts, part)
		i = n + 1
	}
	if len(parts) > mostRuns {
		sum := 0
		for place, n := range list {
			sum += (place + 1) * n // another order comes to something else
		}
		parts = append(parts[:mostRuns/2], fmt.Sprintf("… %d come to %d", len(list), sum))
	}
	return strings.Join(parts, ",")
}
