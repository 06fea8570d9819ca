import { namePlace } from '../../report/name-place.ts';
import { cut } from '../../units/text.ts';
import type { PlaceToKnow } from '../document/document.ts';
import { levelShape } from '../page/level-mark.ts';
import { type Markup, markup } from '../page/markup.ts';
import type { StripColumn } from './lay-column.ts';

const LABEL_X = 33;
const LETTERS = 16;
const LETTERS_BESIDE_NUMBER = 12;
/** Two lines where there is room, else one. */
const TWO_LINES_MM = 7.4;
const ONE_LINE_MM = 3.9;

/** The numbered findings beside the ribbon, each joined to its place; none on another. */
export function columnLabels(column: StripColumn, places: readonly PlaceToKnow[]): Markup[] {
  const twoLines = places.length * TWO_LINES_MM <= column.heightMm;
  const ys = spread(
    places.map(({ finding }) => column.y(finding.fromM)),
    twoLines ? TWO_LINES_MM : Math.min(ONE_LINE_MM, (column.heightMm - 4) / Math.max(1, places.length)),
    column.heightMm,
  );
  return places.map((place, i) => labelAt(column, place, ys[i]!, twoLines));
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
  twoLines: boolean,
): Markup {
  const { subject, figure } = namePlace(finding, 'metric');
  const [x0, y0] = [column.middle(finding.fromM), column.y(finding.fromM)];
  const second = figure ?? finding.road;
  return markup`<path class="strip-leader" d="M${x0.toFixed(2)} ${y0.toFixed(2)}L${(LABEL_X - 2.5).toFixed(2)} ${y.toFixed(2)}h2"/><circle class="strip-dot" cx="${x0.toFixed(2)}" cy="${y0.toFixed(2)}" r="0.7"/><g class="ink-${finding.level}" transform="translate(${LABEL_X} ${(y - 1.9).toFixed(2)}) scale(0.155)">${levelShape(finding.level)}</g><text class="strip-number" x="${LABEL_X + 4.4}" y="${(y + 1).toFixed(2)}">${label}</text><text class="strip-says" x="${LABEL_X + 8.8}" y="${(y + 1).toFixed(2)}">${cut(twoLines ? subject : (figure ?? subject), LETTERS_BESIDE_NUMBER)}</text>${
    twoLines && second !== undefined
      ? markup`<text class="strip-figure" x="${LABEL_X + 4.4}" y="${(y + 4).toFixed(2)}">${cut(second, LETTERS)}</text>`
      : undefined
  }<title>${title}</title>`;
}

/** Places no nearer than so much to each other, from the bottom up, moved as little as that takes. */
function spread(wanted: readonly number[], apart: number, heightMm: number): number[] {
  const ys: number[] = [];
  for (const y of wanted) ys.push(Math.min(y, heightMm - 4, (ys.at(-1) ?? Number.POSITIVE_INFINITY) - apart));
  // what was pushed over the top comes down again
  let least = 3;
  for (let i = ys.length - 1; i >= 0; i--) {
    if (ys[i]! >= least) break;
    ys[i] = least;
    least += apart;
  }
  return ys;
}
