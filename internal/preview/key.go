package preview

import (
	"crypto/sha256"
	"crypto/subtle"
	"net/http"
)

// admit asks for the key where one is wanted: in the opened address, which is then swapped
// for a cookie so that it stays neither in the address line nor in any log. On a machine of
// several people, host and origin tell nothing about who asks.
func (s *site) admit(w http.ResponseWriter, r *http.Request) bool {
	if s.key == "" {
		return true
	}
	if r.URL.Path == "/" && s.isKey(r.URL.Query().Get("key")) {
		http.SetCookie(w, &http.Cookie{Name: s.cookie(), Value: s.key, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
		http.Redirect(w, r, "/", http.StatusSeeOther)
		return false
	}
	if c, err := r.Cookie(s.cookie()); err == nil && s.isKey(c.Value) {
		return true
	}
	http.Error(w, "This preview asks for its key. Open the address that the terminal shows.", http.StatusUnauthorized)
	return false
}

// cookie is a name of this preview alone, since cookies are shared by all ports of a host.
func (s *site) cookie() string { return "eighthturn-" + s.state.instance[:8] }

// isKey takes as long for a wrong key as for the right one.
func (s *site) isKey(text string) bool {
	a, b := sha256.Sum256([]byte(text)), sha256.Sum256([]byte(s.key))
	return subtle.ConstantTimeCompare(a[:], b[:]) == 1
}
