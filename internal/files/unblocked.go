//go:build !js

package files

import "syscall"

// Unblocked is the mode in which files are opened that may be pipes or devices: nothing waits for them.
const Unblocked = syscall.O_NONBLOCK
