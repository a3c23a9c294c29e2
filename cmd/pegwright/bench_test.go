//go:build unix

package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"syscall"
	"testing"
	"time"

	"pegwright/cmd/pegwright/disk"
	"pegwright/draw/packet"
	"pegwright/draw/sheet"
	"pegwright/draw/svg"
	"pegwright/geom"
	"pegwright/geom/assembly"
	"pegwright/geom/check"
	"pegwright/geom/finding"
	"pegwright/geom/solve"
	"pegwright/geom/spec"
	"pegwright/samples/row"
	"pegwright/templates"
)

// clock measures steps in processor time, which leaves out what else the
// machine does.
type clock struct {
	b *testing.B
}

func processorTime(b *testing.B) time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// lap runs a step and adds its milliseconds to the sum.
func (c *clock) lap(sum *float64, step func()) {
	c.b.Helper()
	before := processorTime(c.b)
	step()
	*sum += float64(processorTime(c.b)-before) / 1e6
}

// bytesUsed returns how much memory has been allocated so far.
func bytesUsed() uint64 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.TotalAlloc
}

// steps are the names of what is measured, in order; order is a part of solve,
// compose and render are parts of the whole.
var steps = []string{"read", "solve", "order", "prove", "compose", "render", "write", "whole"}

// walk takes a description through every step, and then through all of them at
// a stretch, and returns the milliseconds that each took, how many sheets there
// are and how many bytes their files have.
func walk(b *testing.B, src []byte) (ms [8]float64, sheets, size int) {
	c := &clock{b: b}
	var d *spec.Description
	var f *geom.Frame
	var faults finding.Faults
	c.lap(&ms[0], func() { d, faults = spec.Read("row.yaml", src, nil) })
	if len(faults) > 0 {
		b.Fatal(faults)
	}
	c.lap(&ms[1], func() { f, faults = solve.Solve(d) })
	if len(faults) > 0 {
		b.Fatal(faults)
	}
	c.lap(&ms[2], func() { assembly.Plan(f) })
	var finds []finding.Finding
	c.lap(&ms[3], func() { finds = check.Check(f) })
	finding.Sort(finds)
	c.lap(&ms[4], func() {
		list := append(sheet.All(f, finds), templates.Sheets(f, finds)...)
		c.lap(&ms[5], func() {
			for _, s := range list {
				if _, err := svg.Render(s, svg.Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	})
	ms[4] -= ms[5]
	c.lap(&ms[7], func() {
		p, err := packet.Build(packet.Input{Frame: f, Findings: finds, Source: src, Name: "row"})
		if err != nil {
			b.Fatal(err)
		}
		sheets = p.Sheets + p.FullSize
		for _, f := range p.Files {
			if ext := filepath.Ext(f.Path); ext == ".svg" || ext == ".pdf" {
				size += len(f.Data)
			}
		}
		c.lap(&ms[6], func() {
			if err := disk.Write(context.Background(), filepath.Join(b.TempDir(), "row-packet"), p.Files); err != nil {
				b.Fatal(err)
			}
		})
	})
	ms[7] += ms[0] + ms[1] + ms[3]
	return ms, sheets, size
}

// BenchmarkSteps takes frames of about 10, 100 and 1,000 timbers through every
// step and tells the processor time of each and how much longer each takes than
// with a tenth of the timbers: time in proportion would be 10. The marks are
// 20 s for the whole of 1,000 timbers, and growth of 15 for solve and prove,
// which geom/check holds.
func BenchmarkSteps(b *testing.B) {
	var before [8]float64
	for _, bents := range []int{2, 15, 143} {
		b.Run(fmt.Sprintf("%d-timbers", row.Timbers(bents)), func(b *testing.B) {
			var ms [8]float64
			sheets, used := 0, bytesUsed()
			for b.Loop() {
				ms, sheets, _ = walk(b, row.Source(bents))
			}
			for i, name := range steps {
				b.ReportMetric(ms[i], "ms-"+name)
				if before[i] > 1 {
					b.ReportMetric(ms[i]/before[i], "growth-"+name)
				}
			}
			b.ReportMetric(float64(sheets), "sheets")
			b.ReportMetric(float64(bytesUsed()-used)/1e6/float64(b.N), "MB-allocated")
			before = ms
		})
	}
}

// BenchmarkFurtherSheet takes two rows of 15 bents through every step, one of
// bents all alike and one of bents all unlike, which has as many timbers but
// some 700 sheets more. The marks are 5 ms and 60 kB for each of these.
func BenchmarkFurtherSheet(b *testing.B) {
	for b.Loop() {
		like, fewer, small := walk(b, row.Unlike(15, 1))
		unlike, more, large := walk(b, row.Unlike(15, 15))
		further := float64(more - fewer)
		b.ReportMetric(further, "sheets")
		b.ReportMetric((unlike[7]-like[7])/further, "ms-further-sheet")
		b.ReportMetric(float64(large-small)/1e3/further, "kB-further-sheet")
	}
}

// BenchmarkPacket draws the packets of the default sample, of about 40 timbers,
// and of a row of 999, as the command does, each in a process of its own. The
// marks are 1 s of processor time and 150 MB, and 20 s and 500 MB.
func BenchmarkPacket(b *testing.B) {
	long := filepath.Join(b.TempDir(), "row.yaml")
	must(b, os.WriteFile(long, row.Source(143), 0o644))
	for _, c := range []struct {
		name   string
		frame  []string
		ms, mb float64
	}{{"sample", nil, 1000, 150}, {"999-timbers", []string{long}, 20000, 500}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				cmd := process(b, append([]string{"draw", "--out", filepath.Join(b.TempDir(), "packet")}, c.frame...)...)
				if text, err := cmd.CombinedOutput(); err != nil {
					b.Fatalf("%v: %s", err, text)
				}
				b.ReportMetric(float64(cmd.ProcessState.UserTime()+cmd.ProcessState.SystemTime())/1e6, "ms-processor")
				b.ReportMetric(memoryOf(cmd)/1e6, "MB-most")
			}
			b.ReportMetric(c.ms, "mark-ms")
			b.ReportMetric(c.mb, "mark-MB")
		})
	}
}

// memoryOf returns the most bytes that an ended process had in memory.
func memoryOf(cmd *exec.Cmd) float64 {
	most := float64(cmd.ProcessState.SysUsage().(*syscall.Rusage).Maxrss)
	if runtime.GOOS == "darwin" { // counts bytes, others kibibytes
		return most
	}
	return most * 1024
}
