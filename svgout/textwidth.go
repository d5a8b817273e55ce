package svgout

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

// textWidth is about how wide a text stands in a plain sans-serif face, as parts of its
// size and rather too wide than too narrow. The classes are a rough reading of such faces;
// no font is asked, since none is known to be there.
func textWidth(text string) float64 {
	sum := 0.0
	for state := -1; text != ""; {
		var cluster string
		var columns int
		cluster, text, columns, state = uniseg.FirstGraphemeClusterInString(text, state)
		sum += clusterWidth(cluster, columns)
	}
	return sum
}

func clusterWidth(cluster string, columns int) float64 {
	r, _ := utf8.DecodeRuneInString(cluster)
	switch {
	case columns > 1:
		return 1.05
	case strings.ContainsRune(" .,:;!|'`ijl", r):
		return 0.29
	case strings.ContainsRune("()[]/-frtI\"", r):
		return 0.37
	case strings.ContainsRune("mwMW%@—…", r):
		return 0.97
	case unicode.IsUpper(r):
		return 0.75
	}
	return 0.57
}

// boldWidth is textWidth in bold letters.
func boldWidth(text string) float64 { return 1.06 * textWidth(text) }

// fitted is a text cut so that it is no wider than so many times its size.
func fitted(text string, widest float64, width func(string) float64) string {
	if width(text) <= widest {
		return text
	}
	kept := ""
	for rest, state := text, -1; rest != ""; {
		var cluster string
		cluster, rest, _, state = uniseg.FirstGraphemeClusterInString(rest, state)
		if width(kept+cluster+"…") > widest {
			break
		}
		kept += cluster
	}
	return strings.TrimRight(kept, " ") + "…"
}
