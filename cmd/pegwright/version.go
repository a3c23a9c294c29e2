package main

// version is the version of the program.
const version = "0.1.0"

const versionUsage = `pegwright version

Prints the version of the program.
`

func runVersion(s *streams, args []string) int {
	f := flags("version")
	if code, done := s.parse(f, args); done {
		return code
	}
	if f.NArg() > 0 {
		return s.refuse("version takes no arguments")
	}
	s.data([]byte("pegwright " + version + "\n"))
	return exitDone
}
