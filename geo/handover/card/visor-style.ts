import { FACE, type Faces, faceRules } from '../page/whole-page.ts';

/** Height of the figures on paper, millimetres: a British height notice asks for 40 (from memory). */
const BIG_MM = 15.2;
const TALL_MM = 40.5;
/** Height of a figure to the type's size: B612 as measured; a face of the system at the least. */
const B612_FIGURE = 0.766;
const OTHER_FIGURE = 0.69;

/** So much lower, as a share of the type's size, the figures of B612 stand in the middle of their line. */
const B612_LOWER = 0.065;

/** A sheet is 186 mm wide: on a narrower screen it is shown this much smaller, so that nothing of it is cut off. */
const SCREENS = [
  { pxMost: 719, zoom: 0.84 },
  { pxMost: 599, zoom: 0.66 },
  { pxMost: 479, zoom: 0.5 },
  { pxMost: 359, zoom: 0.4 },
];

/** Black on white, a card a page of 186 by 255 mm, which A4 and Letter hold. */
export function visorStyle(faces: Faces): string {
  const share = faces.bold === undefined ? OTHER_FIGURE : B612_FIGURE;
  const [big, tall] = [BIG_MM / share, TALL_MM / share].map((size) => size.toFixed(1));
  const lower = faces.bold === undefined ? 0 : B612_LOWER;
  return `${faceRules(faces)}
@page{margin:12mm}
:root{color-scheme:light;print-color-adjust:exact;-webkit-print-color-adjust:exact}
*{box-sizing:border-box}
html{background:#d9d5ca}
body{margin:0;color:#000;font:10pt/1.3 ${FACE};font-variant-numeric:tabular-nums}
h1,p{margin:0}
.sheet{width:186mm;height:254mm;margin:8mm auto;background:#fff;padding:5mm 6mm 0;break-after:page;break-inside:avoid;overflow:hidden}
.card{position:relative;width:174mm;padding:3mm 5mm 2mm}
.cut{position:absolute;width:5mm;height:5mm;border:0 solid #000}
.cut-nw{left:-5mm;top:-5mm;border-right-width:.2mm;border-bottom-width:.2mm}
.cut-ne{right:-5mm;top:-5mm;border-left-width:.2mm;border-bottom-width:.2mm}
.cut-sw{left:-5mm;bottom:-5mm;border-right-width:.2mm;border-top-width:.2mm}
.cut-se{right:-5mm;bottom:-5mm;border-left-width:.2mm;border-top-width:.2mm}
h1{font-size:14pt;overflow-wrap:anywhere}.long{font-size:9pt;line-height:1.1}
.what{font-size:12pt;line-height:1.15}
.height{border-block:.8mm solid #000;margin:.7mm 0;padding:.5mm 0 0;white-space:nowrap}
.tall{font-weight:700;font-size:${tall}mm;line-height:.88;letter-spacing:-.02em;position:relative;top:${lower}em}
.tall small{font-size:18mm}
.figure{display:grid;grid-template-columns:1fr 58mm 66mm;align-items:center;border-bottom:.3mm solid #000;white-space:nowrap}
.figure .what{white-space:normal;font-size:13pt}
.big{font-weight:700;font-size:${big}mm;line-height:.85;letter-spacing:-.02em;position:relative;top:${lower}em}
.big small{font-size:8mm}
.widths{font-size:10.5pt;margin-top:.5mm}
.head{display:flex;gap:4mm;align-items:center;justify-content:space-between}.source{flex:none;max-width:64mm;font-size:8pt;line-height:1.1;text-align:right}
footer{display:flex;gap:5mm;align-items:flex-start;margin:2.5mm 6mm 0;font-size:8pt}
.bar{flex:none;width:50mm;height:3mm;border:.3mm solid #000;border-top:0}
${SCREENS.map(({ pxMost, zoom }) => `@media screen and (max-width:${pxMost}px){.sheet{zoom:${zoom}}}`).join('\n')}
@media print{html{background:#fff}.sheet{margin:0 auto}.sheet:last-child{break-after:auto}}
`;
}
