package layout

import (
	"slices"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"
)

// nearest is the word of the list that is most like text, "" if none is near. One that
// shares no letter with it is not.
func nearest(text string, list []string) string {
	folded := foldName(text)
	letters := utf8.RuneCountInString(folded)
	best, bestAt := "", min(max(1, letters/3)+1, letters)
	for _, w := range list {
		other := foldName(w)
		if apart := utf8.RuneCountInString(other) - letters; apart >= bestAt || -apart >= bestAt {
			continue
		}
		if d := slips(folded, other); d < bestAt {
			best, bestAt = w, d
		}
	}
	return best
}

// slips counts the letters that are wrong, missing or too many; two neighbours that changed
// places are one slip.
func slips(a, b string) int {
	d := levenshtein.ComputeDistance(a, b)
	if d == 2 && swapped([]rune(a), []rune(b)) {
		return 1
	}
	return d
}

// swapped says whether one word becomes the other when two neighbours change places.
func swapped(a, b []rune) bool {
	if len(a) != len(b) {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && slices.Equal(a[i+2:], b[i+2:])
}

// maxGuesses is how many messages may come with a guess at what was meant: each guess goes
// through all names, and nobody reads so many messages.
const maxGuesses = 200

// guessable is the blocks to guess from, one of each label, none once there were guesses enough.
func (s *session) guessable(list []*blockNode) (one []*blockNode) {
	if len(s.list) >= maxGuesses {
		return nil
	}
	known := map[string]bool{}
	for _, b := range list[:min(len(list), MaxDefined)] {
		if key := b.Label.key(); !known[key] {
			known[key] = true
			one = append(one, b)
		}
	}
	return one
}

// guess is didYouMean for lists that may be long.
func (s *session) guess(text string, list []string) hint {
	if len(s.list) >= maxGuesses {
		return hint{}
	}
	return didYouMean(text, list)
}

// didYouMean is a hint at the nearest word, none if none is near.
func didYouMean(text string, list []string) hint {
	return lookAlike(text, list).or(near(nearest(text, list)))
}
