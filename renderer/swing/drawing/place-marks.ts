import type { Box } from './projection.ts';

/** A place on the drawing, pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A part of the drawing that must stay free, or that a mark may not lie on. Pixels. */
export interface Area extends Spot, Box {}

/** Half of a mark's size. Pixels. */
export const MARK_PX = 11;

const ANGLES = 16;
const REACHES_PX = [24, 34, 48, 66];
/** Weights against a mark: on something drawn, far from what it marks. Judgement. */
const ON_DRAWN = 3;
const PER_PX = 0.05;

/** What the marks have to keep clear of. */
export interface Surroundings {
  readonly box: Box;
  /** never covered */
  readonly areas: readonly Area[];
  /** rather not covered: the vehicle's way, kerbs */
  readonly drawn: readonly Spot[];
}

/**
 * Where numbers stand beside the places that they mark, so that none lies on another, leaves the drawing or covers what
 * must be read. The first ones choose first; undefined where a place is off the drawing or there is no room.
 */
export function placeMarks(
  places: readonly Spot[],
  { box, areas, drawn }: Surroundings,
): readonly (Spot | undefined)[] {
  const placed: Spot[] = [];
  return places.map((place) => {
    if (!isInside(place, box, 0)) return undefined;
    const best = around(place)
      .filter((spot) => isInside(spot, box, MARK_PX + 3))
      .filter((spot) => areas.every((area) => !isOn(spot, area, MARK_PX) && !isCrossed(place, spot, area)))
      .filter((spot) =>
        [...placed, ...places].every(
          (other) => apart(spot, other) > 2 * MARK_PX + (places.includes(other) ? -6 : 4),
        ),
      )
      .map((spot) => ({ spot, cost: costOf(spot, place, drawn) }))
      .reduce<{ spot: Spot; cost: number } | undefined>(
        (least, each) => (least && least.cost <= each.cost ? least : each),
        undefined,
      );
    if (best) placed.push(best.spot);
    return best?.spot;
  });
}

function around({ x, y }: Spot): Spot[] {
  return REACHES_PX.flatMap((reach) =>
    Array.from({ length: ANGLES }, (_, turn) => {
      const angle = ((turn + 0.5) * 2 * Math.PI) / ANGLES;
      return { x: x + reach * Math.cos(angle), y: y + reach * Math.sin(angle) };
    }),
  );
}

function costOf(spot: Spot, place: Spot, drawn: readonly Spot[]): number {
  const covered = drawn.filter((each) => apart(each, spot) < MARK_PX + 3).length;
  return covered * ON_DRAWN + apart(spot, place) * PER_PX;
}

function isInside({ x, y }: Spot, { widthPx, heightPx }: Box, edgePx: number): boolean {
  return x >= edgePx && y >= edgePx && x <= widthPx - edgePx && y <= heightPx - edgePx;
}

/** The line from a place to its mark; the place itself may lie there. */
function isCrossed(place: Spot, mark: Spot, area: Area): boolean {
  return [0.35, 0.5, 0.65, 0.8].some((share) =>
    isOn({ x: place.x + (mark.x - place.x) * share, y: place.y + (mark.y - place.y) * share }, area, 0),
  );
}

function isOn({ x, y }: Spot, area: Area, edgePx: number): boolean {
  return (
    x > area.x - edgePx &&
    x < area.x + area.widthPx + edgePx &&
    y > area.y - edgePx &&
    y < area.y + area.heightPx + edgePx
  );
}

function apart(a: Spot, b: Spot): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
