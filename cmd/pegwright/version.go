package main

// version is the version of the program.
const version = "0.1.0"

func versionCommand() command {
	return command{name: "version", short: "print the version", about: "Prints the version of the program.", run: runVersion}
}

func runVersion(s *streams, a given) int {
	if len(a.rest) > 0 {
		return s.refuse("version takes no arguments")
	}
	s.data([]byte("pegwright " + version + "\n"))
	return exitDone
}
