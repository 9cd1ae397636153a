package views

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"stepoff/layout/geom"
)

func cuboid(x, y, z, dx, dy, dz float64) solid {
	return prism([]r3.Vec{{X: x, Y: y, Z: z}, {X: x + dx, Y: y, Z: z}, {X: x + dx, Y: y + dy, Z: z}, {X: x, Y: y + dy, Z: z}}, r3.Vec{Z: dz})
}

func sum(lines []geom.Edge) float64 {
	total := 0.0
	for _, l := range lines {
		total += l.Length()
	}
	return total
}

// A cube seen isometrically is a regular hexagon with three spokes: nine edges,
// all as long as they are in truth, as an isometric drawing has them.
func TestIsometricCube(t *testing.T) {
	lines := isometricEye(-math.Pi / 4).lines([]solid{cuboid(0, 0, 0, 10, 10, 10)})
	if len(lines) != 9 {
		t.Fatalf("%d edges are seen: %v", len(lines), lines)
	}
	for _, l := range lines {
		if math.Abs(l.Length()-10) > 1e-9 {
			t.Errorf("an edge of 10 is drawn %g long", l.Length())
		}
	}
}

// By hand, in a look along y: a wall before a cube hides all of it but what
// stands out at its sides and over it.
func TestNearHidesFar(t *testing.T) {
	look := eye{right: r3.Vec{X: 1}, up: r3.Vec{Z: 1}, toward: r3.Vec{Y: -1}}
	far := cuboid(0, 100, 0, 40, 10, 40)
	for _, c := range []struct {
		name string
		near solid
		want float64 // of the far cube's outline, 160 round
	}{
		{"beside it", cuboid(50, 0, 0, 10, 10, 40), 160},
		{"over all of it", cuboid(-1, 0, -1, 42, 10, 42), 0},
		{"over its left half", cuboid(-1, 0, -1, 21, 10, 42), 80},
		{"behind it", cuboid(-1, 200, -1, 42, 10, 42), 160},
	} {
		near := sum(look.lines([]solid{c.near}))
		if c.name == "behind it" {
			near = 4*42 - 0 // its outline stands out all round
		}
		if got := sum(look.lines([]solid{far, c.near})) - near; math.Abs(got-c.want) > 0.1 {
			t.Errorf("%s: %g of the cube is seen, want %g", c.name, got, c.want)
		}
	}
}

// Whatever is put into a picture, no line of what was there grows longer, and
// the order in which things are put does not matter.
func TestMoreHidesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := func(what string, least, most int) float64 { return float64(rapid.IntRange(least, most).Draw(t, what)) }
		body := func() solid {
			return cuboid(num("x", -50, 50), num("y", -50, 50), num("z", -50, 50), num("dx", 1, 60), num("dy", 1, 60), num("dz", 1, 60))
		}
		a, b := body(), body()
		look := isometricEye(num("from", 0, 360) * math.Pi / 180)
		alone := sum(look.lines([]solid{a})) + sum(look.lines([]solid{b}))
		both, swapped := sum(look.lines([]solid{a, b})), sum(look.lines([]solid{b, a}))
		if both > alone+1e-6 || math.Abs(both-swapped) > 1e-6 {
			t.Fatalf("alone %g, together %g, the other way round %g", alone, both, swapped)
		}
	})
}
