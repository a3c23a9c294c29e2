package plain_test

import (
	"fmt"
	"os"

	"pegwright/cmd/pegwright/plain"
)

// A name that would clear the screen is shown and does nothing.
func Example() {
	_, err := os.Open("no-such-folder/frame.yaml")
	fmt.Println(plain.Quoted(plain.Visible("\x1b[2Jframe.yaml"))+":", plain.Reason(err))
	// Output:
	// “\u001b[2Jframe.yaml”: there is no such file or folder
}
