//go:build !js

package stop

// turn is nothing where work, and whatever ends it, run beside each other.
type turn struct{}

func (turn) breathe() {}
