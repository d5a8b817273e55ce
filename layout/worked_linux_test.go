package layout_test

import (
	"runtime"
	"syscall"
)

// worked is the nanoseconds that this thread was at work in a call.
func worked(call func()) uint64 {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	before := threadTime()
	call()
	return threadTime() - before
}

func threadTime() uint64 {
	const rusageThread = 1 // RUSAGE_THREAD, getrusage(2)
	var u syscall.Rusage
	if err := syscall.Getrusage(rusageThread, &u); err != nil {
		return 0
	}
	return uint64(u.Utime.Nano() + u.Stime.Nano())
}
