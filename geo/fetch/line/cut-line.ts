import { lineString, simplify } from '@turf/turf';
import { localFrame } from '../../earth/frame.ts';
import type { Place } from '../../earth/sphere.ts';
import { itemAt, largest, smallest } from '../../lists.ts';
import { boxAlong } from './box-along.ts';
import { type Vertex, vertexBetween } from './lay-lines.ts';
import type { Piece } from './piece.ts';
import { radiusOf } from './radius.ts';

/** Longer pieces run into a server's limits, shorter ones are many questions. */
const LONGEST_M = 20_000;
/** A short rest joins the piece before it up to here. */
const LONGEST_WITH_REST_M = 25_000;
/** Where points are sparse the strip is wide, and a piece is shorter: this much of it, never under 5 km of length. */
const MOST_M2 = LONGEST_M * 1_500;
const WIDE_LONGEST_M = 5_000;
/** What one question more is worth, as ground asked for beside what is needed. */
const QUESTION_M2 = 10_000 * 300;
/** How far the line asked for may leave the line drawn. */
const THINNED_M = 20;
/** A server tests every segment against every road of the box. */
const MOST_PLACES = 100;

/** Cuts a line into pieces of 10 to 25 km where its points lie close, each with its radius; they overlap by one place. */
export function cutLine(line: readonly Vertex[]): Piece[] {
  const parts: Part[] = [];
  for (const leg of legsOf(line)) {
    const part = parts.at(-1);
    if (part && fits(part, leg)) extend(part, leg);
    else parts.push({ vertices: [leg.from, leg.to], lengthM: leg.lengthM, radiusM: leg.radiusM });
  }
  return joinRests(parts).flatMap(({ vertices, radiusM }) => piecesOf(vertices, radiusM));
}

interface Leg {
  readonly from: Vertex;
  readonly to: Vertex;
  readonly lengthM: number;
  readonly radiusM: number;
  /** begins on the antimeridian: no piece runs across it */
  readonly breaks: boolean;
}

interface Part {
  vertices: Vertex[];
  lengthM: number;
  radiusM: number;
}

function* legsOf(line: readonly Vertex[]): Iterable<Leg> {
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1]!;
    const b = line[i]!;
    const radiusM = radiusOf(b.legM);
    let from = a;
    for (const share of cutsOf(a, b, longestOf(radiusM))) {
      const to = share === 1 ? b : vertexBetween(a, b, share);
      yield {
        from,
        to,
        lengthM: to.alongM - from.alongM,
        radiusM,
        breaks: isOnEdge(from),
      };
      from = to;
    }
  }
}

/** Where a leg is cut, 0…1 in order and 1 at last: into equal parts none too long, and on the antimeridian. */
function cutsOf(a: Vertex, b: Vertex, longestM: number): number[] {
  const count = Math.max(1, Math.ceil((b.alongM - a.alongM) / longestM));
  const cuts = Array.from({ length: count }, (_, i) => (i + 1) / count);
  const [west, east] = a.lon < b.lon ? [a.lon, b.lon] : [b.lon, a.lon];
  const edge = Math.ceil((west - 180) / 360) * 360 + 180;
  if (edge > west && edge < east) cuts.push((edge - a.lon) / (b.lon - a.lon));
  return cuts.sort((one, other) => one - other);
}

function isOnEdge({ lon }: Vertex): boolean {
  return Math.abs((((lon % 360) + 360) % 360) - 180) < 1e-9;
}

function longestOf(radiusM: number): number {
  return Math.min(LONGEST_M, Math.max(WIDE_LONGEST_M, MOST_M2 / radiusM));
}

function fits(part: Part, leg: Leg): boolean {
  return !leg.breaks && joinable(part, leg, longestOf(Math.max(part.radiusM, leg.radiusM)));
}

/** Whether one strip as wide as the wider is worth a question less, and not too long. */
function joinable(
  a: { readonly lengthM: number; readonly radiusM: number },
  b: { readonly lengthM: number; readonly radiusM: number },
  longestM: number,
): boolean {
  const lengthM = a.lengthM + b.lengthM;
  const apartM2 = a.lengthM * a.radiusM + b.lengthM * b.radiusM + QUESTION_M2;
  return lengthM <= longestM && lengthM * Math.max(a.radiusM, b.radiusM) <= apartM2;
}

function extend(part: Part, { to, lengthM, radiusM }: Leg): void {
  part.vertices.push(to);
  part.lengthM += lengthM;
  part.radiusM = Math.max(part.radiusM, radiusM);
}

function joinRests(parts: readonly Part[]): Part[] {
  const joined: Part[] = [];
  for (const part of parts) {
    const before = joined.at(-1);
    const [first] = part.vertices;
    const breaks = first !== undefined && isOnEdge(first);
    const longestM = (longestOf(part.radiusM) * LONGEST_WITH_REST_M) / LONGEST_M;
    if (before && !breaks && joinable(before, part, longestM)) {
      before.vertices = [...before.vertices, ...part.vertices.slice(1)];
      before.lengthM += part.lengthM;
      before.radiusM = Math.max(before.radiusM, part.radiusM);
    } else joined.push(part);
  }
  return joined;
}

/** One piece, or more where the line winds so much that it cannot be told in few places. */
function piecesOf(vertices: readonly Vertex[], radiusM: number): Piece[] {
  const places = thinLine(vertices, THINNED_M);
  if (places.length > MOST_PLACES && vertices.length > 2) {
    const middle = Math.floor(vertices.length / 2);
    return [
      ...piecesOf(vertices.slice(0, middle + 1), radiusM),
      ...piecesOf(vertices.slice(middle), radiusM),
    ];
  }
  const fromM = itemAt(vertices, 0).alongM;
  const toM = itemAt(vertices, vertices.length - 1).alongM;
  return [{ spans: [{ fromM, toM }], along: { places, radiusM }, box: boxAlong(places, radiusM) }];
}

/** A line in as few places as stay within so many metres of it, its ends kept; longitudes within ±180. */
export function thinLine(vertices: readonly Place[], withinM: number): Place[] {
  const { lat: latM, lon: lonM } = middleOf(vertices);
  const turns = Math.floor((lonM + 180) / 360) * 360;
  if (vertices.length < 3) return vertices.map((vertex) => within(vertex, turns));
  const { metresPerDegLat, metresPerDegLon } = localFrame(latM, lonM);
  const flat = vertices.map(({ lat, lon }) => [
    (lon - lonM) * metresPerDegLon,
    (lat - latM) * metresPerDegLat,
  ]);
  const thinned = simplify(lineString(flat), { tolerance: withinM, highQuality: true, mutate: true });
  return thinned.geometry.coordinates.map(([x = 0, y = 0]) =>
    within({ lat: latM + y / metresPerDegLat, lon: lonM + x / metresPerDegLon }, turns),
  );
}

function middleOf(places: readonly Place[]): Place {
  const lats = places.map(({ lat }) => lat);
  const lons = places.map(({ lon }) => lon);
  return { lat: (smallest(lats) + largest(lats)) / 2, lon: (smallest(lons) + largest(lons)) / 2 };
}

/** No line runs across the antimeridian; rounding may carry one a hair beyond. */
function within({ lat, lon }: Place, turns: number): Place {
  return { lat, lon: Math.min(180, Math.max(-180, lon - turns)) };
}
