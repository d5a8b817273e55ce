package preview

import (
	"net"
	"net/http"
	"slices"
	"sync"
)

// limitedListener is a listener with so many connections at a time; further ones wait. Where all places are taken, the
// connection that has been idle longest gives way.
type limitedListener struct {
	net.Listener
	places  chan struct{}
	closed  chan struct{}
	oneIdle chan struct{} // holds one entry once a connection has become idle
	once    sync.Once
	mutex   sync.Mutex
	idle    []net.Conn // that wait for another request, the longest first
}

func limited(l net.Listener, most int) *limitedListener {
	return &limitedListener{Listener: l, places: make(chan struct{}, most), closed: make(chan struct{}), oneIdle: make(chan struct{}, 1)}
}

// Accept waits for a place and then for a connection.
func (l *limitedListener) Accept() (net.Conn, error) {
	if err := l.place(); err != nil {
		return nil, err
	}
	c, err := l.Listener.Accept()
	if err != nil {
		<-l.places
		return nil, err
	}
	return &limitedConn{Conn: c, places: l.places}, nil
}

// place takes a place, from an idle connection if need be.
func (l *limitedListener) place() error {
	for {
		select {
		case l.places <- struct{}{}:
			return nil
		default:
		}
		l.closeLongestIdle()
		select {
		case l.places <- struct{}{}:
			return nil
		case <-l.oneIdle:
		case <-l.closed:
			return net.ErrClosed
		}
	}
}

// follow notes which connections are idle, as the server tells it.
func (l *limitedListener) follow(c net.Conn, state http.ConnState) {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	l.idle = slices.DeleteFunc(l.idle, func(other net.Conn) bool { return other == c })
	if state != http.StateIdle {
		return
	}
	l.idle = append(l.idle, c)
	select {
	case l.oneIdle <- struct{}{}:
	default:
	}
}

func (l *limitedListener) closeLongestIdle() {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	if len(l.idle) > 0 {
		_ = l.idle[0].Close() // it is given up
		l.idle = l.idle[1:]
	}
}

// Close ends those who wait for a place, too.
func (l *limitedListener) Close() error {
	l.once.Do(func() { close(l.closed) })
	return l.Listener.Close()
}

type limitedConn struct {
	net.Conn
	places chan struct{}
	once   sync.Once
}

// Close gives the place back, once.
func (c *limitedConn) Close() error {
	c.once.Do(func() { <-c.places })
	return c.Conn.Close()
}
