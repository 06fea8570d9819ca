import { effect } from '@preact/signals';
import { given } from '../../geo/given.ts';
import type { Description } from '../../main/contract/description.ts';
import { ask } from './host.ts';
import { loads } from './loads.ts';
import { openAdded, openWanted, type Wanted, wantedAdded } from './opening.ts';
import { recheckOnChange } from './recheck.ts';
import { keepSession, readSession, type Session } from './session.ts';
import {
  description,
  leaveAt,
  message,
  openedDrive,
  openedMap,
  selected,
  selectedId,
  settings,
  vehicleId,
  vehicles,
} from './state.ts';
import { hostGone } from './ui.ts';
import { show, view, viewNamed } from './view.ts';

/** A laptop that slept may find its line cut; the program behind it is still there. */
const TRIES_AFTER_A_CUT = 3;
const TRY_AGAIN_MS = 1000;

/** Learns what there is, opens what was open, and listens to the host from then on. */
export async function start(storage: Storage): Promise<void> {
  const session = readSession(storage);
  view.value = viewNamed(session.view) ?? view.peek();
  const reply = await ask('describe', {});
  if (!reply.ok) {
    hostGone.value = reply.error.message;
    return;
  }
  takeIn(reply.value, session);
  void listen();
  recheckOnChange();
  const wanted = wantedAtStart(reply.value, session);
  await openWanted(wanted);
  const nothing = !openedDrive.peek() && (wanted.drive !== undefined || !openedMap.peek());
  if (nothing && wanted.drive?.source.kind !== 'sample') await showSampleInstead(reply.value);
  if (session.selectedId !== undefined) selectAgain(session.selectedId);
  effect(() => keepSession(storage, sessionNow()));
}

function takeIn(found: Description, session: Session): void {
  description.value = found;
  settings.value = found.settings;
  vehicles.value = found.vehicles;
  loads.value = Object.fromEntries(found.loads.map(({ vehicleId, items }) => [vehicleId, items]));
  const wanted = [session.vehicleId, found.settings.vehicleId, found.sample.defaultVehicle];
  vehicleId.value =
    wanted.find((id) => found.vehicles.some((each) => each.id === id)) ?? found.vehicles[0]?.id;
  leaveAt.value = session.leaveAt;
  if (found.notices.length > 0) message.value = { kind: 'notice', say: found.notices.join(' ') };
}

/** Files named at the start; what they leave open is as before a reload, as last opened, or the sample. */
export function wantedAtStart(found: Description, session: Session): Wanted {
  const before = wantedAsBefore(found, session);
  const map = found.opened.find(({ use }) => use === 'map');
  const drive = found.opened.find(({ use }) => use === 'drive');
  if (map && !drive) return wantedAdded([map]);
  if (!drive) return before;
  if (map) return wantedAdded([map, drive]);
  const under = before.map?.about ? { ...before.map, about: drive.source } : before.map;
  return { ...given({ map: under }), drive: { source: drive.source } };
}

function wantedAsBefore({ sample, recents }: Description, session: Session): Wanted {
  if (session.map) return { map: session.map, ...given({ drive: session.drive }) };
  const map = recents.find(({ use }) => use === 'map');
  const drive = recents.find(({ use }) => use === 'drive');
  if (map && drive) {
    const source = { kind: 'recent', id: drive.id } as const;
    return { map: { source: { kind: 'recent', id: map.id }, about: source }, drive: { source } };
  }
  return wantedSample(sample, sample.defaultDrive);
}

export function wantedSample(sample: Description['sample'], drive: string): Wanted {
  return {
    map: { source: { kind: 'sample', id: sample.map } },
    drive: { source: { kind: 'sample', id: drive } },
  };
}

async function showSampleInstead({ sample }: Description): Promise<void> {
  const why = message.peek()?.say;
  await openWanted(wantedSample(sample, sample.defaultDrive));
  if (why !== undefined && !message.peek())
    message.value = { kind: 'error', say: `${why} The sample drive is shown instead.` };
}

function selectAgain(id: string): void {
  const stop = effect(() => {
    selectedId.value = id;
    if (selected.value) queueMicrotask(() => stop());
  });
}

function sessionNow(): Session {
  const map = openedMap.value;
  const drive = openedDrive.value;
  return {
    ...given({
      map: map && { source: map.source, ...given({ about: map.about }) },
      drive: drive && { source: drive.source, track: drive.followed.taken },
      vehicleId: vehicleId.value,
      leaveAt: leaveAt.value,
      selectedId: selectedId.value,
    }),
    view: view.value,
  };
}

async function listen(): Promise<void> {
  for (let cuts = 0; cuts < TRIES_AFTER_A_CUT; cuts++) {
    const reply = await ask(
      'watch',
      {},
      {
        onProgress: (news) => {
          cuts = 0;
          if (news.kind === 'opened') {
            show('drive');
            void openAdded([news.file]);
          }
          if (news.kind === 'notice') message.value = { kind: 'notice', say: news.say };
        },
      },
    );
    if (!reply.ok && reply.error.code !== 'host-gone') {
      hostGone.value = reply.error.message;
      return;
    }
    await new Promise((resolve) => setTimeout(resolve, TRY_AGAIN_MS));
  }
  hostGone.value =
    'The program behind this window has ended. What is shown stays readable, but nothing can be opened or checked. Close the window and start Lanegauge again.';
}
