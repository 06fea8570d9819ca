import { type Level, rankOf } from '../../report/level.ts';
import type { BoxMm, OnPaper } from './projection.ts';

/** A numbered place on the drawing. */
interface Spot extends OnPaper {
  readonly number: number;
  readonly level: Level;
}

/** One label for one place or several that lie on one another: `3`, `3, 5`, `3 to 7`. */
export interface Label extends OnPaper {
  readonly text: string;
  readonly level: Level;
  /** the middle of the label, moved off what it would cover */
  readonly at: OnPaper;
  readonly widthMm: number;
}

/** Places closer than this on the paper are one label. */
const TOGETHER_MM = 3;
export const LABEL_HEIGHT_MM = 4.2;
const MARK_MM = 3.6;
const DIGIT_MM = 1.75;
const PAD_MM = 1.1;
/** A label is looked for a place in rings of this width, no farther than so many. */
const RING_MM = 4.4;
const RINGS = 7;
const DIRECTIONS = 16;

/** Labels for numbered places, none on another or on the line; the gravest is placed first, nearest to its place. */
export function clusterMarks(spots: readonly Spot[], line: readonly OnPaper[], box: BoxMm): Label[] {
  const clusters: Spot[][] = [];
  for (const spot of spots) {
    const near = clusters.find(([first]) => first !== undefined && apart(first, spot) < TOGETHER_MM);
    if (near === undefined) clusters.push([spot]);
    else near.push(spot);
  }
  const drafts = clusters.map((cluster) => {
    const text = sayNumbers(cluster.map(({ number }) => number));
    const level = [...cluster].sort((a, b) => rankOf(a.level) - rankOf(b.level))[0]!.level;
    const { x, y } = cluster[0]!;
    return { x, y, text, level, widthMm: MARK_MM + text.length * DIGIT_MM + 2 * PAD_MM };
  });
  const placed: Label[] = [];
  for (const draft of [...drafts].sort((a, b) => rankOf(a.level) - rankOf(b.level)))
    placed.push({ ...draft, at: freePlace(draft, placed, line, box) });
  return placed;
}

function apart(a: OnPaper, b: OnPaper): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** `3`, `3, 5`, `3 to 7`; of many that do not follow each other the first and how many more. */
function sayNumbers(numbers: readonly number[]): string {
  const [first, last] = [numbers[0]!, numbers.at(-1)!];
  if (numbers.length === 1) return String(first);
  if (last - first === numbers.length - 1) return `${first}–${last}`;
  return numbers.length === 2 ? `${first}, ${last}` : `${first} +${numbers.length - 1}`;
}

type Draft = OnPaper & { readonly widthMm: number };

function freePlace(draft: Draft, placed: readonly Label[], line: readonly OnPaper[], box: BoxMm): OnPaper {
  let best: { readonly at: OnPaper; readonly cost: number } | undefined;
  for (let ring = 1; ring <= RINGS; ring++) {
    for (let i = 0; i < DIRECTIONS; i++) {
      const turn = (2 * Math.PI * i) / DIRECTIONS;
      const reach = ring * RING_MM;
      const at = {
        x: draft.x + Math.cos(turn) * (reach + draft.widthMm / 2 - 2),
        y: draft.y - Math.sin(turn) * reach,
      };
      const cost = ring + costOf(at, draft.widthMm, placed, line, box);
      if (best === undefined || cost < best.cost) best = { at, cost };
    }
    if (best !== undefined && best.cost < ring + 1) break;
  }
  return best?.at ?? draft;
}

function costOf(
  at: OnPaper,
  widthMm: number,
  placed: readonly Label[],
  line: readonly OnPaper[],
  { widthMm: right, heightMm: bottom }: BoxMm,
): number {
  const [halfX, halfY] = [widthMm / 2 + 0.5, LABEL_HEIGHT_MM / 2 + 0.5];
  if (at.x < halfX || at.y < halfY || at.x > right - halfX || at.y > bottom - halfY) return 1000;
  const covered = placed.filter(
    (other) =>
      Math.abs(other.at.x - at.x) < halfX + other.widthMm / 2 &&
      Math.abs(other.at.y - at.y) < halfY + LABEL_HEIGHT_MM / 2,
  ).length;
  const onLine = line.some(({ x, y }) => Math.abs(x - at.x) < halfX && Math.abs(y - at.y) < halfY);
  return 20 * covered + (onLine ? 4 : 0);
}
