//go:build judges

package preview

import (
	"context"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// offline takes the network away from a page, or gives it back.
func (p *tab) offline(on bool) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	_, err := chromedp.Call(ctx, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
		MatchedNetworkConditions: []*network.Conditions{{Offline: on, DownloadThroughput: -1, UploadThroughput: -1}},
	})
	must(p.t, err)
	_, err = chromedp.Call(ctx, network.OverrideNetworkState, network.OverrideNetworkStateParams{Offline: on, DownloadThroughput: -1, UploadThroughput: -1})
	must(p.t, err)
}

// TestAfterASleep: two saves while a page hears nothing, as when the computer sleeps: within
// ten seconds of waking it shows the newest, without flashing what it has.
func TestAfterASleep(t *testing.T) {
	r, p := start(t, lanterns, Options{}), newTab(t)
	p.load(r.address)
	p.offline(true)
	eval[bool](p, `(dispatchEvent(new Event('focus')), true)`) // whatever it asks for now gets no answer
	p.until(`document.documentElement.classList.contains('disconnected')`)
	put(t, r.file, titled("missed"))
	r.next()
	r.next()
	put(t, r.file, strings.Replace(titled("newest"), "#b5532a", "#123456", 1))
	r.next()
	p.offline(false)
	woken := time.Now()
	p.until(`document.getElementById('title').innerText === 'newest' && document.querySelector('g[fill="#123456"]') && !document.documentElement.classList.contains('disconnected')`)
	if took := time.Since(woken); took > 10*time.Second {
		t.Errorf("it took %v after waking", took)
	}
	put(t, r.file, titled("and on"))
	p.until(`document.getElementById('title').innerText === 'and on'`)
}
