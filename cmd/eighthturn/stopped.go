package main

import (
	"context"
	"os"
	"os/signal"
	"slices"
	"syscall"
)

// signalled is the exit code of a program that a signal ended, less the signal's number, as shells have it.
const signalled = 128

// endingSignals are the signals that ask the program to end, but for those that it was started to ignore.
func endingSignals() []os.Signal {
	return slices.DeleteFunc([]os.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP}, signal.Ignored)
}

// untilTold ends the program once somebody asks it to, as with control-C: whatever is worked out is left as it is, what is
// being written is removed, or takes its name if it is just about to, and the exit code says so. A command asks for it as it
// begins; what needs no command, as the version, is said without.
func (c *console) untilTold() {
	told := make(chan os.Signal, 1)
	signal.Notify(told, endingSignals()...)
	go func() {
		for s := range told {
			if c.endsItself.CompareAndSwap(true, false) {
				continue // a second one ends the program
			}
			c.unfinished.Abandon()
			number, _ := s.(syscall.Signal)
			os.Exit(signalled + int(number))
		}
	}()
}

// endingItself is a context that ends when somebody asks the program to end, for a command that then comes to its end by
// itself.
func (c *console) endingItself() (context.Context, context.CancelFunc) {
	c.endsItself.Store(true)
	return signal.NotifyContext(context.Background(), endingSignals()...)
}
