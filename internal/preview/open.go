package preview

import (
	"errors"
	"os"
	"os/exec"
	"runtime"
)

// open shows an address in the browser. It goes to the opener as one argument, through no
// shell. That there is no browser is no fault of the preview.
func open(address string) error {
	if !plainAddress(address) {
		return errors.New("it is not plain enough to be handed on")
	}
	var c *exec.Cmd
	switch runtime.GOOS {
	case "darwin":
		c = exec.Command("open", address)
	case "windows":
		c = exec.Command("rundll32", "url.dll,FileProtocolHandler", address)
	default:
		if os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
			return errors.New("there is no screen here")
		}
		c = exec.Command("xdg-open", address)
	}
	if err := c.Start(); err != nil {
		return errors.New("no browser could be started")
	}
	go func() { _ = c.Wait() }() // an opener's fate tells nothing
	return nil
}
