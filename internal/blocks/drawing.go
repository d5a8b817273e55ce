package blocks

import "strings"

// Marks in drawings, at the block's corners.
const (
	WebMark  = 'o' // wedge tips stand here
	StarMark = '*' // a kite's square corner stands here
)

// Picture is the kind's drawing, line by line: the block as it lies before turning, of any width and height, seams in
// ASCII, and in each piece its role's letter. WebMark and StarMark stand at corners that belong to web centres and star
// centres. A column is drawn longer than its block is wide.
func (k *Kind) Picture() []string {
	return strings.Split(strings.Trim(k.Drawing, "\n"), "\n")
}
