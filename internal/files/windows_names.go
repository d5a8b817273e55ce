package files

import (
	"slices"
	"strings"
)

// deviceNames are the names that Windows keeps for devices in every folder, in capitals (Microsoft, "Naming Files, Paths,
// and Namespaces"; CONIN$ and CONOUT$ from "Console Handles"; from memory).
func deviceNames() []string {
	names := []string{"CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$"}
	for _, n := range "0123456789¹²³" {
		names = append(names, "COM"+string(n), "LPT"+string(n))
	}
	return names
}

// IsFileName says whether a path without its drive names a file on Windows, not a device, and not a stream within a file.
// A device's name counts with any ending and with blanks behind it, too.
func IsFileName(path string) bool {
	if strings.Contains(path, ":") {
		return false
	}
	base := path[strings.LastIndexAny(path, `\/`)+1:]
	name, _, _ := strings.Cut(base, ".")
	return !slices.Contains(deviceNames(), strings.ToUpper(strings.TrimRight(name, " ")))
}
