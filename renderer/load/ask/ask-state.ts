import { computed, signal } from '@preact/signals';
import { askAbout } from '../../../geo/load/ask/ask-about.ts';
import { beginQuestion, piecesAsked, type Question } from '../../../geo/load/ask/question.ts';
import { vehicle } from '../../state/kept.ts';
import { aboard } from '../../state/loads.ts';
import { asked } from '../state/state.ts';

export const question = signal<Question | undefined>(undefined);

/** The answer, as long as something is asked. */
export const answer = computed(() => {
  const [card, asks] = [vehicle.value?.card, question.value];
  if (!card || !asks) return undefined;
  return askAbout(card, aboard.value, piecesAsked(card, aboard.value, asks));
});

/** Begins to ask about something, at its usual place. @param id '' ends the question */
export function askFor(id: string): void {
  const card = vehicle.peek()?.card;
  const begun = card && beginQuestion(card, aboard.peek(), id);
  if (begun) setQuestion(begun);
  else endQuestion();
}

export function setQuestion(next: Question): void {
  question.value = next;
  const card = vehicle.peek()?.card;
  asked.value = card ? piecesAsked(card, aboard.peek(), next) : [];
}

export function endQuestion(): void {
  question.value = undefined;
  asked.value = [];
}
