import { clockText } from '../../clock/print-times.ts';
import { distanceIn } from '../../units/in-units.ts';
import type { HandOverDocument } from '../document/document.ts';
import { type Markup, markup } from '../page/markup.ts';

/** The day's stops and what is due, where there are any. */
export function sheetDay({ day }: HandOverDocument): Markup | undefined {
  if (day === undefined || (day.stops.length === 0 && day.due.length === 0)) return undefined;
  const stops = day.stops.map(
    ({ name, atM, arrive, leaveBy, note }) =>
      markup`<li><span>${distanceIn('both', atM)}</span><span><b><bdi>${name}</bdi></b> ${note ?? ''}</span><span>${arrive === undefined ? '' : `there ${clockText(arrive)}`}${leaveBy === undefined ? '' : `, leave by ${clockText(leaveBy)}`}</span></li>`,
  );
  const due = day.due.map(
    ({ what, at }) =>
      markup`<li><span>${clockText(at)}</span><span><b>${what}</b></span><span>${at.slice(0, 10)}</span></li>`,
  );
  return markup`<section class="day"><h2>The day</h2><ol>${stops}${due}</ol></section>`;
}

/** What was not checked, what to do when a sign says otherwise, cautions, and the lines to be filled in by hand. */
export function sheetEnd({ notChecked, contradicts, cautions, openLines, sheet }: HandOverDocument): Markup {
  return markup`<section><h2>What was not checked</h2><ul class="plain">${notChecked.map((say) => markup`<li>${say}</li>`)}</ul></section>
<p class="contradicts">${contradicts}</p>
<p class="caution">${cautions.join(' ')}</p>
<section class="last"><div class="lines">${openLines.map((line) => markup`<div>${line}</div>`)}</div>
<p class="source">${sheet.map} Made ${sheet.made} by ${sheet.program}.</p></section>`;
}
