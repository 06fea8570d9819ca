import type { Place } from '../../earth/sphere.ts';
import type { Box } from '../../roads/box.ts';
import { grow } from './box-along.ts';
import { thinLine } from './cut-line.ts';
import type { Along, Piece } from './piece.ts';
import { FERRIES, LAND, NODES, WAYS, WIDE_NODES, WIDE_WAYS, ZONES } from './selectors.ts';

/** What a server may spend on one answer; it turns away whoever asks for more than half of what it has left. */
export interface Budget {
  readonly timeoutS: number;
  readonly maxBytes: number;
}

/** As far as a ferry's line may lie from where it goes. */
const FERRY_M = 500;
/** As far off as tanks are filled and nights are spent. */
const SERVICE_M = 5_000;
/** For so wide a strip the line need not be exact. */
const SERVICE_THINNED_M = 500;
/** A relation of more members is a national park or a sea: what a drive needs of it is not worth its size. */
const MOST_MEMBERS = 200;

/**
 * The question about one piece, in Overpass's language. A box beside each `around` spares the server most of its work;
 * a box over the whole query would cut ways at its edge. `out body`, since `out skel` leaves a node's tags out, and
 * `out meta` would tell who mapped it.
 * @param budget left out: the question alone, which is the same whatever may be spent on it
 */
export function pieceQuery(piece: Piece, budget?: Budget): string {
  const near = within(piece.box, piece.along);
  const ferry = piece.along ? wider(piece.box, piece.along, { beyondM: FERRY_M, thinnedM: 0 }) : near;
  const wide = wider(piece.box, piece.along, { beyondM: SERVICE_M, thinnedM: SERVICE_THINNED_M });
  return [
    ...settings(budget),
    '(',
    ...WAYS.map((keys) => `way${keys}${near};`),
    `way${FERRIES}${ferry};`,
    ...WIDE_WAYS.map((keys) => `way${keys}${wide};`),
    ')->.w;',
    '.w out body;',
    'node(w.w);',
    'out body;',
    '(',
    ...NODES.map((keys) => `node${keys}${near};`),
    ...WIDE_NODES.map((keys) => `node${keys}${wide};`),
    ')->.n;',
    '.n out body;',
    '(',
    'rel(bw.w)["type"~"^restriction"];',
    `rel(bw.w)["type"="route"]${FERRIES};`,
    ')->.r;',
    '.r out body;',
    ...areasAtEdge(near),
  ].join('\n');
}

/** Areas whose edges come near: whole, since half an outline encloses nothing. The edges carry no tags of their own. */
function areasAtEdge(near: string): string[] {
  return [
    `way${near}->.e;`,
    '(',
    ...[ZONES, ...LAND.map(notTooLarge)].map(
      (keys) => `rel(bw.e)["type"~"^(multipolygon|boundary)$"]${keys};`,
    ),
    ')->.a;',
    ...outlines(),
  ];
}

/**
 * The question which areas hold these places: what holds the drive without its edge coming near it. A country is asked
 * for as well, as a proof that the server can tell at all.
 */
export function areasQuery(places: readonly Place[], budget?: Budget): string {
  return [
    ...settings(budget),
    '(',
    ...places.map(({ lat, lon }) => `is_in(${degrees(lat)},${degrees(lon)});`),
    ')->.p;',
    'rel(pivot.p)["boundary"="administrative"]["admin_level"="2"];',
    'out tags;',
    '(',
    `rel(pivot.p)${ZONES};`,
    `way(pivot.p)${ZONES};`,
    ...LAND.flatMap((keys) => [`rel(pivot.p)${notTooLarge(keys)};`, `way(pivot.p)${keys};`]),
    ')->.a;',
    ...outlines(),
  ].join('\n');
}

/** The areas of set a, their outlines, and the places of these. */
function outlines(): string[] {
  return [
    '.a out body;',
    '(',
    'way(r.a:"outer");',
    'way(r.a:"");',
    ')->.o;',
    '.o out body;',
    '(node(w.a);node(w.o););',
    'out body;',
  ];
}

function notTooLarge(keys: string): string {
  return `${keys}(if:count_members()<=${MOST_MEMBERS})`;
}

function settings(budget: Budget | undefined): string[] {
  return budget ? [`[out:json][timeout:${budget.timeoutS}][maxsize:${budget.maxBytes}];`] : [];
}

function within(box: Box, along: Along | undefined): string {
  const line = along?.places.map(({ lat, lon }) => `,${degrees(lat)},${degrees(lon)}`).join('');
  const around = along ? `(around:${along.radiusM}${line})` : '';
  return `${around}(${floor(box.south)},${floor(box.west)},${ceil(box.north)},${ceil(box.east)})`;
}

function wider(
  box: Box,
  along: Along | undefined,
  { beyondM, thinnedM }: { readonly beyondM: number; readonly thinnedM: number },
): string {
  if (!along) return within(grow(box, beyondM), undefined);
  const places = thinnedM > 0 ? thinLine(along.places, thinnedM) : along.places;
  const radiusM = Math.max(along.radiusM, beyondM) + thinnedM;
  return within(grow(box, radiusM - along.radiusM), { places, radiusM });
}

/** Within a metre. */
const DECIMALS = 5;
const SCALE = 10 ** DECIMALS;

function degrees(value: number): string {
  return String(Math.round(value * SCALE) / SCALE);
}

function floor(value: number): string {
  return String(Math.floor(value * SCALE) / SCALE);
}

function ceil(value: number): string {
  return String(Math.ceil(value * SCALE) / SCALE);
}
