import { VERDICTS } from '../report/level.ts';
import { byName } from './by-name.ts';
import type { Cell } from './cell.ts';

/** As much of a drive as it is found and put in order by. */
export interface RowDrive {
  readonly id: string;
  readonly name: string;
  readonly file: string;
  /** between its points, as drawn: it counts until the drive was checked */
  readonly lengthM: number;
}

/** What is known of a drive with one vehicle. */
export interface RowCell {
  readonly vehicle: string;
  readonly cell: Cell;
  readonly stale: readonly unknown[];
  readonly changes: readonly unknown[];
}

/** Metres along the roads that a drive follows, once it was checked; undefined until then. */
export function followedM(cells: readonly RowCell[]): number | undefined {
  return cells.find(({ cell }) => cell.lengthM !== undefined)?.cell.lengthM;
}

/** How rows are put in order: by name, the longest first, the worst first. */
export const ORDERS = ['name', 'length', 'worst'] as const;
export type Order = (typeof ORDERS)[number];

/** What a vehicle must be able to do on a drive for it to be shown. */
export const TAKES = ['any', 'takes', 'barred'] as const;
export type Takes = (typeof TAKES)[number];

/** Which drives are shown, and in which order. */
export interface Arrangement {
  /** words that a drive's name, file or a road that stops somebody on it must all hold; '' for every drive */
  readonly text: string;
  /** metres */
  readonly shortestM?: number | undefined;
  readonly longestM?: number | undefined;
  /** ids of the drives that come near the place asked about; undefined where none is asked about */
  readonly near?: ReadonlySet<string> | undefined;
  /** the vehicle that is asked about; undefined for all of them */
  readonly vehicle?: string | undefined;
  /** `takes`: nothing bars that vehicle (or any, where none is named) there, and it was checked */
  readonly takes: Takes;
  /** the place that stops somebody there */
  readonly stoppedAt?: string | undefined;
  readonly order: Order;
}

/**
 * The drives that are asked for, in the order asked for.
 * @param cellsOf what is known of a drive; the same list as long as nothing has changed
 */
export function arrange<D extends RowDrive>(
  drives: readonly D[],
  cellsOf: (id: string) => readonly RowCell[],
  { text, shortestM = 0, longestM = Number.POSITIVE_INFINITY, near, ...asked }: Arrangement,
): D[] {
  const words = folded(text)
    .split(/\s+/)
    .filter((word) => word !== '');
  const { vehicle, takes, stoppedAt, order } = asked;
  const cellsAsked = (id: string) =>
    vehicle === undefined ? cellsOf(id) : cellsOf(id).filter((each) => each.vehicle === vehicle);
  const lengthOf = ({ id, lengthM }: D) => followedM(cellsOf(id)) ?? lengthM;
  const byLength = shortestM > 0 || longestM < Number.POSITIVE_INFINITY;
  // in order once for all that is typed and chosen after it
  const shown = inOrder(drives).filter((drive) => {
    if (byLength && (lengthOf(drive) < shortestM || lengthOf(drive) > longestM)) return false;
    if (near !== undefined && !near.has(drive.id)) return false;
    if (words.length > 0 && !holdsAll(drive, cellsOf(drive.id), words)) return false;
    const cells = cellsAsked(drive.id);
    if (stoppedAt !== undefined && !cells.some(({ cell }) => cell.stops.some(({ key }) => key === stoppedAt)))
      return false;
    return isTaken(cells, takes);
  });
  // what sorts below leaves equals by name
  if (order === 'length') return shown.sort((a, b) => lengthOf(b) - lengthOf(a));
  if (order === 'name') return shown;
  return shown
    .map((drive) => ({ drive, worst: worstOf(cellsAsked(drive.id)) }))
    .sort((a, b) => compareWorst(a.worst, b.worst))
    .map(({ drive }) => drive);
}

const ordered = new WeakMap<readonly RowDrive[], readonly RowDrive[]>();

/** The drives by name, sorted once. */
function inOrder<D extends RowDrive>(drives: readonly D[]): readonly D[] {
  const known = ordered.get(drives) as readonly D[] | undefined;
  if (known !== undefined) return known;
  const sorted = [...drives].sort(byName);
  ordered.set(drives, sorted);
  return sorted;
}

function isTaken(cells: readonly RowCell[], takes: Takes): boolean {
  if (takes === 'any') return true;
  return cells.some(({ cell }) => (cell.verdict === 'barred') === (takes === 'barred'));
}

const names = new WeakMap<RowDrive, string>();
const roads = new WeakMap<readonly RowCell[], string>();

/** What is searched is folded once for each drive and each list of cells: thousands are searched at every keystroke. */
function holdsAll(drive: RowDrive, cells: readonly RowCell[], words: readonly string[]): boolean {
  const name = names.get(drive) ?? folded(`${drive.name}\n${drive.file}`);
  names.set(drive, name);
  return words.every((word) => name.includes(word) || roadsIn(cells).includes(word));
}

/** All roads that stop somebody on a drive, folded. */
function roadsIn(cells: readonly RowCell[]): string {
  const known = roads.get(cells);
  if (known !== undefined) return known;
  const found = folded(roadsOf(cells).join('\n'));
  roads.set(cells, found);
  return found;
}

function roadsOf(cells: readonly RowCell[]): string[] {
  const found = new Set<string>();
  for (const { cell } of cells) {
    if (cell.stops.length === 0) continue;
    for (const { road } of cell.stops) if (road !== undefined) found.add(road);
  }
  return [...found];
}

/** What is written with other capitals or accents is found too. */
function folded(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}

interface Worst {
  /** place among the verdicts; what was not checked comes last */
  readonly verdict: number;
  readonly places: number;
}
const UNCHECKED: Worst = { verdict: VERDICTS.length, places: 0 };

const worsts = new WeakMap<readonly RowCell[], Worst>();

/** The gravest verdict of a drive's cells, and how many places they count at it in all: worked out once for each list. */
function worstOf(cells: readonly RowCell[]): Worst {
  const known = worsts.get(cells);
  if (known !== undefined) return known;
  let verdict = UNCHECKED.verdict;
  for (const { cell } of cells) verdict = Math.min(verdict, VERDICTS.indexOf(cell.verdict));
  const level = VERDICTS[verdict];
  let places = 0;
  if (level !== undefined && level !== 'clear') for (const { cell } of cells) places += cell.counts[level];
  const worst = { verdict, places };
  worsts.set(cells, worst);
  return worst;
}

function compareWorst(a: Worst, b: Worst): number {
  return a.verdict - b.verdict || b.places - a.places;
}
