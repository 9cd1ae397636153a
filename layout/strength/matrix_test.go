package strength_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"stepoff/layout/strength"
)

// agree is how near the package and the matrix model must come, of the greatest
// figure of each kind.
const agree = 1e-6

// stiff is how many times stiffer along than across the model's members are, by
// EA L2 / EI of one of them: they shorten by little more than a hundredth of
// agree would show, and the equations still keep enough digits.
const stiff = 1e7

// model is a plane frame of straight members in one sloping line, three degrees
// of freedom a node: level, plumb, turn. Every support holds a node up; the first
// holds it level too.
type model struct {
	x        []float64 // level places of the nodes
	slope    float64
	ei, load float64
	held     map[int]bool // nodes that are supports
}

// results are the model's answers by node.
type results struct {
	sag, moment []float64
	shear       []float64 // square to the member, the greatest either side of the node
	reaction    []float64
}

func (m model) solve(t *testing.T) results {
	n := len(m.x)
	k := mat.NewDense(3*n, 3*n, nil)
	f := mat.NewVecDense(3*n, nil)
	for e := range n - 1 {
		global, fixed := m.member(e)
		for i := range 6 {
			f.SetVec(3*e+i, f.AtVec(3*e+i)-fixed[i])
			for j := range 6 {
				k.Set(3*e+i, 3*e+j, k.At(3*e+i, 3*e+j)+global.At(i, j))
			}
		}
	}
	// Rows of what cannot move are struck out.
	free := []int{}
	for i := range 3 * n {
		node, dof := i/3, i%3
		if dof == 1 && m.held[node] || i == 0 {
			continue
		}
		free = append(free, i)
	}
	kk, ff := mat.NewDense(len(free), len(free), nil), mat.NewVecDense(len(free), nil)
	for a, i := range free {
		ff.SetVec(a, f.AtVec(i))
		for b, j := range free {
			kk.Set(a, b, k.At(i, j))
		}
	}
	var moved mat.VecDense
	if err := moved.SolveVec(kk, ff); err != nil {
		if _, bad := err.(mat.Condition); !bad { // stiff along: ill conditioned, and near enough
			t.Fatal(err)
		}
	}
	u := mat.NewVecDense(3*n, nil)
	for a, i := range free {
		u.SetVec(i, moved.AtVec(a))
	}
	r := results{make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)}
	for node := range n {
		r.sag[node] = -u.AtVec(3*node + 1)
	}
	sin, cos := math.Sincos(m.slope)
	for e := range n - 1 {
		global, fixed := m.member(e)
		var end mat.VecDense
		end.MulVec(global, u.SliceVec(3*e, 3*e+6))
		for i := range 6 {
			end.SetVec(i, end.AtVec(i)+fixed[i])
		}
		for i := range 2 {
			h, v, turn := end.AtVec(3*i), end.AtVec(3*i+1), end.AtVec(3*i+2)
			node := e + i
			r.reaction[node] += v
			r.shear[node] = math.Max(r.shear[node], math.Abs(v*cos-h*sin))
			if i == 0 {
				r.moment[node] = -turn // sagging positive
			} else if node == n-1 {
				r.moment[node] = turn
			}
		}
	}
	return r
}

// member is one member's stiffness and the forces that hold its ends still under
// the load, in the model's directions.
func (m model) member(e int) (*mat.Dense, []float64) {
	sin, cos := math.Sincos(m.slope)
	level := m.x[e+1] - m.x[e]
	l := level / cos
	ei := m.ei
	ea := stiff * ei / (l * l)
	k := mat.NewDense(6, 6, []float64{
		ea / l, 0, 0, -ea / l, 0, 0,
		0, 12 * ei / (l * l * l), 6 * ei / (l * l), 0, -12 * ei / (l * l * l), 6 * ei / (l * l),
		0, 6 * ei / (l * l), 4 * ei / l, 0, -6 * ei / (l * l), 2 * ei / l,
		-ea / l, 0, 0, ea / l, 0, 0,
		0, -12 * ei / (l * l * l), -6 * ei / (l * l), 0, 12 * ei / (l * l * l), -6 * ei / (l * l),
		0, 6 * ei / (l * l), 2 * ei / l, 0, -6 * ei / (l * l), 4 * ei / l,
	})
	turn := mat.NewDense(6, 6, nil)
	for i := 0; i < 6; i += 3 {
		turn.Set(i, i, cos)
		turn.Set(i, i+1, sin)
		turn.Set(i+1, i, -sin)
		turn.Set(i+1, i+1, cos)
		turn.Set(i+2, i+2, 1)
	}
	var left, global mat.Dense
	left.Mul(turn.T(), k)
	global.Mul(&left, turn)
	w := m.load * level // plumb, the whole of it
	square := w * cos   // square to the member
	return &global, []float64{0, w / 2, square * l / 12, 0, w / 2, -square * l / 12}
}

// Moments, shear, reactions and deflection of sloping beams over two to five
// supports against a matrix stiffness model of them. 100 random cases.
func TestBeamAgainstTheStiffnessMatrix(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 1998))
	for range 100 {
		const each = 8 // members a span
		slope := random.Float64() * 0.9
		ei := 1e9 + random.Float64()*1e11
		load := 0.1 + random.Float64()*3
		at := []float64{0}
		for range 1 + random.IntN(4) {
			at = append(at, at[len(at)-1]+600+random.Float64()*3000)
		}
		m := model{slope: slope, ei: ei, load: load, held: map[int]bool{0: true}, x: []float64{0}}
		for i := range len(at) - 1 {
			for k := 1; k <= each; k++ {
				m.x = append(m.x, at[i]+(at[i+1]-at[i])*float64(k)/each)
			}
			m.held[len(m.x)-1] = true
		}
		want := m.solve(t)
		got := strength.Beam{At: at, Slope: slope}.Through(load)

		sags, moments := greatest(want.sag), greatest(want.moment)
		for i, x := range m.x {
			near(t, "sag", got.SagAt(x)/ei, want.sag[i], agree*sags)
			near(t, "moment", got.MomentAt(x), want.moment[i], agree*moments)
		}
		for i := range at {
			near(t, "reaction", got.Reactions[i], want.reaction[i*each], agree*greatest(want.reaction))
		}
		near(t, "shear", got.Shear, greatest(want.shear), agree*greatest(want.shear))

		// The greatest moment and sag lie between nodes: no place has more, and a
		// fine search comes as near.
		most, worst := 0.0, 0.0
		for i := range len(at) - 1 {
			l := at[i+1] - at[i]
			for k := range 4000 {
				x := at[i] + l*float64(k)/4000
				most = math.Max(most, math.Abs(got.MomentAt(x)))
				worst = math.Max(worst, math.Abs(got.SagAt(x))/l)
			}
		}
		near(t, "greatest moment", got.Moment, most, agree*most)
		near(t, "greatest sag of its span", got.Sag/got.SagSpan, worst, agree*worst)
		if t.Failed() {
			t.Fatalf("supports %v, slope %g", at, slope)
		}
	}
}

func greatest(all []float64) float64 {
	most := 0.0
	for _, v := range all {
		most = math.Max(most, math.Abs(v))
	}
	return most
}
