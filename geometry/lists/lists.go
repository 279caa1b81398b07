// Package lists makes, picks and sums what stands in a list.
package lists

import (
	"cmp"
	"math"
	"slices"
)

// Map returns what f makes of each, nil of none.
func Map[T, U any](all []T, f func(T) U) []U {
	out := slices.Grow([]U(nil), len(all))
	for _, one := range all {
		out = append(out, f(one))
	}
	return out
}

// Flat returns all that f makes of each, one behind the other.
func Flat[T, U any](all []T, f func(T) []U) []U { return slices.Concat(Map(all, f)...) }

// Where returns those that are picked, nil if none is.
func Where[T any](all []T, pick func(T) bool) (out []T) {
	for _, one := range all {
		if pick(one) {
			out = append(out, one)
		}
	}
	return out
}

// Unique returns each once, in the order in which they come up.
func Unique[T comparable](all []T) (out []T) {
	for _, one := range all {
		if !slices.Contains(out, one) {
			out = append(out, one)
		}
	}
	return out
}

// At returns what stands at a place, or something else where there is no such place.
func At[T any, K ~uint8](all []T, place K, otherwise T) T {
	if int(place) < len(all) {
		return all[place]
	}
	return otherwise
}

// First returns the first that is picked, and whether there is one.
func First[T any](all []T, pick func(T) bool) (one T, ok bool) {
	if i := slices.IndexFunc(all, pick); i >= 0 {
		return all[i], true
	}
	return one, false
}

// Count returns how many are picked.
func Count[T any](all []T, pick func(T) bool) (n int) {
	for _, one := range all {
		if pick(one) {
			n++
		}
	}
	return n
}

// Sum returns what f says of all together.
func Sum[T any, N int | float64](all []T, f func(T) N) (sum N) {
	for _, one := range all {
		sum += f(one)
	}
	return sum
}

// Least returns the least that f says of one, +Inf of none.
func Least[T any](all []T, f func(T) float64) float64 {
	least := math.Inf(1)
	for _, one := range all {
		least = min(least, f(one))
	}
	return least
}

// Most returns the most that f says of one, not less than 0.
func Most[T any, N cmp.Ordered](all []T, f func(T) N) (most N) {
	for _, one := range all {
		most = max(most, f(one))
	}
	return most
}
