import { clip } from '../../geo/units/text.ts';
import { beginPlan } from '../actions/begin-plan.ts';
import { chooseTrack, chooseVehicle } from '../actions/choose.ts';
import { LeaveChoice } from '../leave/leave-choice.tsx';
import { vehicle, vehicles } from '../state/kept.ts';
import { openedDrive } from '../state/opened.ts';
import { type DialogName, dialog } from '../state/page.ts';
import { shownView } from '../state/views.ts';
import { ViewTabs } from './view-tabs.tsx';

/** The views and the vehicle that all of them share, in the same place in each; below them the drive and its leave time. */
export function TopBar() {
  return (
    <header class="bar">
      <div class="bar-row">
        <h1>Lanegauge</h1>
        <ViewTabs />
        <div class="bar-gap" />
        <VehicleChoice />
        <Opens which="settings" say="Settings" />
        <Opens which="help" say="Help" />
      </div>
      {shownView.value === 'drive' && (
        <div class="bar-row bar-drive">
          <DriveName />
          <Opens which="open" say="Open…" />
          <button type="button" onClick={beginPlan}>
            Plan
          </button>
          <LeaveChoice />
        </div>
      )}
    </header>
  );
}

function Opens({ which, say }: { which: DialogName; say: string }) {
  return (
    <button
      type="button"
      aria-haspopup="dialog"
      onClick={() => {
        dialog.value = which;
      }}
    >
      {say}
    </button>
  );
}

function DriveName() {
  const drive = openedDrive.value?.followed;
  return (
    <div class="drive-name">
      <b>
        <bdi>{drive ? clip(drive.name || drive.file, 120) : ''}</bdi>
      </b>
      {drive && drive.tracks.length > 1 ? (
        <TrackChoice />
      ) : (
        <span class="small soft">
          <bdi>{drive ? clip(drive.file, 80) : ''}</bdi>
        </span>
      )}
    </div>
  );
}

function TrackChoice() {
  const drive = openedDrive.value?.followed;
  if (!drive) return null;
  return (
    <select
      class="small"
      aria-label={`Which track or route of ${clip(drive.file, 80)}`}
      value={String(drive.taken)}
      onChange={({ currentTarget }) => chooseTrack(Number(currentTarget.value))}
    >
      {drive.tracks.map(({ kind, number, name, positions }, i) => (
        <option key={`${kind}${number}`} value={String(i + 1)} disabled={positions < 2}>
          {kind} {number}: {clip(name, 60) || 'without a name'} ({positions} positions)
        </option>
      ))}
    </select>
  );
}

function VehicleChoice() {
  const list = vehicles.value;
  return (
    <div class="choice">
      <label class="small soft" for="vehicle-select">
        Vehicle
      </label>
      <select
        id="vehicle-select"
        class="vehicle-select"
        value={vehicle.value?.id ?? ''}
        disabled={list.length === 0}
        onChange={({ currentTarget }) => chooseVehicle(currentTarget.value)}
      >
        {list.length === 0 && <option value="">none yet</option>}
        {list.map(({ id, card }) => (
          <option key={id} value={id}>
            {clip(card.name, 60)}
          </option>
        ))}
      </select>
      <Opens which="vehicles" say="Cards…" />
    </div>
  );
}
