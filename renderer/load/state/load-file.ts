import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { clip } from '../../../geo/units/text.ts';
import { LOAD_MAX_BYTES } from '../../../main/contract/limits.ts';
import { ask } from '../../host/ask.ts';
import { downloadJson } from '../../host/download.ts';
import { notice } from '../../state/happening.ts';
import { vehicle } from '../../state/kept.ts';
import { change } from './state.ts';

/** Hands the list to the browser as a file that `lanegauge load --load` reads. */
export function saveList(items: readonly LoadItem[], vehicleName: string): void {
  downloadJson({ format: 'lanegauge.load', version: 1, items }, `load-of-${vehicleName || 'vehicle'}`);
}

/** Puts aboard what a file lists, in place of what is aboard. A file that cannot be used is refused with a sentence. */
export async function openList(file: File): Promise<void> {
  if (vehicle.peek() === undefined)
    return refuse(
      `${clip(file.name, 80)} is a load list, and no vehicle is there to put it aboard. Add one to the fleet first.`,
    );
  if (file.size > LOAD_MAX_BYTES) return refuse(`${clip(file.name, 80)} is too large for a load list.`);
  const reply = await ask('readLoad', { name: file.name.slice(0, 300), text: await file.text() });
  if (!reply.ok) return refuse(reply.error.message);
  notice.value = undefined;
  change(reply.value.items, `opened ${clip(file.name, 60)}`);
}

function refuse(say: string): void {
  notice.value = { kind: 'error', say };
}
