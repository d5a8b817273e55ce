// Package alone holds the law of pages and pictures that stand alone: they load nothing, run nothing and lead nowhere
// but within themselves.
package alone

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
)

// Requests is what a page (HTML or SVG, well-formed) would ask for from elsewhere, or run, or lead to. Those of its own
// places and what is within it (data:) are fine.
func Requests(page []byte) []string {
	d := xml.NewDecoder(bytes.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var list []string
	elements, within := 0, ""
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return append(list, err.Error())
		}
		switch token := token.(type) {
		case xml.StartElement:
			elements++
			within = token.Name.Local
			list = append(list, ofElement(token)...)
		case xml.EndElement:
			within = ""
		case xml.CharData:
			if within == "style" {
				list = append(list, ofStyle(string(token))...)
			}
		}
	}
	if elements == 0 {
		list = append(list, "it has no elements")
	}
	return list
}

func ofElement(e xml.StartElement) []string {
	var list []string
	switch name := strings.ToLower(e.Name.Local); name {
	case "script", "link", "iframe", "frame", "object", "embed", "base", "form", "applet", "foreignobject", "portal":
		list = append(list, "an element "+name)
	}
	for _, a := range e.Attr {
		name, value := strings.ToLower(a.Name.Local), strings.TrimSpace(a.Value)
		own := strings.HasPrefix(value, "#") || strings.HasPrefix(value, "data:image/")
		switch name {
		case "src", "href", "srcset", "imagesrcset", "poster", "data", "action", "formaction", "background", "cite", "ping", "longdesc", "manifest", "srcdoc", "http-equiv":
			if !own && !(name == "http-equiv" && strict(e)) {
				list = append(list, fmt.Sprintf("%s %s=%.80q", e.Name.Local, name, value))
			}
		default:
			if strings.HasPrefix(name, "on") {
				list = append(list, e.Name.Local+" "+name)
			}
			list = append(list, ofStyle(value)...)
		}
	}
	return list
}

// strict says whether an element is a policy that forbids to load anything, but what stands within the page, and reports nothing.
func strict(e xml.StartElement) bool {
	var kind, content string
	for _, a := range e.Attr {
		switch strings.ToLower(a.Name.Local) {
		case "http-equiv":
			kind = strings.ToLower(strings.TrimSpace(a.Value))
		case "content":
			content = a.Value
		}
	}
	return kind == "content-security-policy" && strings.HasPrefix(content, "default-src 'none';") && !strings.Contains(content, "report") && !strings.Contains(content, "//")
}

var fetching = regexp.MustCompile(`(?i)@import|\b(?:url|image-set|src)\(\s*["']?\s*([^"')]*)|\\[0-9a-f]`)

// ofStyle is what a style sheet or the value of an attribute asks for.
func ofStyle(style string) []string {
	var list []string
	for _, m := range fetching.FindAllStringSubmatch(style, -1) {
		if !strings.HasPrefix(m[1], "#") && !strings.HasPrefix(m[1], "data:image/") {
			list = append(list, fmt.Sprintf("style %.80q", m[0]))
		}
	}
	return list
}
