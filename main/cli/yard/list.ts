import { sayMoment } from '../../../geo/clock/print-dates.ts';
import { given } from '../../../geo/given.ts';
import { driveName } from '../../../geo/library/body/drive.ts';
import type { Item } from '../../../geo/library/item.ts';
import { ok } from '../../../geo/result.ts';
import { distanceIn, type Units } from '../../../geo/units/in-units.ts';
import { counted, quote } from '../../../geo/units/text.ts';
import { fleetEntries } from '../../services/fleet/fleet-entries.ts';
import { outSheets } from '../../services/handed/out-sheets.ts';
import { drivesAlike } from '../../services/library/alike.ts';
import type { Library } from '../../services/library/library.ts';
import { openSettings } from '../../services/settings/settings-store.ts';
import { showBin } from '../../services/yard/show-bin.ts';
import { jsonText } from '../json-text.ts';
import { readWords } from '../read-words.ts';
import type { YardCommand } from './command.ts';
import { lineOf, toldSheet } from './out.ts';
import { toldVersions } from './told-versions.ts';

/** `yard list`: the drives and vehicles of the library, the sheets that are out, and what lies in the bin. */
export const yardList: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: [], flags: ['json'] });
  if (!read.ok) return read;
  const rows = await outSheets({ library, ...terminal });
  const sheets = rows.filter(({ standing }) => standing.kind !== 'back').map(toldSheet);
  const { units } = (await openSettings(terminal.dataFolder, terminal.now)).current();
  const listed = { ...listYard(library, units), bin: await listBin(library), sheets };
  return ok({ text: read.value.flag('json') ? jsonText(listed) : printYard(listed) });
};

function listYard(library: Library, units: Units) {
  const apart = drivesAlike(library, units);
  const drives = library
    .list('drive')
    .map((item) => ({ ...toldDrive(item), ...given({ alike: apart.get(item.id) }) }))
    .sort(byName);
  const order = [...new Set(fleetEntries(library.list('vehicle')).map(({ itemId }) => itemId))];
  const vehicles = order.flatMap((id) => {
    const item = library.find('vehicle', id);
    return item ? [toldVehicle(item)] : [];
  });
  return { folder: library.folder, drives, vehicles, notes: library.list('note').length };
}

/** With a name of what can be had back; what was aboard lies there with its vehicle. */
async function listBin(library: Library) {
  const named = new Map((await showBin(library)).map(({ id, name }) => [id, name]));
  return library
    .bin()
    .map(({ id, kind, deleted = '' }) => ({ id, kind, deleted, ...given({ name: named.get(id) }) }));
}

function toldDrive(item: Item<'drive'>) {
  const body = item.versions[0]?.body;
  return {
    id: item.id,
    name: body ? driveName(body) : item.id,
    ...given({
      file: body?.file,
      track: body?.track,
      day: body?.day,
      lengthM: body?.lengthM,
      leaveAt: body?.leaveAt,
    }),
    ...toldVersions(item, driveName),
  };
}

function toldVehicle(item: Item<'vehicle'>) {
  return {
    id: item.id,
    name: item.versions[0]?.body.card.name ?? item.id,
    ...toldVersions(item, ({ card }) => card.name),
  };
}

/** By name as people sort, days of a tour in their order; names that are equal but for case by id. */
function byName(a: ReturnType<typeof toldDrive>, b: ReturnType<typeof toldDrive>): number {
  const names = a.name.localeCompare(b.name, 'en', { sensitivity: 'base', numeric: true });
  return names || (a.day?.number ?? 0) - (b.day?.number ?? 0) || (a.id < b.id ? -1 : 1);
}

function printYard({
  folder,
  drives,
  vehicles,
  notes,
  bin,
  sheets,
}: ReturnType<typeof listYard> & {
  readonly bin: Awaited<ReturnType<typeof listBin>>;
  readonly sheets: readonly ReturnType<typeof toldSheet>[];
}): string {
  const lines = [
    `The library in ${folder}: ${counted(drives.length, 'drive')}, ${counted(vehicles.length, 'vehicle')}, ${counted(notes, 'note')}.`,
    ...(drives.length + vehicles.length === 0
      ? [
          'Put drives there with: lanegauge yard add DRIVE.gpx, and vehicles with: lanegauge yard vehicle add CARD.json',
        ]
      : []),
    ...drives.flatMap(({ id, name, alike, day, lengthM = 0, leaveAt, ...apart }) => [
      `  ${quote(name, 100)}${alike === undefined ? '' : `, that is ${alike}`}${day ? `, day ${day.number} of ${day.of}` : ''}, ${distanceIn('both', lengthM)} as drawn${leaveAt === undefined ? '' : `, leaves ${sayMoment(leaveAt)}`} (${id})`,
      ...printVersions(id, apart),
    ]),
    ...vehicles.flatMap(({ id, name, ...apart }) => [
      `  ${quote(name, 100)} (${id})`,
      ...printVersions(id, apart),
    ]),
    ...sheets.map((sheet) => `  ${lineOf(sheet)}`),
    ...bin.map(
      ({ id, kind, name, deleted }) =>
        `  in the bin since ${deleted.slice(0, 10)}: ${name === undefined ? '' : `${kind} ${quote(name, 100)} `}(${id})`,
    ),
  ];
  return `${lines.join('\n')}\n`;
}

function printVersions(id: string, { versions, removed }: ReturnType<typeof toldVersions>): string[] {
  if (versions === undefined) return [];
  const what =
    removed === undefined
      ? 'was changed on two computers at once; keep one of these with'
      : `was removed on one computer (${sayMoment(removed)}) and changed on another at the same time; remove it again, or keep it with`;
  return [
    `    ${what}: lanegauge yard choose ${id} VERSION`,
    ...versions.map(
      ({ version, name, made, says }) =>
        `    ${version}: ${says.length > 0 ? says.join('; ') : quote(name, 100)}, changed ${sayMoment(made)}`,
    ),
  ];
}
