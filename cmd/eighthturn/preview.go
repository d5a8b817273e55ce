package main

import (
	"context"
	"os/signal"
	"syscall"

	"github.com/spf13/cobra"

	"eighthturn/preview"
)

// previewCommand shows a layout in the browser for as long as it is being worked on.
func previewCommand() *cobra.Command {
	var o preview.Options
	c := &cobra.Command{
		Use:   "preview FILE",
		Short: "show a layout in the browser, and follow it as it is saved",
		Long: `Shows a layout in the browser and follows it: every save shows at once, faults stand
over the last good picture until they are mended, and the place you are looking at
stays where it is. Only this machine can open the page. Ctrl-C ends it.`,
		Example: "  eighthturn preview harbour.quilt\n  eighthturn preview harbour.quilt --port 8080 --no-open",
		Args:    cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			ctx, stop := signal.NotifyContext(c.Context(), syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP)
			defer stop()
			context.AfterFunc(ctx, stop) // a second Ctrl-C ends the program by itself
			o.Output = c.OutOrStdout()
			return preview.Run(ctx, args[0], o)
		},
	}
	f := c.Flags()
	f.IntVar(&o.Port, "port", 0, "port on this machine; any free one if it is left out")
	f.BoolVar(&o.NoOpen, "no-open", false, "print the address and do not open it")
	f.BoolVar(&o.Quiet, "quiet", false, "say nothing at each save")
	f.BoolVar(&o.Secret, "key", false, "ask for a key, which only the opened address holds: for a machine of several people")
	f.StringSliceVar(&o.Hosts, "allow-host", nil, "a further name that the browser may use, for a forwarded port")
	return c
}
