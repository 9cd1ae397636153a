package html

// style is the page's own: black on white, one column as wide as reads well, and
// every step kept together on paper.
const style = `html { -webkit-text-size-adjust: 100%; text-size-adjust: 100% }
body { margin: 0; color: #000; background: #fff; font: 1.05rem/1.5 "Helvetica", "Arial", sans-serif }
header { padding: .6rem 1rem; border-bottom: 1px solid #000; font-size: .85rem }
main { max-width: 44rem; margin: 0 auto; padding: 0 1rem 3rem; overflow-wrap: break-word }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 2rem 0 .8rem }
h2 { font-size: 1.25rem; line-height: 1.25; margin: 1.8rem 0 .6rem }
h3 { font-size: 1.05rem; margin: 1.4rem 0 .4rem }
p { margin: .6rem 0 }
.small { font-size: .92rem }
.stamp { border: 3px solid #000; padding: .5rem; font-weight: bold }
article { border-top: 1px solid #999; padding-bottom: .8rem }
figure { margin: 1rem 0 }
.drawing { display: block; width: 100%; height: auto; max-height: 90vh; margin: 0 auto }
figcaption { font-size: .85rem; color: #333; margin-top: .3rem }
.table { overflow-x: auto }
table { border-collapse: collapse; width: 100% }
td, th { border-bottom: 1px solid #bbb; padding: .25rem .5rem; text-align: left; vertical-align: top }
.right { text-align: right }
.space { height: 8rem; border: 1px solid #999; margin: .8rem 0 }
.columns { display: flex; flex-wrap: wrap; gap: 1rem }
.columns > div { flex: 1 1 16rem; min-width: 0 }
@media print {
  body { font-size: 10pt }
  main { max-width: none; padding: 0 }
  article, figure, tr, .columns { break-inside: avoid }
  h1, h2, h3 { break-after: avoid }
  .break { break-before: page }
  .drawing { max-height: 90mm }
}
`
