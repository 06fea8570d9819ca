import { capital } from '../../units/text.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { LIQUID_FACTS, LIQUIDS } from '../../vehicle/liquids.ts';
import type { ItemKind } from '../list/item-kind.ts';
import { type Goes, PRESETS } from '../list/presets.ts';

/** Something that may be asked about: a usual mass, a liquid by the litre, or anything else. */
export interface Choice {
  readonly id: string;
  readonly name: string;
  readonly kind: ItemKind;
  readonly goes: Goes;
  /** one of it; a litre of a liquid */
  readonly massKg: number;
  readonly source: string;
  readonly byLitre: boolean;
  /** a rack is in it */
  readonly holdsRack?: true;
}

/** Choices that are offered together. */
interface ChoiceGroup {
  readonly title: string;
  readonly choices: readonly Choice[];
}

const LIQUID_CHOICES = LIQUIDS.map((kind): Choice => {
  const { name, kgPerL, source } = LIQUID_FACTS[kind];
  return {
    id: kind,
    name: capital(name),
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
export const CHOICES: readonly ChoiceGroup[] = [
  { title: 'People', choices: presetsGoing('seat') },
  { title: 'Outside and on the rack', choices: presetsGoing('rack', 'outside', 'roof') },
  { title: 'Water and other liquids', choices: LIQUID_CHOICES },
  { title: 'Things inside', choices: [...presetsGoing('locker', 'gas-locker'), SOMETHING_ELSE] },
];

function presetsGoing(...where: readonly Goes[]): Choice[] {
  return PRESETS.filter(({ goes }) => where.includes(goes)).map((preset) => ({ ...preset, byLitre: false }));
}

/** The choices for one vehicle: none holds a rack that is fitted, and so in its empty weight, once more. */
export function choicesFor({ rack }: Pick<VehicleCard, 'rack'>): readonly ChoiceGroup[] {
  if (rack?.fitted !== true) return CHOICES;
  return CHOICES.map(({ title, choices }) => ({
    title,
    choices: choices.filter(({ holdsRack }) => holdsRack !== true),
  }));
}

export function choiceNamed(id: string): Choice | undefined {
  return CHOICES.flatMap(({ choices }) => choices).find((each) => each.id === id);
}
