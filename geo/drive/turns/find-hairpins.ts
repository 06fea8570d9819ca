import { toDeg, toRad } from '../../earth/angles.ts';
import { itemAt } from '../../lists.ts';
import { circleThrough } from './circle-through.ts';
import type { DrivenTurn } from './driven-turn.ts';
import type { TurnLine } from './turn-line.ts';

/** Less at a place is a mapper's wobble. */
const WOBBLE_RAD = toRad(3);
/** So much at one place is a corner, not a drawn curve. */
const CORNER_RAD = toRad(62);
/** A curve is drawn at least this densely. Metres between places. */
const DENSE_M = 25;
/** Only a curve that turns so far can be measured from its drawing. */
const HAIRPIN_RAD = toRad(150);
/** Turning so far takes at most this much road in a hairpin (a radius of about 30 m). Metres. */
const LONGEST_M = 80;
/** Fewer places on the curve measure nothing. */
const LEAST_PLACES = 4;

/** Bends drawn place by place that turn by 150° or more in little room, with their radius where enough places stand. */
export function findHairpins(line: TurnLine, taken: (i: number) => boolean): DrivenTurn[] {
  const found: DrivenTurn[] = [];
  let run: number[] = [];
  const close = () => {
    const hairpin = hairpinIn(line, run);
    if (hairpin !== undefined) found.push(hairpin);
    run = [];
  };
  for (let i = 1; i < line.atM.length - 1; i++) {
    const turn = line.turnRad[i]!;
    if (taken(i)) close();
    if (taken(i) || Math.abs(turn) < WOBBLE_RAD) continue;
    if (Math.abs(turn) > CORNER_RAD) {
      close();
      continue;
    }
    const last = run.at(-1);
    const goesOn =
      last !== undefined && turn > 0 === line.turnRad[last]! > 0 && line.atM[i]! - line.atM[last]! <= DENSE_M;
    if (!goesOn) close();
    run.push(i);
  }
  close();
  return found;
}

/** Takes in what goes on turning as densely on either side. */
function widen(
  part: { readonly from: number; readonly to: number },
  count: number,
  atM: (k: number) => number,
) {
  let { from, to } = part;
  const stepM = (1.5 * (atM(to) - atM(from))) / Math.max(1, to - from);
  while (from > 0 && atM(from) - atM(from - 1) <= stepM) from--;
  while (to < count - 1 && atM(to + 1) - atM(to) <= stepM) to++;
  return { from, to };
}

/** The tightest part of a run of places that turns by 150°, widened by what follows as densely. */
function hairpinIn(line: TurnLine, run: readonly number[]): DrivenTurn | undefined {
  const atM = (k: number) => line.atM[run[k]!]!;
  const turnAt = (k: number) => Math.abs(line.turnRad[run[k]!]!);
  let best: { from: number; to: number; lengthM: number } | undefined;
  let from = 0;
  let sum = 0;
  for (let to = 0; to < run.length; to++) {
    sum += turnAt(to);
    while (sum - turnAt(from) >= HAIRPIN_RAD) sum -= turnAt(from++);
    const lengthM = atM(to) - atM(from);
    if (sum < HAIRPIN_RAD || lengthM > LONGEST_M) continue;
    if (best === undefined || lengthM < best.lengthM) best = { from, to, lengthM };
  }
  if (best === undefined) return undefined;
  const { from: least, to: most } = widen(best, run.length, atM);
  const inside = run.slice(least, most + 1);
  const turnDeg = toDeg(inside.reduce((total, i) => total + Math.abs(line.turnRad[i]!), 0));
  const first = inside[0]!;
  const last = inside.at(-1)!;
  const entry = line.stretch[first - 1];
  const exit = line.stretch[last];
  if (entry === undefined || exit === undefined) return undefined;
  const circle =
    inside.length < LEAST_PLACES
      ? undefined
      : circleThrough(
          inside.map((i) => line.x[i]!),
          inside.map((i) => line.y[i]!),
        );
  const [fromM, toM] = [line.atM[first]!, line.atM[last]!];
  return {
    kind: 'bend',
    side: line.turnRad[first]! > 0 ? 'left' : 'right',
    turnDeg: Math.min(180, turnDeg),
    fromM,
    toM,
    atM: (fromM + toM) / 2,
    node: itemAt(line.node, inside[inside.length >> 1]!),
    entry,
    exit,
    ...(circle === undefined ? { unmeasured: true as const } : { drawnRadiusM: circle.radiusM }),
  };
}
