import { stretchesOf } from '../../drive/match/lay-legs.ts';
import type { EdgePart } from '../../drive/match/trace-paths.ts';
import { nameRoad } from '../../drive/name-road.ts';
import { placeDriven } from '../../drive/point-at.ts';
import { given } from '../../given.ts';
import type { Finding } from '../../report/finding.ts';
import { countByLevel } from '../../report/level.ts';
import { spareUnit, tightestOf } from '../../report/tightest.ts';
import { verdictOf } from '../../report/verdict.ts';
import type { WayRound } from '../../report/way-round.ts';
import type { Roads } from '../../roads/roads.ts';
import type { TurnGraph } from '../graph/turn-graph.ts';
import type { JudgedWay } from './judge-way.ts';
import type { Trip } from './trip.ts';

/** A way as the report has it. */
export function tellWay(
  trip: Trip,
  { detour, lengthM, extraS, findings }: JudgedWay,
  findingIds: readonly string[],
): WayRound {
  const { roads } = trip.input.check;
  const { graph } = trip.field.costs;
  const { fromM, toM, parts } = detour;
  const own = findings.map((finding) => onWay(finding, fromM, lengthM));
  const verdict = verdictOf(own);
  const { tight, unknown, care } = countByLevel(own);
  return {
    findingIds: [...findingIds],
    fromM,
    toM,
    lengthM,
    extraM: lengthM - (toM - fromM),
    extraS,
    roads: stretchesOf(parts, 0, graph).map((stretch) => ({
      way: roads.ways.id[stretch.way]!,
      forward: stretch.forward,
      fromM: stretch.fromM,
      toM: stretch.toM,
      ...signedAs(roads, stretch.way),
    })),
    path: parts.length > 0 ? pathOf(parts, roads, graph) : placeAt(trip, fromM),
    // a way with a bar is never told
    verdict: verdict === 'barred' ? 'unknown' : verdict,
    counts: { barred: 0, tight, unknown, care },
    ...given({ tightest: tellTightest(own) }),
    findings: own,
  };
}

/** What signposts call it. */
function signedAs(roads: Roads, way: number): { readonly name?: string; readonly ref?: string } {
  const { class: _, ...called } = nameRoad(roads, way);
  return called;
}

function onWay(finding: Finding, startM: number, lengthM: number): Finding {
  const along = (m: number) => Math.min(lengthM, Math.max(0, m - startM));
  return { ...finding, fromM: along(finding.fromM), toM: along(finding.toM) };
}

/** A way without a road of its own only leaves a loop of the drive out: it is the place where that begins and ends. */
function placeAt({ drive, input }: Trip, atM: number): [number, number][] {
  const { lat, lon } = placeDriven(drive, input.check.roads, atM);
  return [[lat, lon]];
}

/** Every node passed, both ends included. Degrees. */
export function pathOf(parts: readonly EdgePart[], roads: Roads, graph: TurnGraph): [number, number][] {
  const path: [number, number][] = [];
  for (const { directed } of parts) {
    const refs = [
      ...roads.ways.refs.subarray(graph.firstRef[directed >> 1]!, graph.lastRef[directed >> 1]! + 1),
    ];
    if (directed % 2 === 1) refs.reverse();
    for (const node of path.length === 0 ? refs : refs.slice(1))
      path.push([roads.nodes.lat[node]!, roads.nodes.lon[node]!]);
  }
  return path;
}

function tellTightest(findings: readonly Finding[]): WayRound['tightest'] {
  const least = tightestOf(findings);
  if (least === undefined) return undefined;
  const { subject, kind, spare, say } = least;
  return { subject, kind, spare, unit: spareUnit(least), say };
}
