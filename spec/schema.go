package spec

import (
	"bytes"
	"encoding/json"
	"strconv"
	"strings"

	"stepoff/spec/lumber"
)

// Schema returns a JSON Schema (2020-12) of the job file, made from the table
// of keys. An editor that knows it completes keys and marks the coarse
// mistakes; what only reading the values shows is left to Load.
func Schema() []byte {
	root := object("")
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["title"] = "stepoff job"
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	_ = e.Encode(root) // maps, lists, strings and numbers always encode
	return out.Bytes()
}

type schema = map[string]any

// object is the mapping of the keys directly below a path.
func object(path string) schema {
	properties, required := schema{}, []string{}
	for _, name := range below(path) {
		k := table[join(path, name)]
		properties[name] = property(k)
		if k.required {
			required = append(required, name)
		}
	}
	s := schema{"type": "object", "additionalProperties": false, "properties": properties}
	if len(required) > 0 {
		s["required"] = required
	}
	return s
}

// property is one key: what its value is, and what it means.
func property(k Key) schema {
	s := value(k)
	if len(below(k.Path)) > 0 {
		s = either(s, object(k.Path))
	}
	switch k.many {
	case aList:
		s = listOf(s)
	case oneOrList:
		s = either(s, listOf(s))
	}
	s["description"] = k.Doc
	if k.LeftOut != "" {
		s["description"] = k.Doc + ". Left out: " + strings.ReplaceAll(k.LeftOut, "`", "")
	}
	if k.Default != "" {
		s["default"] = k.Default
	}
	return s
}

// written are words as YAML reads them: those of digits alone are numbers.
func written(words []string) []any {
	var all []any
	for _, w := range words {
		if n, err := strconv.Atoi(w); err == nil {
			all = append(all, n)
			continue
		}
		all = append(all, w)
	}
	return all
}

func listOf(item schema) schema {
	return schema{"type": "array", "minItems": 1, "items": item}
}

// either is one form or another; nil is no form.
func either(a, b schema) schema {
	if a == nil {
		return b
	}
	return schema{"anyOf": []schema{a, b}}
}

// value is a single value of a key; nil where there is none.
func value(k Key) schema {
	switch k.kind {
	case text:
		return schema{"type": []string{"string", "number"}, "maxLength": longestText}
	case word:
		return schema{"enum": written(k.words)}
	case nominalSize:
		return schema{"enum": lumber.Names()}
	case positive:
		return schema{"type": []string{"string", "number"}, "exclusiveMinimum": 0}
	case size:
		return schema{"type": []string{"string", "number"}, "minimum": 0}
	case level:
		return schema{"type": []string{"string", "number"}}
	case whole:
		number := schema{"type": "integer", "minimum": k.least, "maximum": k.most}
		if len(k.words) > 0 {
			return either(number, schema{"enum": k.words})
		}
		return number
	case angle:
		return schema{"type": "number", "minimum": k.least, "maximum": k.most}
	case scale:
		return schema{"type": "number", "minimum": leastScale, "maximum": mostScale}
	case ratio:
		slope := schema{"type": "string", "pattern": ratioForm.String()}
		if len(k.words) > 0 {
			return either(slope, schema{"enum": k.words})
		}
		return slope
	case truth:
		return schema{"type": "boolean"}
	case date:
		return schema{"type": "string", "format": "date"}
	case load:
		return schema{"type": "string", "pattern": "(psf|kPa)$"}
	case price:
		return schema{"type": "number", "exclusiveMinimum": 0, "maximum": mostPrice / 100}
	case sheet:
		return either(schema{"enum": k.words}, schema{"type": "string", "pattern": "^roll |x"})
	case boards:
		return schema{"type": "string", "pattern": boardsForm.String()}
	case stress:
		return schema{"type": "string", "pattern": "(psi|ksi|MPa|GPa|N/mm2)$"}
	case elementList:
		item := object("stairway[]")
		item["minProperties"] = 1
		return item
	}
	return nil
}
