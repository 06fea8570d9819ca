import { isDeleted } from '../../../geo/library/bin.ts';
import type { Item } from '../../../geo/library/item.ts';
import { itemOfVehicle } from '../../../geo/library/record-name.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { LOADS_MAX } from '../../contract/limits.ts';
import type { VehicleLoad } from '../../contract/loads.ts';
import { sha256Of } from '../files/sha256.ts';
import type { Saved } from '../files/store.ts';
import { messageOf } from '../files/system-error.ts';
import type { Library } from '../library/library.ts';
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
  notices(): readonly string[];
}

export interface LoadsOptions {
  /** where a list that another window had made is kept aside */
  readonly folder: string;
  readonly library: Library;
  /** what is shown of vehicles that the library has no list of and never had */
  readonly first: readonly VehicleLoad[];
  /** the vehicle's name, for sentences; undefined where it is in no fleet */
  nameOf(vehicleId: string): string | undefined;
}

/** What is aboard each vehicle, kept in the library. */
export function openLoads({ folder, library, first, nameOf }: LoadsOptions): LoadsStore {
  let saving: Promise<unknown> = Promise.resolve();

  function current(): VehicleLoad[] {
    const kept = library.list('load').flatMap(({ versions: [newest] }) => newest?.body ?? []);
    const known = (vehicleId: string) => library.find('load', itemOf(vehicleId)) !== undefined;
    return [
      ...kept.map(({ vehicleId, items }) => ({ vehicleId, items })),
      ...first.filter(({ vehicleId }) => !known(vehicleId)),
    ].slice(0, LOADS_MAX);
  }

  async function save(vehicleId: string, mine: Items, known: Items): Promise<Result<Saved<Items>>> {
    await library.refresh('load');
    const item = library.find('load', itemOf(vehicleId));
    const merged = mergeLoad({ known, mine, theirs: itemsOf(current(), vehicleId) });
    const say: string[] = [];
    const name = nameOf(vehicleId);
    if (merged.stays) say.push(sayStays(name));
    try {
      // first theirs, then mine: whatever ends the program between the two, nothing is lost
      for (const other of [...(merged.other ? [merged.other] : []), ...otherVersions(item)])
        say.push(sayOther(name, await keepOtherLoad(folder, other, name)));
    } catch (error) {
      return fail('not-saved', sayNotAside(folder, error));
    }
    const kept = await keep(vehicleId, merged.items, item);
    return kept.ok ? ok({ value: merged.items, say }) : kept;
  }

  async function keep(
    vehicleId: string,
    items: Items,
    item: Item<'load'> | undefined,
  ): Promise<Result<unknown>> {
    const there = item !== undefined && !isDeleted(item);
    const id = itemOf(vehicleId);
    if (items.length === 0) return there ? library.remove(item) : ok(undefined);
    if (!there && current().length >= LOADS_MAX) return fail('too-many', TOO_MANY);
    return library.put({ kind: 'load', id, body: { vehicleId, items: [...items] } });
  }

  return {
    current,
    refresh: () => library.refresh('load'),
    notices: () =>
      library.list('load').flatMap((item) => {
        const [newest] = item.versions;
        return newest && otherVersions(item).length > 0 ? [sayVersions(nameOf(newest.body.vehicleId))] : [];
      }),
    save(vehicleId, items, known = itemsOf(current(), vehicleId)) {
      const saved = saving.then(() => save(vehicleId, items, known));
      saving = saved;
      return saved;
    },
  };
}

const TOO_MANY = `What is aboard was not saved: lists of ${LOADS_MAX} vehicles are kept already. Take everything off a vehicle that no longer needs its list.`;

function itemOf(vehicleId: string): string {
  return itemOfVehicle('load', vehicleId, sha256Of);
}

function itemsOf(loads: readonly VehicleLoad[], vehicleId: string): Items {
  return loads.find((each) => each.vehicleId === vehicleId)?.items ?? [];
}

/** Lists of two computers that changed one at once: those that are not shown. */
function otherVersions(item: Item<'load'> | undefined): Items[] {
  return (item?.versions ?? []).slice(1).map(({ body }) => body.items);
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

function sayVersions(name: string | undefined): string {
  return `What is aboard ${called(name)} was changed on two computers at once. One list is shown; with the next change here the other is kept in a file of its own, and you are told where.`;
}

function sayNotAside(folder: string, error: unknown): string {
  return `What is aboard was not saved, since the list of another window could not be kept beside it in ${folder} (${messageOf(error)}). Check the disk; what was there is unchanged.`;
}
