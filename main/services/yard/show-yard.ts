import { keptDay } from '../../../geo/day/kept-day.ts';
import { given } from '../../../geo/given.ts';
import { driveName } from '../../../geo/library/body/drive.ts';
import type { Item } from '../../../geo/library/item.ts';
import { type ChosenKind, versionsApart } from '../../../geo/library/versions-apart.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import { cut } from '../../../geo/units/text.ts';
import { byName } from '../../../geo/yard/by-name.ts';
import { tellApart } from '../../../geo/yard/tell-apart.ts';
import type { FleetVehicle } from '../../contract/fleet.ts';
import type { Apart, Yard, YardDrive } from '../../contract/yard/yard.ts';
import type { Library } from '../library/library.ts';
import { columnsOf } from './columns.ts';
import { nameOfBody, showBin } from './show-bin.ts';

/** The library as the yard shows it, as last looked at. */
export async function showYard(
  library: Library,
  { fleet, units }: { readonly fleet?: readonly FleetVehicle[]; readonly units: Units },
): Promise<Yard> {
  return {
    folder: library.folder,
    drives: showDrives(library, units),
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

function showDrives(library: Library, units: Units): YardDrive[] {
  const drives = library.list('drive').flatMap(showDrive).sort(byName);
  const told = tellApart(drives, units);
  return told.size === 0
    ? drives
    : drives.map((drive) => ({ ...drive, ...given({ alike: told.get(drive.id) }) }));
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
      name: cut(nameOfBody(kind, first.body) ?? vehicleAboard(library, id) ?? id, NAME_MOST),
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
