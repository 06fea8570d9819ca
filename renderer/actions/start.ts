import { effect } from '@preact/signals';
import { given } from '../../geo/given.ts';
import type { Description } from '../../main/contract/description.ts';
import { ask } from '../host/ask.ts';
import { lookAtNotes } from '../notes/begin.ts';
import { madeHere } from '../state/changed.ts';
import { leaveAt } from '../state/check.ts';
import { hostGone, notice } from '../state/happening.ts';
import { description, settings, vehicleId, vehicles } from '../state/kept.ts';
import { loads } from '../state/loads.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { plan } from '../state/plan.ts';
import { selected, selectedId } from '../state/shown.ts';
import { shownView, type ViewId, viewNamed } from '../state/views.ts';
import { offerLeftPlan } from './begin-plan.ts';
import { keepLeaveTimes } from './keep-leave.ts';
import { keepWhereLeft } from './keep-left.ts';
import { listen } from './listen.ts';
import { workBegun } from './long-work.ts';
import { openFirst } from './open-first.ts';
import { recheckOnChange } from './recheck.ts';
import { keepSession, readSession, type Session } from './session.ts';
import { undoByKeys } from './undo-keys.ts';
import { wantedAtStart } from './wanted.ts';
import { hideWaysOnChange } from './ways.ts';

/** Learns what there is, opens what was open, and listens to the host from then on. */
export async function start(storage: Storage): Promise<void> {
  const session = readSession(storage);
  const begunBefore = workBegun();
  shownView.value = viewNamed(session.view) ?? shownView.peek();
  const reply = await ask('describe', {});
  if (!reply.ok) {
    hostGone.value = reply.error.message;
    return;
  }
  takeIn(reply.value, session);
  if (session.view === undefined && workBegun() === begunBefore) shownView.value = viewAtStart(reply.value);
  void listen();
  recheckOnChange();
  hideWaysOnChange();
  undoByKeys(window);
  const wanted = wantedAtStart(reply.value, session);
  const chosen = await openFirst({ wanted, sample: reply.value.sample, begunBefore });
  if (session.selectedId !== undefined && !chosen && !plan.peek()) selectAgain(session.selectedId);
  effect(() => keepSession(storage, sessionNow()));
  keepLeaveTimes();
  offerLeftPlan(reply.value.settings.left?.plan ?? []);
  keepWhereLeft();
  void lookAtNotes();
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
  madeHere.value = session.madeHere ?? [];
  if (found.notices.length > 0) notice.value = { kind: 'note', say: found.notices.join(' ') };
}

/** A drive that was given is shown; else the window opens where it was left. */
function viewAtStart({ opened, settings: { left } }: Description): ViewId {
  return opened.some(({ use }) => use === 'drive') ? 'drive' : (left?.view ?? shownView.peek());
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
    madeHere: madeHere.value,
    view: shownView.value,
  };
}
