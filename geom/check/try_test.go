package check_test
import ("testing";"pegwright/geom")
func TestTry(t *testing.T){ eachSample(t, func(t *testing.T, f *geom.Frame){
 for _,x:=range proofs(f){ t.Log(x.Severity,x.Rule,x.Text)}
 for _,tm:=range f.Timbers{ t.Log(tm.ID,tm.Role,tm.Length/25.4,tm.Section,tm.FaceNames,len(tm.Cuts),len(tm.Bores))}
 for _,j:=range f.Joints{ t.Log(j.ID,j.Kind); for _,p:=range j.Pegs{t.Log("  ",p.Length/25.4,p.Bore/25.4,p.A/25.4,p.P/25.4,p.Offset/25.4,p.Window.Grade,p.Why)}}
})}
