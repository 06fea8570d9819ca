import { namePlace } from '../../report/name-place.ts';
import { inLines } from '../../units/in-lines.ts';
import type { PlaceToKnow } from '../document/document.ts';
import { levelShape } from '../page/level-mark.ts';
import { type Markup, markup } from '../page/markup.ts';
import type { StripColumn } from './lay-column.ts';

const LABEL_X = 33;
const LETTERS = 16;
const LETTERS_BESIDE_NUMBER = 12;
/** From line to line, and what a label takes besides. */
const [LINE_MM, APART_MM] = [3.5, 0.4];
const MOST_LINES = 4;
/** Left free at the foot, less what the lowest label's last line leaves. */
const FOOT_MM = 1;

/** The numbered findings beside the ribbon, each joined to its place; none on another. */
export function columnLabels(column: StripColumn, places: readonly PlaceToKnow[]): Markup[] {
  const texts = textsWithin(column.heightMm, places);
  const roomMm = texts.map(({ length }) => length * LINE_MM + APART_MM);
  const evenMm = (column.heightMm - 4) / Math.max(1, places.length);
  const isFull = roomMm.reduce((sum, each) => sum + each, 0) > column.heightMm;
  const ys = spread(
    places.map(({ finding }) => column.y(finding.fromM)),
    isFull ? roomMm.map(() => evenMm) : roomMm,
    column.heightMm,
  );
  return places.map((place, i) => labelAt(column, place, ys[i]!, texts[i]!));
}

/** What stands at each place, over as many lines as all of them leave room for. */
function textsWithin(heightMm: number, places: readonly PlaceToKnow[]): string[][] {
  for (let most = MOST_LINES; most > 1; most--) {
    const texts = places.map((place) => linesOf(place, most));
    const lines = texts.reduce((sum, { length }) => sum + length, 0);
    if (lines * LINE_MM + places.length * APART_MM <= heightMm) return texts;
  }
  return places.map((place) => linesOf(place, 1));
}

/** What a place is and how much; over more lines where there is room for them, that nothing is cut off. */
function linesOf({ finding }: PlaceToKnow, most: number): string[] {
  const { subject, figure } = namePlace(finding, 'metric');
  const second = figure ?? finding.road;
  if (most === 1) return inLines(figure ?? subject, LETTERS_BESIDE_NUMBER, 1);
  const first = inLines(subject, [LETTERS_BESIDE_NUMBER, LETTERS], second === undefined ? most : most - 1);
  return second === undefined ? first : [...first, ...inLines(second, LETTERS, most - first.length)];
}

/** Beside the ribbon, how far each finding reaches. */
export function columnReaches(column: StripColumn, places: readonly PlaceToKnow[]): Markup[] {
  return places.flatMap(({ finding: { fromM, toM, level } }) => {
    if (toM - fromM <= 1) return [];
    const [x, from, to] = [column.middle(fromM) + 3.7, column.y(fromM), column.y(Math.min(toM, column.toM))];
    return [
      markup`<path class="strip-reach ink-${level}" d="M${x.toFixed(2)} ${from.toFixed(2)}V${to.toFixed(2)}"/>`,
    ];
  });
}

function labelAt(
  column: StripColumn,
  { label, finding, title }: PlaceToKnow,
  y: number,
  [first, ...more]: readonly string[],
): Markup {
  const [x0, y0] = [column.middle(finding.fromM), column.y(finding.fromM)];
  return markup`<path class="strip-leader" d="M${x0.toFixed(2)} ${y0.toFixed(2)}L${(LABEL_X - 2.5).toFixed(2)} ${y.toFixed(2)}h2"/><circle class="strip-dot" cx="${x0.toFixed(2)}" cy="${y0.toFixed(2)}" r="0.7"/><g class="ink-${finding.level}" transform="translate(${LABEL_X} ${(y - 1.9).toFixed(2)}) scale(0.155)">${levelShape(finding.level)}</g><text class="strip-number" x="${LABEL_X + 4.4}" y="${(y + 1).toFixed(2)}">${label}</text><text class="strip-says" x="${LABEL_X + 8.8}" y="${(y + 1).toFixed(2)}">${first}</text>${more.map(
    (line, i) =>
      markup`<text class="strip-figure" x="${LABEL_X + 4.4}" y="${(y + 4 + 3 * i).toFixed(2)}">${line}</text>`,
  )}<title>${title}</title>`;
}

/** Places from the bottom up, each with its room below it, moved as little as that takes. */
function spread(wanted: readonly number[], roomMm: readonly number[], heightMm: number): number[] {
  const ys: number[] = [];
  for (const [i, y] of wanted.entries()) ys.push(Math.min(y, (ys.at(-1) ?? heightMm - FOOT_MM) - roomMm[i]!));
  // what was pushed over the top comes down again
  let least = 3;
  for (let i = ys.length - 1; i >= 0; i--) {
    if (ys[i]! >= least) break;
    ys[i] = least;
    least += roomMm[i]!;
  }
  return ys;
}
