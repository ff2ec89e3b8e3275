// How the papers look: each exactly one A4 page, black on white, readable in grey.

const WIDTH_MM = 186
const HEIGHT_MM = 273

/** 12 mm of margin all round leave each sheet its page. */
export const PAPERS_CSS = `
@page { size: A4; margin: 12mm; }
.sheet { box-sizing: border-box; width: ${WIDTH_MM}mm; height: ${HEIGHT_MM}mm; margin: 0 auto;
  overflow: hidden; display: flex; flex-direction: column; background: #fff; color: #000;
  font: 8.5pt/1.3 system-ui, "Segoe UI", Roboto, "Liberation Sans", Arial, sans-serif;
  break-before: page; break-after: page; break-inside: avoid; overflow-wrap: anywhere; }
.sheet header { border-bottom: 0.6mm solid #000; margin-bottom: 2mm; flex: none; }
.sheet header p { display: flex; justify-content: space-between; gap: 4mm; margin: 0 0 1mm; }
.sheet h2 { font-size: 17pt; line-height: 1.15; margin: 0; }
.sheet h3 { font-size: 10pt; margin: 2mm 0 0.8mm; }
.sheet p { margin: 0.8mm 0; }
.sheet ul, .sheet ol { margin: 0; padding-left: 5mm; text-wrap: pretty; }
.sheet .body { flex: 1 1 auto; min-height: 0; }
.sheet footer { flex: none; display: flex; justify-content: space-between; gap: 4mm;
  border-top: 0.2mm solid #000; padding-top: 1mm; font-size: 7pt; }
.sheet footer span:last-child { white-space: nowrap; }
.sheet table { width: 100%; table-layout: fixed; border-collapse: collapse; margin: 1mm 0; }
.sheet th, .sheet td { border: 0.2mm solid #777; padding: 0.5mm 1mm; text-align: left;
  vertical-align: top; font-weight: normal; }
.sheet th { background: #e6e6e6; print-color-adjust: exact; font-weight: 600; hyphens: auto; }
.sheet .group td { background: #f2f2f2; print-color-adjust: exact; font-weight: 600; }
.sheet .sum td { font-weight: 600; border-top: 0.4mm solid #000; }
.sheet .two { display: grid; grid-template-columns: 1fr 1fr; gap: 5mm; }
.sheet .lines { display: grid; grid-template-columns: 1fr 1fr; gap: 0 6mm; }
.sheet .line { display: flex; align-items: end; height: 8mm; border-bottom: 0.2mm solid #000; }
.sheet.cut-card { font-size: 12pt; }
.sheet.cut-card.small { font-size: 10pt; }
.sheet.cut-card.small h3 { font-size: 11.5pt; }
.sheet.cut-card.large { font-size: 13pt; }
.sheet.cut-card.largest { font-size: 14.5pt; }
.sheet.island-test { font-size: 7.8pt; line-height: 1.25; }
.sheet.island-test .line { height: 7mm; }
.sheet.island-test td { padding: 0.4mm 1mm; }
.sheet.dense { font-size: 7pt; line-height: 1.2; }
.sheet.dense td { padding: 0.25mm 1mm; }
.sheet.cut-card h2 { font-size: 24pt; }
.sheet.cut-card h3 { font-size: 13.5pt; }
.sheet.cut-card .plan { border: 0.8mm solid #000; padding: 1.5mm 3mm; }
.sheet.cut-card .big { font-size: 30pt; font-weight: 700; line-height: 1.1; margin: 0; }
.sheet.cut-card .how { font-size: 9.5pt; }
.sheet.cut-card .line { height: 9mm; }
.sheet.cut-card .cautions { font-size: 8.5pt; }
.sheet.cut-card .cautions h3 { font-size: 10pt; }
.sheet.yearly-checks td { height: 8mm; }
.sheet.circuit-list td, .sheet.settings-sheet td { padding: 0.35mm 1mm; }
.sheet.roomy tbody td { height: 6mm; vertical-align: middle; }
@media screen { .sheet { margin: 6mm auto; padding: 6mm; width: ${WIDTH_MM + 12}mm;
  height: ${HEIGHT_MM + 12}mm; outline: 0.2mm solid #bbb; } }
@media screen and (max-width: ${WIDTH_MM + 14}mm) { .sheet { width: auto; height: auto;
  overflow-x: auto; } .sheet .two, .sheet .lines { grid-template-columns: 1fr; } }
`
