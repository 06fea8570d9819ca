import { ask } from '../../host/ask.ts';
import { lookAtNotes } from '../../notes/begin.ts';
import { vehicles } from '../../state/kept.ts';
import { loads } from '../../state/loads.ts';
import { notesChanged } from '../../state/notes.ts';
import { change } from './work.ts';

/** Keeps one version of something; what else of the window shows it shows that one. */
export async function chooseVersion(id: string, version: string): Promise<void> {
  if (!(await change('chooseVersion', { id, version }))) return;
  const reply = await ask('describe', {});
  if (reply.ok) {
    vehicles.value = reply.value.vehicles;
    loads.value = Object.fromEntries(reply.value.loads.map(({ vehicleId, items }) => [vehicleId, items]));
  }
  await lookAtNotes();
  notesChanged.value++;
}
