package measure_test

import (
	"testing"

	"stepoff/spec/measure"
)

// Loads and stresses in both systems of units. By hand: 40 psf x 47.88 Pa, 900
// psi x 6894.76 Pa, 508 lb x 4.448 N; 93.75 lb/ft is 1.368 kN/m, 363 lb ft 0.492
// kNm.
func TestLoadsPrinted(t *testing.T) {
	imperial, metric := measure.Style{}, measure.Style{Units: measure.Metric}
	perFoot := measure.PoundForce / measure.Foot.MM()
	for got, want := range map[string]string{
		imperial.Pressure(40 * measure.PSF):               "40 psf",
		metric.Pressure(40 * measure.PSF):                 "1.92 kPa",
		imperial.Stress(900 * measure.PSI):                "900 psi",
		metric.Stress(900 * measure.PSI):                  "6.21 MPa",
		imperial.Stress(1.6e6 * measure.PSI):              "1.6 million psi",
		metric.Stress(1.6e6 * measure.PSI):                "11 GPa",
		imperial.Force(508 * measure.PoundForce):          "508 lb",
		metric.Force(508 * measure.PoundForce):            "2.26 kN",
		imperial.LineLoad(93.5 * perFoot):                 "93.5 lb per foot",
		metric.LineLoad(93.75 * perFoot):                  "1.37 kN/m",
		imperial.Moment(363 * measure.PoundForce * 304.8): "363 lb ft",
		metric.Moment(363 * measure.PoundForce * 304.8):   "0.492 kNm",
	} {
		if got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}
