//go:build !windows && !darwin

package main

// doubleClicked is asked where programs are started by their pictures.
func doubleClicked() bool { return false }
