//go:build !unix

package preview

import "os"

// makePipe makes a folder where there are no pipes among the files.
func makePipe(file string) error { return os.Mkdir(file, 0o755) }
