import { type Above, findAbove } from '../../drive/above/find-above.ts';
import { isGateway, OVER_KINDS, type OverKind } from '../../drive/above/over-kind.ts';
import { undersideOf } from '../../drive/above/underside.ts';
import type { KindOf } from '../../report/kinds.ts';
import { limitClaims } from '../../tags/limits.ts';
import { pick } from '../../tags/pick.ts';
import { isMinorRoad } from '../../tags/road-class.ts';
import { printMetres, printSizeM } from '../../units/print.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place, passedNodes } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import type { Piece } from '../run.ts';
import { heightsMatterTo, hintOfUnsigned, isHeightMapped } from './height-mapped.ts';

/** Lanes, tracks and paths on one bridge, or on neighbours, are one thing to look out for. Metres. */
const ONE_BRIDGE_M = 25;
/** The outline of a bridge stands at most this far from what runs over it. Metres. */
const WIDE_BRIDGE_M = 60;

/**
 * What crosses over the driven road where no height is mapped on it: bridges, aqueducts, roofs, gateways.
 * Unknown; shown on minor roads and under railways, folded elsewhere.
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
  return [
    ...groupsOf(above).flatMap((group) => {
      const [first, ...rest] = group.filter(isOpen);
      return first === undefined ? [] : [draftOf(input, places, group, [first, ...rest])];
    }),
    ...gatewayNodes(input),
  ];
};

/** A building whose underside is mapped with room for us. */
function hangsHigh(input: RuleInput, way: number): boolean {
  const underside = undersideOf(input.roads.ways.tags[way] ?? {});
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

const NAMES: Readonly<Record<OverKind, string>> = {
  railway: 'A railway bridge',
  gateway: 'A gateway',
  roof: 'A roof',
  pipe: 'A pipe or conveyor',
  aqueduct: 'A bridge carrying water',
  foot: 'A foot or cycle bridge',
  road: 'A road bridge',
  structure: 'A bridge',
  mainRoad: 'A bridge of a main road',
  building: 'A building',
  gantry: 'A gantry',
};

/** Built to clear whatever may use the road. */
const TALL = new Set<OverKind>(['gantry', 'mainRoad']);
const PUBLIC_MAIN = /^(motorway|trunk)(_link)?$/;

function isFolded(kind: OverKind, driven: Place): boolean {
  const highway = driven.wayTags['highway'] ?? '';
  if (kind === 'gantry' || kind === 'building') return true;
  if (kind === 'railway' || kind === 'gateway') return PUBLIC_MAIN.test(highway);
  if (!isMinorRoad(driven.wayTags)) return true;
  // a motorway over a lane is built with room; over a track or a drive it may be a cattle creep
  return TALL.has(kind) && highway !== 'service' && highway !== 'track';
}

/** @param group all that crosses here, @param open those of it without a height, in driving order */
function draftOf(input: RuleInput, places: readonly Place[], group: Group, open: Group): Draft {
  const ordered = [...open].sort((a, b) => OVER_KINDS.indexOf(a.kind) - OVER_KINDS.indexOf(b.kind));
  const main = ordered[0] as Above;
  const place = places[main.stretch] as Place;
  const tags = input.roads.ways.tags[main.way] ?? {};
  const others = [...new Set(ordered.map(({ way }) => input.roads.ways.id[way]!))];
  const hint = ownFigure(input, ordered);
  // beside another of its kind that has a height, it is most likely the same bridge
  const settled = group.filter((one) => !open.includes(one)).map(({ kind }) => kind);
  const quiet = isFolded(main.kind, place) || open.every(({ kind }) => settled.includes(kind));
  const [first, ...rest] = open.map(({ stretch, atM }) => piece(places[stretch] as Place, atM));
  return {
    subject: 'height',
    kind: kindOf(main.kind),
    level: 'unknown',
    again: 'folded',
    run: [first as Piece, ...rest],
    others: others.map((id) => ({ type: 'way', id })),
    aspect: 'above',
    tags: pick(tags, [
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
    ]),
    say: `${sayWhat(main.kind, tags, open)}; no height is mapped on this road.${hint?.say ?? ''}`,
    advice: `Look out for a height sign before it; the vehicle needs ${printSizeM(input.envelope.heightM)}.${hintOfUnsigned(input, place)}`,
    vehicle: { value: input.card.heightM, unit: 'm', what: 'height as measured' },
    folded: hint === undefined && quiet,
  };
}

function kindOf(kind: OverKind): KindOf<'height'> {
  if (kind === 'building' || kind === 'roof') return 'building above';
  return kind === 'gateway' ? 'gateway' : 'bridge above';
}

function piece(place: Place, atM: number): Piece {
  return { place, fromM: atM, toM: atM };
}

function sayWhat(kind: OverKind, tags: Place['tags'], group: Group): string {
  const name = tags['bridge:name'] ?? tags['name'] ?? tags['ref'];
  const what = `${NAMES[kind]}${name === undefined ? '' : ` (${name})`}`;
  if (kind === 'building') return `${what} is drawn over the road`;
  const several = new Set(group.map((one) => one.kind)).size > 1;
  return several ? `${what} and more beside it cross over the road` : `${what} crosses over the road`;
}

/** The underside of a building that leaves too little is. A height mapped on a bridge is not ours, unless nothing as high as that drives on it: then it may be meant for below. */
function ownFigure(input: RuleInput, group: readonly Above[]): { readonly say: string } | undefined {
  for (const { way, kind } of group) {
    if (kind === 'road' || kind === 'mainRoad') continue;
    const underside = undersideOf(input.roads.ways.tags[way] ?? {});
    if (underside?.kind === 'unreadable')
      return { say: ` "min_height=${underside.text}" of its underside cannot be read.` };
    if (underside !== undefined)
      return {
        say: ` Its underside is mapped at ${printMetres(underside.heightM, 'down')} (min_height=${underside.text}).`,
      };
    const claim = limitClaims(input.roads.ways.tags[way] ?? {}, ['height'], true).find(
      ({ reading }) =>
        reading.kind === 'value' &&
        reading.value > 1.5 &&
        reading.value < input.envelope.heightM + input.margins.heightM,
    );
    if (claim !== undefined)
      return {
        say: ` The bridge itself carries "${claim.key}=${claim.text}", which may be meant for the road below.`,
      };
  }
  return undefined;
}

/** City gates and the like mapped as a node on the road. */
function gatewayNodes(input: RuleInput): Draft[] {
  return passedNodes(input.drive, input.roads)
    .filter(({ tags, wayTags }) => isGateway(tags) && !hasHeight(tags) && !hasHeight(wayTags))
    .map((place) => ({
      subject: 'height',
      kind: 'gateway',
      level: 'unknown',
      again: 'folded',
      run: [{ place, fromM: place.fromM, toM: place.toM }],
      aspect: 'gateway',
      tags: pick(place.tags, ['historic', 'barrier', 'building', 'man_made', 'name']),
      say: 'The road runs through a gateway; no height or width is mapped there.',
      advice: `Look before you drive in; the vehicle needs ${printSizeM(input.envelope.heightM)} of height.`,
      vehicle: { value: input.card.heightM, unit: 'm', what: 'height as measured' },
    }));

  function hasHeight(tags: Place['tags']): boolean {
    return limitClaims(tags, ['height'], true).length > 0;
  }
}
