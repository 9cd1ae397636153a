package main

import (
	"os"
	"strconv"
	"time"

	"stepoff/spec"
)

// lastSecond is the end of the year 9999, the last that a date has room for.
const lastSecond = 253402300799

// created is the date a file is given: SOURCE_DATE_EPOCH, seconds since 1970,
// where it is set, else the job's own, else none (the zero time). Never the
// clock's: the same job gives the same bytes.
func created(job *spec.Job) (time.Time, error) {
	if epoch := os.Getenv("SOURCE_DATE_EPOCH"); epoch != "" {
		seconds, err := strconv.ParseInt(epoch, 10, 64)
		if err != nil || seconds < 0 || seconds > lastSecond {
			return time.Time{}, mistake("SOURCE_DATE_EPOCH is not a number of seconds since 1970: "+strconv.Quote(epoch), "set it to one, or unset it")
		}
		return time.Unix(seconds, 0).UTC(), nil
	}
	date, err := time.Parse(time.DateOnly, job.Date)
	if err != nil {
		return time.Time{}, nil
	}
	return date, nil
}
