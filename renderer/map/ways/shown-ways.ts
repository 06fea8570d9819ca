import { mercatorX, mercatorY } from '../../../geo/earth/mercator.ts';
import { largest } from '../../../geo/lists.ts';
import type { WayRound } from '../../../geo/report/way-round.ts';
import type { Line } from '../drive/stroke.ts';

/** A way round as the map draws it. */
export interface MapWay {
  readonly way: WayRound;
  /** x and y in turn, on the unit square */
  readonly line: Line;
  /** where its number may stand, unit square: the first where nothing else is */
  readonly plates: readonly { readonly x: number; readonly y: number }[];
  readonly raised: boolean;
}

/** @param raised the places of those that stand out */
export function mapWays(ways: readonly WayRound[], raised: readonly number[]): MapWay[] {
  const lines = ways.map(({ path }) => path.flatMap(([lat, lon]) => [mercatorX(lon), mercatorY(lat)]));
  return ways.map((way, i) => ({
    way,
    line: lines[i]!,
    plates: platesOn(
      lines[i]!,
      lines.filter((_, other) => other !== i),
    ),
    raised: raised.includes(i),
  }));
}

/** So many places of a line are tried for its number, and held against so many of each other line. */
const TRIED = 24;
/** A place so much nearer to others than the best is as good where it is nearer to the line's middle. */
const AS_GOOD = 0.8;

/** Where a line's number may stand: first where it is farthest from the others, so that nobody takes it for theirs. */
function platesOn(line: Line, others: readonly Line[]): { x: number; y: number }[] {
  const own = placesAlong(line, TRIED);
  const theirs = others.flatMap((other) => placesAlong(other, 2 * TRIED));
  const clear = own.map(({ x, y }) =>
    theirs.reduce((least, other) => Math.min(least, Math.hypot(other.x - x, other.y - y)), 1),
  );
  const farthest = largest(clear);
  const middle = (own.length - 1) / 2;
  const order = own.map((at, i) => ({ at, off: Math.abs(i - middle), clear: clear[i]! }));
  const isGood = (each: { readonly clear: number }) => each.clear >= AS_GOOD * farthest;
  order.sort((a, b) =>
    isGood(a) || isGood(b)
      ? Number(isGood(b)) - Number(isGood(a)) || a.off - b.off
      : b.clear - a.clear || a.off - b.off,
  );
  return order.map(({ at }) => at);
}

/** Places at even distances along a line, its ends left out. */
function placesAlong(line: Line, count: number): { x: number; y: number }[] {
  const along = [0];
  for (let i = 2; i + 1 < line.length; i += 2)
    along.push(along.at(-1)! + Math.hypot(line[i]! - line[i - 2]!, line[i + 1]! - line[i - 1]!));
  const whole = along.at(-1)!;
  const places: { x: number; y: number }[] = [];
  let at = 1;
  for (let k = 1; k <= count; k++) {
    const wanted = (whole * k) / (count + 1);
    while (at < along.length - 1 && along[at]! < wanted) at++;
    const before = along[at - 1] ?? 0;
    const run = (along[at] ?? 0) - before;
    const share = run === 0 ? 0 : (wanted - before) / run;
    const [x, y] = [line[2 * at - 2] ?? 0, line[2 * at - 1] ?? 0];
    places.push({
      x: x + share * ((line[2 * at] ?? x) - x),
      y: y + share * ((line[2 * at + 1] ?? y) - y),
    });
  }
  return places;
}
