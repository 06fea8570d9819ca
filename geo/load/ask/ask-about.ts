import { ok, type Result } from '../../result.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { LIQUID_FACTS, LIQUIDS } from '../../vehicle/liquids.ts';
import { type Cures, cureOverload } from '../cure/cure.ts';
import type { ItemKind } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { PRESETS, type Preset } from '../list/presets.ts';
import type { LoadResult } from '../result.ts';
import { type AxleLoads, axleLoads } from '../weigh/axle-loads.ts';
import { type MostAt, mostAt } from '../weigh/most-at.ts';
import { weigh } from '../weigh/weigh.ts';

/** Something that may be asked about: a usual mass, a liquid by the litre, or anything else. */
export interface Choice {
  readonly id: string;
  readonly name: string;
  readonly kind: ItemKind;
  readonly goes: Preset['goes'];
  /** one of it; a litre of a liquid */
  readonly massKg: number;
  readonly source: string;
  readonly byLitre: boolean;
}

const GROUP_OF: Readonly<Record<Preset['goes'], string>> = {
  seat: 'People',
  rack: 'Outside and on the rack',
  outside: 'Outside and on the rack',
  roof: 'Outside and on the rack',
  locker: 'Things inside',
  'gas-locker': 'Things inside',
};

const liquids = LIQUIDS.map((kind): Choice => {
  const { name, kgPerL, source } = LIQUID_FACTS[kind];
  const upper = name.charAt(0).toUpperCase() + name.slice(1);
  return {
    id: kind,
    name: upper,
    kind,
    goes: kind === 'lpg' ? 'gas-locker' : 'locker',
    massKg: kgPerL,
    source,
    byLitre: true,
  };
});

const SOMETHING_ELSE: Choice = {
  id: 'else',
  name: 'Something else',
  kind: 'thing',
  goes: 'locker',
  massKg: 10,
  source: 'put it on a scale',
  byLitre: false,
};

/** The choices by group, as they are offered. */
export const CHOICES: readonly { readonly group: string; readonly choices: readonly Choice[] }[] = [
  ...['People', 'Outside and on the rack'].map((group) => ({ group, choices: presetsOf(group) })),
  { group: 'Water and other liquids', choices: liquids },
  { group: 'Things inside', choices: [...presetsOf('Things inside'), SOMETHING_ELSE] },
];

function presetsOf(group: string): Choice[] {
  return PRESETS.filter(({ goes }) => GROUP_OF[goes] === group).map((preset) => ({
    ...preset,
    byLitre: false,
  }));
}

export function choiceNamed(id: string): Choice | undefined {
  return CHOICES.flatMap(({ choices }) => choices).find((each) => each.id === id);
}

/** What is asked about, one entry a piece; several of a name are numbered on from those aboard. */
export function piecesOf(one: LoadItem, count: number, aboard: readonly LoadItem[]): readonly LoadItem[] {
  const same = aboard.filter(({ name }) => name === one.name || numbered(name, one.name)).length;
  if (count === 1 && same === 0) return [one];
  return Array.from({ length: count }, (_, i) => ({ ...one, name: `${one.name} ${same + i + 1}` }));
}

function numbered(name: string, stem: string): boolean {
  return name.startsWith(`${stem} `) && /^\d+$/.test(name.slice(stem.length + 1));
}

/** Can we take it? */
export interface Answer {
  readonly pieces: readonly LoadItem[];
  /** aboard with the pieces */
  readonly items: readonly LoadItem[];
  readonly result: LoadResult;
  /** what becomes doubtful with the pieces, as that something is counted twice */
  readonly doubts: readonly string[];
  /** what the pieces put on each axle */
  readonly change: AxleLoads;
  /** the most that can still be added at that place, as things are */
  readonly most: MostAt;
  /** what would have to be done for all the pieces to come; none where nothing is over */
  readonly cures: Cures;
}

const CURES_SHOWN = 3;
/** Enough to prove the smallest set for a family's load in the blink of an eye. */
const TRIALS = 60_000;

export function askAbout(
  card: VehicleCard,
  aboard: readonly LoadItem[],
  pieces: readonly LoadItem[],
): Result<Answer> {
  const before = weigh(card, aboard);
  if (!before.ok) return before;
  const items = [...aboard, ...pieces];
  const after = weigh(card, items);
  if (!after.ok) return after;
  const cures = curesFor(card, aboard, pieces);
  if (!cures.ok) return cures;
  return ok({
    pieces,
    items,
    result: after.value,
    doubts: after.value.warnings.filter(
      (each) => !before.value.warnings.includes(each) && !/ is over its plate by /.test(each),
    ),
    change: axleLoads({ frontKg: 0, rearKg: 0 }, pieces, card.wheelbaseM),
    most: mostAt(card, before.value, pieces[0]?.xM ?? 0),
    cures: cures.value,
  });
}

/** The ways out that take everything asked about along: to leave it behind is no answer. */
function curesFor(
  card: VehicleCard,
  aboard: readonly LoadItem[],
  pieces: readonly LoadItem[],
): Result<Cures> {
  const wanted = CURES_SHOWN + pieces.length;
  const found = cureOverload(card, [...aboard, ...pieces], { trials: TRIALS, wanted });
  if (!found.ok || found.value.cures.length === 0) return found;
  const cures = found.value.cures.filter(
    ({ steps }) => !steps.some((step) => step.kind === 'leave' && pieces.includes(step.item)),
  );
  if (cures.length > 0) return ok({ ...found.value, cures: cures.slice(0, CURES_SHOWN) });
  // leaving them is the shortest way: looked for again with the pieces where they are, as people are
  const fixed = pieces.map((piece): LoadItem => ({ ...piece, kind: 'person' }));
  const others = cureOverload(card, [...aboard, ...fixed], { trials: TRIALS, wanted: CURES_SHOWN });
  if (!others.ok) return others;
  const back = (item: LoadItem) => pieces[fixed.indexOf(item)] ?? item;
  return ok({
    ...others.value,
    cures: others.value.cures.map((cure) => ({ ...cure, items: cure.items.map(back) })),
  });
}
