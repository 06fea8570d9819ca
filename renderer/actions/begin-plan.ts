import { given } from '../../geo/given.ts';
import { clip, counted } from '../../geo/units/text.ts';
import type { KeptPlace } from '../../main/contract/settings.ts';
import { report } from '../state/check.ts';
import { tellAlso } from '../state/happening.ts';
import { type OpenedDrive, openedDrive, openedMap } from '../state/opened.ts';
import { dialog } from '../state/page.ts';
import { shownPart } from '../state/parts.ts';
import { laidOut, leftPlan, openPlan, placing, plan } from '../state/plan.ts';
import { mapsOnShelf } from '../state/shelf.ts';
import { cursorM, selectedId } from '../state/shown.ts';
import { showView } from '../state/views.ts';
import { leaveChanges } from './leave-changes.ts';
import { overtake } from './long-work.ts';
import { openMapAlone, openWanted } from './open.ts';
import { beingOpened } from './open-in.ts';
import { sameSource, type Wanted } from './wanted.ts';
import { mapForPlan } from './which-map.ts';

/** Begins a plan with nothing in it; the drive that is open comes back when it is closed without a drive of its own. */
export function beginPlan(): void {
  begin([]);
}

/** @param places what the plan begins with */
function begin(places: readonly KeptPlace[]): void {
  dialog.value = undefined;
  showView('drive');
  shownPart.value = 'list';
  if (plan.peek()) return;
  const before = openedDrive.peek();
  const loading = beingOpened();
  overtake();
  leaveChanges();
  cameFrom = { map: openedMap.peek(), loading };
  openPlan(before, places);
  placing.value = places.length === 0;
  openedDrive.value = undefined;
  report.value = undefined;
  selectedId.value = undefined;
  cursorM.value = 0;
  mapReady = openItsMap(loading);
}

/** Where a plan was begun: what closing it without a drive comes back to. */
let cameFrom: { readonly map: typeof openedMap.value; readonly loading: Wanted | undefined } | undefined;

let mapReady: Promise<void> = Promise.resolve();

/** The map that a plan is begun on is open, or could not be opened, which is said. */
export const planMapReady = (): Promise<void> => mapReady;

/** What was being opened may have come half way: then its map is opened anew. */
async function openItsMap(loading: Wanted | undefined): Promise<void> {
  const open = openedMap.peek();
  const map = mapForPlan({ map: loading?.map ?? open, shelfMaps: mapsOnShelf.peek() });
  if (map === undefined) return;
  const isOpen = loading === undefined && open !== undefined && sameSource(open.source, map.source);
  if (!isOpen) await openMapAlone({ source: map.source, ...given({ about: map.about }) });
}

/** Offers to go on with the plan that the last window was closed over. */
export function offerLeftPlan(left: readonly KeptPlace[]): void {
  if (left.length === 0) return;
  leftPlan.value = left;
  const [from, to] = [left[0]?.name, left.length > 1 ? left.at(-1)?.name : undefined];
  const ends = from !== undefined && to !== undefined ? `, ${clip(from, 60)} to ${clip(to, 60)}` : '';
  tellAlso({
    kind: 'note',
    say: `A plan was open when the window was closed: ${counted(left.length, 'place')}${ends}.`,
    offers: [
      {
        say: 'Go on planning',
        act: () => {
          leftPlan.value = [];
          begin(left);
        },
      },
      {
        say: 'Forget the plan',
        act: () => {
          leftPlan.value = [];
        },
      },
    ],
  });
}

/** Ends planning: the drive it came to stays open like any other, and its places can be gone back to. */
export function closePlan(): void {
  const now = plan.peek();
  if (!now) return;
  const drive = openedDrive.peek();
  if (drive) laidOut.value = { driveId: drive.followed.driveId, plan: now };
  plan.value = undefined;
  placing.value = false;
  if (!drive) comeBack(now.before);
}

/** Opens again what the plan was begun over. */
function comeBack(drive: OpenedDrive | undefined): void {
  const { map, loading } = cameFrom ?? {};
  cameFrom = undefined;
  if (loading !== undefined) void openWanted(loading);
  else if (map !== undefined && map !== openedMap.peek())
    void openWanted({
      map: { source: map.source, ...given({ about: map.about }) },
      ...given({ drive: drive && { source: drive.source, track: drive.followed.taken } }),
    });
  else if (drive) openedDrive.value = drive;
}

/** Goes back to the places that the open drive was laid out by, with all their steps back and on. */
export function reopenPlan(): void {
  const drive = openedDrive.peek();
  if (drive === undefined || laidOut.peek()?.driveId !== drive.followed.driveId) return;
  dialog.value = undefined;
  plan.value = laidOut.peek()?.plan;
}
