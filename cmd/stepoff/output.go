package main

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
	"syscall"
)

// write puts a finished result where -o says. The result is whole before
// anything on the disk is touched, and a file takes its name only when it is
// whole too: it is written beside the one it replaces, under another name, and
// renamed. Whatever goes wrong leaves the old file as it was and nothing beside
// it. The old file's permissions are kept. A device or a pipe, which cannot be
// replaced, is written straight to.
func write(std streams, name string, result []byte) error {
	if name == "-" {
		return std.print(result)
	}
	old, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		err = create(name, nil, result)
	case err != nil:
	case old.IsDir():
		return cannotWrite(name, reason("it is a folder"), "name a file in it: -o "+filepath.Join(name, "FILE"))
	case old.Mode().IsRegular():
		err = replace(name, old, result)
	default:
		err = writeInto(name, result)
	}
	if err != nil {
		return cannotWrite(name, err)
	}
	return nil
}

// print writes a result to standard output.
func (std streams) print(result []byte) error {
	if _, err := std.out.Write(result); err != nil {
		return cannotWrite("standard output", err)
	}
	return nil
}

// note tells, on standard error, what is not the result: what was written, or
// taken for granted.
func (std streams) note(l *line, format string, values ...any) {
	if !l.Bool("quiet") {
		fmt.Fprintf(std.err, "stepoff: "+format+"\n", values...)
	}
}

// replace writes over a file, through links to where it is. A file that may
// not be written to is not replaced either.
func replace(name string, old fs.FileInfo, result []byte) error {
	target, err := filepath.EvalSymlinks(name)
	if err != nil {
		return err
	}
	writable, err := os.OpenFile(target, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	writable.Close()
	return create(target, old, result)
}

func writeInto(name string, result []byte) error {
	device, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = device.Write(result)
	return errors.Join(err, device.Close())
}

// create writes a new file in place of the old one; nil: there is none. An
// interrupt that comes while it writes is held until nothing is left behind.
func create(name string, old fs.FileInfo, result []byte) error {
	interrupts := make(chan os.Signal, 1)
	signal.Notify(interrupts, os.Interrupt, syscall.SIGTERM)
	defer signal.Stop(interrupts)
	return createUntil(interrupts, name, old, result)
}

// chunk is how much is written between two looks for an interrupt.
const chunk = 1 << 20

func createUntil(interrupts <-chan os.Signal, name string, old fs.FileInfo, result []byte) (err error) {
	folder := filepath.Dir(name)
	temporary := filepath.Join(folder, fmt.Sprintf(".stepoff-%016x.tmp", rand.Uint64()))
	file, err := os.OpenFile(temporary, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrNotExist) {
		return reason("there is no folder " + folder)
	}
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			file.Close()
			os.Remove(temporary)
		}
	}()
	for part := range slices.Chunk(result, chunk) {
		if err := interrupted(interrupts); err != nil {
			return err
		}
		if _, err := file.Write(part); err != nil {
			return err
		}
	}
	if err := file.Sync(); err != nil {
		return err
	}
	if old != nil {
		if err := keepPermissions(file, old); err != nil {
			return err
		}
	}
	if err := file.Close(); err != nil {
		return err
	}
	if err := interrupted(interrupts); err != nil {
		return err
	}
	return os.Rename(temporary, name)
}

func interrupted(interrupts <-chan os.Signal) error {
	select {
	case <-interrupts:
		return reason("interrupted, and nothing is changed")
	default:
		return nil
	}
}

// keepPermissions asks for a change only where there is one: some disks know
// no permissions and refuse.
func keepPermissions(file *os.File, old fs.FileInfo) error {
	now, err := file.Stat()
	if err != nil || now.Mode().Perm() == old.Mode().Perm() {
		return err
	}
	return file.Chmod(old.Mode().Perm())
}
