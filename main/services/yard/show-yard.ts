import { keptDay } from '../../../geo/day/kept-day.ts';
import { given } from '../../../geo/given.ts';
import { driveBodySchema, driveName } from '../../../geo/library/body/drive.ts';
import { noteBodySchema } from '../../../geo/library/body/note.ts';
import { vehicleBodySchema } from '../../../geo/library/body/vehicle.ts';
import type { Item } from '../../../geo/library/item.ts';
import { type ChosenKind, versionsApart } from '../../../geo/library/versions-apart.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import { cut } from '../../../geo/units/text.ts';
import { byName } from '../../../geo/yard/by-name.ts';
import type { FleetVehicle } from '../../contract/fleet.ts';
import type { Apart, Binned, Yard, YardDrive } from '../../contract/yard/yard.ts';
import type { Library } from '../library/library.ts';
import { columnsOf } from './columns.ts';

/** The library as the yard shows it, as last looked at. */
export async function showYard(
  library: Library,
  { fleet, units }: { readonly fleet?: readonly FleetVehicle[]; readonly units: Units },
): Promise<Yard> {
  return {
    folder: library.folder,
    drives: library.list('drive').flatMap(showDrive).sort(byName),
    vehicles: columnsOf(library, fleet).map(({ id, vehicleId, card }) => ({
      id,
      vehicleId,
      name: card.name,
    })),
    bin: await showBin(library),
    apart: APART.flatMap((kind) => library.list(kind).flatMap((item) => showApart(library, item, units))),
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
      ...given({
        day: day && { number: day.number, of: day.of },
        leaveAt,
        unread: plan && keptDay(plan).unread,
      }),
    },
  ];
}

const APART = ['drive', 'vehicle', 'load', 'note'] as const satisfies readonly ChosenKind[];

/** None where there is one version alone, and none of a removal at the same time. */
function showApart<K extends ChosenKind>(
  library: Library,
  { id, kind, versions, deleted }: Item<K>,
  units: Units,
): Apart[] {
  const [first] = versions;
  if (first === undefined || (versions.length < 2 && deleted === undefined)) return [];
  const says = versionsApart(
    kind,
    versions.map(({ body }) => body),
    units,
  );
  return [
    {
      id,
      kind,
      name: cut(nameOf(kind, first.body) ?? vehicleAboard(library, id) ?? id, NAME_MOST),
      versions: versions.map(({ name, made }, i) => ({
        version: name,
        made,
        says: (versions.length > 1 && says[i]) || [],
      })),
      ...given({ removed: deleted }),
    },
  ];
}

/** What is aboard goes by the name of its vehicle. */
function vehicleAboard(library: Library, id: string): string | undefined {
  const load = library.find('load', id)?.versions[0]?.body;
  const vehicle = library
    .list('vehicle')
    .find(({ versions }) => versions[0]?.body.vehicleId === load?.vehicleId);
  return vehicle?.versions[0]?.body.card.name;
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

function nameOf(kind: ChosenKind, body: unknown): string | undefined {
  switch (kind) {
    case 'drive': {
      const drive = driveBodySchema.safeParse(body);
      return drive.success ? driveName(drive.data) : undefined;
    }
    case 'vehicle':
      return vehicleBodySchema.safeParse(body).data?.card.name;
    case 'load':
      return undefined;
    case 'note':
      return noteBodySchema.safeParse(body).data?.say;
  }
}
