package live_test

import (
	"fmt"
	"net"

	"pegwright/cmd/pegwright/live"
)

// The page is served to this machine alone.
func Example() {
	l, err := live.Listen(0)
	if err != nil {
		fmt.Println(err)
		return
	}
	defer l.Close()
	fmt.Println(l.Addr().(*net.TCPAddr).IP.IsLoopback())
	// Output: true
}
