import { oncePerDrive } from '../../drive/once-per-drive.ts';
import type { Roads } from '../../roads/roads.ts';
import { type SwingVehicle, swingVehicleOf } from '../../swing/swing-vehicle.ts';
import type { RuleInput } from '../rule.ts';
import { type DrivenCorner, drivenCorners } from './driven-corners.ts';
import { type MeasuredTurn, measureTurn } from './measure-turn.ts';
import { siteOf } from './site.ts';
import { subjectOf, weightOf } from './weigh-corner.ts';

/** So many corners of a drive are shown, the worst; the others are folded away. */
const SHOWN = 5;
/** Under this weight a corner is a common one, and folded in any case. */
const WORTH_SHOWING = 1.05;
/** A fleet has so many shapes, and a card that is being filled in a few more. */
const MOST_SHAPES = 64;

/** A corner that is worth a word. */
export interface Corner {
  /** one finding a corner: `turn` where room is the matter, `swing` where the tail is */
  readonly subject: 'turn' | 'swing';
  readonly measured: MeasuredTurn;
  readonly shown: boolean;
}

interface WeighedCorner extends Omit<Corner, 'shown'> {
  readonly of: DrivenCorner;
  readonly weight: number;
}

/** Both subjects ask, and so does every vehicle of the same shape: worked out once a drive. */
const known = oncePerDrive(() => new Map<string, readonly Corner[]>());

/** Every corner of the drive that is worth a word, in driving order. */
export function cornersOf(input: RuleInput): readonly Corner[] {
  const { drive, roads, along, card } = input;
  const vehicle = swingVehicleOf(card);
  const shape = JSON.stringify({ ...vehicle, name: '' });
  const countries = drivenCorners(drive, roads).map(({ driven }) => along.countryAt(driven.atM));
  return keptIn(known(drive, roads), `${countries} ${shape}`, () => {
    const weighed = weighCorners(input, vehicle, measuredFor(roads, shape));
    const worst = new Set(worstOf(firstPasses(weighed)));
    return weighed.map((corner) => ({
      subject: corner.subject,
      measured: corner.measured,
      shown: worst.has(corner),
    }));
  });
}

function keptIn<T>(kept: Map<string, T>, key: string, make: () => T): T {
  const before = kept.get(key);
  if (before !== undefined) return before;
  if (kept.size >= MOST_SHAPES) kept.clear();
  const made = make();
  kept.set(key, made);
  return made;
}

/** Corners measured for one shape on one map: a drive checked again with a part of it changed meets most of them again. */
const measuredOn = new WeakMap<Roads, Map<string, Map<string, MeasuredTurn>>>();

function measuredFor(roads: Roads, shape: string): Map<string, MeasuredTurn> {
  const byShape = measuredOn.get(roads) ?? new Map<string, Map<string, MeasuredTurn>>();
  measuredOn.set(roads, byShape);
  return keptIn(byShape, shape, () => new Map<string, MeasuredTurn>());
}

function weighCorners(
  { drive, roads, along }: RuleInput,
  vehicle: SwingVehicle,
  measuredAt: Map<string, MeasuredTurn>,
): WeighedCorner[] {
  const lockM = vehicle.lock.rearAxleRadiusM;
  return drivenCorners(drive, roads).flatMap((of) => {
    const { driven } = of;
    const key = `${along.countryAt(driven.atM)} ${of.drawn}`;
    const again = driven.node < 0 ? undefined : measuredAt.get(key);
    const measured = again
      ? { ...again, driven }
      : measureTurn({ ...siteOf(driven, roads, along.ruleAt(driven.atM)), vehicle });
    if (driven.node >= 0) measuredAt.set(key, measured);
    const subject = subjectOf(measured, lockM);
    if (subject === undefined) return [];
    const isGuess = of.unsure || (of.onSite && isAllGuessed(measured));
    return [{ of, subject, measured, weight: isGuess ? 0 : weightOf(measured, lockM) }];
  });
}

/** Within a site nobody has mapped, every width is a guess. */
function isAllGuessed({ turn }: MeasuredTurn): boolean {
  return turn.entry.from === 'default' && turn.exit.from === 'default';
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
  return corners.filter(({ of: { driven, corner } }) => {
    if (driven.node >= 0 && met.has(corner)) return false;
    met.add(corner);
    return true;
  });
}
