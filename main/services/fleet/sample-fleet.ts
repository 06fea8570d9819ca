import { readdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { FleetVehicle } from '../../contract/fleet.ts';
import { readVehicleFile } from '../vehicle/read-vehicle-file.ts';

/** The vehicle cards that come with the program; each is known by its file's name. Unusable ones are left out with a word. */
export async function readSampleFleet(
  folder: string,
): Promise<{ vehicles: FleetVehicle[]; notices: string[] }> {
  const vehicles: FleetVehicle[] = [];
  const notices: string[] = [];
  let names: string[] = [];
  try {
    names = (await readdir(folder)).filter((name) => name.endsWith('.json')).sort();
  } catch {
    notices.push(`The sample vehicles are missing from ${folder}. Install the program again.`);
  }
  for (const name of names) {
    const card = await readVehicleFile(join(folder, name));
    // a dot is no part of an id: coach-built-7.4 becomes coach-built-7-4
    const id = basename(name, '.json').replaceAll(/[^A-Za-z0-9_-]/g, '-');
    if (card.ok) vehicles.push({ id, card: card.value });
    else notices.push(card.error.message);
  }
  return { vehicles, notices };
}
