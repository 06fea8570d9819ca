import type { Place } from '../../earth/sphere.ts';
import type { HandOverDocument, PlaceToKnow } from '../document/document.ts';
import { type DrawnDrive, driveMap } from '../draw/drive-map.ts';
import { turnSketch } from '../draw/turn-sketch.ts';
import { levelMark } from '../page/level-mark.ts';
import { type Markup, markup } from '../page/markup.ts';
import { type Faces, wholePage } from '../page/whole-page.ts';
import { sayRun } from './phone-runs.ts';
import { calmStrip, ribbonPiece } from './phone-strip.ts';
import { phoneStyle } from './phone-style.ts';

/** The drive as one page for a phone: no script, no second file, no network. The strip is the page. */
export function phonePage(document: HandOverDocument, drawn: DrawnDrive, faces: Faces): string {
  const { verdict, drive } = document;
  const body = markup`${head(document)}
<section><h2>The drive, from the top down</h2>${wayDown(document, drawn)}</section>
${list('Without a number on this page', document.unnumbered)}
<section><h2>Map</h2><figure>${driveMap(drawn, document.places, { widthMm: 96, heightMm: 84 })}</figure></section>
${turns(document)}
${day(document)}
${list('Before you set off', document.before)}
${list('What was not checked', document.notChecked)}
<p class="contradicts">${document.contradicts}</p>
<p class="source">${document.sheet.map} Made ${document.sheet.made} by ${document.sheet.program}.</p>`;
  return wholePage({ title: `${verdict.head}: ${drive.name}`, style: phoneStyle(faces), body, faces });
}

function head({ drive, verdict, overload, card, figures, sheet, cautions }: HandOverDocument): Markup {
  const number = sheet.number === '' ? undefined : markup`<span>Sheet <b>${sheet.number}</b></span>`;
  // a plus that stands anywhere but before the number is none
  const digits = sheet.telephone.replace(/[^\d+]/gu, '').replace(/(?<=.)\+/gu, '');
  const ring = !/\d/u.test(digits)
    ? undefined
    : markup`<span>Ring <a href="tel:${digits}">${sheet.telephone}</a></span>`;
  return markup`<header><div class="top">${sheet.heading === '' ? undefined : markup`<span>${sheet.heading}</span>`}${ring}${number}</div>
<div class="verdict verdict-${verdict.level}"><span class="ink-${verdict.level}">${levelMark(verdict.level, '48px')}</span><div><h1>${verdict.head}</h1><p>${verdict.say}</p>${verdict.wayOut === undefined ? undefined : markup`<p>${verdict.wayOut}</p>`}</div></div>
${overload === undefined ? undefined : markup`<p class="overload">As loaded: ${overload}</p>`}
<p class="drive"><b><bdi>${drive.name}</bdi></b><br><bdi>${drive.ends}</bdi><br>${drive.length}, with <bdi>${card.name}</bdi>. ${drive.times}</p>
<div class="figures">${figures.map(({ what, metric, imperial }) => markup`<dl><dt>${what}</dt><dd class="m">${metric}</dd><dd class="i">${imperial}</dd></dl>`)}</div>
<p class="caution">${cautions.join(' ')}</p></header>`;
}

/** Shorter than this nothing is worth a row of its own. Metres. */
const LEAST_RUN_M = 150;
const RUN_LEAST_PX = 44;
const RUN_MOST_PX = 220;
/** A run of one kilometre is so high; longer ones grow by the root of their length. Pixels. */
const RUN_KM_PX = 46;

/** Places and the runs between them, each beside its piece of the ribbon. */
function wayDown({ places, drive }: HandOverDocument, drawn: DrawnDrive): Markup {
  const strip = calmStrip(drawn.strip);
  const rows: Markup[] = [];
  let atM = 0;
  const runTo = (toM: number) => {
    if (toM - atM < LEAST_RUN_M) return;
    const high = Math.min(RUN_MOST_PX, Math.max(RUN_LEAST_PX, RUN_KM_PX * Math.sqrt((toM - atM) / 1000)));
    rows.push(
      markup`<li class="run" style="min-height:${Math.round(high)}px">${ribbonPiece(strip, atM, toM)}<p>${sayRun(drawn.strip, atM, toM)}</p></li>`,
    );
  };
  for (const place of places) {
    runTo(place.finding.fromM);
    rows.push(placeRow(place, ribbonPiece(strip, place.finding.fromM, place.finding.fromM)));
    atM = Math.max(atM, place.finding.fromM);
  }
  runTo(drive.lengthM);
  rows.push(markup`<li class="end"><p>End, ${drive.length}</p></li>`);
  return markup`<ol class="way">${rows}</ol>`;
}

function placeRow(place: PlaceToKnow, ribbon: Markup): Markup {
  const { label, finding, title, km, miles, clock, road, sum, say, advice, wayRound, turnOff } = place;
  const where = [
    `${km} (${miles})`,
    ...(clock === undefined ? [] : [clock]),
    ...(road === undefined ? [] : [road]),
  ];
  return markup`<li class="place place-${finding.level}">${ribbon}<span class="plate"><span class="ink-${finding.level}">${levelMark(finding.level, '26px')}</span><b>${label}</b></span><div class="says"><h3>${title}</h3><p class="where">${where.join(', ')}</p>${sum === undefined ? undefined : markup`<p class="sum">${sum}</p>`}<p>${say}</p>${advice === '' ? undefined : markup`<p class="advice">${advice}</p>`}<p class="where">${geoLink(finding.at)}</p>${wayRound === undefined ? undefined : markup`<p>${wayRound}</p>`}${turnOff === undefined ? undefined : markup`<div class="off"><p>${turnOff.say}</p>${turnOff.place === undefined ? undefined : markup`<p class="where">${geoLink(turnOff.place.at)}</p>`}</div>`}</div></li>`;
}

/** RFC 5870; the figures stand beside it for who has nothing that opens it. */
function geoLink({ lat, lon }: Place): Markup {
  const [north, east] = [lat.toFixed(5), lon.toFixed(5)];
  return markup`<a href="geo:${north},${east}">${north}, ${east}</a>`;
}

function turns({ turns: all, card }: HandOverDocument): Markup | undefined {
  if (all.length === 0) return undefined;
  const rows = all.map(
    ({ label, title, keep, turn }) =>
      markup`<li>${turnSketch(turn, card, { widthMm: 96, heightMm: 64 })}<p class="what">${label} ${title}</p><p>${keep}</p></li>`,
  );
  return markup`<section><h2>The tightest turns</h2><ol class="turns">${rows}</ol></section>`;
}

function day({ day: kept }: HandOverDocument): Markup | undefined {
  if (kept === undefined) return undefined;
  const stops = kept.stops.map(({ name, at, times, note }) => {
    const words = [at, ...(times === '' ? [] : [times])].join(', ');
    return markup`<li><b><bdi>${name}</bdi></b>, ${words}. ${note}</li>`;
  });
  const due = kept.due.map(({ at, say }) => markup`<li>${at} <b>${say}</b></li>`);
  const notes = kept.notes.map((say) => markup`<li>${say}</li>`);
  return markup`<section><h2>The day</h2><ul class="list">${stops}${due}${notes}</ul></section>`;
}

function list(heading: string, lines: readonly string[]): Markup | undefined {
  if (lines.length === 0) return undefined;
  return markup`<section><h2>${heading}</h2><ul class="list">${lines.map((line) => markup`<li>${line}</li>`)}</ul></section>`;
}
