package main

import (
	"syscall"
	"unsafe"
)

// doubleClicked reports whether the program was started without a shell: then it has
// its console for itself.
func doubleClicked() bool {
	var users [2]uint32
	list := syscall.NewLazyDLL("kernel32.dll").NewProc("GetConsoleProcessList")
	n, _, _ := list.Call(uintptr(unsafe.Pointer(&users[0])), uintptr(len(users)))
	return n == 1
}
