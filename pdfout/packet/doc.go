// Package packet decides which drawings a set of sheets holds, in what order,
// and what its cover says.
package packet
