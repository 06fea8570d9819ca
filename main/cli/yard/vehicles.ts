import { randomBytes } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { given } from '../../../geo/given.ts';
import type { Item } from '../../../geo/library/item.ts';
import { itemOfVehicle } from '../../../geo/library/record-name.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { FLEET_MAX } from '../../contract/limits.ts';
import { sha256Of } from '../../services/files/sha256.ts';
import { calledSo, sayItem } from '../../services/library/find-item.ts';
import type { Library } from '../../services/library/library.ts';
import { readVehicleFile } from '../../services/vehicle/read-vehicle-file.ts';
import { jsonText } from '../json-text.ts';
import { pathFrom, readWords, USAGE_HINT } from '../read-words.ts';
import type { YardCommand } from './command.ts';

const TOLD = {
  new: 'added',
  there: 'in the fleet already, so it stands there once',
  changed: 'in the fleet, and has this card now',
} as const;

/** `yard vehicle add CARD.json…`: puts vehicles into the fleet, the good cards where some are not; one of its name gets the new card. */
export const vehicleAdd: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: [], flags: ['json'], bare: FLEET_MAX });
  if (!read.ok) return read;
  const { bare, flag } = read.value;
  if (bare.length === 0) return fail('usage', `yard vehicle add needs a vehicle card. ${USAGE_HINT}`);
  const added: AddedVehicle[] = [];
  const refused: string[] = [];
  for (const path of bare) {
    const card = await readVehicleFile(pathFrom(terminal.folder, path));
    const done = card.ok ? await addVehicle(library, card.value) : card;
    if (done.ok) added.push(done.value);
    else refused.push(done.error.message);
  }
  // where nothing was added there is nothing to print
  if (added.length === 0) return ok({ text: '', refused });
  const text = flag('json')
    ? jsonText(bare.length === 1 ? toldAdded(added[0]!) : { vehicles: added.map(toldAdded) })
    : added.map(sayAdded).join('');
  return ok({ text, refused });
};

interface AddedVehicle {
  readonly id: string;
  readonly name: string;
  readonly was: keyof typeof TOLD;
  /** what it was called, where its new card writes that otherwise */
  readonly before?: string;
}

function toldAdded({ id, name, was, before }: AddedVehicle) {
  return { vehicle: { id, name }, was, ...given({ before }) };
}

function sayAdded({ id, name, was, before }: AddedVehicle): string {
  const until = before === undefined ? '' : `, called ${quote(before)} until now`;
  return `${quote(name)}: ${TOLD[was]} (${id})${until}\n`;
}

/** Vehicles of the fleet that a person would not tell apart from that name. */
function namedSo(fleet: readonly Item<'vehicle'>[], name: string): readonly Item<'vehicle'>[] {
  const versions = fleet.flatMap((item) => item.versions.map(({ body }) => ({ item, name: body.card.name })));
  return [...new Set(calledSo(versions, name, (each) => each.name).map(({ item }) => item))];
}

async function addVehicle(library: Library, card: VehicleCard): Promise<Result<AddedVehicle>> {
  const fleet = library.list('vehicle');
  const added = (id: string, was: AddedVehicle['was']) => ok({ id, name: card.name, was });
  const same = fleet.find(({ versions }) => versions.some(({ body }) => isDeepStrictEqual(body.card, card)));
  if (same) return added(same.id, 'there');
  const [named, ...others] = namedSo(fleet, card.name);
  if (named && others.length > 0)
    return fail(
      'library.several',
      `${quote(card.name)} cannot be told from ${listed([named, ...others].map(sayItem))}: case and blanks make no other name. Give the card a name of its own, or remove the one you do not want.`,
    );
  const known = named?.versions[0];
  if (named && known) {
    const put = await library.put({
      kind: 'vehicle',
      id: named.id,
      body: { ...known.body, card },
      over: named.heads,
    });
    if (!put.ok) return put;
    const { name } = known.body.card;
    return ok({ id: named.id, name: card.name, was: 'changed', ...(name !== card.name && { before: name }) });
  }
  if (fleet.length >= FLEET_MAX)
    return fail(
      'too-many',
      `The fleet has ${fleet.length} vehicles, and can have ${FLEET_MAX}. Remove some first.`,
    );
  const vehicleId = `${plainName(card.name)}-${randomBytes(3).toString('hex')}`;
  const id = itemOfVehicle('vehicle', vehicleId, sha256Of);
  const last = fleet
    .flatMap(({ versions }) => versions[0]?.body.rank ?? [])
    .reduce((a, b) => Math.max(a, b), -1);
  const put = await library.put({
    kind: 'vehicle',
    id,
    body: { vehicleId, card, rank: Math.floor(last) + 1 },
  });
  return put.ok ? added(id, 'new') : put;
}

/** What of a name can stand in an id. */
function plainName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 40);
  return plain === '' ? 'vehicle' : plain;
}
