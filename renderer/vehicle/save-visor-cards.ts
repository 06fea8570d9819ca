import { ask } from '../host/ask.ts';
import { downloadFile } from '../host/download.ts';
import { said } from './fleet-work.ts';

/** Saves a visor card of every vehicle of the fleet, as one file to open and print. */
export async function saveVisorCards(): Promise<void> {
  const reply = await ask('visorCards', {});
  if (!reply.ok) {
    said.value = { kind: 'fault', text: reply.error.message };
    return;
  }
  downloadFile(new File([reply.value.html], 'visor-cards.html', { type: 'text/html' }));
  said.value = { kind: 'done', text: 'Visor cards saved, a page each: open the file and print it at 100 %.' };
}
