package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"os"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"pegwright/cmd/pegwright/disk/disktest"
	"pegwright/geom/finding"
	"pegwright/samples"
)

// asCommand makes the test binary behave as the command, so that tests can run
// it as a process of its own, kill it and give it another environment.
const asCommand = "PEGWRIGHT_TEST_AS_COMMAND"

func TestMain(m *testing.M) {
	switch os.Getenv(asCommand) {
	case "":
		os.Exit(m.Run())
	case "run":
		main()
	}
}

// outcome is what one command line did.
type outcome struct {
	code     int
	out, err string
}

func try(stdin string, args ...string) outcome {
	var out, errs bytes.Buffer
	code := run(args, strings.NewReader(stdin), &out, &errs)
	return outcome{code, out.String(), errs.String()}
}

// within runs the test in an empty folder.
func within(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	t.Chdir(dir)
	return dir
}

func put(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

// rail is the smallest sample, two timbers and a joint.
func rail(t *testing.T) string {
	t.Helper()
	src, ok := samples.Source("rail-and-post")
	if !ok {
		t.Fatal("there is no sample rail-and-post")
	}
	return string(src)
}

// drawn is the smallest sample with its offset as a parameter.
func drawn(t *testing.T) string {
	t.Helper()
	src := strings.Replace(rail(t), "bore: 1\"}", "bore: 1\", drawbore: draw}", 1)
	src = strings.Replace(src, "units: in\n", "units: in\nparameters: {draw: 1/8}\n", 1)
	if strings.Count(src, "draw") < 3 {
		t.Fatal("the sample has no such joint any more")
	}
	return src
}

// exitCase is a command line, what it reads, and what must come of it.
type exitCase struct {
	line, stdin string
	code        int
	out, err    string // parts that must stand there; "" for an empty stream, "*" for anything
}

// exitCases are run one after the other in one folder. rail is a description;
// stopping sets a parameter, and names the file, so that a finding says stop.
func exitCases(rail, stopping string) []exitCase {
	return []exitCase{
		{"", "", 2, "", "pegwright COMMAND"},
		{"help", "", 0, "pegwright COMMAND", ""},
		{"--help", "", 0, "pegwright COMMAND", ""},
		{"-h", "", 0, "pegwright COMMAND", ""},
		{"help draw", "", 0, "pegwright draw", ""},
		{"draw --help", "", 0, "pegwright draw", ""},
		{"draw -h", "", 0, "pegwright draw", ""},
		{"help nothing", "", 2, "", "no command"},
		{"help draw check", "", 2, "", "one command"},
		{"version", "", 0, "pegwright ", ""},
		{"view -", "", 2, "", "standard input"},
		{"view a b", "", 2, "", "one frame at a time"},
		{"view missing.yaml", "", 3, "", "no such file"},
		{"view --port x", "", 2, "", "--port"},
		{"view --port 99999", "", 2, "", "--port"},
		{"schema", "", 0, "json-schema.org/draft/2020-12", ""},
		{"schema x", "", 2, "", "no arguments"},
		{"manual", "", 0, ".TH PEGWRIGHT", ""},
		{"complete", "", 2, "", "bash, zsh or fish"},
		{"--version", "", 0, "pegwright ", ""},
		{"-v", "", 0, "pegwright ", ""},
		{"draw -o x", "", 2, "", "draw has no flag “-o” (did you mean --out?)"},
		{"draw --colour red", "", 2, "", "draw has no flag “--colour”"},
		{"draw --out", "", 2, "", "--out wants a value"},
		{"lists rail.yaml pegs", "", 2, "", "pegwright lists pegs rail.yaml"},
		{"start no/where.yaml", "", 3, "", "the folder “no” does not exist"},
		{"version 2", "", 2, "", "no arguments"},
		{"drow", "", 2, "", "did you mean draw?"},
		{"--out x draw", "", 2, "", "after the command"},
		{"check", "", 0, "note", ""},
		{"check rail.yaml", "", 0, "next: pegwright view rail.yaml", ""},
		{"check -", rail, 0, "*", ""},
		{"check - ", "", 2, "", "standard input"},
		{"check --as json", "", 0, `"pegwright-findings/1"`, ""},
		{"check --as xml", "", 2, "", "text or json"},
		{"check --as=json --set " + stopping, "", 1, `"severity":"stop"`, ""},
		{"check --set " + stopping, "", 1, "stop", ""},
		{"check --set width", "", 2, "", "name=value"},
		{"check --set =4", "", 2, "", "name=value"},
		{"check --set width=", "", 2, "", "name=value"},
		{"check --set widht=8", "", 2, "", "width"},
		{"check --set width=banana", "", 2, "", "--set"},
		{"check --set", "", 2, "", "set"},
		{"check --nonsense", "", 2, "", "nonsense"},
		{"check rail.yaml rail.yaml", "", 2, "", "one frame at a time"},
		{"check bad.yaml", "", 2, "", "bad.yaml:2:1: "},
		{"check binary.yaml", "", 2, "", "binary.yaml"},
		{"check empty.yaml", "", 2, "", "empty.yaml"},
		{"check missing.yaml", "", 3, "", "no such file"},
		{"check folder.yaml", "", 3, "", "folder"},
		{"check rail.yaml/x", "", 3, "", "rail.yaml/x"},
		{"lists", "", 0, "Timbers", "note"},
		{"lists pegs rail.yaml", "", 0, "Pegs", "*"},
		{"lists rail.yaml", "", 0, "Bores", "*"},
		{"lists pegs -", rail, 0, "Pegs", "*"},
		{"lists bores --as csv", "", 0, "from start end (in)", "*"},
		{"lists --as csv", "", 2, "", "exactly one"},
		{"lists pegs bores --as csv", "", 2, "", "exactly one"},
		{"lists --as json", "", 0, `"pegwright-lists/1"`, "*"},
		{"lists peg", "", 2, "", "did you mean pegs?"},
		{"check rail-and-post", "", 3, "", "--from rail-and-post"},
		{"help start", "", 0, "rail-and-post", ""},
		{"lists peg rail.yaml", "", 2, "", "not a list"},
		{"lists --set " + stopping, "", 1, "Timbers", "stop"},
		{"lists bores --set " + stopping, "", 1, "DO NOT BORE – finding 1", "1. stop"},
		{"lists pegs --as csv --set " + stopping, "", 1, "DO NOT BORE – finding 1", "1. stop"},
		{"lists bad.yaml", "", 2, "", "bad.yaml:"},
		{"model", "", 0, `"pegwright-model/1"`, "note"},
		{"model --set " + stopping, "", 1, `"pegwright-model/1"`, "stop"},
		{"model bad.yaml", "", 2, "", "bad.yaml:"},
		{"draw bad.yaml", "", 2, "", "bad.yaml:"},
		{"draw missing.yaml", "", 3, "", "no such file"},
		{"draw --out -", "", 2, "", "--out"},
		{"draw rail.yaml --out no/where", "", 3, "", "does not exist"},
		{"draw rail.yaml --out there.yaml", "", 3, "", "not a folder"},
		{"draw rail.yaml --out folder.yaml", "", 3, "", "not a packet"},
		{"draw rail.yaml --out /", "", 3, "", "not a packet"},
		{"draw rail.yaml --out .", "", 3, "", "not a packet"},
		{"start", "", 2, "", "one new file"},
		{"start -", "", 2, "", "one new file"},
		{"start a b", "", 2, "", "one new file"},
		{"start there.yaml", "", 3, "", "exists"},
		{"start new.yaml --from nothing", "", 2, "", "no sample"},
		{"start new.yaml --from ../rail-and-post", "", 2, "", "no sample"},
		{"start new.yaml", "", 0, "", "new.yaml"},
		{"check new.yaml", "", 0, "*", ""},
	}
}

// Exit codes and streams after the contract: 0 done, 1 a stop, 2 unusable, with
// nothing on stdout, 3 cannot read or write.
func TestExitCodesAndStreams(t *testing.T) {
	within(t)
	put(t, "rail.yaml", rail(t))
	put(t, "bad.yaml", "frame: x\nunit: in\n")
	put(t, "binary.yaml", "\x00\x01\x02")
	put(t, "empty.yaml", "")
	put(t, "there.yaml", "keep me")
	if err := os.Mkdir("folder.yaml", 0o777); err != nil {
		t.Fatal(err)
	}
	put(t, "drawn.yaml", drawn(t))
	stopping := "draw=3/8 drawn.yaml" // more than a 1 in bore takes: a stop
	for _, c := range exitCases(rail(t), stopping) {
		got := try(c.stdin, strings.Fields(c.line)...)
		if got.code != c.code {
			t.Errorf("%q: exit code %d, want %d\n%s", c.line, got.code, c.code, got.err)
		}
		for name, s := range map[string][2]string{"stdout": {got.out, c.out}, "stderr": {got.err, c.err}} {
			if s[1] == "" && s[0] != "" || s[1] != "*" && !strings.Contains(s[0], s[1]) {
				t.Errorf("%q: %s is\n%s\nwant %q", c.line, name, s[0], s[1])
			}
		}
	}
	if text, _ := os.ReadFile("there.yaml"); string(text) != "keep me" {
		t.Error("a file was overwritten")
	}
	if left := disktest.Leftovers(t, "."); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	if _, err := os.Stat("rail-packet"); err == nil {
		t.Error("a command that failed wrote a packet")
	}
}

// A fault shows its place, what is wrong, the line itself with a mark under the
// very word, and how to mend it.
func TestFaultShowsItsLine(t *testing.T) {
	within(t)
	put(t, "f.yaml", "frame: x\nunits: in\ntimbers:\n  a: {role: post, section: 6 x banana}\n")
	got := try("", "check", "f.yaml")
	for _, want := range []string{
		"f.yaml:4:32: ", ": 6 x banana\n",
		"     4 |   a: {role: post, section: 6 x banana}\n" +
			"       |                                ^^^^^^\n   mend: ",
	} {
		if !strings.Contains(got.err, want) {
			t.Errorf("no %q in\n%s", want, got.err)
		}
	}
}

// Every fault of a file comes at once, also for machines, which read JSON on
// the error stream; the output stream stays empty.
func TestFaultsForMachines(t *testing.T) {
	src := "frame: x\nunits: in\nbuilding: {span: 8 furlongs, bays: [], eave: -1}\nsectoins: {post: 6 x 6}\n"
	got := try(src, "check", "-", "--as", "json")
	var list struct {
		Format string
		Faults []struct {
			Line, Column       int
			Source, Text, Mend string
		}
	}
	if err := json.Unmarshal([]byte(got.err), &list); err != nil {
		t.Fatalf("%v in %s", err, got.err)
	}
	if got.code != 2 || got.out != "" || list.Format != "pegwright-faults/1" || len(list.Faults) < 4 {
		t.Errorf("%+v", got)
	}
	for _, f := range list.Faults {
		if f.Line < 3 || f.Column < 1 || f.Text == "" || f.Mend == "" {
			t.Errorf("%+v", f)
		}
	}
}

// On a terminal text is broken between words and no line is wider than it.
func TestMessagesKeepToTheWidth(t *testing.T) {
	fr := &solved{source: []byte("frame: " + strings.Repeat("long ", 40)), finds: []finding.Finding{{
		Rule: "stick", At: finding.Pos{File: "f.yaml", Line: 1, Col: 120}, Text: strings.Repeat("wood ", 50), Mend: strings.Repeat("move it ", 30)}}}
	for _, line := range strings.Split(findingsText(&page{width: 60}, fr), "\n") {
		if len([]rune(line)) > 60 {
			t.Errorf("%q is wider than 60 columns", line)
		}
	}
	if text := findingsText(&page{}, fr); strings.Contains(text, "\x1b") || !strings.Contains(text, strings.Repeat("wood ", 49)) {
		t.Errorf("without a terminal text is plain and unbroken:\n%s", text)
	}
}

// A width that the environment gives holds where there is no terminal, too; of a
// line wider than that the part with the mistake is shown.
func TestMessagesKeepToColumns(t *testing.T) {
	t.Setenv("COLUMNS", "60")
	got := try("frame: F\nunits: in\nbuilding: {span: 12', bays: [10'], eave: 8', roof: {shape: gable, pitch: 9 in 12, ridge: beem}}\n", "check", "-")
	for _, l := range strings.Split(got.err, "\n") {
		if len([]rune(l)) > 60 {
			t.Errorf("%q is wider than 60 columns", l)
		}
	}
	if !strings.Contains(got.err, "| …") || !strings.Contains(got.err, "ridge: beem}}\n") || raw(got.err) {
		t.Errorf("the line is shown as\n%s", got.err)
	}
	t.Setenv("COLUMNS", "banana")
	if text := findingsText(pageFor(&bytes.Buffer{}), &solved{finds: []finding.Finding{{Text: strings.Repeat("wood ", 50)}}}); !strings.Contains(text, strings.Repeat("wood ", 49)) {
		t.Errorf("without a width text is unbroken:\n%s", text)
	}
}

// What is typed, completed and printed in the manual comes from one table, and
// none of it is forgotten.
func TestCompletionAndManualKnowEverything(t *testing.T) {
	manual := strings.ReplaceAll(try("", "manual").out, `\-`, "-")
	texts := map[string]string{"manual": manual}
	for _, shell := range []string{"bash", "zsh", "fish"} {
		got := try("", "complete", shell)
		if got.code != 0 || got.err != "" {
			t.Errorf("complete %s: %+v", shell, got)
		}
		texts[shell] = got.out
	}
	for where, text := range texts {
		for _, word := range []string{"draw", "check", "lists", "model", "start", "schema", "version", "help", "out", "set", "as", "from"} {
			if !strings.Contains(text, word) {
				t.Errorf("%s lacks %s", where, word)
			}
		}
	}
	if got := try("", "complete", "tcsh"); got.code != 2 || !strings.Contains(got.err, "bash, zsh or fish") {
		t.Errorf("%+v", got)
	}
	if !strings.Contains(try("", "draw", "--ot", "x").err, "did you mean --out?") {
		t.Error("a mistyped option gets no suggestion")
	}
}

// The default folder of a packet is named after the file, in the folder where
// the command runs.
func TestDrawNamesTheFolderAfterTheFile(t *testing.T) {
	within(t)
	if err := os.Mkdir("plans", 0o777); err != nil {
		t.Fatal(err)
	}
	put(t, "plans/rail.v2.yaml", rail(t))
	for line, folder := range map[string]string{
		"draw plans/rail.v2.yaml":               "rail.v2-packet",
		"draw -":                                "frame-packet",
		"draw":                                  samples.Default() + "-packet",
		"draw plans/rail.v2.yaml --out plans/x": "plans/x",
	} {
		got := try(rail(t), strings.Fields(line)...)
		if got.code != 0 || got.out != "" || !strings.Contains(got.err, folder) {
			t.Errorf("%q: %+v", line, got)
		}
		disktest.Whole(t, folder)
	}
}

// With a stop the packet is written all the same, and the exit code is 1.
func TestDrawWithAStop(t *testing.T) {
	within(t)
	got := try(drawn(t), "draw", "-", "--set", "draw=3/8", "--out", "p")
	if got.code != 1 || !strings.Contains(got.err, "stop") {
		t.Fatalf("%+v", got)
	}
	disktest.Whole(t, "p")
	page, err := os.ReadFile("p/index.html")
	if err != nil || !bytes.Contains(page, []byte("STOP")) {
		t.Error("the index page does not say STOP")
	}
}

// Names that are fit to move a terminal's cursor, or that look like flags, come
// out visibly or are refused.
func TestHostileNames(t *testing.T) {
	within(t)
	for _, name := range []string{"\x1b[2J.yaml", "a\nb.yaml", "\xff\xfe.yaml", "\u202ex.yaml", strings.Repeat("n", 300)} {
		got := try("", "check", name)
		if got.code != 3 || got.out != "" {
			t.Errorf("%q: %+v", name, got)
		}
		if raw(got.err) || strings.Count(got.err, "\n") != 1 {
			t.Errorf("%q comes out raw: %q", name, got.err)
		}
	}
	if got := try("", "check", "a\x00b"); got.code != 3 {
		t.Errorf("a name with a zero byte: %+v", got)
	}
	put(t, "-x.yaml", rail(t))
	if got := try("", "check", "--", "-x.yaml"); got.code != 0 {
		t.Errorf("a name after --: %+v", got)
	}
	for _, name := range []string{"a b'c\".yaml", "…é.yaml", "%s%d.yaml"} {
		put(t, name, rail(t))
		if got := try("", "draw", name); got.code != 0 || strings.Contains(got.err, "!") {
			t.Errorf("%q: %+v", name, got)
		}
		disktest.Whole(t, strings.TrimSuffix(name, ".yaml")+"-packet")
	}
}

// raw reports whether text holds something that a terminal would act on, or
// bytes that are not text.
func raw(text string) bool {
	return strings.ContainsAny(text, "\x1b\u202e") || !utf8.ValidString(text)
}

// A description with control characters in its text reaches no stream raw.
func TestHostileDescription(t *testing.T) {
	for _, src := range []string{"frame: \"\\e[2J\\u202e\"\nunits: in\n", "? [a, b]\n: c\n", strings.Repeat("[", 9000), "&a [*a]"} {
		got := try(src, "check", "-")
		if got.code != 2 || got.out != "" || raw(got.err) {
			t.Errorf("%.20q: %+v", src, got)
		}
	}
}

func TestHelpIsOneScreen(t *testing.T) {
	for _, c := range append(commandNames(), "") {
		got := try("", strings.Fields("help "+c)...)
		lines := strings.Split(got.out, "\n")
		if len(lines) > 24+1 { // a line end ends each
			t.Errorf("help %s has %d lines", c, len(lines)-1)
		}
		for _, l := range lines {
			if len([]rune(l)) > 80 {
				t.Errorf("help %s: %q is wider than 80 columns", c, l)
			}
		}
	}
}

// noPipe is an output that is closed, or full.
type noPipe struct{}

func (noPipe) Write([]byte) (int, error) { return 0, errors.New("closed") }

func TestOutputThatCannotBeWritten(t *testing.T) {
	var errs bytes.Buffer
	for _, line := range []string{"help", "lists", "model", "check"} {
		if code := run([]string{line}, strings.NewReader(""), noPipe{}, &errs); code != 3 {
			t.Errorf("%s: exit code %d, want 3", line, code)
		}
	}
}

func TestInputThatCannotBeRead(t *testing.T) {
	broken := io.MultiReader(strings.NewReader("frame: x"), errorReader{})
	var out, errs bytes.Buffer
	if code := run([]string{"check", "-"}, broken, &out, &errs); code != 3 || out.Len() > 0 {
		t.Errorf("exit code %d, want 3: %s", code, errs.String())
	}
}

type errorReader struct{}

func (errorReader) Read([]byte) (int, error) { return 0, errors.New("unplugged") }

// endless is an input that never ends.
type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '#'
	}
	return len(p), nil
}

func TestInputWithoutEnd(t *testing.T) {
	var out, errs bytes.Buffer
	if code := run([]string{"check", "-"}, endless{}, &out, &errs); code != 2 {
		t.Errorf("exit code %d, want 2: %s", code, errs.String())
	}
}

func TestInterruptedChangesNothing(t *testing.T) {
	within(t)
	put(t, "rail.yaml", rail(t))
	if got := try("", "draw", "rail.yaml"); got.code != 0 {
		t.Fatalf("%+v", got)
	}
	before := disktest.Tree(t, "rail-packet")
	for _, after := range []time.Duration{0, time.Millisecond, 20 * time.Millisecond} {
		ctx, cancel := context.WithCancel(context.Background())
		time.AfterFunc(after, cancel)
		if after == 0 {
			cancel()
		}
		var out, errs bytes.Buffer
		code := runContext(ctx, []string{"draw", "--out", "rail-packet"}, nil, &out, &errs)
		cancel()
		if code == 0 {
			continue // done before the interrupt came
		}
		if code != 3 || !strings.Contains(errs.String(), "interrupted") {
			t.Errorf("after %v: exit code %d: %s", after, code, errs.String())
		}
		disktest.Same(t, before, disktest.Tree(t, "rail-packet"))
	}
	if left := disktest.Leftovers(t, "."); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

func TestEveryListIsJSONAndCSV(t *testing.T) {
	for _, name := range []string{"timbers", "pegs", "bores"} {
		if got := try("", "lists", name, "--as", "json"); !json.Valid([]byte(got.out)) {
			t.Errorf("lists %s is not JSON", name)
		}
	}
}
