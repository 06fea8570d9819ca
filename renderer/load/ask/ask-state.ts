import { computed, signal } from '@preact/signals';
import { askAbout } from '../../../geo/load/ask/ask-about.ts';
import { beginQuestion, piecesAsked, type Question } from '../../../geo/load/ask/question.ts';
import { settings } from '../../state/kept.ts';
import { aboard } from '../../state/loads.ts';
import { asked, loadCard } from '../state/state.ts';

export const question = signal<Question | undefined>(undefined);

/** The answer, as long as something is asked. */
export const answer = computed(() => {
  const [card, asks] = [loadCard.value, question.value];
  if (!card || !asks) return undefined;
  const pieces = piecesAsked(card, aboard.value, asks);
  return askAbout(card, aboard.value, pieces, settings.value.loadMarginKg);
});

/** Begins to ask about something, at its usual place. @param id '' ends the question */
export function askFor(id: string): void {
  const card = loadCard.peek();
  const begun = card && beginQuestion(card, aboard.peek(), id);
  if (begun) setQuestion(begun);
  else endQuestion();
}

export function setQuestion(next: Question): void {
  question.value = next;
  const card = loadCard.peek();
  asked.value = card ? piecesAsked(card, aboard.peek(), next) : [];
}

export function endQuestion(): void {
  question.value = undefined;
  asked.value = [];
}
