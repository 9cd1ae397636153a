package main

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// inFolder returns a folder that must hold exactly the named files, with the
// texts, when the test ends: nothing temporary beside them.
func inFolder(t *testing.T, want map[string]string) string {
	t.Helper()
	folder := t.TempDir()
	t.Cleanup(func() {
		entries, err := os.ReadDir(folder)
		if err != nil {
			t.Fatal(err)
		}
		for _, entry := range entries {
			if _, ok := want[entry.Name()]; !ok {
				t.Errorf("%s is left behind", entry.Name())
			}
		}
		for name, text := range want {
			got, err := os.ReadFile(filepath.Join(folder, name))
			if err != nil || string(got) != text {
				t.Errorf("%s holds %q (%v), want %q", name, got, err, text)
			}
		}
	})
	return folder
}

func put(t *testing.T, name, text string, mode os.FileMode) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), mode); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(name, mode); err != nil { // whatever the umask
		t.Fatal(err)
	}
}

// TestWriteNewAndOver: a new file is made, an old one replaced with its
// permissions kept.
func TestWriteNewAndOver(t *testing.T) {
	folder := inFolder(t, map[string]string{"new": "result", "old": "result"})
	old := filepath.Join(folder, "old")
	put(t, old, "before", 0o640)
	for _, name := range []string{filepath.Join(folder, "new"), old} {
		if err := write(streams{}, name, []byte("result")); err != nil {
			t.Fatal(err)
		}
	}
	if runtime.GOOS == "windows" {
		return // knows no such permissions
	}
	if info, err := os.Stat(old); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("permissions are %v (%v), want those of the old file", info.Mode().Perm(), err)
	}
}

// TestWriteThroughLink: the file a link leads to is replaced, not the link.
func TestWriteThroughLink(t *testing.T) {
	folder := inFolder(t, map[string]string{"file": "result", "link": "result"})
	file, link := filepath.Join(folder, "file"), filepath.Join(folder, "link")
	put(t, file, "before", 0o644)
	if err := os.Symlink("file", link); err != nil {
		if os.Getenv("STEPOFF_REQUIRE_TOOLS") != "" {
			t.Fatal(err)
		}
		t.Skip("no links here: ", err)
	}
	if err := write(streams{}, link, []byte("result")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode().Type() != os.ModeSymlink {
		t.Errorf("the link is gone: %v", err)
	}
}

// TestWriteDevice: a device is written to, never replaced by a file.
func TestWriteDevice(t *testing.T) {
	if err := write(streams{}, os.DevNull, []byte("result")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(os.DevNull); err != nil || info.Mode().IsRegular() {
		t.Fatalf("%s is a file now", os.DevNull)
	}
}

// TestInterrupted: an interrupt while a file is written leaves the old one
// whole and nothing beside it, whenever it comes.
func TestInterrupted(t *testing.T) {
	for _, size := range []int{0, 10, 3 * chunk} {
		folder := inFolder(t, map[string]string{"old": "before"})
		old := filepath.Join(folder, "old")
		put(t, old, "before", 0o644)
		interrupts := make(chan os.Signal, 1)
		interrupts <- os.Interrupt
		err := createUntil(interrupts, old, nil, bytes.Repeat([]byte{'x'}, size))
		if err == nil || !strings.Contains(err.Error(), "interrupted") {
			t.Errorf("size %d: error is %v", size, err)
		}
	}
}
