import { type Above, findAbove } from '../../drive/above/find-above.ts';
import { OVER_KINDS, type OverKind } from '../../drive/above/over-kind.ts';
import { undersideOf } from '../../drive/above/underside.ts';
import type { KindOf } from '../../report/kinds.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import { pick } from '../../tags/pick.ts';
import { isMinorRoad, isSiteRoad, isTrunkRoad } from '../../tags/road-class.ts';
import type { Draft } from '../finding.ts';
import { isTallerThanGranted } from '../limits/height-word.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import type { Piece } from '../run.ts';
import { heightFacts, heightsMatterTo, isHeightMapped } from './height-mapped.ts';
import { ownFigure } from './own-figure.ts';
import { sayAbove } from './say-overhead.ts';

/** Lanes, tracks and paths on one bridge, or on neighbours, are one thing to look out for. Metres. */
const ONE_BRIDGE_M = 25;
/** The outline of a bridge stands at most this far from what runs over it. Metres. */
const WIDE_BRIDGE_M = 60;

/**
 * What crosses over the driven road where no height is mapped on it: bridges, aqueducts, roofs, gates drawn as ways.
 * Unknown; shown on minor roads and under railways, folded elsewhere; all shown to a vehicle that is higher than what
 * passes where nothing is signed.
 */
export const bridgeAbove: SubjectRule = (input) => {
  if (!heightsMatterTo(input.envelope)) return [];
  const places = drivenWays(input.drive, input.roads);
  const above = findAbove(input.drive, input.roads).filter(({ way }) => !hangsHigh(input, way));
  const crossingsM = above.map(({ atM }) => atM);
  const isOpen = ({ stretch, atM }: Above) => {
    const place = places[stretch];
    return place !== undefined && !isHeightMapped(input, place, atM, crossingsM);
  };
  return groupsOf(above).flatMap((group) => {
    const [first, ...rest] = group.filter(isOpen);
    return first === undefined ? [] : [draftOf(input, places, group, [first, ...rest])];
  });
};

/** A building whose underside is mapped with room for us. */
function hangsHigh(input: RuleInput, way: number): boolean {
  const underside = undersideOf(mappedOn(input.roads, way));
  return underside?.kind === 'metres' && underside.heightM >= input.envelope.heightM + input.margins.heightM;
}

type Group = readonly [Above, ...Above[]];

/** What lies within one bridge's width; the outline of a bridge only where nothing on it is drawn. */
function groupsOf(found: readonly Above[]): Group[] {
  const groups: [Above, ...Above[]][] = [];
  const drawn = found.filter(({ kind }) => kind !== 'structure');
  for (const above of found) {
    const { kind, atM } = above;
    if (kind === 'structure' && drawn.some((other) => Math.abs(other.atM - atM) <= WIDE_BRIDGE_M)) continue;
    const group = groups.at(-1);
    const last = group?.at(-1);
    if (group !== undefined && last !== undefined && atM - last.atM <= ONE_BRIDGE_M) group.push(above);
    else groups.push([above]);
  }
  return groups;
}

/** Built to clear whatever may use the road. */
const TALL = new Set<OverKind>(['gantry', 'mainRoad']);

function isFolded(kind: OverKind, driven: Place): boolean {
  if (kind === 'gantry' || kind === 'building') return true;
  if (kind === 'railway' || kind === 'gateway') return isTrunkRoad(driven.wayTags);
  if (!isMinorRoad(driven.wayTags)) return true;
  // a motorway over a lane is built with room; over a track or a drive it may be a cattle creep
  return TALL.has(kind) && !isSiteRoad(driven.wayTags);
}

/** The tags that decide. */
const KEYS = [
  'bridge',
  'layer',
  'railway',
  'highway',
  'waterway',
  'man_made',
  'building',
  'building:part',
  'min_height',
  'name',
];

/** @param group all that crosses here, @param open those of it without a height, in driving order */
function draftOf(input: RuleInput, places: readonly Place[], group: Group, open: Group): Draft {
  const ordered = [...open].sort((a, b) => OVER_KINDS.indexOf(a.kind) - OVER_KINDS.indexOf(b.kind));
  const main = ordered[0]!;
  const place = places[main.stretch]!;
  const tags = mappedOn(input.roads, main.way);
  const others = [...new Set(ordered.map(({ way }) => input.roads.ways.id[way]!))];
  const figure = ownFigure(input, ordered);
  // beside another of its kind that has a height, it is most likely the same bridge
  const settled = group.filter((one) => !open.includes(one)).map(({ kind }) => kind);
  const quiet = isFolded(main.kind, place) || open.every(({ kind }) => settled.includes(kind));
  const [first, ...rest] = open;
  const several = open.some(({ kind }) => kind !== main.kind);
  return {
    subject: 'height',
    kind: kindOf(main.kind),
    level: 'unknown',
    wants: 'sign',
    run: [pieceOf(places, first), ...rest.map((above) => pieceOf(places, above))],
    again: 'folded',
    others: others.map((id) => ({ type: 'way', id })),
    aspect: 'above',
    tags: pick(tags, KEYS),
    vehicle: { value: input.card.heightM, unit: 'm', what: 'height as measured' },
    folded: figure === undefined && quiet && !isTallerThanGranted(input, place),
    ...sayAbove(main.kind, { tags, several, figure }, heightFacts(input, place)),
  };
}

function kindOf(kind: OverKind): KindOf<'height'> {
  if (kind === 'building' || kind === 'roof') return 'building above';
  return kind === 'gateway' ? 'gateway' : 'bridge above';
}

function pieceOf(places: readonly Place[], { stretch, atM }: Above): Piece {
  return { place: places[stretch]!, fromM: atM, toM: atM };
}
