import { ok, type Result } from '../../result.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { CURES_SHOWN, type Cures, cureOverload, TRIALS_AT_HAND } from '../cure/cure.ts';
import type { Doubt } from '../doubts/doubt.ts';
import { loadAsItStands } from '../doubts/load-with-doubts.ts';
import type { LoadItem } from '../list/load-list.ts';
import { type AxleLoads, axleLoads } from '../weigh/axle-loads.ts';
import type { LoadFigures } from '../weigh/figures.ts';
import { type MostAt, mostAt } from '../weigh/most-at.ts';
import { decidingOf, type PlateSum, sumsOf } from '../weigh/sums.ts';

/** Can we take it? */
export interface Answer {
  /** whether everything comes along as it is asked, with every plate and place kept */
  readonly fits: boolean;
  /** what stands in the way, else what decides */
  readonly decides: readonly PlateSum[];
  readonly pieces: readonly LoadItem[];
  /** aboard with the pieces */
  readonly items: readonly LoadItem[];
  readonly result: LoadFigures;
  /** what becomes doubtful with the pieces, as that something is counted twice; the plates are in `decides` */
  readonly doubts: readonly Doubt[];
  /** what the pieces put on each axle */
  readonly change: AxleLoads;
  /** the most that can still be added at that place, as things are */
  readonly most: MostAt;
  /** what would have to be done for all the pieces to come; none where nothing is over */
  readonly cures: Cures;
}

/** What becomes of the vehicle with some pieces more, and what would have to be done for them. */
export function askAbout(
  card: VehicleCard,
  aboard: readonly LoadItem[],
  pieces: readonly LoadItem[],
  marginKg = 0,
): Result<Answer> {
  const before = loadAsItStands(card, aboard);
  if (!before.ok) return before;
  const items = [...aboard, ...pieces];
  const after = loadAsItStands(card, items);
  if (!after.ok) return after;
  const cures = curesFor(card, aboard, pieces, marginKg);
  if (!cures.ok) return cures;
  const over = sumsOf(after.value).filter((sum) => sum.over);
  return ok({
    fits: over.length === 0 && cures.value.cures.length === 0,
    decides: over.length > 0 ? over : [decidingOf(after.value)],
    pieces,
    items,
    result: after.value,
    doubts: newDoubts(before.value.doubts, after.value.doubts),
    change: axleLoads({ frontKg: 0, rearKg: 0 }, pieces, card.wheelbaseM),
    most: mostAt(card, before.value, pieces[0]?.xM ?? 0),
    cures: cures.value,
  });
}

/** Doubts that did not stand before, figure by figure; those about the plates aside. */
function newDoubts(before: readonly Doubt[], after: readonly Doubt[]): Doubt[] {
  const stood = new Set(before.map((doubt) => JSON.stringify(doubt)));
  return after.filter((doubt) => doubt.kind !== 'over plate' && !stood.has(JSON.stringify(doubt)));
}

/** The ways out that take everything asked about along: to leave it behind is no answer. */
function curesFor(
  card: VehicleCard,
  aboard: readonly LoadItem[],
  pieces: readonly LoadItem[],
  marginKg: number,
): Result<Cures> {
  const wanted = CURES_SHOWN + pieces.length;
  const found = cureOverload(card, [...aboard, ...pieces], { trials: TRIALS_AT_HAND, wanted, marginKg });
  if (!found.ok || found.value.cures.length === 0) return found;
  const cures = found.value.cures.filter(
    ({ steps }) => !steps.some((step) => step.kind === 'leave' && pieces.includes(step.item)),
  );
  if (cures.length > 0) return ok({ ...found.value, cures: cures.slice(0, CURES_SHOWN) });
  // leaving them is the shortest way: looked for again with the pieces where they are, as people are
  const fixed = pieces.map((piece): LoadItem => ({ ...piece, kind: 'person' }));
  const others = cureOverload(card, [...aboard, ...fixed], {
    trials: TRIALS_AT_HAND,
    wanted: CURES_SHOWN,
    marginKg,
  });
  if (!others.ok) return others;
  const back = (item: LoadItem) => pieces[fixed.indexOf(item)] ?? item;
  return ok({
    ...others.value,
    cures: others.value.cures.map((cure) => ({ ...cure, items: cure.items.map(back) })),
  });
}
