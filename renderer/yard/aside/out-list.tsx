import { useEffect } from 'preact/hooks';
import { sayMoment } from '../../../geo/clock/print-dates.ts';
import { LEVEL_WORD } from '../../../geo/report/level.ts';
import { capital, clip } from '../../../geo/units/text.ts';
import { saySince } from '../../../geo/yard/handed/say-since.ts';
import { sayStanding } from '../../../geo/yard/handed/standing.ts';
import type { OutSheetShown } from '../../../main/contract/hand-over/hand-over-calls.ts';
import { VerdictMark } from '../../look/level-mark.tsx';
import { showSheet } from '../../state/sheet-wanted.ts';
import { again, checkOut, outChanged, outSays, sheetsOut, sheetsShown, tellBack } from '../state/out.ts';

/** More than these are looked for by their number. */
const MOST_SHOWN = 100;

/** What was handed out: first what changed since, then the rest. */
export function OutList() {
  useEffect(() => {
    const stop = new AbortController();
    void checkOut(stop.signal);
    return () => stop.abort();
  }, []);
  const changed = outChanged.value;
  const same = sheetsOut.value.filter(({ since }) => since.length === 0);
  const back = sheetsShown.value.filter(({ standing }) => standing.kind === 'back');
  return (
    <>
      {outSays.value !== undefined && <p class="problem">{outSays.value}</p>}
      <h4>Out, changed since</h4>
      {changed.length === 0 ? (
        <p>Nothing that is out has changed since it was handed over.</p>
      ) : (
        <Sheets sheets={changed} />
      )}
      {same.length > 0 && (
        <>
          <h4>Out, as handed over</h4>
          <Sheets sheets={same} />
        </>
      )}
      {back.length > 0 && (
        <>
          <h4>Back</h4>
          <Sheets sheets={back} />
        </>
      )}
    </>
  );
}

function Sheets({ sheets }: { sheets: readonly OutSheetShown[] }) {
  return (
    <ul class="yard-list">
      {sheets.slice(0, MOST_SHOWN).map((sheet) => (
        <Sheet key={sheet.number} sheet={sheet} />
      ))}
    </ul>
  );
}

function Sheet({ sheet }: { sheet: OutSheetShown }) {
  const { number, driveName, driveNow, vehicleName, leaveAt, since, standing, verdict, overlap } = sheet;
  const isBack = standing.kind === 'back';
  const told = again.value.get(number);
  const problem = told && 'problem' in told ? told.problem : undefined;
  return (
    <li>
      <span>
        <b class="mono">{number}</b>{' '}
        {verdict && (
          <b class="yard-verdict">
            <VerdictMark verdict={verdict} size={16} /> {LEVEL_WORD[verdict]}
          </b>
        )}
        <br />
        {standing.kind !== 'out' && <b>{capital(sayStanding(standing))}, </b>}
        {leaveAt === undefined ? 'no leave time' : `leaves ${sayMoment(leaveAt)}`}
        <br />
        <bdi>{clip(driveName, 80)}</bdi>
        {driveNow && <bdi> (now {clip(driveNow, 80)})</bdi>}, <bdi>{clip(vehicleName, 60)}</bdi>
        {problem && <p class="problem small">{problem}</p>}
        {overlap && <p class="small">{overlap}</p>}
        {!isBack && since.length > 0 && (
          <>
            <br />
            <span class="small soft">{capital(saySince(since))}.</span>
            <Worse sheet={sheet} />
          </>
        )}
      </span>
      <div>
        <button type="button" onClick={() => showSheet(number)}>
          Show<span class="unseen"> sheet {number}</span>
        </button>
        <button type="button" onClick={() => void tellBack(number, !isBack)}>
          {isBack ? 'Not back' : 'Is back'}
          <span class="unseen">: sheet {number}</span>
        </button>
      </div>
    </li>
  );
}

function Worse({ sheet: { number, leaves } }: { sheet: OutSheetShown }) {
  if (leaves === 'left') return <p class="small soft">Its leave day is past.</p>;
  const told = again.value.get(number);
  if (told === undefined && outSays.value !== undefined) return null;
  if (told === undefined) return <p class="small soft">Checking again…</p>;
  if ('problem' in told) return null;
  if (told.worse.length === 0) return <p class="small">Nothing is new or worse.</p>;
  return (
    <ul class="yard-worse">
      {told.worse.map((say) => (
        <li key={say}>
          <bdi>{clip(say, 300)}</bdi>
        </li>
      ))}
    </ul>
  );
}
