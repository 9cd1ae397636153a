package measure

import "fmt"

// Pressure prints a load on an area given in pascals: 40 psf, 1.92 kPa.
func (s Style) Pressure(pascals float64) string {
	if s.Units == Metric {
		return fmt.Sprintf("%.3g kPa", pascals/1000)
	}
	return fmt.Sprintf("%.4g psf", pascals/PSF)
}

// Stress prints a stress given in pascals: 900 psi, 6.21 MPa; a modulus of
// elasticity in millions of psi or in GPa.
func (s Style) Stress(pascals float64) string {
	switch {
	case s.Units == Metric && pascals >= 1e9:
		return fmt.Sprintf("%.3g GPa", pascals/1e9)
	case s.Units == Metric:
		return fmt.Sprintf("%.3g MPa", pascals/1e6)
	case pascals >= 1e5*PSI:
		return fmt.Sprintf("%.3g million psi", pascals/PSI/1e6)
	}
	return fmt.Sprintf("%.0f psi", pascals/PSI)
}

// Force prints newtons: 508 lb, 2.26 kN.
func (s Style) Force(newtons float64) string {
	if s.Units == Metric {
		return fmt.Sprintf("%.3g kN", newtons/1000)
	}
	return fmt.Sprintf("%.0f lb", newtons/PoundForce)
}

// LineLoad prints a load along a line given in N/mm, which is kN/m: 93.7 lb per
// foot, 1.37 kN/m.
func (s Style) LineLoad(perMM float64) string {
	if s.Units == Metric {
		return fmt.Sprintf("%.3g kN/m", perMM)
	}
	return fmt.Sprintf("%.1f lb per foot", perMM*Foot.MM()/PoundForce)
}

// Moment prints a moment given in N mm: 363 lb ft, 0.492 kNm.
func (s Style) Moment(newtonMM float64) string {
	if s.Units == Metric {
		return fmt.Sprintf("%.3g kNm", newtonMM/1e6)
	}
	return fmt.Sprintf("%.0f lb ft", newtonMM/PoundForce/Foot.MM())
}
