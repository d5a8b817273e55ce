package report

import (
	"strings"

	"eighthturn/internal/quilt"
)

// What pictures to show say in type, beside the quilt's own title.

// AsWritten is the quilt as it is written, beside its colorways.
const AsWritten = "As written"

// ColorwayTitle is the name of a colorway below its picture.
func ColorwayTitle(name string) string { return capital(name) }

// PictureLines are the lines below the title: how large the quilt is, and who designed it.
func PictureLines(t *quilt.Top) []string {
	lines := []string{capital(t.Units.Size(t.Outer.Width(), t.Outer.Height()))}
	if name := strings.TrimSpace(t.Credits.Designer); name != "" {
		lines = append(lines, Designed(name))
	}
	return lines
}

// PartLines are those of a picture of a block by its label, or of a whole figure, and its size.
func PartLines(name string, part *quilt.Top) []string {
	if part.Columns == 1 && !strings.EqualFold(name, part.Cells[0].Kind) {
		name = "block " + name
	}
	lines := PictureLines(part)
	lines[0] = capital(name) + ", " + part.Units.Size(part.Outer.Width(), part.Outer.Height()) + " finished"
	return lines
}

// ShownTogether says what several pictures on one canvas show, for someone who cannot see them, by what each shows.
func ShownTogether(descriptions []string) string { return strings.Join(descriptions, " ") }
