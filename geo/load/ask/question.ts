import { given } from '../../given.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import type { LoadItem } from '../list/load-list.ts';
import { isOneOf, numbered } from '../list/numbered.ts';
import { roundLitres } from '../list/with-mass.ts';
import { middleM, putExactly, putIn } from '../places/spots.ts';
import { seatPeople, usualSpot } from '../places/usual-spot.ts';
import { type Choice, choiceNamed } from './choices.ts';

/** What is asked about: a choice, one piece of it, how many. */
export interface Question {
  readonly choice: Choice;
  readonly one: LoadItem;
  readonly count: number;
}

export const COUNT_MOST = 12;
/** Of a liquid, litres to begin with. */
const LITRES_FIRST = 20;

/** A question about a choice, at its usual place: its tank, its seat, the rack, a locker, else the middle. */
export function beginQuestion(
  card: VehicleCard,
  aboard: readonly LoadItem[],
  choiceId: string,
): Question | undefined {
  const choice = choiceNamed(choiceId);
  if (!choice) return undefined;
  const { name, kind, massKg, byLitre } = choice;
  const tank = card.tanks?.find(({ holds }) => holds === kind);
  const one: LoadItem = {
    name,
    massKg: byLitre ? massKg * LITRES_FIRST : massKg,
    xM: middleM(card),
    ...given({ kind: kind === 'thing' ? undefined : kind, litres: byLitre ? LITRES_FIRST : undefined }),
  };
  const spot = tank ?? usualSpot(card, aboard, choice);
  return { choice, one: spot ? putIn(one, spot) : one, count: 1 };
}

/** The same question with another mass for each piece, kilograms: of a liquid the litres follow. */
export function askKg(question: Question, massKg: number): Question {
  const { choice, one } = question;
  const { litres: _, ...rest } = one;
  const litres = choice.byLitre && massKg > 0 ? roundLitres(massKg / choice.massKg) : undefined;
  return { ...question, one: { ...rest, massKg, ...given({ litres }) } };
}

/** The same question about so many litres. */
export function askLitres(question: Question, litres: number): Question {
  const { choice, one } = question;
  const some = Math.max(0, litres);
  return { ...question, one: { ...one, litres: some, massKg: some * choice.massKg } };
}

/** The same question at another distance behind the front axle, metres. */
export function askAt(question: Question, card: VehicleCard, xM: number): Question {
  return { ...question, one: putExactly(question.one, card, xM) };
}

/** What is asked about, one entry a piece; people take a seat each. */
export function piecesAsked(
  card: VehicleCard,
  aboard: readonly LoadItem[],
  { one, count }: Pick<Question, 'one' | 'count'>,
): readonly LoadItem[] {
  return seatPeople(card, aboard, piecesOf(one, count, aboard));
}

/** One entry a piece; several of a name are numbered on from those aboard. */
export function piecesOf(one: LoadItem, count: number, aboard: readonly LoadItem[]): readonly LoadItem[] {
  const same = aboard.filter(({ name }) => name === one.name || isOneOf(name, one.name)).length;
  if (count === 1 && same === 0) return [one];
  return Array.from({ length: count }, (_, i) => ({ ...one, name: numbered(one.name, same + i + 1) }));
}
