import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { LOADS_MAX } from '../../contract/limits.ts';
import { loadsFileSchema, type VehicleLoad, vehicleLoadSchema } from '../../contract/loads.ts';
import { rememberedFile } from '../files/remembered-file.ts';
import { memberOf, salvageList } from '../files/salvage-list.ts';
import type { Saved } from '../files/store.ts';
import { keepOtherLoad } from './keep-other-load.ts';
import { mergeLoad } from './merge-load.ts';

type Items = readonly LoadItem[];

/** What is aboard each vehicle, kept between sessions, also of one that is in no fleet just now. */
export interface LoadsStore {
  current(): readonly VehicleLoad[];
  refresh(): Promise<void>;
  /**
   * An empty list is no load.
   * @param known the list that the change was made from; without it what was last read here
   */
  save(vehicleId: string, items: Items, known?: Items): Promise<Result<Saved<Items>>>;
  /** sentences about what was wrong with the file */
  notices(): readonly string[];
}

export interface LoadsOptions {
  readonly folder: string;
  now(): Date;
  /** the vehicle's name, for sentences; undefined where it is in no fleet */
  nameOf(vehicleId: string): string | undefined;
}

/** Reads what is aboard each vehicle. */
export async function openLoads({ folder, now, nameOf }: LoadsOptions): Promise<LoadsStore> {
  const file = await rememberedFile({
    folder,
    name: 'loads.json',
    what: 'list of loads',
    schema: loadsFileSchema,
    salvage: salvageList({
      schema: loadsFileSchema,
      key: 'loads',
      item: vehicleLoadSchema,
      most: LOADS_MAX,
      idOf: ({ vehicleId }) => vehicleId,
      nameOf: (item) => nameOf(String(memberOf(item, 'vehicleId'))),
    }),
    now,
  });
  const current = () => file.last()?.loads ?? [];

  async function save(vehicleId: string, mine: Items, known: Items): Promise<Result<Saved<Items>>> {
    const say: string[] = [];
    const updated = await file.update(async (found) => {
      const all = found?.loads ?? current();
      const merged = mergeLoad({ known, mine, theirs: itemsOf(all, vehicleId) });
      const name = nameOf(vehicleId);
      if (merged.other) {
        // first theirs, then mine: whatever ends the program between the two, nothing is lost
        const at = await keepOtherLoad(folder, merged.other, name);
        say.push(sayOther(name, at));
      }
      if (merged.stays) say.push(sayStays(name));
      const others = all.filter((each) => each.vehicleId !== vehicleId);
      const loads = merged.items.length === 0 ? others : [...others, { vehicleId, items: [...merged.items] }];
      if (loads.length > LOADS_MAX) return fail('too-many', TOO_MANY);
      return ok({ format: 'lanegauge.loads' as const, version: 1 as const, loads });
    });
    if (!updated.ok) return updated;
    const { value, notices } = updated.value;
    return ok({ value: itemsOf(value.loads, vehicleId), say: [...notices, ...say] });
  }

  return {
    current,
    notices: file.notices,
    refresh: file.refresh,
    save: (vehicleId, items, known = itemsOf(current(), vehicleId)) => save(vehicleId, items, known),
  };
}

const TOO_MANY = `What is aboard was not saved: lists of ${LOADS_MAX} vehicles are kept already. Take everything off a vehicle that no longer needs its list.`;

function itemsOf(loads: readonly VehicleLoad[], vehicleId: string): Items {
  return loads.find((each) => each.vehicleId === vehicleId)?.items ?? [];
}

function called(name: string | undefined): string {
  return name === undefined ? 'a vehicle that is not in the fleet' : quote(name);
}

function sayOther(name: string | undefined, at: string): string {
  return `What is aboard ${called(name)} was changed in another window too. Yours is kept; the other list lies at ${at} and can be opened in Load.`;
}

function sayStays(name: string | undefined): string {
  return `What is aboard ${called(name)} was changed in another window meanwhile, so it was not cleared.`;
}
