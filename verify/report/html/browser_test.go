//go:build browser

package html

import (
	"context"
	"flag"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

var (
	axeFile  = flag.String("axe", "", "axe.min.js of the npm package axe-core")
	chromium = flag.String("chromium", "chromium", "the browser to run")
)

// browser starts a browser without a window, which asks nothing of any network.
func browser(t *testing.T) context.Context {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(*chromium), chromedp.NoSandbox, chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("no-pings", true))
	within, stop := context.WithTimeout(t.Context(), 5*time.Minute)
	alone, end := chromedp.NewExecAllocator(within, options...)
	ctx, cancel := chromedp.NewContext(alone)
	t.Cleanup(func() { cancel(); end(); stop() })
	do(t, ctx, chromedp.Navigate("about:blank"))
	return ctx
}

func do(t *testing.T, ctx context.Context, steps ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	if err := chromedp.Do(ctx, steps...); err != nil {
		t.Fatal(err)
	}
}

func evaluate[T any](t *testing.T, ctx context.Context, script string) T {
	t.Helper()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// look is how a page is looked at.
type look struct {
	name   string
	width  int64
	scheme string
}

var looks = []look{
	{"wide, light", 1280, "light"}, {"wide, dark", 1280, "dark"},
	{"narrow, light", 320, "light"}, {"narrow, dark", 320, "dark"},
}

// open shows a page, that of a report as it is or with something planted in it.
func open(t *testing.T, ctx context.Context, page []byte, as look) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(file, page, 0o600); err != nil {
		t.Fatal(err)
	}
	media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: as.scheme}}}
	if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.EmulateViewport(as.width, 900), chromedp.Navigate("file://"+file))
}
