import { DRAWING_STYLE } from '../draw/drawing-style.ts';
import { FACE, type Faces, faceRules } from '../page/whole-page.ts';

/** A paper size that a printer is told, or the printer's own. */
export type Paper = 'A4' | 'letter';

/** The sheet in black on white, 186 by 255 mm, which both papers hold with margins of 12 mm. */
export function sheetStyle(faces: Faces, number: string, paper: Paper | undefined): string {
  const size = paper === undefined ? '' : `size:${paper};`;
  const foot = number === '' ? '' : `"Sheet ${number} · " `;
  return `${faceRules(faces)}
@page{${size}margin:12mm;@bottom-right{content:${foot}"page " counter(page) " of " counter(pages);font:8pt ${FACE}}}
:root{--ink:#000;--soft:#8a8a8a;--faint:#444;--rule:#999;--sunk:#e4e4e4;--paper:#fff;--barred:#a33b00;--tight:#6b4b00;--unknown:#004a75;--care:#00543d;color-scheme:light;print-color-adjust:exact;-webkit-print-color-adjust:exact}
*{box-sizing:border-box}
html{background:#d9d5ca}
body{width:186mm;margin:8mm auto;padding:0;background:#fff;box-shadow:0 0 0 12mm #fff;color:var(--ink);font:9.5pt/1.35 ${FACE};font-variant-numeric:tabular-nums}
h1,h2,h3,p,ol,ul,figure{margin:0;padding:0}ol,ul{list-style:none}
h2{font-size:11.5pt;margin:3mm 0 1.2mm;padding-top:1mm;border-top:.5mm solid var(--ink);break-after:avoid;overflow:hidden}
.top{display:flex;justify-content:space-between;align-items:baseline;gap:6mm;font-size:9.5pt;margin-bottom:2mm}
.top .heading{font-weight:700;font-size:12pt}
.top .number{font-weight:700;white-space:nowrap}
.verdict{display:flex;gap:5mm;align-items:center;border:.8mm solid var(--ink);padding:2mm 4mm}
.verdict h1{font-size:23pt;line-height:1.05}
.verdict p{font-size:11pt}
.verdict-barred{border-width:2mm;flex-wrap:wrap}
.verdict-barred h1{font-size:46pt;text-transform:uppercase;letter-spacing:.02em}
.overload{margin-top:2mm;border:.8mm solid var(--ink);padding:2mm 4mm;font-weight:700}
.drive{margin-top:2mm}
.drive b{font-size:13pt}
.figures{display:grid;grid-template-columns:repeat(4,auto);justify-content:space-between;gap:4mm;margin:2.5mm 0;border-block:.3mm solid var(--ink);padding:1.5mm 0}
.figures dt{font-size:9pt}.figures dl,.figures dd{margin:0}
.figures .m{font-size:20pt;font-weight:700;line-height:1.1;white-space:nowrap}
.figures .i{font-size:13pt;white-space:nowrap}
.beside{float:right;margin:0 0 3mm 4mm}
.overview{display:flex;gap:4mm;break-inside:avoid}
.overview.narrow{display:block}
.before li{display:flex;gap:2mm;margin:.8mm 0}
.before .box{flex:none;width:3.2mm;height:3.2mm;border:.3mm solid var(--ink);margin-top:.6mm}
.before h2{margin-top:0}
.narrow .before ul{columns:2;column-gap:4mm}.narrow .before li{break-inside:avoid}.narrow .before h2{margin-top:2mm}
.places li{display:grid;grid-template-columns:13mm 1fr;column-gap:2mm;padding:1.6mm 0;border-bottom:.2mm solid var(--rule);break-inside:avoid}
.places .no{font-weight:700;font-size:13pt;line-height:1.1}
.places .what{font-weight:700;font-size:11pt}
.places .where{font-weight:400;font-size:9.5pt}.places .reach{font-weight:400}
.sum,.advice{font-weight:700}
.off{border-left:.8mm solid var(--ink);padding-left:2mm;margin-top:.8mm;font-weight:700}
.turns{display:grid;grid-template-columns:repeat(3,1fr);gap:3mm}
.turns li{break-inside:avoid}.turns p{font-size:8.5pt;line-height:1.3}.turns .what{font-weight:700;font-size:9.5pt}
.turns svg{border:.2mm solid var(--rule);margin-bottom:1mm}
.strip-page{break-before:page;break-inside:avoid}
.strip-page h2{margin-top:0}
.columns{display:flex;gap:3mm}
.columns.few{justify-content:flex-start}
.last{break-inside:avoid}
.plain{overflow:hidden}.plain li{margin:.8mm 0 .8mm 4mm;text-indent:-4mm}.plain li::before{content:"–";display:inline-block;width:4mm;text-indent:0}
.contradicts{overflow:hidden;border:.8mm solid var(--ink);padding:2mm 3mm;margin-top:2.5mm;font-weight:700;font-size:10pt;break-inside:avoid}
.caution{overflow:hidden;margin-top:2mm;font-weight:700;break-inside:avoid}
.lines{display:grid;grid-template-columns:1fr 1fr 1fr 1.4fr;gap:5mm;margin-top:3mm;break-inside:avoid}
.lines div{border-bottom:.3mm solid var(--ink);height:8mm}
.source{margin-top:1.5mm;font-size:7.5pt;line-height:1.25;color:var(--faint)}
.day li{display:grid;grid-template-columns:24mm 1fr auto;gap:3mm;padding:1mm 0;border-bottom:.2mm solid var(--rule)}
@media print{html{background:#fff}body{margin:0;box-shadow:none}}
@media screen and (max-width:210mm){body{width:auto;max-width:186mm;margin:4mm;box-shadow:0 0 0 4mm #fff;overflow-x:auto}}
${DRAWING_STYLE}`;
}
