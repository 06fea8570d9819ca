import { checkDrive } from '../../check.ts';
import type { Span } from '../../drive/drive.ts';
import { secondsAt } from '../../drive/times/timetable.ts';
import { given } from '../../given.ts';
import type { Finding } from '../../report/finding.ts';
import { nearPart } from '../along/near-part.ts';
import { lengthOf, splice } from '../along/splice.ts';
import { priceS } from '../price/judged.ts';
import { addTo, type Overlay, turnKey } from '../search/overlay.ts';
import type { FoundDetour } from './find-detour.ts';
import type { Trip } from './trip.ts';
import { turnKinds } from './turn-kinds.ts';

/** A way found, with what the check of the whole trip says of it. */
export interface JudgedWay {
  readonly detour: FoundDetour;
  readonly lengthM: number;
  /** of the whole trip against the drive as it is, by the timetable, whole seconds; judged near the way alone, what it costs */
  readonly extraS: number;
  /** on the way, metres along the whole trip */
  readonly findings: readonly Finding[];
  /** barred on the way, or barred elsewhere because of it */
  readonly bars: readonly Finding[];
}

/** Rounding of places along a drive. Metres. */
const SAME_PLACE_M = 0.5;

/** Judges a way as a part of the whole trip, by the checker itself. */
export function judgeWay(trip: Trip, detour: FoundDetour): JudgedWay {
  const { field, input, totalS } = trip;
  const { check } = input;
  const drive = splice(trip.drive, detour, check.roads, field.costs.graph);
  const { findings, timetable } = checkDrive({ ...check, drive });
  return {
    ...heldAgainst(trip, detour, findings),
    extraS: (timetable?.drivingS ?? totalS) - Math.round(totalS),
  };
}

/** The same with no more of the drive than lies close to the way: nearly the same answer for much less work. */
export function judgeNearWay(trip: Trip, detour: FoundDetour): JudgedWay {
  const { field, input } = trip;
  const { check } = input;
  const near = nearPart(trip.drive, detour);
  const moved = { ...detour, fromM: detour.fromM - near.byM, toM: detour.toM - near.byM };
  const drive = splice(near.drive, moved, check.roads, field.costs.graph);
  const leaving = check.leaving && {
    ...check.leaving,
    unixMs: check.leaving.unixMs + 1000 * secondsAt(trip.times, near.byM),
  };
  const judged = checkDrive({ ...check, drive, ...given({ leaving }) });
  const findings = judged.findings.map((finding) => ({
    ...finding,
    fromM: finding.fromM + near.byM,
    toM: finding.toM + near.byM,
  }));
  // the drive's own times of both ends are not those of a part; what the way costs stands for the time
  return { ...heldAgainst(trip, detour, findings), extraS: detour.costTenths / 10 };
}

function heldAgainst(trip: Trip, detour: FoundDetour, all: readonly Finding[]): Omit<JudgedWay, 'extraS'> {
  const lengthM = lengthOf(detour.parts);
  const endM = detour.fromM + lengthM;
  const findings = all.filter(
    ({ fromM, toM }) =>
      toM > detour.fromM - SAME_PLACE_M &&
      fromM < endM + SAME_PLACE_M &&
      isOnWay({ fromM, toM }, { fromM: detour.fromM, toM: endM }),
  );
  const known = new Set(trip.input.report.findings.filter(({ level }) => level === 'barred').map(placeless));
  const bars = all.filter(
    (finding) => finding.level === 'barred' && (findings.includes(finding) || !known.has(placeless(finding))),
  );
  return { detour, lengthM, findings, bars };
}

/** A span has to reach into the way; a point may lie at its ends, where it is turned. */
function isOnWay(span: Span, way: Span): boolean {
  if (span.toM - span.fromM <= SAME_PLACE_M) return true;
  return Math.min(span.toM, way.toM) - Math.max(span.fromM, way.fromM) > SAME_PLACE_M;
}

/** The same finding wherever the drive has come to it, and however often. */
function placeless({ subject, kind, osm }: Finding): string {
  return JSON.stringify([subject, kind, osm]);
}

/** Less than this is no reason to search again: it is priced where it is met next. Tenths of seconds. */
const WORTH_SEARCHING = 300;

/** What one question has been told by checks of whole trips. */
export interface Lessons {
  readonly overlay: Overlay;
  readonly learnt: Set<string>;
  /** what is tight or unknown is absent */
  readonly doubtFree: boolean;
}

/**
 * Takes what the check says beyond the road's own tags into the prices of one question: what bars is absent from now on,
 * what lies over or beside the road, and corners that take room, cost.
 * @returns whether anything was new
 */
export function learn(
  trip: Pick<Trip, 'steps'>,
  judged: JudgedWay,
  { overlay, learnt, doubtFree }: Lessons,
): boolean {
  let news = false;
  const told = [...judged.bars, ...judged.findings.filter(({ level }) => level !== 'barred')];
  for (const finding of told) {
    const tenths = doubtFree && isDoubt(finding) ? Number.POSITIVE_INFINITY : tenthsOf(finding);
    if (tenths === 0) continue;
    for (const place of placesOf(trip, judged, finding)) {
      const key = `${finding.subject} ${finding.kind} ${place.turn ? 't' : 'e'}${place.key}`;
      if (learnt.has(key)) continue;
      learnt.add(key);
      addTo(place.turn ? overlay.turns : overlay.edges, place.key, tenths);
      news ||= tenths >= WORTH_SEARCHING;
    }
  }
  return news;
}

function tenthsOf(finding: Finding): number {
  if (finding.level === 'barred') return Number.POSITIVE_INFINITY;
  if (finding.subject === 'turn' || finding.subject === 'swing') return 10 * turnKinds(finding);
  return finding.folded !== true && isBeyondTags(finding) ? 10 * priceS(finding) : 0;
}

/** Said of what lies over, beside or around the road: no road's own tags tell it. */
export function isBeyondTags({ subject, kind, level }: Finding): boolean {
  if (level === 'care') return false;
  return subject === 'zone' || BEYOND_TAGS.has(kind);
}

const BEYOND_TAGS: ReadonlySet<Finding['kind']> = new Set([
  'bridge above',
  'building above',
  'gateway',
  'roof',
  'sign',
  'may be soft',
  'soft pitch',
  'pitch',
  'tunnel',
  'break of slope',
]);

/** What a way to be offered as free of doubt may not hold. */
export function isDoubt({ level, folded, kind }: Finding): boolean {
  return (level === 'tight' || level === 'unknown') && folded !== true && kind !== 'incomplete';
}

interface LearntPlace {
  readonly turn: boolean;
  readonly key: number;
}

/** The edges of the way that a finding lies on, the first alone for a price; a point or a turn is a pair of edges. */
function placesOf(
  { steps }: Pick<Trip, 'steps'>,
  { detour, lengthM }: JudgedWay,
  finding: Finding,
): LearntPlace[] {
  const before = steps.findLast(({ toM }) => toM <= detour.fromM + SAME_PLACE_M);
  const after = steps.find(({ fromM }) => fromM >= detour.toM - SAME_PLACE_M);
  const chain: { readonly directed: number; readonly fromM: number; readonly toM: number }[] = [];
  let at = detour.fromM;
  if (before !== undefined)
    chain.push({ directed: before.directed, fromM: at - (before.toM - before.fromM), toM: at });
  for (const part of detour.parts) {
    chain.push({ directed: part.directed, fromM: at, toM: at + part.toM - part.fromM });
    at += part.toM - part.fromM;
  }
  if (after !== undefined)
    chain.push({ directed: after.directed, fromM: at, toM: at + after.toM - after.fromM });
  const middleM = (finding.fromM + finding.toM) / 2;
  const isPoint =
    finding.toM - finding.fromM < SAME_PLACE_M || finding.subject === 'turn' || finding.subject === 'swing';
  if (isPoint) {
    const turns = chain.flatMap((edge, i) => {
      const next = chain[i + 1];
      return next === undefined
        ? []
        : [{ awayM: Math.abs(edge.toM - middleM), key: turnKey(edge.directed, next.directed) }];
    });
    const nearest = turns.sort((a, b) => a.awayM - b.awayM)[0];
    return nearest === undefined ? [] : [{ turn: true, key: nearest.key }];
  }
  const own = chain.filter(
    ({ fromM, toM }) =>
      Math.min(toM, finding.toM) - Math.max(fromM, finding.fromM) > SAME_PLACE_M &&
      toM > detour.fromM + SAME_PLACE_M &&
      fromM < detour.fromM + lengthM - SAME_PLACE_M,
  );
  if (own.length === 0) {
    // barred off the way because of it: the way's last turn leads there
    const [last, next] = [chain.at(-2), chain.at(-1)];
    return last === undefined || next === undefined
      ? []
      : [{ turn: true, key: turnKey(last.directed, next.directed) }];
  }
  const edges = own.map(({ directed }) => ({ turn: false, key: directed }));
  return finding.level === 'barred' ? edges : edges.slice(0, 1);
}
