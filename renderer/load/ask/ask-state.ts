import { computed, signal } from '@preact/signals';
import { askAbout, type Choice, choiceNamed, piecesOf } from '../../../geo/load/ask/ask-about.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { middleM, putIn, seatPeople, usualSpot } from '../../../geo/load/places/spots.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { vehicle } from '../../state/kept.ts';
import { aboard } from '../../state/loads.ts';
import { asked } from '../state/state.ts';

/** What the question is about: a choice, one piece of it, how many. */
export interface Question {
  readonly choice: Choice;
  readonly one: LoadItem;
  readonly count: number;
}

export const COUNT_MOST = 12;
/** A tankful to begin with. */
const LITRES_FIRST = 20;

export const question = signal<Question | undefined>(undefined);

/** The answer, as long as something is asked. */
export const answer = computed(() => {
  const [card, asks] = [vehicle.value?.card, question.value];
  if (!card || !asks) return undefined;
  return askAbout(card, aboard.value, piecesAsked(card, asks));
});

function piecesAsked(card: VehicleCard, { one, count }: Question): readonly LoadItem[] {
  return seatPeople(card, aboard.value, piecesOf(one, count, aboard.value));
}

/** Begins to ask about something, at its usual place. @param id '' puts the question away */
export function askFor(id: string): void {
  const [card, choice] = [vehicle.peek()?.card, choiceNamed(id)];
  if (!card || !choice) {
    putQuestionAway();
    return;
  }
  const tank = card.tanks?.find(({ holds }) => holds === choice.kind);
  const spot = tank ?? usualSpot(card, aboard.peek(), choice.goes, choice.kind);
  const { name, kind, massKg, byLitre } = choice;
  const one: LoadItem = {
    name,
    massKg: byLitre ? massKg * LITRES_FIRST : massKg,
    xM: middleM(card),
    ...(kind === 'thing' ? {} : { kind }),
    ...(byLitre ? { litres: LITRES_FIRST } : {}),
  };
  set({ choice, one: spot ? putIn(one, { ...spot, what: 'locker' }) : one, count: 1 });
}

export function set(next: Question): void {
  question.value = next;
  const card = vehicle.peek()?.card;
  asked.value = card ? piecesAsked(card, next) : [];
}

export function putQuestionAway(): void {
  question.value = undefined;
  asked.value = [];
}
