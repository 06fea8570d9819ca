import { readLoad } from '../../../geo/load/list/read-load.ts';
import { loadResult } from '../../../geo/load/load-result.ts';
import type { Result } from '../../../geo/result.ts';
import { readPath } from '../../../geo/swing/motion/read-path.ts';
import { readVehicle } from '../../../geo/vehicle/read-vehicle.ts';
import { LOAD_MAX_BYTES } from '../../../main/contract/limits.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { mutateJson } from '../make/mutate-json.ts';
import type { Random } from '../make/random.ts';
import { sampleFiles } from '../make/samples.ts';
import { askedTwice, faultInSentence } from '../promises.ts';
import type { Target } from '../target.ts';

const VEHICLES = sampleFiles('vehicles');
const LOADS = sampleFiles('loads');
const PATHS = [
  {
    format: 'lanegauge.path',
    version: 1,
    points: [
      [0, 0],
      [20, 0],
      [28, 3],
      [31, 11],
      [31, 40],
    ],
  },
].map((path) => new TextEncoder().encode(JSON.stringify(path)));

const decode = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
const CARD = readVehicle(decode(VEHICLES[0]!), 'card.json');

/** A document a person may write by hand, its bytes or its contents changed. */
function mutated(samples: readonly Uint8Array[]) {
  return (random: Random): Uint8Array => {
    const sample = random.pick(samples);
    if (random.chance(0.4)) return mutateBytes(sample, random);
    const text = JSON.stringify(mutateJson(JSON.parse(decode(sample)), random));
    // what is longer is refused by its size alone
    return new TextEncoder().encode(text).slice(0, LOAD_MAX_BYTES);
  };
}

function documentTarget<T>(
  name: string,
  samples: readonly Uint8Array[],
  read: (text: string, file: string) => Result<T>,
  faultIn: (value: T) => string | undefined = () => undefined,
): Target {
  return {
    name,
    weight: 10,
    make: mutated(samples),
    check: (input) => askedTwice(() => read(decode(input), 'hand.json'), faultIn),
  };
}

export const vehicleCards = documentTarget('vehicle cards', VEHICLES, readVehicle);
export const swingPaths = documentTarget('swing paths', PATHS, readPath);
/** A list that is read is also weighed. */
export const loadLists = documentTarget('load lists', LOADS, readLoad, (list) => {
  if (!CARD.ok) return CARD.error.message;
  const weighed = loadResult(CARD.value, list.items);
  return weighed.ok ? undefined : faultInSentence(weighed.error.message);
});
