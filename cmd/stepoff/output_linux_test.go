package main

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
)

// nobody is a user that owns nothing: by custom the one of this number.
const nobody = 65534

// TestWriteProtected: a file its owner protected from writing is not replaced.
// Root may write to anything, so under root one thread opens files as nobody does.
func TestWriteProtected(t *testing.T) {
	folder := inFolder(t, map[string]string{"old": "before"})
	old := filepath.Join(folder, "old")
	put(t, old, "before", 0o444)
	if os.Getuid() == 0 {
		for _, f := range []string{folder, filepath.Dir(folder)} {
			if err := os.Chmod(f, 0o777); err != nil {
				t.Fatal(err)
			}
		}
		runtime.LockOSThread()
		defer runtime.UnlockOSThread()
		if err := syscall.Setfsuid(nobody); err != nil {
			t.Fatal(err)
		}
		defer syscall.Setfsuid(0)
	}
	err := write(streams{}, old, []byte("result"))
	if err == nil || !strings.Contains(err.Error(), "permission denied") {
		t.Errorf("error is %v", err)
	}
}
