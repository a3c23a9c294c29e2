// Package page lays text, columns and tables on a sheet. It knows paper and
// lettering, and nothing of timber.
//
// A Pen sets lines of text downward from a place. A Flow is a pen that goes on
// in the next column and on the next sheet. A Table finds the widths of its
// columns, and Divide and Breaks share tables and blocks out over sheets. What
// stands together has one height of lettering: a dim.Group.
//
// All lengths are paper millimetres, y up.
package page
