package preview

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"

	"eighthturn/internal/files"
	"eighthturn/internal/quilttest/judges"
)

// TestManyRandomSaves saves many hundred times in styles that leave the name in place, as fast
// as they go and now and then with a pause: what is shown in the end is the last text.
func TestManyRandomSaves(t *testing.T) {
	t.Parallel()
	r := start(t, titled("save 0"), Options{})
	r.next()
	var styles []saveStyle
	for _, s := range saveStyles() {
		switch s.name {
		case "in place", "new file renamed over", "renamed away, then over", "backup dance", "lock link and backup copy",
			"swap file beside it", "written over, then cut", "many events":
			styles = append(styles, s)
		}
	}
	random := rand.New(rand.NewPCG(1, 2))
	saves := judges.Of(200, 1000)
	last := ""
	for n := range saves {
		last = fmt.Sprintf("save %d %s", n+1, strings.Repeat("x", random.IntN(300)))
		styles[random.IntN(len(styles))].save(t, r.file, titled(last))
		if n%50 == 0 {
			time.Sleep(time.Duration(random.IntN(300)) * time.Millisecond)
		}
	}
	got := r.next()
	for got.titleShown() != last {
		got = r.next()
	}
	r.nothing(700 * time.Millisecond)
	if got.errors != 0 || got.problem != "" || got.revision > saves+1 {
		t.Errorf("in the end: %s", got.line(got.timings))
	}
}

// TestEveryKeystroke saves each beginning of a layout as fast as somebody types: the last is
// shown, and there are no more revisions than saves.
func TestEveryKeystroke(t *testing.T) {
	t.Parallel()
	r := start(t, "# nothing yet\n", Options{})
	r.next()
	saves := 0
	for n := 0; n < len(lanterns); n += 4 {
		put(t, r.file, lanterns[:n])
		saves++
		time.Sleep(10 * time.Millisecond)
	}
	put(t, r.file, lanterns)
	got := r.next()
	for got.picture == nil || got.errors > 0 || len(got.picture.top.Patches) != 80 { // those of the whole layout
		got = r.next()
	}
	if got.revision > saves+2 {
		t.Errorf("%d revisions of %d saves", got.revision, saves)
	}
	r.nothing(500 * time.Millisecond)
}

// overtaken saves twenty times while a drawing is held up, and says what is shown afterwards, after how many drawings, and
// how long the drawing was held up.
func overtaken(t *testing.T) (shown string, drawings int32, held time.Duration) {
	var drawn atomic.Int32
	busy, done := make(chan bool, 100), make(chan bool)
	o := Options{draw: heedless(func(text string, before drawing) drawing {
		drawn.Add(1)
		busy <- true
		<-done
		return draw(text, before)
	})}
	r := start(t, titled("save 0"), o)
	<-busy
	done <- true
	r.next()
	put(t, r.file, titled("save 1"))
	<-busy
	began := time.Now()
	for n := range 20 {
		put(t, r.file, titled(fmt.Sprintf("save %d", n+2)))
		time.Sleep(5 * time.Millisecond)
	}
	time.Sleep(pollEvery) // the last one is seen
	close(done)
	held = time.Since(began)
	return r.next().titleShown(), drawn.Load(), held
}

// TestOvertakenIsDropped: while a drawing takes its time, further saves come; only the last of
// them is drawn and shown. On a busy machine the drawing may be held up so long that it is shown
// all the same, which is another rule; then it is tried again.
func TestOvertakenIsDropped(t *testing.T) {
	t.Parallel()
	for try := 1; ; try++ {
		shown, drawings, held := overtaken(t)
		if held > 800*time.Millisecond && try < 10 {
			continue
		}
		if shown != "save 21" {
			t.Errorf("shown %q after %v", shown, held)
		}
		if drawings > 4 {
			t.Errorf("%d drawings for 21 saves in the time of two", drawings)
		}
		return
	}
}

// TestNotStarved: saves that never stop still show something now and then.
func TestNotStarved(t *testing.T) {
	t.Parallel()
	o := Options{draw: heedless(func(text string, before drawing) drawing {
		time.Sleep(60 * time.Millisecond)
		return draw(text, before)
	})}
	r := start(t, titled("save 0"), o)
	r.next()
	seen := 0
	for n, until := 0, time.Now().Add(4*time.Second); time.Now().Before(until); n++ {
		renameOver("new")(t, r.file, titled(fmt.Sprintf("save %d", n)))
		time.Sleep(20 * time.Millisecond)
		select {
		case <-r.shows:
			seen++
		default:
		}
	}
	if seen == 0 {
		t.Error("nothing was shown in four seconds of saves")
	}
}

// TestNoNoticeOfChanges: where the system gives no notice, one line says so in plain words,
// and the clock looks.
func TestNoNoticeOfChanges(t *testing.T) {
	t.Parallel()
	o := Options{notify: func() (*fsnotify.Watcher, error) { return nil, errors.New("too many open files") }}
	r := start(t, lanterns, o)
	r.next()
	for n := range 3 {
		title := fmt.Sprintf("save %d", n+1)
		renameOver("new")(t, r.file, titled(title))
		if got := r.next(); got.titleShown() != title {
			t.Errorf("shown %q", got.titleShown())
		}
	}
	if out := r.output.String(); strings.Count(out, "does not report changes") != 1 {
		t.Errorf("the terminal says:\n%s", out)
	}
}

// TestNoisyFolder: a thousand changes a second of other files neither hide ours nor are shown.
func TestNoisyFolder(t *testing.T) {
	t.Parallel()
	r := start(t, lanterns, Options{})
	r.next()
	stop, ended := make(chan bool), make(chan bool)
	go func() {
		defer close(ended)
		for n := 0; ; n++ {
			select {
			case <-stop:
				return
			default:
			}
			_ = os.WriteFile(filepath.Join(filepath.Dir(r.file), fmt.Sprintf("noise%d", n%50)), []byte("noise"), 0o644) // some may fail at the end
			time.Sleep(200 * time.Microsecond)
		}
	}()
	for n := range 3 {
		title := fmt.Sprintf("save %d", n+1)
		put(t, r.file, titled(title))
		began := time.Now()
		if got := r.next(); got.titleShown() != title || time.Since(began) > time.Second+slack {
			t.Errorf("shown %q after %v", got.titleShown(), time.Since(began))
		}
	}
	close(stop)
	<-ended
	r.nothing(400 * time.Millisecond)
}

// TestBrokenInside: a panic in a drawing is told, the last picture stays, and the preview
// lives on.
func TestBrokenInside(t *testing.T) {
	t.Parallel()
	broken := func(text string, before drawing) drawing {
		return safely(text, func() drawing {
			if strings.Contains(text, "breaks") {
				var none []int
				_ = none[len(text)]
			}
			return draw(text, before)
		})
	}
	r := start(t, lanterns, Options{draw: heedless(broken)})
	first := r.next()
	for range 3 {
		put(t, r.file, titled("breaks"))
		got := r.next()
		if !got.inside || got.picture == nil || !strings.Contains(got.problem, "index out of range") || strings.Contains(got.problem, ".go") {
			t.Fatalf("told: %+v", got.problem)
		}
		put(t, r.file, titled("mended"))
		if got := r.next(); got.inside || got.titleShown() != "mended" {
			t.Fatalf("after that: %s", got.line(got.timings))
		}
	}
	if first.picture == nil {
		t.Error("there was no picture at first")
	}
}

// TestNothingIsWritten: the folder holds the layout alone, during and after.
func TestNothingIsWritten(t *testing.T) {
	t.Parallel()
	r := start(t, lanterns, Options{})
	r.next()
	put(t, r.file, titled("another"))
	r.next()
	must(t, r.end())
	list, err := os.ReadDir(filepath.Dir(r.file))
	must(t, err)
	if len(list) != 1 {
		t.Errorf("the folder holds %v", list)
	}
}

// TestTwoPreviewsOfOneFile: both follow it.
func TestTwoPreviewsOfOneFile(t *testing.T) {
	t.Parallel()
	a := start(t, lanterns, Options{})
	b := startOn(t, a.file, Options{})
	a.next()
	b.next()
	put(t, a.file, titled("for both"))
	if x, y := a.next(), b.next(); x.titleShown() != "for both" || y.titleShown() != "for both" {
		t.Errorf("shown %q and %q", x.titleShown(), y.titleShown())
	}
}

// TestRecolouredIsTheSame: the way round laying gives the very top that laying gives.
func TestRecolouredIsTheSame(t *testing.T) {
	const colorways = "colorway dusk cream ivory\n"
	before := draw(lanterns+colorways, drawing{})
	text := strings.NewReplacer("#b5532a", "#0a0b0c", "cream crackle", "cream CRACKLE").Replace(lanterns + colorways)
	short, long := draw(text, before), draw(text, drawing{})
	if short.like != before.top {
		t.Fatal("a change of colours was laid anew")
	}
	if a, b := fmt.Sprintf("%+v", short.top), fmt.Sprintf("%+v", long.top); a != b {
		t.Errorf("recoloured:\n%.2000s\nlaid anew:\n%.2000s", a, b)
	}
	{
		drawn := drawWith(nil, variant{colorway: "dusk"})
		before, _ := drawn(t.Context(), lanterns+colorways, drawing{})
		short, _ := drawn(t.Context(), text, before)
		if a, b := fmt.Sprintf("%+v", short.top), fmt.Sprintf("%+v", long.top.In(0)); a != b || short.like != before.top {
			t.Errorf("recoloured in a colorway:\n%.2000s\nlaid anew:\n%.2000s", a, b)
		}
	}
	for name, text := range map[string]string{
		"another colorway": lanterns + "colorway dusk cream white\n",
		"another strip":    strings.Replace(lanterns, "strip   4", "side    5", 1),
		"another block":    strings.Replace(lanterns, "F W W F", "F F W F", 1),
		"another width":    strings.Replace(lanterns, "1 1/2  rust", "2 1/2  rust", 1),
		"another title":    titled("Harbour lanternz"),
	} {
		if draw(text, before).like != nil {
			t.Errorf("%s counts as a change of colours", name)
		}
	}
}

// TestSavesLeaveNothingBehind: many hundred saves leave the memory as it was.
func TestSavesLeaveNothingBehind(t *testing.T) {
	s := newState("i", "a.quilt", "l")
	f := &follower{shelf: disk{}, draw: heedless(draw), hints: newHints(nil), album: files.In(t.TempDir()), publish: func(r reading, d drawing, _ timings) { s.publish(r, d) }}
	one := func(n int) {
		text := titled(fmt.Sprintf("save %d", n))
		switch n % 4 {
		case 0:
			text = strings.Replace(text, "F W W F", "F F W F", n/4%3)
		case 1:
			text = strings.Replace(text, "kites navy", fmt.Sprintf("kitez %d", n), 1)
		case 2: // sizes that never come again
			text = strings.Replace(strings.Replace(text, "shore / reversed shore", "rust / teal", 1), "strip   4", fmt.Sprintf("side %d.%d", 4+n%3, n), 1)
		}
		r := reading{text: text}
		d, _, _ := f.drawn(t.Context(), r, true)
		f.show(r, d, timings{})
		s.answer(n - 3)
	}
	heap := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	for n := range judges.Of(200, 300) {
		one(n)
	}
	before := heap()
	for n := range judges.Of(400, 600) {
		one(n)
	}
	after := heap()
	t.Logf("heap after the first saves %d KB, after more %d KB", before>>10, after>>10)
	if after > before+2<<20 {
		t.Errorf("the heap grew from %d to %d bytes", before, after)
	}
}

// TestIdleLooksAreCheap: with nothing going on, the clock's looks at a large layout cost next
// to nothing. The bound is generous to a busy machine.
func TestIdleLooksAreCheap(t *testing.T) {
	file := filepath.Join(t.TempDir(), "a.quilt")
	put(t, file, strings.Repeat("# a long comment\n", (64<<10)/17))
	f := &follower{shelf: disk{}, path: file, album: files.In(t.TempDir()), hints: newHints(nil), shown: read(disk{}, file), begun: true}
	const looks = 80
	began := time.Now()
	for range looks {
		f.look()
	}
	each := time.Since(began) / looks
	t.Logf("a look takes %v, every %v", each, pollEvery)
	if each > pollEvery/50 {
		t.Errorf("a look takes %v, every %v", each, pollEvery)
	}
}
