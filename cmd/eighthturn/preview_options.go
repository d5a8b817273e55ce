package main

import (
	"net/netip"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"eighthturn/internal/preview"
)

const (
	portName = "port"
	hostName = "allow-host"

	editorName = "editor"
)

// portOption is the value of an option that takes a port; 0, any free one, is what stands where it is left out.
type portOption int

func (o *portOption) Type() string { return "port" }

func (o *portOption) String() string {
	if *o == 0 {
		return ""
	}
	return strconv.Itoa(int(*o))
}

func (o *portOption) Set(text string) error {
	n, err := strconv.ParseUint(text, 10, 16)
	if err != nil || n == 0 {
		return &problem{message: "after --" + portName + ": found " + quoted(text) + ", expected a number from 1 to 65535", hint: "leave --" + portName + " out to take any free one"}
	}
	*o = portOption(n)
	return nil
}

// hostsOption is the value of an option that takes names of a computer, and may be given again.
type hostsOption []string

func (o *hostsOption) Type() string   { return "name" }
func (o *hostsOption) String() string { return strings.Join(*o, ",") }

// labels are the parts of a host's name between full stops (RFC 1123, section 2.1): letters, digits and hyphens inside.
// It is made when it is first needed, which is seldom and takes a while.
var labels = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[A-Za-z0-9]([A-Za-z0-9-]{0,61}[A-Za-z0-9])?(\.[A-Za-z0-9]([A-Za-z0-9-]{0,61}[A-Za-z0-9])?)*\.?$`)
})

func (o *hostsOption) Set(text string) error {
	for name := range strings.SplitSeq(text, ",") {
		name = strings.TrimSpace(name)
		address, err := netip.ParseAddr(strings.Trim(name, "[]"))
		if err != nil && (!labels().MatchString(name) || len(name) > 253) {
			return &problem{message: "after --" + hostName + ": found " + quoted(name) + ", expected a computer's name or number address, without a port", hint: "for example --" + hostName + " sewing-room.local"}
		}
		if err == nil && address.Is6() {
			name = "[" + address.String() + "]"
		}
		*o = append(*o, name)
	}
	return nil
}

// editorOption is the value of an option that takes the address by which an editor opens a file.
type editorOption string

func (o *editorOption) Type() string   { return "address" }
func (o *editorOption) String() string { return string(*o) }

func (o *editorOption) Set(text string) error {
	if err := preview.CheckEditor(text); err != nil {
		return &problem{message: "after --" + editorName + ": " + quoted(text) + " opens no editor: " + err.Error(), hint: "for example --" + editorName + " 'vscode://file/{file}:{line}'"}
	}
	*o = editorOption(text)
	return nil
}
