//go:build !js

package main

// engine is for browsers alone.
func engine() bool { return false }
