package preview

import (
	"mime"
	"net"
	"net/http"
	"net/url"
	"strings"
)

// hosts are the names that a request may be addressed to. A page of another site that has
// turned its own name towards this machine sends that name here, and is told nothing. The
// port is not looked at: a forwarded one may differ, and it would add nothing.
type hosts map[string]bool

func newHosts(further []string) hosts {
	h := hosts{"127.0.0.1": true, "::1": true, "localhost": true}
	for _, name := range further {
		h[hostName(name)] = true
	}
	return h
}

// hostName is the name in a Host header: without port and brackets, in small letters,
// without a dot at its end. "" for what is no such header.
func hostName(header string) string {
	if strings.ContainsAny(header, "@/\\#? \t") {
		return ""
	}
	name, _, err := net.SplitHostPort(header)
	if err != nil {
		if name, _, err = net.SplitHostPort(header + ":0"); err != nil {
			return ""
		}
	}
	return strings.ToLower(strings.TrimSuffix(name, "."))
}

// refuse says why a request is not answered: a status and a sentence, or 0. Posts says that its address takes what a page posts.
func (h hosts) refuse(r *http.Request, posts bool) (status int, why string) {
	name := hostName(r.Host)
	switch {
	case name == "" || !h[name]:
		return http.StatusForbidden, "This preview answers only to the address that it printed. If you reach it by another name through a forwarded port, start it with --allow-host and that one name."
	case !ownOrigin(r):
		return http.StatusForbidden, "This preview answers only its own page."
	case !ownSite(r):
		return http.StatusForbidden, "This preview answers only its own page."
	case posts:
		return refusePost(r)
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		return http.StatusMethodNotAllowed, "This preview is for looking only."
	case r.ContentLength != 0:
		return http.StatusRequestEntityTooLarge, "This preview accepts no uploads."
	}
	return 0, ""
}

// refusePost says why what is posted is not taken: it must say that it comes from the page itself, which every browser does, and be
// JSON, which no form of another page can send.
func refusePost(r *http.Request) (status int, why string) {
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	site := r.Header.Get("Sec-Fetch-Site")
	switch {
	case r.Method != http.MethodPost:
		return http.StatusMethodNotAllowed, "This address takes what the page posts."
	case len(r.Header.Values("Origin")) != 1 || site != "" && site != "same-origin":
		return http.StatusForbidden, "This preview answers only its own page."
	case err != nil || kind != "application/json":
		return http.StatusUnsupportedMediaType, "This is no request that the page makes."
	case r.ContentLength < 0:
		return http.StatusLengthRequired, "This is no request that the page makes."
	case r.ContentLength > maxEditBytes:
		return http.StatusRequestEntityTooLarge, "This is more than a layout may have."
	}
	return 0, ""
}

// ownOrigin says whether the request comes from the page that it is addressed to, or says
// nothing of where it comes from. It is asked only after the host was found good: on its own
// it would let in a page whose name was turned towards this machine.
func ownOrigin(r *http.Request) bool {
	list := r.Header.Values("Origin")
	if len(list) == 0 {
		return true
	}
	u, err := url.Parse(list[0])
	return len(list) == 1 && err == nil && (u.Scheme == "http" || u.Scheme == "https") && u.Host == r.Host
}

// ownSite says whether the browser sends the request for the page itself, or for a person
// who opened the address. Another program on this machine counts as the same site.
func ownSite(r *http.Request) bool {
	switch r.Header.Get("Sec-Fetch-Site") {
	case "cross-site", "same-site":
		return r.Header.Get("Sec-Fetch-Mode") == "navigate" && r.Header.Get("Sec-Fetch-Dest") == "document"
	}
	return true
}
