package preview

import (
	"errors"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"regexp"
	"strconv"
	"syscall"
	"time"
)

// PortError says that a port cannot be had.
type PortError struct {
	Port  int
	cause error
}

// Error names the port and what is wrong with it.
func (e *PortError) Error() string {
	if errors.Is(e.cause, syscall.EADDRINUSE) {
		return fmt.Sprintf("port %d is in use", e.Port)
	}
	return fmt.Sprintf("port %d cannot be used: %v", e.Port, e.cause)
}

// Unwrap is what the system said.
func (e *PortError) Unwrap() error { return e.cause }

// listen opens a port to this machine alone. The address is a number and not a name, so that
// no name service can turn it elsewhere, and no other program can hold its other half.
func listen(port int) (net.Listener, error) {
	l, err := net.Listen("tcp4", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
	if err != nil {
		return nil, &PortError{port, err}
	}
	return l, nil
}

// announce prints and opens the address, after a look whether it is really this preview that
// answers there.
func (s *site) announce(host string, o Options) {
	address := "http://" + host + "/"
	if s.key != "" {
		address += "?key=" + s.key
	}
	fmt.Fprintf(o.Output, "preview of %s at %s\n", s.state.file, address)
	if o.opened != nil {
		o.opened(address)
	}
	if !s.answers(host) {
		fmt.Fprintln(o.Output, "warning: something else answers at this address; stop it, or give another --port")
	}
	if o.NoOpen {
		return
	}
	if err := open(address); err != nil {
		fmt.Fprintln(o.Output, "open this address in a browser:", err)
	}
}

// answers says whether this very preview answers at the address.
func (s *site) answers(host string) bool {
	c := http.Client{Timeout: 2 * time.Second, Transport: &http.Transport{DisableKeepAlives: true}}
	r, err := c.Get("http://" + host + "/whoever")
	if err != nil {
		return false
	}
	defer r.Body.Close()
	return r.Header.Get("X-Instance") == s.state.instance
}

// plainAddress is all that is ever handed to another program.
func plainAddress(address string) bool {
	return regexp.MustCompile(`^http://127\.0\.0\.1:[0-9]{1,5}/(\?key=[0-9a-f]{32})?$`).MatchString(address)
}

func silent() *log.Logger { return log.New(io.Discard, "", 0) }
