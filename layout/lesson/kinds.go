package lesson

import (
	"fmt"
	"sync"

	"stepoff/layout"
	"stepoff/layout/choose"
	"stepoff/spec"
	"stepoff/spec/rules"
)

// Kind is a kind of stairway, with one laid out to be drawn.
type Kind struct {
	Name     string
	Text     string
	Stairway *layout.Stairway
}

// kindJobs are invented stairs that show the kinds.
var kindJobs = [...]struct{ name, text, members string }{
	{"Straight", "One flight.", `[flight: {risers: 14, run: 10"}]`},
	{"L", "Two flights square to each other, with a landing at the turn.",
		`[flight: {risers: 7, run: 10"}, landing: {turn: left}, flight: {risers: 7, run: 10"}]`},
	{"U", "Two flights that run back beside each other, with a landing for the half turn.",
		`[flight: {risers: 7, run: 10"}, landing: {turn: left, angle: 180, gap: 6"}, flight: {risers: 7, run: 10"}]`},
	{"Double L", "Two landings, each a quarter turn, with a short flight between.",
		`[flight: {risers: 5, run: 10"}, landing: {turn: left}, flight: {risers: 4, run: 10"}, landing: {turn: left}, flight: {risers: 5, run: 10"}]`},
	{"Winders", "The turn is climbed on tapered treads in place of a landing.",
		`[flight: {risers: 6, run: 10"}, winders: {turn: left, treads: 3}, flight: {risers: 6, run: 10"}]`},
	{"Curved", "Every tread is tapered, and the edges are arcs.",
		`[curve: {turn: left, risers: 14, inside_radius: 5', angle: 120}]`},
}

const kindJob = `
name: kinds of stairway
units: imperial
code: irc-2021
levels: {total_rise: 105", header_top: 3/4", header_depth: 12", floor_depth: 12"}
width: 36"
stairway: %s
tread: {thickness: 1", nosing: 1"}
riser: {thickness: 3/4"}
stringer: {stock: 2x12, kicker: 2x4, count: 3}
`

// Kinds are the kinds of stairway, laid out as any job is.
var Kinds = sync.OnceValues(func() ([]Kind, error) {
	var all []Kind
	for _, k := range kindJobs {
		s, err := sample(fmt.Sprintf(kindJob, k.members))
		if err != nil {
			return nil, fmt.Errorf("the sample stairway %s: %w", k.name, err)
		}
		all = append(all, Kind{k.name, k.text, s})
	}
	return all, nil
})

// sample lays out a job written in this package.
func sample(text string) (*layout.Stairway, error) {
	job, err := spec.Load("sample.yaml", []byte(text))
	if err != nil {
		return nil, err
	}
	code, _ := rules.Lookup(job.Code.Name)
	if job, err = choose.Fill(job, code); err != nil {
		return nil, err
	}
	return layout.Compute(job)
}
