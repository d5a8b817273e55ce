package quilt

import "eighthturn/internal/measure"

// Seen is how much of the cloth its photo shows across and down, where nobody knows how it goes on; 0 where the cloth goes on and on.
func (c *Cloth) Seen() (across, down measure.NM) {
	if c.Repeats || c.Width == 0 {
		return 0, 0
	}
	return c.photo.Shows()
}
