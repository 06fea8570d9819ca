import type { HandOverDocument, PlaceToKnow, TurnToKnow } from '../document/document.ts';
import { COLUMNS_A_PAGE, cutColumns } from '../draw/cut-columns.ts';
import { type DrawnDrive, driveMap } from '../draw/drive-map.ts';
import { stripColumn } from '../draw/strip-column.ts';
import { turnSketch } from '../draw/turn-sketch.ts';
import { levelMark } from '../page/level-mark.ts';
import { type Markup, markup } from '../page/markup.ts';
import { type Faces, wholePage } from '../page/whole-page.ts';
import { sheetDay, sheetEnd } from './sheet-end.ts';
import { type Paper, sheetStyle } from './sheet-style.ts';

interface SheetOptions {
  readonly faces: Faces;
  /** the paper where the drive is */
  readonly paper: Paper;
}

interface SheetPages {
  /** names no paper: it is printed on what there is */
  readonly page: string;
  /** the same, as a printer is to be given it */
  readonly toPrint: string;
}

/** Of a strip that lies on the first page, beside all else. */
const BESIDE_MM = 150;
const STRIP_PAGE_MM = 240;

/** The drive sheet as one HTML file, for A4 and Letter alike, safe in black and white. */
export function sheetPage(
  document: HandOverDocument,
  drawn: DrawnDrive,
  { faces, paper }: SheetOptions,
): SheetPages {
  const { drive, sheet, places } = document;
  const columns = cutColumns(drive.lengthM, places);
  const [only] = columns;
  const beside =
    columns.length === 1 && only !== undefined
      ? stripColumn(drawn.strip, places, only, BESIDE_MM)
      : undefined;
  const body = markup`${head(document)}
${beside === undefined ? undefined : markup`<div class="beside">${beside}</div>`}
${overview(document, drawn, beside !== undefined)}
${places.length === 0 ? undefined : markup`<section class="places"><h2>What you meet, in driving order</h2><ol>${placeRows(places)}</ol></section>`}
${unnumbered(document)}
${beside === undefined ? stripPages(drawn, places, columns) : undefined}
${document.turns.length === 0 ? undefined : turns(document)}
${sheetDay(document)}
${sheetEnd(document)}`;
  const title = `${document.verdict.head}: ${drive.name}`;
  const on = (size: Paper | undefined) =>
    wholePage({ title, style: sheetStyle(faces, sheet.number, size), body, faces });
  return { page: on(undefined), toPrint: on(paper) };
}

function head({ drive, verdict, overload, card, figures, sheet }: HandOverDocument): Markup {
  const replaces = sheet.replaces === undefined ? undefined : markup`, replaces ${sheet.replaces}`;
  const number = sheet.number === '' ? undefined : markup`Sheet ${sheet.number}${replaces}`;
  return markup`<header>
<div class="top"><span class="heading">${sheet.heading === '' ? 'Drive sheet' : sheet.heading}</span><span>${sheet.telephone === '' ? undefined : markup`Ring <b>${sheet.telephone}</b>`}</span><span class="number">${number}</span></div>
<div class="verdict verdict-${verdict.level}"><span class="ink-${verdict.level}">${levelMark(verdict.level, verdict.level === 'barred' ? '20mm' : '13mm')}</span><div><h1>${verdict.head}</h1><p>${verdict.say}</p></div></div>
${overload === undefined ? undefined : markup`<p class="overload">As loaded: ${overload}</p>`}
<p class="drive"><b><bdi>${drive.name}</bdi></b>, ${drive.length}, with <b><bdi>${card.name}</bdi></b><br><bdi>${drive.ends}</bdi><br>${drive.times}</p>
<div class="figures">${figures.map(({ what, metric, imperial }) => markup`<dl><dt>${what}</dt><dd class="m">${metric}</dd><dd class="i">${imperial}</dd></dl>`)}</div>
</header>`;
}

function overview({ places, before }: HandOverDocument, drawn: DrawnDrive, narrow: boolean): Markup {
  const list = before.map((line) => markup`<li><span class="box"></span><span>${line}</span></li>`);
  const checks =
    before.length === 0
      ? undefined
      : markup`<section class="before"><h2>Before you set off</h2><ul>${list}</ul></section>`;
  const map = driveMap(drawn, places, { widthMm: 120, heightMm: narrow ? 56 : 84 });
  return markup`<div class="${narrow ? 'overview narrow' : 'overview'}"><figure>${map}</figure>${checks}</div>`;
}

/** Places, and where to turn off before them, as they are met. */
function placeRows(places: readonly PlaceToKnow[]): Markup[] {
  const rows = places.flatMap((place) => {
    const off = place.turnOff?.place;
    const row = { atM: place.finding.fromM, drawn: placeRow(place) };
    return off === undefined ? [row] : [{ atM: off.atM, drawn: turnOffRow(place) }, row];
  });
  return rows.sort((a, b) => a.atM - b.atM).map(({ drawn }) => drawn);
}

function turnOffRow({ turnOff }: PlaceToKnow): Markup {
  return markup`<li><div></div><div><p class="off">${turnOff?.say}</p></div></li>`;
}

function placeRow({
  label,
  finding,
  title,
  km,
  miles,
  clock,
  road,
  sum,
  say,
  advice,
  wayRound,
  turnOff,
}: PlaceToKnow): Markup {
  const where = [
    `${km} (${miles})`,
    ...(clock === undefined ? [] : [clock]),
    ...(road === undefined ? [] : [road]),
  ];
  return markup`<li><div><span class="ink-${finding.level}">${levelMark(finding.level, '7mm')}</span><div class="no">${label}</div></div><div><p class="what">${title} <span class="where">${where.join(', ')}</span></p>${sum === undefined ? undefined : markup`<p class="sum">${sum}</p>`}${saying(say, advice, finding.level === 'care')}${wayRound === undefined ? undefined : markup`<p>${wayRound}</p>`}${turnOff === undefined || turnOff.place !== undefined ? undefined : markup`<p class="off">${turnOff.say}</p>`}</div></li>`;
}

/** Where everything stands that has no number of its own. */
function unnumbered({ unnumbered: lines }: HandOverDocument): Markup | undefined {
  if (lines.length === 0) return undefined;
  return markup`<section><h2>Without a number on this sheet</h2><ul class="plain">${lines.map((line) => markup`<li>${line}</li>`)}</ul></section>`;
}

/** What asks for care alone takes little room. */
function saying(say: string, advice: string, inOne: boolean): Markup {
  if (advice === '') return markup`<p>${say}</p>`;
  return inOne
    ? markup`<p>${say} <b>${advice}</b></p>`
    : markup`<p>${say}</p><p class="advice">${advice}</p>`;
}

function turns({ turns: all, card }: HandOverDocument): Markup {
  const one = (turn: TurnToKnow) =>
    markup`<li>${turnSketch(turn.turn, card, { widthMm: 59, heightMm: 42 })}<p class="what">${turn.label} ${turn.title}</p><p>${turn.keep}</p></li>`;
  return markup`<section><h2>The tightest turns</h2><ol class="turns">${all.map(one)}</ol></section>`;
}

function stripPages(
  { strip }: DrawnDrive,
  places: readonly PlaceToKnow[],
  columns: ReturnType<typeof cutColumns>,
): Markup[] {
  const pages: Markup[] = [];
  for (let i = 0; i < columns.length; i += COLUMNS_A_PAGE) {
    const own = columns.slice(i, i + COLUMNS_A_PAGE);
    pages.push(
      markup`<section class="strip-page"><h2>The strip: read each column from the bottom up, left to right</h2><div class="columns">${own.map((span) => stripColumn(strip, places, span, STRIP_PAGE_MM))}</div></section>`,
    );
  }
  return pages;
}
