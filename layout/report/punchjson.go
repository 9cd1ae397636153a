package report

import (
	"encoding/json"
	"io"

	"stepoff/layout/asbuilt"
	"stepoff/layout/check"
)

// The shapes of `punch --json`.
type (
	punchJSON struct {
		Format     string          `json:"format"`
		Job        jobJSON         `json:"job"`
		Code       string          `json:"code"`
		TotalRise  mm              `json:"total_rise_mm"`
		MeanRise   mm              `json:"mean_rise_mm"`
		Risers     []punchRiser    `json:"risers"`
		Treads     []punchTread    `json:"treads"`
		Spread     punchSpreads    `json:"spread"`
		Neighbours punchNeighbours `json:"worst_neighbours"`
		Throat     *punchThroat    `json:"throat,omitempty"`
		Verdict    string          `json:"verdict"`
		Pads       []punchPad      `json:"pads"`
		Padded     *punchPadded    `json:"padded,omitempty"`
		Why        []string        `json:"why"`
		Also       []string        `json:"also"`
		Findings   []check.Finding `json:"findings"`
	}
	punchRiser struct {
		Riser  int          `json:"riser"`
		Rise   mm           `json:"rise_mm"`
		Off    mm           `json:"off_mean_mm"`
		Faults []punchFault `json:"faults"`
	}
	punchTread struct {
		Tread  int          `json:"tread"`
		Run    mm           `json:"run_mm"`
		Nosing *mm          `json:"nosing_mm,omitempty"`
		Faults []punchFault `json:"faults"`
	}
	punchFault struct {
		Rule string `json:"rule"`
		Text string `json:"text"`
	}
	punchSpreads struct {
		Risers  mm  `json:"risers_mm"`
		Treads  *mm `json:"treads_mm,omitempty"`
		Nosings *mm `json:"nosings_mm,omitempty"`
	}
	punchNeighbours struct {
		Risers  *punchPair `json:"risers,omitempty"`
		Treads  *punchPair `json:"treads,omitempty"`
		Nosings *punchPair `json:"nosings,omitempty"`
	}
	punchPair struct {
		Lower int `json:"lower"`
		Upper int `json:"upper"`
		Apart mm  `json:"apart_mm"`
	}
	punchThroat struct {
		Left       mm   `json:"left_mm"`
		Measured   bool `json:"measured"`
		NotchDepth *mm  `json:"notch_depth_mm,omitempty"`
		Riser      *mm  `json:"overcut_riser_takes_mm,omitempty"`
		Tread      *mm  `json:"overcut_tread_takes_mm,omitempty"`
	}
	punchPad struct {
		Tread     int `json:"tread"`
		Thickness mm  `json:"thickness_mm"`
	}
	punchPadded struct {
		Step       mm         `json:"step_mm"`
		Total      mm         `json:"total_mm"`
		Risers     []mm       `json:"risers_mm"`
		Spread     mm         `json:"spread_mm"`
		Neighbours *punchPair `json:"worst_neighbours,omitempty"`
	}
)

// PunchJSON writes an inspection as stepoff-punch/1.
func PunchJSON(w io.Writer, in *asbuilt.Inspection) error {
	a, r := in.Stair, in.Remedy
	out := punchJSON{
		Format: "stepoff-punch/1", Job: jobJSON{a.Name, a.Number, a.Date}, Code: a.Code.Name,
		TotalRise: mm(in.TotalRise.MM()), MeanRise: mm(in.MeanRise),
		Risers: []punchRiser{}, Treads: []punchTread{},
		Spread:     punchSpreads{Risers: mm(in.Risers.Apart.MM()), Treads: apart(in.Treads), Nosings: apart(in.Nosings)},
		Neighbours: punchNeighbours{pairOf(&in.Risers), pairOf(in.Treads), pairOf(in.Nosings)},
		Verdict:    r.Verdict.String(), Pads: []punchPad{}, Why: texts(r.Why), Also: texts(r.Also), Findings: in.Findings,
	}
	if out.Findings == nil {
		out.Findings = []check.Finding{}
	}
	for _, s := range in.Steps {
		out.Risers = append(out.Risers, punchRiser{s.Number, mm(s.Riser.MM()), mm(s.Off), faultsOf(s, asbuilt.Riser)})
		if s.Tread != nil {
			tread := punchTread{Tread: s.Number, Run: mm(s.Tread.MM()), Faults: faultsOf(s, asbuilt.Tread, asbuilt.Nosing)}
			if s.Nosing != nil {
				v := s.Nosing.MM()
				tread.Nosing = maybe(&v)
			}
			out.Treads = append(out.Treads, tread)
		}
		if s.Pad > 0 {
			out.Pads = append(out.Pads, punchPad{s.Number, mm(s.Pad.MM())})
		}
	}
	if t := in.Throat; t != nil {
		out.Throat = &punchThroat{Left: mm(t.Left), Measured: t.Measured}
		if !t.Measured {
			out.Throat.NotchDepth = maybe(&t.NotchDepth)
		}
		if t.Searched {
			out.Throat.Riser, out.Throat.Tread = maybe(&t.Riser), maybe(&t.Tread)
		}
	}
	if r.Verdict == asbuilt.Pad {
		out.Padded = &punchPadded{Step: mm(r.Step.MM()), Total: mm(r.Total().MM()), Spread: mm(r.Spread.Apart.MM()), Neighbours: pairOf(&r.Spread)}
		for _, riser := range r.Padded {
			out.Padded.Risers = append(out.Padded.Risers, mm(riser.MM()))
		}
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

func texts(all []string) []string { return append([]string{}, all...) }

func apart(s *asbuilt.Spread) *mm {
	if s == nil {
		return nil
	}
	v := mm(s.Apart.MM())
	return &v
}

func pairOf(s *asbuilt.Spread) *punchPair {
	if s == nil || s.Neighbours == nil {
		return nil
	}
	n := s.Neighbours
	return &punchPair{n.Lower, n.Lower + 1, mm(n.Apart.MM())}
}

// faultsOf are a step's faults on some of its parts.
func faultsOf(s asbuilt.Step, parts ...asbuilt.Part) []punchFault {
	some := []punchFault{}
	for _, f := range s.Faults {
		for _, p := range parts {
			if f.On == p {
				some = append(some, punchFault{f.Rule, f.Text})
			}
		}
	}
	return some
}
