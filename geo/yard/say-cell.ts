import { saySettledCount } from '../report/is-settled.ts';
import { LEVEL_WORD, LEVELS } from '../report/level.ts';
import { SUBJECT_WORD } from '../report/subject-word.ts';
import { drawnSizeIn, sizeIn, trueMinus, type Units } from '../units/in-units.ts';
import { printKg } from '../units/print.ts';
import { listed, lowerFirst } from '../units/text.ts';
import type { Cell } from './cell.ts';
import type { Stale } from './made-of.ts';

type Tightest = NonNullable<Cell['tightest']>;

/** The figure that decides a cell, with its sign and rounded against the driver: `−0.21 m`; '' where there is none. */
export function spareFigure({ tightest }: Pick<Cell, 'tightest'>, units: Units): string {
  return tightest === undefined ? '' : figureOf(tightest, (m) => drawnSizeIn(units, m, 'down'));
}

function figureOf({ spare, unit }: Pick<Tightest, 'spare' | 'unit'>, size: (m: number) => string): string {
  switch (unit) {
    case 'm':
      return size(spare);
    case 'kg':
      return trueMinus(printKg(spare, 'down'));
    default:
      return trueMinus(
        `${(Math.floor(spare * 10 + 1e-6) / 10).toFixed(1)}${unit === 'deg' ? '°' : ` ${unit}`}`,
      );
  }
}

/** "height: 0.21 m over", "width: 0.12 m to spare"; '' where no figure decides. */
export function sayTightest({ tightest }: Pick<Cell, 'tightest'>, units: Units): string {
  if (tightest === undefined) return '';
  const figure = figureOf(tightest, (m) => sizeIn(units, m, 'down')).replaceAll('−', '');
  const over = tightest.spare < 0;
  return `${SUBJECT_WORD[tightest.subject].toLowerCase()}: ${figure} ${over ? 'over' : 'to spare'}`;
}

/** "2 barred, 1 tight and 3 take care", the gravest first; '' for none. */
export function sayCounts(counts: Cell['counts']): string {
  return listed(
    LEVELS.flatMap((level) =>
      counts[level] > 0 ? [`${counts[level]} ${LEVEL_WORD[level].toLowerCase()}`] : [],
    ),
  );
}

/** Why a cell is old, each after "since then". */
const STALE_SAY: Readonly<Record<Stale, string>> = {
  map: 'the maps of the shelf there changed',
  card: 'the card was changed',
  note: 'a local note was added or changed',
  margin: 'another spare was asked for',
  leave: 'the leave time is another',
  day: 'the stops or the return hour are others',
};

/** "Out of date, check again: since then the map was renewed and the card was changed"; '' for none. */
export function sayStale(stale: readonly Stale[]): string {
  return stale.length === 0
    ? ''
    : `Out of date, check again: since then ${listed(stale.map((each) => STALE_SAY[each]))}`;
}

/** A cell in words: what its mark, its figures and its look say. The doubt comes before the answer it is about. */
export function sayCell(
  { cell, stale, changes = [] }: { cell: Cell; stale: readonly Stale[]; changes?: readonly unknown[] },
  units: Units,
): string {
  const verdict = LEVEL_WORD[cell.verdict];
  const answer = [
    stale.length === 0 ? verdict : `it said ${lowerFirst(verdict)}`,
    sayCounts(cell.counts),
    saySettledCount(cell.settled ?? 0),
    sayTightest(cell, units),
    changes.length === 0 ? '' : `${changes.length} changed since it was seen`,
  ];
  return [sayStale(stale), ...answer].filter((part) => part !== '').join('; ');
}

/** What an empty place of the grid says. */
export function sayNoCell(why: string | undefined): string {
  return why === undefined ? 'not checked yet' : `could not be checked: ${lowerFirst(why)}`;
}
