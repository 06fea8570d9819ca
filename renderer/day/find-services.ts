import { given } from '../../geo/given.ts';
import type { ServiceKind } from '../../geo/services/kinds.ts';
import type { Work } from '../../main/contract/work.ts';
import { checkAsked } from '../actions/recheck.ts';
import { ask } from '../host/ask.ts';
import { services } from '../state/day.ts';
import { settings } from '../state/kept.ts';

let running: AbortController | undefined;

/** Looks for places on the way. The latest question wins. */
export async function findServices(wanted: readonly ServiceKind[]): Promise<void> {
  const question = checkAsked.peek();
  if (!question || wanted.length === 0) return;
  hideServices();
  const stop = new AbortController();
  running = stop;
  const tell = ({ what, share, secondsLeft }: Work) => {
    if (running !== stop) return;
    services.value = { doing: { what, ...given({ share, secondsLeft }), stop: () => stop.abort() } };
  };
  tell({ what: 'Looking for places on the way' });
  const reply = await ask(
    'services',
    { ...question, wanted: [...wanted], prefer: settings.peek().prefer },
    { signal: stop.signal, onProgress: tell },
  );
  if (running !== stop) return;
  running = undefined;
  if (reply.ok) services.value = { found: reply.value };
  else services.value = reply.error.code === 'cancelled' ? undefined : { problem: reply.error.message };
}

/** Takes the places found off the screen, and ends looking for more. */
export function hideServices(): void {
  running?.abort();
  running = undefined;
  services.value = undefined;
}
