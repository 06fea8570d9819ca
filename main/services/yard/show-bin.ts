import { driveBodySchema, driveName } from '../../../geo/library/body/drive.ts';
import { noteBodySchema } from '../../../geo/library/body/note.ts';
import { vehicleBodySchema } from '../../../geo/library/body/vehicle.ts';
import type { ChosenKind } from '../../../geo/library/versions-apart.ts';
import { cut } from '../../../geo/units/text.ts';
import type { Binned } from '../../contract/yard/yard.ts';
import type { Library } from '../library/library.ts';

const NAME_MOST = 80;

/** What lies in the bin and can be had back, what was removed last first. */
export async function showBin(library: Library): Promise<Binned[]> {
  const shown: Binned[] = [];
  for (const item of library.bin()) {
    const { id, kind, deleted = '' } = item;
    // what was aboard goes and comes with its vehicle; the rest never lies there by a person's doing
    if (kind !== 'drive' && kind !== 'vehicle' && kind !== 'note') continue;
    const [body] = await library.before(item);
    // what it held has been thrown away
    if (body === undefined) continue;
    shown.push({ id, kind, deleted, name: cut(nameOfBody(kind, body) ?? id, NAME_MOST) });
  }
  return shown.sort((a, b) => (a.deleted < b.deleted ? 1 : -1));
}

/** What a thing is called by what it holds: a note by what it says, with the initials of who said it. */
export function nameOfBody(kind: ChosenKind, body: unknown): string | undefined {
  switch (kind) {
    case 'drive': {
      const drive = driveBodySchema.safeParse(body);
      return drive.success ? driveName(drive.data) : undefined;
    }
    case 'vehicle':
      return vehicleBodySchema.safeParse(body).data?.card.name;
    case 'load':
      return undefined;
    case 'note': {
      const note = noteBodySchema.safeParse(body).data;
      return note && (note.by ? `${note.say} (${note.by})` : note.say);
    }
  }
}
