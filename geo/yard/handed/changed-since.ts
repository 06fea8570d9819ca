import type { HandedFacts } from '../../library/body/handed.ts';
import type { Sha256 } from '../../library/record-name.ts';
import type { LoadList } from '../../load/list/load-list.ts';
import type { LocalNote } from '../../notes/note.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { hashOf, notePrints, notesAbout } from '../fingerprints.ts';
import { mapKey } from '../map-key.ts';
import { SINCE, type Since } from './say-since.ts';

/** A leave time, and stops and return hour. */
type KeptDay = Pick<HandedFacts, 'leaveAt' | 'plan'>;

/** How it stands now. */
export interface StandsNow {
  /** the vehicle's card; undefined where it is in the library no more, or never was */
  readonly card: VehicleCard | undefined;
  readonly load: LoadList['items'] | undefined;
  readonly notes: readonly LocalNote[];
  /** the maps of the shelf */
  readonly maps: Parameters<typeof mapKey>[0];
  readonly program: string;
  /** what the yard keeps with the drive, where it was kept after the sheet was made */
  readonly day: KeptDay | undefined;
  /** what the sheet was made from in the library, and is there no more */
  readonly gone: { readonly vehicle: boolean; readonly drive: boolean };
  /** ISO 8601 */
  readonly moment: string;
}

/**
 * Why a check handed out would say otherwise today; empty where it would not. A shelf that has nothing about the drive
 * tells nothing of map files that were named.
 */
export function changedSince(facts: HandedFacts, now: StandsNow, sha256: Sha256): Since[] {
  const { box } = facts;
  const map = box && mapKey(now.maps, box);
  const notes = box && notePrints(notesAbout(now.notes, box, facts.leaveAt ?? now.moment), sha256);
  const changed: Readonly<Record<Since, boolean>> = {
    map: map !== undefined && map !== '' && map !== (facts.mapKey ?? wereNamed(facts)),
    'map gone': map === '' && facts.mapKey !== undefined && facts.mapKey !== '',
    card: now.card !== undefined && hashOf(now.card, sha256) !== facts.card,
    load: facts.loadKept === true && hashOf(now.load ?? [], sha256) !== facts.load,
    note: notes !== undefined && JSON.stringify(notes) !== JSON.stringify([...facts.notes].sort()),
    day: now.day !== undefined && isAnotherDay(now.day, facts, sha256),
    program: now.program !== facts.program,
    'vehicle gone': now.gone.vehicle,
    'drive gone': now.gone.drive,
  };
  return SINCE.filter((each) => changed[each]);
}

/** Taken away is another too: whoever holds the sheet still goes by it. */
function isAnotherDay({ leaveAt, plan }: KeptDay, facts: HandedFacts, sha256: Sha256): boolean {
  return leaveAt !== facts.leaveAt || hashOf(plan ?? {}, sha256) !== hashOf(facts.plan ?? {}, sha256);
}

/** A check on map files that were named: the same maps may lie on the shelf now. */
function wereNamed({ maps }: HandedFacts): string {
  return [...new Set(maps.map(({ sha256 }) => sha256))].sort().join(' ');
}
