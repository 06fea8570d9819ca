import { FACE, type Faces, faceRules } from '../page/whole-page.ts';

/**
 * B612's figures are 0.766 of its type size high (measured), so 15 mm are 19.6 mm of type, 40 mm are 52.3 mm; faces of
 * the system have figures of 0.70 to 0.73: the sizes here hold for those too.
 */
const BIG_MM = 21.6;
const TALL_MM = 57.5;

/** Black on white, a card a page of 186 by 255 mm, which A4 and Letter hold. */
export function visorStyle(faces: Faces): string {
  return `${faceRules(faces)}
@page{margin:12mm}
:root{color-scheme:light;print-color-adjust:exact;-webkit-print-color-adjust:exact}
*{box-sizing:border-box}
html{background:#d9d5ca}
body{margin:0;color:#000;font:10pt/1.3 ${FACE};font-variant-numeric:tabular-nums}
h1,p{margin:0}
.sheet{width:186mm;height:254mm;margin:8mm auto;background:#fff;padding:5mm 6mm 0;break-after:page;break-inside:avoid;overflow:hidden}
.card{position:relative;width:174mm;padding:4mm 5mm 3mm}
.cut{position:absolute;width:5mm;height:5mm;border:0 solid #000}
.cut-nw{left:-5mm;top:-5mm;border-right-width:.2mm;border-bottom-width:.2mm}
.cut-ne{right:-5mm;top:-5mm;border-left-width:.2mm;border-bottom-width:.2mm}
.cut-sw{left:-5mm;bottom:-5mm;border-right-width:.2mm;border-top-width:.2mm}
.cut-se{right:-5mm;bottom:-5mm;border-left-width:.2mm;border-top-width:.2mm}
h1{font-size:15pt;white-space:nowrap;overflow:hidden;text-overflow:ellipsis}
.what{font-size:12pt;line-height:1.15}
.height{border-block:.8mm solid #000;margin:1.5mm 0;padding:1mm 0 0;white-space:nowrap}
.tall{font-weight:700;font-size:${TALL_MM}mm;line-height:.86;letter-spacing:-.01em}
.second{font-size:${TALL_MM}mm;letter-spacing:-.05em}
.rest{display:grid;grid-template-columns:1fr 1fr;column-gap:6mm}
.figure{border-bottom:.3mm solid #000;padding:.8mm 0 0;white-space:nowrap}
.big{font-weight:700;font-size:${BIG_MM}mm;line-height:.86;letter-spacing:-.03em}
footer{display:flex;gap:5mm;align-items:flex-start;margin-top:7mm;font-size:8.5pt}
.bar{flex:none;width:50mm;height:3mm;border:.3mm solid #000;border-top:0}
@media print{html{background:#fff}.sheet{margin:0 auto}.sheet:last-child{break-after:auto}}
`;
}
