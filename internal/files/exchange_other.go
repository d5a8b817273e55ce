//go:build !linux && !darwin

package files

// exchange would make two files change names in one step, which is not known here.
func exchange(string, string) error { return errNoExchange }
