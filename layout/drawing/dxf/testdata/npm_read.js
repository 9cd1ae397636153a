// Reads a DXF file with one of the npm packages dxf-parser and dxf, and prints
// what it found, as JSON: node npm_read.js PACKAGE FILE
const fs = require('fs')

const [, , name, file] = process.argv
const text = fs.readFileSync(file, 'utf8')
const out = { mistakes: [], entities: [] }
const degrees = (a) => (a * 180) / Math.PI

if (name === 'dxf-parser') {
  const Parser = require('dxf-parser')
  const doc = new (Parser.default || Parser)().parseSync(text)
  out.release = doc.header.$ACADVER
  out.units = doc.header.$INSUNITS
  out.layers = Object.keys(doc.tables.layer.layers)
  for (const e of doc.entities) {
    const found = { kind: e.type, layer: e.layer }
    if (e.vertices) found.vertices = e.vertices.map((v) => [v.x, v.y, v.bulge || 0])
    if (e.type === 'POLYLINE') found.closed = !!e.shape
    if (e.center) {
      found.centre = [e.center.x, e.center.y]
      found.radius = e.radius
    }
    if (e.type === 'ARC') {
      found.from = degrees(e.startAngle)
      found.to = degrees(e.endAngle)
    }
    if (e.type === 'TEXT') {
      found.text = e.text
      found.height = e.textHeight
    }
    out.entities.push(found)
  }
} else {
  const { Helper } = require('dxf')
  const doc = new Helper(text).parsed
  out.units = doc.header.insUnits
  out.layers = Object.keys(doc.tables.layers)
  for (const e of doc.entities) {
    const found = { kind: e.type, layer: e.layer }
    if (e.type === 'LINE') {
      found.vertices = [[e.start.x, e.start.y, 0], [e.end.x, e.end.y, 0]]
    } else if (e.vertices) {
      found.vertices = e.vertices.map((v) => [v.x, v.y, v.bulge || 0])
    }
    if (e.type === 'POLYLINE') found.closed = !!e.closed
    if (e.type === 'ARC' || e.type === 'CIRCLE') {
      found.centre = [e.x, e.y]
      found.radius = e.r
    }
    if (e.type === 'ARC') {
      found.from = degrees(e.startAngle)
      found.to = degrees(e.endAngle)
    }
    if (e.type === 'TEXT') {
      found.text = e.string
      found.height = e.textHeight
    }
    out.entities.push(found)
  }
}
console.log(JSON.stringify(out))
