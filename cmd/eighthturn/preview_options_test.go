package main

import "testing"

func TestPortAndHostValues(t *testing.T) {
	for text, good := range map[string]bool{"0": false, "1": true, "8080": true, "65535": true, "65536": false, "-1": false, "abc": false, "": false, "1e3": false} {
		if err := new(portOption).Set(text); (err == nil) != good {
			t.Errorf("port %q: %v", text, err)
		}
	}
	for text, good := range map[string]bool{
		"sewing-room.local": true, "a,b.example": true, "192.168.1.20": true, "[fe80::1]": true, "xn--nhzimmer-n4a.local": true,
		"<x>": false, "a:80": false, "": false, "a,,b": false, "-a": false, "a b": false, "http://a": false, "a..b": false,
	} {
		if err := new(hostsOption).Set(text); (err == nil) != good {
			t.Errorf("host %q: %v", text, err)
		}
	}
	for text, good := range map[string]bool{"vscode://file/{file}:{line}": true, "javascript://{file}": false, "data:{file}": false, "x://file": false, "": false} {
		if err := new(editorOption).Set(text); (err == nil) != good {
			t.Errorf("editor %q: %v", text, err)
		}
	}
}
