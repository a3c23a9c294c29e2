package check_test
import ("testing";"pegwright/geom/finding";"fmt";"time";"strings")
func TestZBig(t *testing.T){
 for _,n:=range []int{5,20,60} {
 src:=fmt.Sprintf("frame: Big\nunits: in\nbuilding: {span: 14', bays: [%s], eave: 9', roof: {shape: gable, pitch: 9 in 12}, sills: yes, girts: {height: [30]}, braces: {legs: 24 x 24}}\n", strings.TrimSuffix(strings.Repeat("10', ",n),", "))
 t0:=time.Now(); f:=solved(t,"b",src); t1:=time.Now(); l:=proofs(f); t.Log(n,len(f.Timbers),t1.Sub(t0),time.Since(t1),stops(l), texts(l)) }
}
func TestZRand(t *testing.T){
 seen:=map[string]int{}; start:=time.Now(); n:=0
 r:=jitter(4242)
 for time.Since(start)<70*time.Second { src:=randomBuilding(r); n++
  f:=solved(t,"r",src)
  for _,x:=range proofs(f) { if x.Severity!=finding.Note { k:=x.Severity.String()+" "+x.Rule+": "+pattern(x.Text); if seen[k]==0 { t.Logf("EX %s %s\n%s",k,x.Text,src)}; seen[k]++ } } }
 for k,v:=range seen { t.Log("CNT",v,k) }
 t.Log("frames",n)
}
