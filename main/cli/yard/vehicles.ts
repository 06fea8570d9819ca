import { randomBytes } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { itemOfVehicle } from '../../../geo/library/record-name.ts';
import { fail, ok } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { FLEET_MAX } from '../../contract/limits.ts';
import { sha256Of } from '../../services/library/known-records.ts';
import { readVehicleFile } from '../../services/vehicle/read-vehicle-file.ts';
import { jsonText } from '../json-text.ts';
import { pathFrom, readWords, USAGE_HINT } from '../read-words.ts';
import type { YardCommand } from './command.ts';

const TOLD = {
  new: 'added',
  there: 'in the fleet already, so it stands there once',
  changed: 'in the fleet, and has this card now',
} as const;

/** `yard vehicle add CARD.json`: puts a vehicle into the fleet; one of its name gets the new card. */
export const vehicleAdd: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, { once: [], flags: ['json'], bare: 1 });
  if (!read.ok) return read;
  const [path] = read.value.bare;
  if (path === undefined) return fail('usage', `yard vehicle add needs a vehicle card. ${USAGE_HINT}`);
  const card = await readVehicleFile(pathFrom(terminal.folder, path));
  if (!card.ok) return card;
  const fleet = library.list('vehicle');
  const say = (id: string, was: keyof typeof TOLD) => {
    const told = TOLD[was];
    return ok({
      text: read.value.flag('json')
        ? jsonText({ vehicle: { id, name: card.value.name }, was })
        : `${quote(card.value.name)}: ${told} (${id})\n`,
    });
  };
  const same = fleet.find(({ versions }) =>
    versions.some(({ body }) => isDeepStrictEqual(body.card, card.value)),
  );
  if (same) return say(same.id, 'there');
  const named = fleet.find(({ versions }) => versions.some(({ body }) => body.card.name === card.value.name));
  const known = named?.versions[0];
  if (named && known) {
    const body = { ...known.body, card: card.value };
    const put = await library.put({ kind: 'vehicle', id: named.id, body, over: named.heads });
    return put.ok ? say(named.id, 'changed') : put;
  }
  if (fleet.length >= FLEET_MAX)
    return fail(
      'too-many',
      `The fleet has ${fleet.length} vehicles, and can have ${FLEET_MAX}. Remove some first.`,
    );
  const vehicleId = `${plainName(card.value.name)}-${randomBytes(3).toString('hex')}`;
  const id = itemOfVehicle('vehicle', vehicleId, sha256Of);
  const last = fleet
    .flatMap(({ versions }) => versions[0]?.body.rank ?? [])
    .reduce((a, b) => Math.max(a, b), -1);
  const put = await library.put({
    kind: 'vehicle',
    id,
    body: { vehicleId, card: card.value, rank: Math.floor(last) + 1 },
  });
  return put.ok ? say(id, 'new') : put;
};

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
