package views_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"stepoff/layout/drawing"
	"stepoff/layout/drawing/dxf"
	"stepoff/layout/views"
	"stepoff/spec/measure"
)

// A router gets a string as one closed outline and one closed outline for every
// housing, on layers of their own, the half-round nosings as bulges of a half turn:
// tan(180/4 degrees) is 1, its sign the way round.
func TestStringsForARouter(t *testing.T) {
	s := example(t, "../../examples/parlour.yaml")
	f := s.Flights()[0]
	var signs []string
	for i := range f.Strings {
		c := &f.Strings[i]
		var b bytes.Buffer
		err := dxf.Write(&b, measure.Metric,
			dxf.Part{Drawing: views.StringOutline(c), Layers: dxf.Usual},
			dxf.Part{Drawing: views.StringHousings(c), Layers: dxf.Layers{drawing.Cut: dxf.Housing}})
		if err != nil {
			t.Fatal(err)
		}
		_, entities, _ := strings.Cut(strings.ReplaceAll(b.String(), "\r", ""), "ENTITIES\n")
		lines := strings.Split(entities, "\n") // a code and its value in turn
		count := map[string]int{}
		bulges := map[string]int{}
		for k := 0; k+1 < len(lines); k += 2 {
			switch code, value := strings.TrimSpace(lines[k]), strings.TrimSpace(lines[k+1]); {
			case code == "0" && value == "POLYLINE":
				for j := k; j < k+8; j += 2 {
					if strings.TrimSpace(lines[j]) == "8" {
						count[strings.TrimSpace(lines[j+1])]++
						break
					}
				}
			case code == "42":
				var v float64
				if _, err := fmt.Sscan(value, &v); err == nil && v != 0 {
					bulges[fmt.Sprintf("%.9f", v)]++
				}
			}
		}
		if count["OUTLINE"] != 1 || count["HOUSING"] != len(c.Housed.Housings) {
			t.Errorf("%s: %v outlines, want one and %d housings", c.Name, count, len(c.Housed.Housings))
		}
		for v, n := range bulges {
			if strings.TrimPrefix(v, "-") != "1.000000000" || n != len(c.Marks) {
				t.Errorf("%s: %d bulges of %s, want a half turn for each of %d treads", c.Name, n, v, len(c.Marks))
			}
			signs = append(signs, v)
		}
	}
	if len(signs) != 2 || signs[0] == signs[1] {
		t.Errorf("bulges %v: want the right string's turned over", signs)
	}
}
