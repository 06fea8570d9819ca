import { DRAWING_STYLE } from '../draw/drawing-style.ts';
import { FACE, type Faces, faceRules } from '../page/whole-page.ts';
import { RIBBON_PX } from './phone-strip.ts';

/** One column, by day and by night; on paper black on white. */
export function phoneStyle(faces: Faces): string {
  return `${faceRules(faces)}
:root{--ink:#201d18;--soft:#8d8473;--faint:#5a5346;--rule:#cfc6b2;--sunk:#ebe5d6;--paper:#fdfbf5;--ground:#f6f2e8;--barred:#a84300;--tight:#7d5600;--unknown:#00598c;--care:#00694c;--link:#00598c;color-scheme:light dark}
@media (prefers-color-scheme:dark){:root{--ink:#e9e2cf;--soft:#7d7666;--faint:#b4ab96;--rule:#3a382d;--sunk:#2a2a20;--paper:#1c1d16;--ground:#14150f;--barred:#ff9650;--tight:#f0b429;--unknown:#6bc0f5;--care:#37cfa5;--link:#7cc0ff}}
@media print{:root{--ink:#000;--soft:#777;--faint:#333;--rule:#999;--sunk:#e4e4e4;--paper:#fff;--ground:#fff;--barred:#000;--tight:#000;--unknown:#000;--care:#000;--link:#000;color-scheme:light}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:640px;padding:12px 14px 40px;background:var(--ground);color:var(--ink);font:17px/1.42 ${FACE};font-variant-numeric:tabular-nums;-webkit-text-size-adjust:100%;overflow-wrap:break-word}
h1,h2,h3,p,ol,ul,dl,dd,figure{margin:0;padding:0}ol,ul{list-style:none}
a{color:var(--link)}
h2{font-size:20px;margin:26px 0 8px;border-top:2px solid var(--ink);padding-top:6px}
.top{display:flex;flex-wrap:wrap;justify-content:space-between;gap:4px 16px;font-size:15px;color:var(--faint);margin-bottom:8px}
.verdict{display:flex;gap:14px;align-items:center;border:2px solid var(--ink);background:var(--paper);padding:12px 14px}
.verdict-barred{border-width:7px}
.verdict .mark{flex:none}
.verdict h1{font-size:28px;line-height:1.1}
.verdict-barred h1{font-size:38px;text-transform:uppercase}
.overload{border:3px solid var(--ink);padding:8px 12px;margin-top:10px;font-weight:700}
.drive{margin:12px 0}
.drive b{font-size:20px}
.figures{display:grid;grid-template-columns:repeat(2,minmax(0,1fr));gap:10px 14px;border-block:1px solid var(--ink);padding:8px 0}
.figures dt{font-size:14px;color:var(--faint)}
.figures .m{font-size:30px;font-weight:700;line-height:1.1;white-space:nowrap}
.figures .i{font-size:20px;white-space:nowrap}
.caution{margin-top:12px;font-size:15px}
.drive-map,.turn{width:100%;height:auto}
.way{margin-top:4px}
.way li{display:grid;grid-template-columns:${RIBBON_PX}px minmax(0,1fr);column-gap:10px;position:relative}
.way .ribbon{position:absolute;left:0;top:0;width:${RIBBON_PX}px;height:100%}
.way .ribbon path{vector-effect:non-scaling-stroke}
.ribbon .ground{fill:var(--paper)}
.ribbon .edge{fill:none;stroke:var(--ink);stroke-width:1.6}
.ribbon .stub{stroke:var(--faint);stroke-width:1.5}.ribbon .stub.main{stroke-width:3}
.ribbon .over{stroke:var(--ink);stroke-width:4}
.run{min-height:44px;padding:8px 0;color:var(--faint);font-size:15px}
.run p,.end p,.place div.says{grid-column:2}
.place{padding:0 0 10px}
.place .plate{position:absolute;left:10px;top:4px;width:44px;background:var(--ground);text-align:center;line-height:1;border-radius:4px;padding:3px 0 4px}
.place .plate b{display:block;font-size:16px;margin-top:2px}
.place .plate .mark{margin:0 auto}
.place .says{background:var(--paper);border:1px solid var(--rule);border-radius:4px;padding:8px 12px 10px}
.place-barred .says{border:3px solid var(--ink)}
.place h3{font-size:18px;line-height:1.25}
.place .where{color:var(--faint);font-size:15px}
.sum,.advice{font-weight:700}
.off{border-left:4px solid var(--ink);padding-left:10px;margin-top:6px;font-weight:700}
.end{font-weight:700;padding:4px 0}
.list li{padding:5px 0 5px 18px;text-indent:-18px}.list li::before{content:"–";display:inline-block;width:18px;text-indent:0}
.turns li{margin-bottom:16px}.turns .what{font-weight:700}.turns svg{background:var(--paper);border:1px solid var(--rule)}
.contradicts{border:3px solid var(--ink);padding:10px 14px;font-weight:700;margin-top:22px}
.source{margin-top:20px;font-size:14px;color:var(--faint)}
@media (max-width:340px){body{font-size:16px}.figures .m{font-size:26px}.verdict-barred h1{font-size:31px}}
${DRAWING_STYLE}
.drive-map{border-width:1px}`;
}
