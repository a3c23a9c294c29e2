// Package named lays what a description names one by one: timbers on lines of
// their own, braces between two timbers, and joints of chosen kinds. They stand
// on a scheme beside those of a building, if there is one, and may join them.
package named
