package main

import (
	"runtime/debug"
	"testing"
)

func TestVersion(t *testing.T) {
	commit := []debug.BuildSetting{{Key: "vcs.revision", Value: "0123456789abcdef0123"}}
	for want, info := range map[string]debug.BuildInfo{
		"eighthturn v1.2.3, commit 0123456789ab\n":                                      {Main: debug.Module{Version: "v1.2.3"}, Settings: commit},
		"eighthturn v1.2.3\n":                                                           {Main: debug.Module{Version: "v1.2.3"}},
		"eighthturn, built from its source between two versions\n":                      {Main: debug.Module{Version: "(devel)"}},
		"eighthturn, built from its source between two versions, commit 0123456789ab\n": {Settings: commit},
	} {
		if got := versionOf(&info); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
