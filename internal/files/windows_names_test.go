package files

import "testing"

func TestNamesOfFilesOnWindows(t *testing.T) {
	for path, want := range map[string]bool{
		"quilt.svg": true, `maps\quilt.svg`: true, "maps/contour.svg": true, "CONtour": true, "com10.svg": true, ".svg": true, "null.svg": true,
		"CON": false, "nul": false, "NUL.svg": false, "aux .svg": false, `maps\com1.pdf`: false, "maps/LPT9": false, "COM².svg": false,
		"x.svg:y": false, "x.svg::$DATA": false, "conout$": false, "nul.tar.gz": false,
	} {
		if IsFileName(path) != want {
			t.Errorf("%q: got %v, want %v", path, !want, want)
		}
	}
}
