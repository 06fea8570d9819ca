import type { Drive } from '../../drive/drive.ts';
import type { DrivenTurn } from '../../drive/turns/driven-turn.ts';
import { findTurns } from '../../drive/turns/find-turns.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { swingVehicleOf } from '../../swing/swing-vehicle.ts';
import { isSiteRoad } from '../../tags/road-class.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import type { RuleInput } from '../rule.ts';
import { type MeasuredTurn, measureTurn } from './measure-turn.ts';
import { siteOf } from './site.ts';
import { subjectOf, weightOf } from './weigh-corner.ts';

/** So many corners of a drive are shown, the worst; the others are folded away. */
const SHOWN = 5;
/** Under this weight a corner is a common one, and folded in any case. */
const WORTH_SHOWING = 1.05;

/** A corner that is worth a word. */
export interface Corner {
  /** one finding a corner: `turn` where room is the matter, `swing` where the tail is */
  readonly subject: 'turn' | 'swing';
  readonly measured: MeasuredTurn;
  readonly shown: boolean;
}

interface WeighedCorner extends Omit<Corner, 'shown'> {
  readonly weight: number;
}

/** Both subjects ask of one check, and share the five that are shown. */
const asked = new WeakMap<RuleInput, readonly Corner[]>();

/** Every corner of the drive that is worth a word, in driving order. */
export function cornersOf(input: RuleInput): readonly Corner[] {
  const known = asked.get(input);
  if (known !== undefined) return known;
  const weighed = weighCorners(input);
  const worst = new Set(worstOf(firstPasses(weighed)));
  const corners = weighed.map((corner) => ({
    subject: corner.subject,
    measured: corner.measured,
    shown: worst.has(corner),
  }));
  asked.set(input, corners);
  return corners;
}

/** Corners measured for one vehicle on one map: a drive checked again with a part of it changed meets most of them again. */
const measuredOn = new WeakMap<Roads, WeakMap<VehicleCard, Map<string, MeasuredTurn>>>();

function measuredFor(roads: Roads, card: VehicleCard): Map<string, MeasuredTurn> {
  const byCard = measuredOn.get(roads) ?? new WeakMap<VehicleCard, Map<string, MeasuredTurn>>();
  measuredOn.set(roads, byCard);
  const known = byCard.get(card) ?? new Map<string, MeasuredTurn>();
  byCard.set(card, known);
  return known;
}

function weighCorners(input: RuleInput): WeighedCorner[] {
  const { drive, roads, along, card } = input;
  const vehicle = swingVehicleOf(card);
  const lockM = vehicle.lock.rearAxleRadiusM;
  const measuredAt = measuredFor(roads, card);
  return findTurns(drive, roads).flatMap((driven) => {
    if (isParking(roads.ways.tags[driven.entry.way]) || isParking(roads.ways.tags[driven.exit.way]))
      return [];
    const key = `${along.countryAt(driven.atM)} ${driven.drawnRadiusM} ${driven.unmeasured} ${driven.apartM} ${cornerKey(driven)}`;
    const again = driven.node < 0 ? undefined : measuredAt.get(key);
    const measured = again
      ? { ...again, driven }
      : measureTurn(siteOf(driven, roads, along.ruleAt(driven.atM), vehicle));
    if (driven.node >= 0) measuredAt.set(key, measured);
    const subject = subjectOf(measured, lockM);
    if (subject === undefined) return [];
    const isGuess = isOnSite(input, measured) || isUnsure(drive, driven.atM);
    return [{ subject, measured, weight: isGuess ? 0 : weightOf(measured, lockM) }];
  });
}

/** The worst of all, the last place kept for the worst swing: a drive of tight turns must not hide it. */
function worstOf(corners: readonly WeighedCorner[]): WeighedCorner[] {
  const ranked = corners.filter(({ weight }) => weight >= WORTH_SHOWING).sort((a, b) => b.weight - a.weight);
  const worst = ranked.slice(0, SHOWN);
  const swing = ranked.find(({ subject }) => subject === 'swing');
  return swing === undefined || worst.includes(swing) ? worst : [...worst.slice(0, SHOWN - 1), swing];
}

/** Of several passes of one corner, the first: met again it is no news. */
function firstPasses(corners: readonly WeighedCorner[]): WeighedCorner[] {
  const met = new Set<string>();
  return corners.filter(({ measured: { driven } }) => {
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

const PARKING_SERVICES = new Set(['parking_aisle', 'driveway', 'drive-through']);

function isParking(tags: Tags | undefined): boolean {
  return PARKING_SERVICES.has(tags?.['service'] ?? '');
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
