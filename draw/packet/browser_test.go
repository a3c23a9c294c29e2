//go:build renderers

package packet

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	cdp "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// onDisk writes the packet of a small sample and returns its folder and the
// paths in it.
func onDisk(t *testing.T) (string, map[string][]byte) {
	t.Helper()
	in := sample(t, "rail-and-post")
	in.Templates = nil
	files, dir := build(t, in), t.TempDir()
	for path, data := range files {
		name := filepath.Join(dir, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return dir, files
}

// browser opens Chromium without a window; what its console says is gathered.
func browser(t *testing.T) (context.Context, *[]string) {
	t.Helper()
	opts := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.NoSandbox)
	alloc, stop := chromedp.NewExecAllocator(context.Background(), opts...)
	t.Cleanup(stop)
	tab, stopTab := chromedp.NewContext(alloc)
	t.Cleanup(stopTab)
	tab, stopTime := context.WithTimeout(tab, 2*time.Minute)
	t.Cleanup(stopTime)
	said := &[]string{}
	chromedp.ListenTarget(tab, func(ev any) {
		switch e := ev.(type) {
		case *runtime.EventConsoleAPICalled:
			*said = append(*said, string(e.Type))
		case *runtime.EventExceptionThrown:
			*said = append(*said, e.ExceptionDetails.Error())
		}
	})
	return tab, said
}

func run(t *testing.T, ctx context.Context, actions ...chromedp.Action) {
	t.Helper()
	if err := chromedp.Run(ctx, actions...); err != nil {
		t.Fatal(err)
	}
}

// The index page from disk, at the width of a phone: nothing sticks out, every
// address is a file of the packet or a place in the page, every picture loads,
// the page prints, and the console keeps quiet.
func TestIndexInABrowser(t *testing.T) {
	dir, files := onDisk(t)
	tab, said := browser(t)
	base := "file://" + filepath.ToSlash(dir) + "/"
	var wide float64
	var addresses, broken []string
	var printed []byte
	run(t, tab, emulation.SetDeviceMetricsOverride(390, 844, 2, true), chromedp.Navigate(base+IndexFile),
		chromedp.Evaluate(`document.documentElement.scrollWidth`, &wide),
		chromedp.Evaluate(`[...document.querySelectorAll("[href],[src]")].map(e => e.href || e.src)`, &addresses),
		chromedp.Evaluate(`document.querySelectorAll("img").forEach(i => i.loading = "eager")`, nil),
		chromedp.Poll(`[...document.images].every(i => i.complete)`, nil, chromedp.WithPollingTimeout(90*time.Second)),
		chromedp.Evaluate(`[...document.images].filter(i => i.naturalWidth === 0).map(i => i.src)`, &broken),
		chromedp.ActionFunc(func(ctx context.Context) (err error) {
			printed, _, err = cdp.PrintToPDF().Do(ctx)
			return err
		}))
	if wide > 390 {
		t.Errorf("the page is %v px wide on a phone of 390", wide)
	}
	if len(broken) > 0 {
		t.Errorf("pictures that do not load: %v", broken)
	}
	if len(addresses) < 60 || len(printed) < 10000 {
		t.Errorf("%d addresses, %d bytes printed", len(addresses), len(printed))
	}
	for _, a := range addresses {
		path, fragment, _ := strings.Cut(strings.TrimPrefix(a, base), "#")
		switch {
		case !strings.HasPrefix(a, base) || files[path] == nil:
			t.Errorf("%s is not in the packet", a)
		case path == IndexFile:
			var is bool
			run(t, tab, chromedp.Evaluate(`document.getElementById("`+fragment+`") !== null`, &is))
			if !is {
				t.Errorf("%s leads nowhere", a)
			}
		}
	}
	if shot := os.Getenv("PEGWRIGHT_PICTURE"); shot != "" {
		var png []byte
		run(t, tab, chromedp.CaptureScreenshot(&png))
		if err := os.WriteFile(shot, png, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if len(*said) > 0 {
		t.Errorf("the console says %v", *said)
	}
}

// A bar of 100 mm is 100 CSS millimetres long in a browser: 96 px are 25.4 mm
// (CSS Values and Units, absolute lengths). Chromium lays out in 1/64 px. The
// links of a sheet lead to files that are there.
func TestSheetsInABrowser(t *testing.T) {
	dir, files := onDisk(t)
	tab, said := browser(t)
	measured, followed := 0, 0
	for path := range files {
		bar := strings.Contains(string(files[path]), `data-mark="bar:mm:x"`)
		views := strings.Contains(path, "-elevation-") || strings.Contains(path, "-frame-")
		if !strings.HasSuffix(path, ".svg") || !(bar && measured < 3 || views) {
			continue
		}
		var long float64
		var links []string
		run(t, tab, chromedp.Navigate("file://"+filepath.ToSlash(dir)+"/"+path),
			chromedp.Evaluate(`[...document.querySelectorAll("a")].map(a => a.href.baseVal)`, &links))
		if bar {
			run(t, tab, chromedp.Evaluate(`(b => b ? b.getBoundingClientRect().width : 0)(document.querySelector('[data-mark="bar:mm:x"]'))`, &long))
			if mm := long * 25.4 / 96; math.Abs(mm-100) > 0.02 {
				t.Errorf("%s: the bar is %.3f mm long", path, mm)
			}
			measured++
		}
		for _, l := range links {
			followed++
			if files["svg/"+l] == nil {
				t.Errorf("%s leads to %s, which is not there", path, l)
			}
		}
	}
	if measured < 3 || followed < 5 {
		t.Errorf("%d bars measured, %d links followed", measured, followed)
	}
	if len(*said) > 0 {
		t.Errorf("the console says %v", *said)
	}
}
