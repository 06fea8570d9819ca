import type { Drive } from '../../drive/drive.ts';
import type { DrivenTurn } from '../../drive/turns/driven-turn.ts';
import { findTurns, isSameRoad } from '../../drive/turns/find-turns.ts';
import { type MeasuredTurn, measureTurn } from '../../drive/turns/measure-turn.ts';
import type { About } from '../../report/kinds.ts';
import type { Turn } from '../../report/report.ts';
import type { Tags } from '../../roads/roads.ts';
import { swingVehicleOf } from '../../swing/swing-vehicle.ts';
import { isTwoWay } from '../../tags/carriageway.ts';
import { pick } from '../../tags/pick.ts';
import { isSiteRoad } from '../../tags/road-class.ts';
import type { Draft } from '../finding.ts';
import { type Place, roadName } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { runOf } from '../run.ts';
import { adviseTurn, sayTurn } from './say-turn.ts';

/** So many corners of a drive are shown, the worst; the others are folded away. */
const SHOWN = 5;
/** Under this weight a corner is a common one, and folded in any case. */
const WORTH_SHOWING = 1.05;
/** Room weighs most, then the lock it takes (at most 1), then how far the tail leaves its lane. Judgement. */
const ROOM_WEIGHT = { 'own lane': 0, 'other lane on the exit': 0.3, 'whole road': 0.7, shunt: 1.5 } as const;
const TAIL_WEIGHT_PER_M = 2;
/** Posts, walls and people stand beside a kerb, a middle line has only traffic that can be waited for. */
const KERB_WEIGHT_PER_M = 3;
/** The tail this far beyond its lane is worth a word. Metres. */
const WORTH_SAYING_M = 0.05;
/** Round a small ring there is no lane line to measure from: a swing of this much is worth a word. Metres. */
const RING_SWING_M = 0.3;
/** An even sweep at so many times the least radius is a gentle one, even where it takes the other lane for a moment. */
const GENTLE = 1.8;

/** What is said of one corner: `turn` where room is the matter, `swing` where the tail is. One finding a corner. */
export function turningRule(subject: 'turn' | 'swing'): SubjectRule {
  return (input) =>
    cornersOf(input)
      .filter((corner) => corner.subject === subject)
      .map(draftOf(input));
}

export interface Corner {
  readonly subject: 'turn' | 'swing';
  readonly measured: MeasuredTurn;
  readonly shown: boolean;
}

/** Both subjects ask of one check, and share the five that are shown. */
const asked = new WeakMap<RuleInput, readonly Corner[]>();

/** Every corner of the drive that is worth a word, in driving order. */
export function cornersOf(input: RuleInput): readonly Corner[] {
  const known = asked.get(input);
  if (known !== undefined) return known;
  const { drive, roads, along, card } = input;
  const vehicle = swingVehicleOf(card);
  const measuredAt = new Map<string, MeasuredTurn>();
  const told = findTurns(drive, roads).flatMap((driven) => {
    if (isParking(roads.ways.tags[driven.entry.way]) || isParking(roads.ways.tags[driven.exit.way]))
      return [];
    const again = driven.node < 0 ? undefined : measuredAt.get(cornerKey(driven));
    const measured = again
      ? { ...again, driven }
      : measureTurn(driven, roads, along.ruleAt(driven.atM), vehicle);
    measuredAt.set(cornerKey(driven), measured);
    const subject = subjectOf(measured, vehicle.lock.rearAxleRadiusM);
    if (subject === undefined) return [];
    const weight = weightOf(measured, vehicle.lock.rearAxleRadiusM);
    return [
      { subject, measured, weight: isOnSite(input, measured) || isUnsure(drive, driven.atM) ? 0 : weight },
    ];
  });
  const worst = worstOf(firstPasses(told));
  const shown = new Set(worst.map(({ measured }) => measured));
  const corners = told.map(({ subject, measured }) => ({
    subject,
    measured,
    shown: shown.has(measured),
  }));
  asked.set(input, corners);
  return corners;
}

/** The worst of all, the last place kept for the worst swing: a drive of shunts must not hide it. */
function worstOf<T extends { readonly subject: Corner['subject']; readonly weight: number }>(
  told: readonly T[],
): T[] {
  const ranked = told.filter(({ weight }) => weight >= WORTH_SHOWING).sort((a, b) => b.weight - a.weight);
  const worst = ranked.slice(0, SHOWN);
  const swing = ranked.find(({ subject }) => subject === 'swing');
  return swing === undefined || worst.includes(swing) ? worst : [...worst.slice(0, SHOWN - 1), swing];
}

/** Of several passes of one corner, the first: met again it is no news. */
function firstPasses<T extends { readonly measured: MeasuredTurn }>(told: readonly T[]): T[] {
  const met = new Set<string>();
  return told.filter(({ measured: { driven } }) => {
    const key = cornerKey(driven);
    if (driven.node >= 0 && met.has(key)) return false;
    met.add(key);
    return true;
  });
}

/** The same for every pass of one corner in one direction. */
function cornerKey({ node, entry, exit, kind, part, side, turnDeg }: DrivenTurn): string {
  return [node, entry.way, entry.forward, exit.way, exit.forward, kind, part, side, turnDeg.toFixed(1)].join(
    ' ',
  );
}

function subjectOf({ turn, besideM }: MeasuredTurn, lockM: number): Corner['subject'] | undefined {
  const spareM = turn.circleM === undefined ? besideM + WORTH_SAYING_M : RING_SWING_M;
  const tailOut = turn.swing.planM >= spareM;
  if (turn.room === 'own lane') return tailOut ? 'swing' : undefined;
  const gentle = turn.room === 'other lane on the exit' && turn.rearAxleRadiusM >= GENTLE * lockM;
  return gentle && !tailOut ? undefined : 'turn';
}

/**
 * How much a corner asks of the driver: where room is the matter, halfway between the usual figures for what is not
 * mapped and the roomiest they may stand for. A shunt that only usual figures ask for is no more than a tight turn: no alarm by guesswork.
 */
function weightOf({ turn, besideM, roomiest }: MeasuredTurn, lockM: number): number {
  const guessed = turn.room === 'shunt' && roomiest.room !== 'shunt';
  const usual = guessed
    ? { room: 'whole road' as const, rearAxleRadiusM: roomiest.rearAxleRadiusM, planM: roomiest.planM }
    : { room: turn.room, rearAxleRadiusM: turn.rearAxleRadiusM, planM: turn.swing.planM };
  const perM = turn.swing.side === turn.driveSide ? KERB_WEIGHT_PER_M : TAIL_WEIGHT_PER_M;
  const weigh = ({ room, rearAxleRadiusM, planM }: typeof usual | MeasuredTurn['roomiest']) => {
    const overM = turn.kind === 'u-turn' ? 0 : Math.max(0, planM - besideM);
    return ROOM_WEIGHT[room] + lockM / rearAxleRadiusM + perM * overM;
  };
  return turn.room === 'own lane' ? weigh(usual) : (weigh(usual) + weigh(roomiest)) / 2;
}

function isParking(tags: Tags | undefined): boolean {
  return /^(parking_aisle|driveway|drive-through)$/.test(tags?.['service'] ?? '');
}

/** Within a site nobody has mapped, every width is a guess. */
function isOnSite({ roads }: RuleInput, { driven, turn }: MeasuredTurn): boolean {
  const site = (way: number) => isSiteRoad(roads.ways.tags[way] ?? {});
  return (
    site(driven.entry.way) &&
    site(driven.exit.way) &&
    turn.entry.from === 'default' &&
    turn.exit.from === 'default'
  );
}

function isUnsure({ doubtful }: Drive, m: number): boolean {
  return doubtful.some(({ fromM, toM }) => m >= fromM && m <= toM);
}

const WIDTH_KEYS = ['width', 'width:carriageway', 'width:effective', 'est_width', 'lanes', 'highway'];

function draftOf(input: RuleInput): (corner: Corner) => Draft {
  return ({ subject, measured, shown }) => {
    const { turn, tags } = measured;
    const twoWay = isTwoWay(input.roads.ways.tags[measured.driven.entry.way] ?? {});
    return {
      ...aboutOf(subject, turn.room),
      // never more: the mouth of a junction and its kerbs are not mapped, and a driver may vary the lock
      level: 'care',
      run: runOf(placeOf(input, measured)),
      tags: pick(tags, WIDTH_KEYS),
      turn,
      aspect: `${sideways(measured)}${turn.side}`,
      say: sayTurn(measured, twoWay),
      advice: adviseTurn(measured, twoWay),
      folded: !shown,
    };
  };
}

function aboutOf(subject: Corner['subject'], room: Turn['room']): About<'turn' | 'swing'> {
  if (subject === 'swing' || room === 'own lane') return { subject: 'swing', kind: 'tail' };
  return { subject, kind: ROOM_KIND[room] };
}

const ROOM_KIND = {
  'other lane on the exit': 'other lane',
  'whole road': 'whole road',
  shunt: 'backing up',
} as const;

/** Part of the id: a roundabout's node may begin a flick and a ring. */
function sideways({ driven }: MeasuredTurn): string {
  return driven.part === undefined ? '' : `${driven.part}-`;
}

function placeOf({ roads }: RuleInput, { driven }: MeasuredTurn): Place {
  const { entry, exit, fromM, toM, node } = driven;
  const before = roads.ways.tags[entry.way] ?? {};
  const after = roads.ways.tags[exit.way] ?? {};
  const [from, to] = [roadName(before), roadName(after)];
  const into = isSameRoad(before, after) || to === undefined || from === to ? undefined : to;
  const at = { forward: entry.forward, fromM, toM, wayTags: before };
  const road = into === undefined ? from : from === undefined ? into : `${from} into ${into}`;
  if (node < 0)
    return {
      type: 'way',
      id: roads.ways.id[entry.way]!,
      index: entry.way,
      tags: before,
      road,
      ...at,
    };
  return {
    type: 'node',
    id: roads.nodes.id[node]!,
    index: node,
    tags: roads.nodes.tags.get(node) ?? {},
    road,
    ...at,
  };
}
