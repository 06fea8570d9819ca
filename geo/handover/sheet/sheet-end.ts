import type { HandOverDocument } from '../document/document.ts';
import { type Markup, markup } from '../page/markup.ts';

/** The day's stops and what is due, where there are any. */
export function sheetDay({ day }: HandOverDocument): Markup | undefined {
  if (day === undefined) return undefined;
  const stops = day.stops.map(
    ({ name, at, times, note }) =>
      markup`<li><span>${at}</span><span><b><bdi>${name}</bdi></b> ${note}</span><span>${times}</span></li>`,
  );
  const due = day.due.map(({ at, say }) => markup`<li><span>${at}</span><span><b>${say}</b></span></li>`);
  const notes = day.notes.map((say) => markup`<p>${say}</p>`);
  return markup`<section class="day"><h2>The day</h2><ol>${stops}${due}</ol>${notes}</section>`;
}

/** What was not checked, what to do when a sign says otherwise, cautions, and the lines to be filled in by hand. */
export function sheetEnd({ notChecked, contradicts, cautions, openLines, sheet }: HandOverDocument): Markup {
  return markup`<section><h2>What was not checked</h2><ul class="plain">${notChecked.map((say) => markup`<li>${say}</li>`)}</ul></section>
<p class="contradicts">${contradicts}</p>
<p class="caution">${cautions.join(' ')}</p>
<section class="last"><div class="lines">${openLines.map((line) => markup`<div>${line}</div>`)}</div>
<p class="source">${sheet.map} Made ${sheet.made} by ${sheet.program}.</p></section>`;
}
