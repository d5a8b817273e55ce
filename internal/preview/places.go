package preview

import (
	"os"
	"path/filepath"
	"strings"
)

// maxLinks is how many links are followed before a path is given up.
const maxLinks = 40

// places are the names whose change may change what a path leads to: the file's own and
// that of every link on the way, each as its folder, itself free of links, and the name in
// it. A path may be walked in part: what is missing ends it.
func places(path string) []string {
	var list []string
	rest := strings.Split(filepath.Clean(path), string(filepath.Separator))
	at := filepath.VolumeName(path) + string(filepath.Separator)
	for links := 0; len(rest) > 0; {
		name := rest[0]
		rest = rest[1:]
		if name == "" || name == filepath.VolumeName(path) {
			continue
		}
		here := filepath.Join(at, name)
		target, err := os.Readlink(here)
		if err != nil {
			if len(rest) == 0 {
				list = append(list, here)
			}
			at = here
			continue
		}
		list = append(list, here)
		if links++; links > maxLinks {
			return list
		}
		if filepath.IsAbs(target) {
			at = filepath.VolumeName(target) + string(filepath.Separator)
		}
		rest = append(strings.Split(filepath.Clean(target), string(filepath.Separator)), rest...)
	}
	return list
}
