package measure

import (
	"strconv"
	"strings"
)

// Quote shows a piece of what somebody wrote in a message about it: short,
// with nothing in it that a terminal would act on, and inch marks as they were
// written.
func Quote(text string) string {
	const room = 40
	if runes := []rune(text); len(runes) > room {
		text = string(runes[:room]) + "..."
	}
	if strings.Contains(text, `"`) && strconv.CanBackquote(text) {
		return "`" + text + "`"
	}
	return strconv.Quote(text)
}
