package main

import "pegwright/geom/spec"

func schemaCommand() command {
	return command{name: "schema", short: "the JSON Schema of the description, for your editor",
		about:    "Prints the JSON Schema (draft 2020-12) of the description language. An editor that knows JSON Schema completes and checks a description while you type.",
		examples: []string{"pegwright schema > frame.schema.json"}, run: runSchema}
}

func runSchema(s *streams, a given) int {
	if len(a.rest) > 0 {
		return s.refuse("schema takes no arguments")
	}
	s.data(spec.Schema())
	return exitDone
}
