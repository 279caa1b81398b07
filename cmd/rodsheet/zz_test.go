package main
import ("testing";"os";"strings";"fmt";"rodsheet/templates/piece/design";"rodsheet/geometry/measure";"runtime/debug")
func BenchmarkZZ(b *testing.B){
	defer debug.SetGCPercent(debug.SetGCPercent(garbage))
	b.Chdir(b.TempDir())
	shield := strings.NewReplacer(`shape = "oval"`, `shape = "shield"`, "# back-width", "back-width", "# corner", "corner", "\napart = 200", "\napart = 160")
	for _,c:=range []string{"3","4","shield","ring"}{
		k,n:=design.SeatKind,4
		if c=="3"{n=3}
		if c=="ring"{k=design.RingKind}
		text,_:=design.Start(k,n,measure.Millimetre)
		if c=="shield"{text=[]byte(shield.Replace(string(text)))}
		os.WriteFile(c+".toml",text,0o600)
		b.Run(fmt.Sprint(c),func(b *testing.B){ b.ReportAllocs(); for b.Loop(){ lasted(b,[]string{"check",c+".toml"})}})
	}
}
