package main

import "runtime/debug"

// versionText says which version this is, and made of which commit, as the build knows it.
func versionText() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		info = &debug.BuildInfo{}
	}
	return versionOf(info)
}

func versionOf(info *debug.BuildInfo) string {
	text := "eighthturn " + info.Main.Version
	if info.Main.Version == "" || info.Main.Version == "(devel)" {
		text = "eighthturn, built from its source between two versions"
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" {
			text += ", commit " + s.Value[:min(12, len(s.Value))]
		}
	}
	return text + "\n"
}
