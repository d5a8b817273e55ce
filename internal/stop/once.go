package stop

import "sync"

// Once is a value that is made when it is first asked for. Many may ask for it at a time: one makes it, and the others wait, each until
// its own work is to end. Where the work of the one who makes it ends early, the next makes it anew. The zero value is ready.
type Once[T any] struct {
	lock   sync.Mutex    // never held while the value is made
	making chan struct{} // closed when the one who makes it is done or has to end; nil while nobody makes it
	made   bool
	value  T
}

// Get is the value, which is made by make if it is not there yet.
func (o *Once[T]) Get(s *Sign, make func() T) T {
	for {
		value, made, others := o.take()
		switch {
		case made:
			return value
		case others == nil:
			return o.fill(make)
		}
		select {
		case <-others:
		case <-s.Done():
			s.Look()
		}
	}
}

// take is the value if it was made. If not, it is who makes it, nil if that is now the caller.
func (o *Once[T]) take() (value T, made bool, others <-chan struct{}) {
	o.lock.Lock()
	defer o.lock.Unlock()
	if o.made || o.making != nil {
		return o.value, o.made, o.making
	}
	o.making = make(chan struct{})
	return o.value, false, nil
}

// fill makes the value; make may end early.
func (o *Once[T]) fill(make func() T) (value T) {
	made := false
	defer func() {
		o.lock.Lock()
		defer o.lock.Unlock()
		close(o.making)
		o.value, o.made, o.making = value, made, nil
	}()
	value = make()
	made = true
	return value
}

// Made is the value, and whether it was made already.
func (o *Once[T]) Made() (T, bool) {
	o.lock.Lock()
	defer o.lock.Unlock()
	return o.value, o.made
}
