package main

import "runtime/debug"

// versionText says which version this is, as the build knows it.
func versionText() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "eighthturn, built from its source between two versions\n"
	}
	return "eighthturn " + info.Main.Version + "\n"
}
