import { useState } from 'preact/hooks';
import { saySettledCount } from '../../../geo/report/is-settled.ts';
import { LEVEL_WORD } from '../../../geo/report/level.ts';
import { capital, clip } from '../../../geo/units/text.ts';
import { sayCounts, sayNoCell, sayStale, sayTightest } from '../../../geo/yard/say-cell.ts';
import { LEAVE_AT } from '../../../main/contract/leave-at.ts';
import type { YardCell, YardDrive } from '../../../main/contract/yard/yard.ts';
import { VerdictMark } from '../../look/level-mark.tsx';
import { settings } from '../../state/kept.ts';
import { handOverPairs } from '../../state/sheet-wanted.ts';
import { pairOf } from '../several/marked.ts';
import { openCell } from '../state/open-cell.ts';
import { change } from '../state/work.ts';
import { apart, aside, cellsOf, cellsTold, columns, drives, sayLength, whyFailed } from '../state/yard.ts';
import { Acknowledge, ChangesOf } from './changes.tsx';
import { Versions } from './versions.tsx';

/** One drive: its name and leave time, what each vehicle meets on it, what changed. */
export function DriveCard({ id }: { id: string }) {
  void cellsTold.value;
  const drive = drives.value.find((each) => each.id === id);
  if (!drive) return <p>It has been removed.</p>;
  const twice = apart.value.find((each) => each.id === id);
  const changed = [...cellsOf(id).values()].some(({ changes }) => changes.length > 0);
  return (
    <>
      {twice && <Versions of={twice} />}
      <Fields drive={drive} />
      {changed && (
        <div class="yard-change">
          <h4>What changed</h4>
          <ChangesOf drive={id} />
          <Acknowledge drives={[id]} />
        </div>
      )}
      <h4>With each vehicle, on its plates</h4>
      <ul class="yard-list yard-with">
        {columns.value.map(({ id: vehicle, name }, i) => (
          <li key={vehicle}>
            <span>
              <b>
                <bdi>{clip(name, 60)}</bdi>
              </b>
              <br />
              <InWords known={cellsOf(id).get(vehicle)} failed={whyFailed(id)} />
            </span>
            <span class="yard-do">
              <button type="button" onClick={() => void openCell(drive, vehicle)}>
                Open<span class="unseen"> with {clip(name, 60)}</span>
              </button>
              <button type="button" onClick={() => handOverPairs([pairOf(drive, columns.value[i]!)])}>
                Hand over<span class="unseen"> with {clip(name, 60)}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
      <p>
        <button
          type="button"
          onClick={async () => {
            if (await change('removeDrive', { id, over: drive.heads })) aside.value = undefined;
          }}
        >
          Remove: into the bin
        </button>
      </p>
    </>
  );
}

function InWords({ known, failed }: { known: YardCell | undefined; failed: string | undefined }) {
  const { units } = settings.value;
  if (!known) return <span class="small">{capital(sayNoCell(failed))}</span>;
  const { cell, stale } = known;
  const more = [sayCounts(cell.counts), saySettledCount(cell.settled ?? 0), sayTightest(cell, units)].filter(
    (part) => part !== '',
  );
  return (
    <>
      {stale.length > 0 && <b class="small">{sayStale(stale)}. It said: </b>}
      <span class={`yard-verdict level-${cell.verdict}`}>
        <VerdictMark verdict={cell.verdict} size={16} /> {LEVEL_WORD[cell.verdict]}
      </span>
      {more.length > 0 && <span class="small soft"> {more.join('; ')}</span>}
    </>
  );
}

/** What may be changed: kept when the field is left. */
function Fields({ drive }: { drive: YardDrive }) {
  const { id, name, file, leaveAt, heads: over, day, unread, alike } = drive;
  const [typed, setTyped] = useState(name);
  const { units } = settings.value;
  const rename = () => {
    const wanted = typed.trim();
    if (wanted !== name) void change('changeDrive', { id, over, name: wanted === '' ? null : wanted });
  };
  return (
    <div class="yard-fields">
      <label>
        <span class="small soft">Name</span>
        <input
          type="text"
          maxLength={200}
          value={typed}
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
          onChange={rename}
        />
      </label>
      <label>
        <span class="small soft">Leaves</span>
        <input
          type="datetime-local"
          value={leaveAt ?? ''}
          onChange={({ currentTarget: { value } }) => {
            const wanted = LEAVE_AT.test(value) ? value : null;
            if (wanted !== (leaveAt ?? null)) void change('changeDrive', { id, over, leaveAt: wanted });
          }}
        />
      </label>
      {alike !== undefined && (
        <p class="problem small">Another drive has this name. This one is told by: {alike}.</p>
      )}
      {unread !== undefined && <p class="problem small">{unread}</p>}
      <p class="small soft">
        {leaveAt === undefined && 'Without a leave time, hours and days are not judged. '}
        {sayLength(drive, units)}, from <bdi>{clip(file, 80)}</bdi>
        {day && `, day ${day.number} of ${day.of}`}
      </p>
    </div>
  );
}
