import { keptDay } from '../../../geo/day/kept-day.ts';
import { given } from '../../../geo/given.ts';
import { driveBodySchema, driveName } from '../../../geo/library/body/drive.ts';
import { noteBodySchema } from '../../../geo/library/body/note.ts';
import { vehicleBodySchema } from '../../../geo/library/body/vehicle.ts';
import type { Item, Version } from '../../../geo/library/item.ts';
import type { Kind } from '../../../geo/library/record.ts';
import { cut } from '../../../geo/units/text.ts';
import { byName } from '../../../geo/yard/by-name.ts';
import type { FleetVehicle } from '../../contract/fleet.ts';
import type { Binned, Yard, YardDrive } from '../../contract/yard/yard.ts';
import type { Library } from '../library/library.ts';
import { columnsOf } from './columns.ts';

/** The library as the yard shows it, as last looked at. */
export async function showYard(library: Library, fleet?: readonly FleetVehicle[]): Promise<Yard> {
  return {
    folder: library.folder,
    drives: library.list('drive').flatMap(showDrive).sort(byName),
    vehicles: columnsOf(library, fleet).map(({ id, vehicleId, card, versions }) => ({
      id,
      vehicleId,
      name: card.name,
      versions: showVersions(versions, (body) => body.card.name),
    })),
    bin: await showBin(library),
    notices: [...library.notices()],
  };
}

function showDrive({ id, heads, versions }: Item<'drive'>): YardDrive[] {
  const body = versions[0]?.body;
  if (body === undefined) return [];
  const { file, track, day, lengthM, leaveAt, plan } = body;
  return [
    {
      id,
      name: driveName(body),
      file,
      track,
      lengthM,
      heads: [...heads],
      versions: showVersions(versions, driveName, (each) => each.leaveAt),
      ...given({
        day: day && { number: day.number, of: day.of },
        leaveAt,
        unread: plan && keptDay(plan).unread,
      }),
    },
  ];
}

/** None where there is one alone. */
function showVersions<K extends Kind>(
  versions: readonly Version<K>[],
  nameOf: (body: Version<K>['body']) => string,
  leaveAtOf: (body: Version<K>['body']) => string | undefined = () => undefined,
) {
  if (versions.length < 2) return [];
  return versions.map(({ name, made, body }) => ({
    version: name,
    name: nameOf(body),
    made,
    ...given({ leaveAt: leaveAtOf(body) }),
  }));
}

const NAME_MOST = 80;

async function showBin(library: Library): Promise<Binned[]> {
  const shown: Binned[] = [];
  for (const item of library.bin()) {
    const { id, kind, deleted = '' } = item;
    // what was aboard goes and comes with its vehicle; the rest never lies there by a person's doing
    if (kind !== 'drive' && kind !== 'vehicle' && kind !== 'note') continue;
    const [body] = await library.before(item);
    // what it held has been thrown away
    if (body === undefined) continue;
    shown.push({ id, kind, deleted, name: cut(nameOf(kind, body) ?? id, NAME_MOST) });
  }
  return shown.sort((a, b) => (a.deleted < b.deleted ? 1 : -1));
}

function nameOf(kind: Binned['kind'], body: unknown): string | undefined {
  switch (kind) {
    case 'drive': {
      const drive = driveBodySchema.safeParse(body);
      return drive.success ? driveName(drive.data) : undefined;
    }
    case 'vehicle':
      return vehicleBodySchema.safeParse(body).data?.card.name;
    case 'note':
      return noteBodySchema.safeParse(body).data?.say;
  }
}
