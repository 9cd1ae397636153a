package main

import (
	"regexp"
	"runtime/debug"
)

// madeUp is a version the go command makes out of a commit and its time: the
// commit is said, the clock is not.
var madeUp = regexp.MustCompile(`[-.]\d{14}-[0-9a-f]{12}(\+.*)?$`)

// version says which stepoff this is: the release it was installed as, or the
// commit it was built from.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	return versionOf(info)
}

func versionOf(info *debug.BuildInfo) string {
	if v := info.Main.Version; v != "" && v != "(devel)" && !madeUp.MatchString(v) {
		return v
	}
	commit, changed := "", ""
	for _, setting := range info.Settings {
		switch {
		case setting.Key == "vcs.revision":
			commit = setting.Value
		case setting.Key == "vcs.modified" && setting.Value == "true":
			changed = ", with changes"
		}
	}
	if commit == "" {
		return "unknown"
	}
	return "commit " + commit + changed
}
