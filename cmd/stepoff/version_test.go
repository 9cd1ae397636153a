package main

import (
	"runtime/debug"
	"testing"
)

// TestVersion holds that a release is named, a build is known by its commit,
// and no clock is told: the go command makes versions out of commit times.
func TestVersion(t *testing.T) {
	build := func(version string, settings ...debug.BuildSetting) *debug.BuildInfo {
		return &debug.BuildInfo{Main: debug.Module{Version: version}, Settings: settings}
	}
	commit := debug.BuildSetting{Key: "vcs.revision", Value: "0123456789abcdef"}
	changed := debug.BuildSetting{Key: "vcs.modified", Value: "true"}
	for _, row := range []struct {
		info *debug.BuildInfo
		want string
	}{
		{build("v1.2.3", commit), "v1.2.3"},
		{build("v1.3.0-rc.1"), "v1.3.0-rc.1"},
		{build("(devel)", commit), "commit 0123456789abcdef"},
		{build("v0.0.0-20260302101112-0123456789ab", commit), "commit 0123456789abcdef"},
		{build("v1.2.4-0.20260302101112-0123456789ab+dirty", commit, changed), "commit 0123456789abcdef, with changes"},
		{build(""), "unknown"},
	} {
		if got := versionOf(row.info); got != row.want {
			t.Errorf("version %q: got %q, want %q", row.info.Main.Version, got, row.want)
		}
	}
}
