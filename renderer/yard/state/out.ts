import { computed, signal } from '@preact/signals';
import type { OutSheetShown } from '../../../main/contract/hand-over/hand-over-calls.ts';
import { ask } from '../../host/ask.ts';

/** The sheets as last looked at, barred ones first; those whose vehicle is back too. */
export const sheetsShown = signal<readonly OutSheetShown[]>([]);

/** Those that are out. */
export const sheetsOut = computed(() => sheetsShown.value.filter(({ standing }) => standing.kind !== 'back'));

/** Those of which something changed since. */
export const outChanged = computed(() => sheetsOut.value.filter(({ since }) => since.length > 0));

/** What is new or worse by sheet number, or why it could not be checked again. */
type Again = { readonly worse: readonly string[] } | { readonly problem: string };
export const again = signal<ReadonlyMap<string, Again>>(new Map());

/** Why the sheets cannot be looked at, one sentence for all of them. */
export const outSays = signal<string | undefined>(undefined);

export async function lookAtOut(): Promise<void> {
  const reply = await ask('sheetsOut', {});
  if (reply.ok) {
    sheetsShown.value = reply.value.sheets;
    outSays.value = reply.value.gone;
  } else outSays.value = reply.error.message;
}

/** Keeps that a sheet's vehicle is back, or is not. */
export async function tellBack(number: string, back: boolean): Promise<void> {
  const reply = await ask('sheetBack', { number, back });
  if (reply.ok) sheetsShown.value = reply.value.sheets;
  else again.value = new Map([...again.peek(), [number, { problem: reply.error.message }]]);
}

/** Checks again, one after the other, what changed and is still to be driven. */
export async function checkOut(signal: AbortSignal): Promise<void> {
  again.value = new Map();
  await lookAtOut();
  for (const { number, leaves } of outChanged.peek()) {
    if (signal.aborted) return;
    if (leaves === 'left' || outSays.peek() !== undefined) continue;
    const reply = await ask('worseThanSheet', { number }, { signal });
    if (signal.aborted) return;
    const told = reply.ok ? { worse: reply.value.worse } : { problem: reply.error.message };
    again.value = new Map([...again.peek(), [number, told]]);
  }
}
