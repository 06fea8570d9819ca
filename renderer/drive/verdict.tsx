import { clockText, durationText } from '../../geo/clock/print-times.ts';
import { sayOffMapTime, sayUntimed } from '../../geo/drive/times/off-map-time.ts';
import { sayPlate, sayPlates } from '../../geo/load/weigh/say-plates.ts';
import { decidingOf, overSums } from '../../geo/load/weigh/sums.ts';
import { LEVEL_WORD } from '../../geo/report/level.ts';
import { sayMapAge } from '../../geo/report/map-age.ts';
import { sayGuessedShare } from '../../geo/report/say-guessed.ts';
import { sayFolded } from '../../geo/report/say-slight.ts';
import { liesElsewhere, sayOverall } from '../../geo/report/say-verdict.ts';
import { STANDING_CAUTION } from '../../geo/report/standing-caution.ts';
import { distanceIn } from '../../geo/units/in-units.ts';
import { clip, lowerFirst } from '../../geo/units/text.ts';
import { DayPart } from '../day/day-part.tsx';
import { LeaveDay } from '../leave/leave-day.tsx';
import { VerdictMark } from '../look/level-mark.tsx';
import { MapOffer } from '../shelf/fetch/offer.tsx';
import { Invented } from '../shelf/invented.tsx';
import { checking, checkProblem, leaveAt, report } from '../state/check.ts';
import { settings } from '../state/kept.ts';
import { notCounted } from '../state/loads.ts';
import { mapIsInvented, openedDrive } from '../state/opened.ts';
import { showSheet } from '../state/sheet-wanted.ts';
import { showView } from '../state/views.ts';
import { ChangedDrive } from '../ways/changed-drive.tsx';
import { WaysPastAll } from '../ways/ways-past.tsx';
import { DecidingPlaces } from './deciding-places.tsx';

/** The verdict in words, for which vehicle and drive it is, and the caution that stands beside every verdict. */
export function VerdictBlock() {
  const shown = report.value;
  if (!shown) return <VerdictToCome />;
  const { verdict, vehicle } = shown;
  const elsewhere = liesElsewhere(shown.match, shown.route.lengthM);
  // with nothing else to say it is the verdict's own sentence
  const folded = verdict === 'clear' ? undefined : sayFolded(shown.findings);
  const guessed = sayGuessedShare(shown, settings.value.units);
  return (
    <section class="verdict" aria-labelledby="verdict-word" aria-busy={checking.value}>
      <p class="on-paper">
        <bdi>{clip(shown.route.name || shown.route.file, 200)}</bdi>
      </p>
      <h2 id="verdict-word" class={`verdict-word level-${verdict}`}>
        <VerdictMark verdict={verdict} size={34} />
        {LEVEL_WORD[verdict]}
        <CheckingAgain />
      </h2>
      <p class="verdict-says">{sayOverall(shown)}</p>
      <ChangedDrive />
      <MapOffer />
      {!elsewhere && guessed !== undefined && <p class="verdict-guessed">{guessed}</p>}
      {!elsewhere && <DecidingPlaces />}
      {!elsewhere && <LeaveDay />}
      <div class="verdict-actions">
        {!elsewhere && <WaysPastAll />}
        {!elsewhere && <DayPart />}
        <p class="hand-over">
          <button type="button" onClick={() => showSheet()}>
            Hand over…
          </button>
        </p>
      </div>
      {!elsewhere && folded !== undefined && <p class="small soft">Also: {lowerFirst(folded)}</p>}
      <p class="small soft">
        <bdi>{clip(vehicle.name, 48)}</bdi>: <Facts /> <MapDate />
      </p>
      {checkProblem.value !== undefined && (
        <p role="alert" class="problem">
          {checkProblem.value} What stands here is the check before that, of {clip(vehicle.name, 80)}.
        </p>
      )}
      <Loaded />
      <p class="caution">{STANDING_CAUTION}</p>
    </section>
  );
}

/** What is asked again is dimmed, and says so, once it takes longer than a blink. */
function CheckingAgain() {
  return checking.value ? <span class="checking-again small">checking again…</span> : null;
}

/** How old the map is, loud where that matters. */
function MapDate() {
  const shown = report.value;
  if (!shown) return null;
  // of a map that has nothing of the drive the age means nothing
  if (liesElsewhere(shown.match, shown.route.lengthM)) return null;
  if (mapIsInvented.value) return <Invented />;
  const { say, doubtful } = sayMapAge(shown.map.sources, shown.made);
  return <span class={doubtful ? 'map-old' : ''}>{say}</span>;
}

function Facts() {
  const shown = report.value;
  if (!shown) return null;
  const { route, timetable, leaveAt: left } = shown;
  const { units } = settings.value;
  const parts = [distanceIn(units, route.lengthM)];
  const untimed = sayUntimed(shown, units);
  const offMap = sayOffMapTime(shown, units);
  if (untimed !== undefined) parts.push(`time unknown: ${untimed}`);
  else if (timetable) parts.push(`about ${durationText(timetable.drivingS)} on clear roads`);
  if (timetable?.arriveAt !== undefined) parts.push(`there at ${clockText(timetable.arriveAt, left)}`);
  if (offMap !== undefined) parts.push(offMap);
  if (leaveAt.value === undefined) parts.push('no leave time set');
  return <>{parts.join(', ')}.</>;
}

/** Whether the vehicle may leave as loaded at all; nothing where no load is listed. */
function Loaded() {
  const load = report.value?.load;
  const problem = notCounted.value;
  const see = (
    <button type="button" class={load?.over.length === 0 ? 'quiet' : ''} onClick={() => showView('load')}>
      See the load
    </button>
  );
  if (problem)
    return (
      <p class="problem">
        The load is not counted. {clip(problem.message, 300)} {see}
      </p>
    );
  if (!load) return null;
  if (load.over.length === 0)
    return (
      <p class="small soft">
        Loaded as listed: {sayPlate(decidingOf(load))}. {see}
      </p>
    );
  return (
    <p class="problem">
      Loaded as listed it must not leave: {sayPlates(overSums(load))}. {see}
    </p>
  );
}

function VerdictToCome() {
  return (
    <section class="verdict" aria-label="Verdict">
      {checkProblem.value !== undefined ? (
        <p role="alert" class="problem">
          {checkProblem.value}
        </p>
      ) : (
        openedDrive.value && (
          <>
            <h2 class="verdict-word">Checking…</h2>
            <p class="soft">Nothing is known of this drive yet.</p>
          </>
        )
      )}
    </section>
  );
}
