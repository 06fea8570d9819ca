import { sayTurnDeg } from '../../../geo/report/say-turn-figures.ts';
import { WHEELS } from '../../../geo/swing/lessons/build/drive-turn.ts';
import { distanceIn } from '../../../geo/units/in-units.ts';
import { clip } from '../../../geo/units/text.ts';
import { select } from '../../actions/choose.ts';
import { findings } from '../../state/check.ts';
import { settings } from '../../state/kept.ts';
import { showView } from '../../state/views.ts';
import { driveTurns, pick, picked, turnWheel, wheel } from '../state/lesson.ts';
import { byHand, shown } from '../state/shown.ts';
import { OneOf } from './one-of.tsx';

/** Which turn of the drive is shown, and the way back to it on the drive. */
export function TurnOfDrive() {
  const turns = driveTurns.value;
  const from = picked.value;
  const { units } = settings.value;
  const scene = byHand.value ? undefined : shown.value?.scene;
  const open = turns.some(({ id }) => id === from?.findingId);
  return (
    <>
      {turns.length > 0 && (
        <select
          class="turn-choice"
          aria-label="Which turn of the drive"
          value={open ? from?.findingId : ''}
          onChange={({ currentTarget }) => {
            const finding = driveTurns.peek().find(({ id }) => id === currentTarget.value);
            if (finding) pick(finding);
          }}
        >
          {!open && <option value="">of another drive</option>}
          {turns.map(({ id, fromM, road, turn }) => (
            <option key={id} value={id}>
              {distanceIn(units, fromM)}, {turn?.side} {turn && sayTurnDeg(turn)}
              {road === undefined ? '' : `, ${clip(road, 40)}`}
            </option>
          ))}
        </select>
      )}
      {from && !open && (
        <p class="small">
          A turn of a drive that is no longer open{from.where === '' ? '' : `: ${clip(from.where, 60)}`}.
        </p>
      )}
      {scene?.turn && scene.turn.room !== 'back up' && (
        <OneOf label="Wheel turned" value={wheel.value} among={WHEELS} onChoose={turnWheel} />
      )}
      {from && findings.value.some(({ id }) => id === from.findingId) && (
        <button type="button" onClick={() => backToDrive(from.findingId)}>
          Back to the drive at this turn
        </button>
      )}
    </>
  );
}

/** The drive as it was left, at the finding; the keyboard stands on its row. */
function backToDrive(findingId: string): void {
  select(findingId);
  showView('drive');
  requestAnimationFrame(() =>
    document.querySelector<HTMLElement>(`button[data-finding="${CSS.escape(findingId)}"]`)?.focus(),
  );
}
