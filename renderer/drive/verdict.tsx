import { clockText, durationText } from '../../geo/clock/print-times.ts';
import { liesElsewhere } from '../../geo/drive/match-lengths.ts';
import { sayPlate, sayPlates } from '../../geo/load/weigh/say-plates.ts';
import { decidingOf, overSums } from '../../geo/load/weigh/sums.ts';
import { LEVEL_WORD } from '../../geo/report/level.ts';
import { sayFolded } from '../../geo/report/say-slight.ts';
import { sayVerdict } from '../../geo/report/say-verdict.ts';
import { STANDING_CAUTION } from '../../geo/report/standing-caution.ts';
import { distanceIn } from '../../geo/units/in-units.ts';
import { clip } from '../../geo/units/text.ts';
import { LevelMark } from '../look/level-mark.tsx';
import { checking, checkProblem, leaveAt, report } from '../state/check.ts';
import { settings } from '../state/kept.ts';
import { notCounted } from '../state/loads.ts';
import { openedDrive } from '../state/opened.ts';
import { dialog } from '../state/page.ts';
import { showView } from '../state/views.ts';

/** The verdict in words, for which vehicle and drive it is, and the caution that stands beside every verdict. */
export function VerdictBlock() {
  const shown = report.value;
  if (!shown) return <VerdictToCome />;
  const { verdict, vehicle } = shown;
  const elsewhere = liesElsewhere(shown.match, shown.route.lengthM);
  const folded = sayFolded(shown.findings);
  return (
    <section class="verdict" aria-labelledby="verdict-word" aria-busy={checking.value}>
      <h2 id="verdict-word" class={`verdict-word level-${verdict}`}>
        {verdict !== 'clear' && <LevelMark level={verdict} size={30} />}
        {LEVEL_WORD[verdict]}
      </h2>
      <p class="verdict-says">
        {elsewhere
          ? 'The open map has no roads under this drive, so nothing on it is checked.'
          : sayVerdict(shown)}
      </p>
      {!elsewhere && folded !== undefined && <p class="small soft">{folded}</p>}
      <p class="small soft">
        <bdi>{clip(vehicle.name, 48)}</bdi>: <Facts />
      </p>
      {checkProblem.value !== undefined && (
        <p role="alert" class="problem">
          {checkProblem.value} What stands here is the check before that, of {clip(vehicle.name, 80)}.
        </p>
      )}
      {elsewhere && <MapElsewhere />}
      <Loaded />
      <p class="caution">{STANDING_CAUTION}</p>
    </section>
  );
}

function Facts() {
  const shown = report.value;
  if (!shown) return null;
  const { route, timetable, leaveAt: left } = shown;
  const parts = [distanceIn(settings.value.units, route.lengthM)];
  if (timetable) parts.push(`about ${durationText(timetable.drivingS)} on clear roads`);
  if (timetable?.arriveAt !== undefined) parts.push(`there at ${clockText(timetable.arriveAt, left)}`);
  else if (leaveAt.value === undefined) parts.push('no leave time set');
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
        <p class="soft">{openedDrive.value ? 'Checking the drive…' : ''}</p>
      )}
    </section>
  );
}

function MapElsewhere() {
  return (
    <p class="problem">
      Open a map of the place where the drive lies.{' '}
      <button
        type="button"
        onClick={() => {
          dialog.value = 'open';
        }}
      >
        Open a map…
      </button>
    </p>
  );
}
