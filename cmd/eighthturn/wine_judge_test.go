//go:build judges

package main

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

// TestWine runs the program as built for Windows under Wine, where that is installed: it says, draws and prints the same bytes as
// here, and its preview follows saves in place and by renaming.
func TestWine(t *testing.T) {
	wine, err := exec.LookPath("wine")
	if err != nil {
		t.Skip("Wine is not installed")
	}
	w := windows{wine: wine, folder: t.TempDir(), prefix: filepath.Join(t.TempDir(), "prefix")}
	w.install(t)
	layout := read(t, "../../samples/lanterns.quilt")
	write(t, w.path("lanterns.quilt"), layout)
	t.Chdir(w.folder)
	for _, args := range [][]string{{"check", "lanterns.quilt"}, {"draw", "lanterns.quilt", "-o", "made.svg"}, {"booklet", "lanterns.quilt", "-o", "made.pdf"}} {
		made := w.path(args[len(args)-1])
		c := &console{in: os.Stdin, out: created(t, w.path("here")), err: os.Stderr}
		if code := run(args, c); code != done {
			t.Fatalf("%v ends with %d", args, code)
		}
		cmd := w.command(args...)
		cmd.Stdout = created(t, w.path("there"))
		here := read(t, made)
		if err := cmd.Run(); err != nil {
			t.Fatalf("%v under Wine: %v", args, err)
		}
		if !bytes.Equal(read(t, w.path("here")), read(t, w.path("there"))) || !bytes.Equal(here, read(t, made)) {
			t.Errorf("%v says or makes something else under Wine", args)
		}
	}
	for _, name := range []string{"CON", "con.svg", "NUL.png", "x.svg:y", "x:y.svg"} { // of a device, and of a part of a file
		out, err := w.command("draw", "lanterns.quilt", "-o", name).CombinedOutput()
		if err == nil {
			t.Errorf("%s is taken: %s", name, out)
		}
		t.Logf("%s: %s", name, out)
	}
	w.follow(t, layout)
}

// windows is a folder and a prefix of Wine.
type windows struct{ wine, folder, prefix string }

func (w *windows) path(name string) string { return filepath.Join(w.folder, name) }

func (w *windows) command(args ...string) *exec.Cmd {
	cmd := exec.Command(w.wine, append([]string{w.path("eighthturn.exe")}, args...)...)
	cmd.Env = append(os.Environ(), "WINEPREFIX="+w.prefix, "WINEDEBUG=-all", "DISPLAY=")
	return cmd
}

// install builds the program, and makes a prefix with a library that Go's programs ask for and older Wine lacks.
func (w *windows) install(t *testing.T) {
	t.Helper()
	build := exec.Command("go", "build", "-o", w.path("eighthturn.exe"), ".")
	build.Env = append(os.Environ(), "GOOS=windows", "GOARCH=amd64", "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	_ = w.command("--version").Run() // fails without the library, but makes the prefix
	t.Cleanup(func() {
		server := exec.Command("wineserver", "-k")
		server.Env = w.command().Env
		_ = server.Run() // where it is not to be found it ends by itself
	})
	library := filepath.Join(w.prefix, "drive_c", "windows", "system32", "bcryptprimitives.dll")
	if _, err := os.Stat(library); err != nil {
		write(t, library, forwarding("bcryptprimitives.dll", "ProcessPrng", "ADVAPI32.SystemFunction036"))
	}
	if out, err := w.command("--version").CombinedOutput(); err != nil || !strings.HasPrefix(string(out), "eighthturn") {
		t.Fatalf("%v\n%s", err, out)
	}
}

// follow previews a layout and saves it both ways.
func (w *windows) follow(t *testing.T, layout []byte) {
	t.Helper()
	cmd := w.command("preview", "lanterns.quilt", "--no-open")
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	defer func() {
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
	}()
	address := ""
	for lines := bufio.NewScanner(out); address == "" && lines.Scan(); {
		address = regexp.MustCompile(`http://127\.0\.0\.1:\d+/`).FindString(lines.Text())
	}
	go func() { _, _ = io.Copy(io.Discard, out) }()
	colors := regexp.MustCompile(`#[0-9a-f]{6}`)
	save := func(color string) []byte { return colors.ReplaceAll(layout, []byte(color)) }
	write(t, w.path("lanterns.quilt"), save("#010203"))
	shows(t, address, "#010203")
	write(t, w.path("beside"), save("#040506"))
	if err := os.Rename(w.path("beside"), w.path("lanterns.quilt")); err != nil {
		t.Fatal(err)
	}
	shows(t, address, "#040506")
}

// shows waits until the preview's picture has a color.
func shows(t *testing.T, address, color string) {
	t.Helper()
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(50 * time.Millisecond) {
		answer, err := http.Get(address + "picture.svg")
		if err != nil {
			continue
		}
		picture, _ := io.ReadAll(answer.Body) // a picture that is cut off lacks the color
		answer.Body.Close()
		if bytes.Contains(picture, []byte(color)) {
			return
		}
	}
	t.Errorf("a save with %s is not shown", color)
}

// forwarding is a library for Windows with one function, which is another library's (Microsoft's PE Format: the export directory
// table and forwarder RVAs).
func forwarding(library, function, to string) []byte {
	const base, header = 0x1000, 0x200
	var names []byte
	at := func(text string) uint32 {
		defer func() { names = append(append(names, text...), 0) }()
		return base + 50 + uint32(len(names))
	}
	own, name, target := at(library), at(function), at(to)
	var data, file bytes.Buffer
	put := func(b *bytes.Buffer, v ...any) {
		for _, one := range v {
			_ = binary.Write(b, binary.LittleEndian, one) // a buffer takes everything
		}
	}
	put(&data, [3]uint32{}, own, [6]uint32{1, 1, 1, base + 40, base + 44, base + 48}, target, name, uint16(0), names)
	put(&file, []byte("MZ"), [58]byte{}, uint32(64))
	put(&file, []byte("PE\x00\x00"), [2]uint16{0x8664, 1}, [3]uint32{}, [2]uint16{240, 0x2022})
	put(&file, uint16(0x20b), uint16(0), [5]uint32{0, header, 0, 0, base}, uint64(0x180000000), [2]uint32{base, header})
	put(&file, [6]uint16{6, 0, 0, 0, 6, 0}, [4]uint32{0, 2 * base, header, 0}, [2]uint16{3, 0x100})
	put(&file, [4]uint64{1 << 20, 1 << 12, 1 << 20, 1 << 12}, [2]uint32{0, 16}, [2]uint32{base, uint32(data.Len())}, [15]uint64{})
	put(&file, []byte(".edata\x00\x00"), [4]uint32{uint32(data.Len()), base, header, header}, [3]uint32{}, uint32(0x40000040))
	whole := make([]byte, 2*header)
	copy(whole, file.Bytes())
	copy(whole[header:], data.Bytes())
	return whole
}

func created(t *testing.T, path string) *os.File {
	t.Helper()
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func read(t *testing.T, path string) []byte {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func write(t *testing.T, path string, content []byte) {
	t.Helper()
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
}
