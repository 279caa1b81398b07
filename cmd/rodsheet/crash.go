package main

import (
	"context"
	"fmt"
	"os"
	"runtime/debug"
	"strings"
)

// A crash is a panic that was caught.
type crash struct {
	value any
	stack []byte
}

// Error is one line. The value may hold more: the stack of another goroutine.
func (c crash) Error() string {
	first, _, _ := strings.Cut(fmt.Sprint(c.value), "\n")
	return "internal error: " + first
}

func caught(do func() error) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = crash{p, debug.Stack()}
		}
	}()
	return do()
}

// awaited returns what do makes, which may take long, and gives it up when ctx is
// cancelled. What is given up must not write: it runs on until the program ends.
func awaited[T any](ctx context.Context, do func() (T, error)) (T, error) {
	if ctx.Done() == nil { // nobody can
		return do()
	}
	var made, none T
	done := make(chan error, 1)
	go func() {
		done <- caught(func() (err error) {
			made, err = do()
			return err
		})
	}()
	select {
	case err := <-done:
		return made, err
	case <-ctx.Done():
		return none, interrupted{}
	}
}

// keep writes what is known of the crash into a file for who has to mend it,
// and says where.
func (c crash) keep() string {
	f, err := os.CreateTemp("", "rodsheet-report-*.txt")
	if err != nil {
		return "no report could be written"
	}
	defer f.Close()
	_, err = fmt.Fprintf(f, "%s\n%q\n%v\n\n%s", thisEdition(), os.Args, c.value, c.stack)
	if err != nil {
		return "no report could be written"
	}
	return "a report is in " + f.Name()
}
