import '../../swing/drawing/drawing.css';
import '../../swing/swing.css';
import { useMemo } from 'preact/hooks';
import type { Finding } from '../../../geo/report/report.ts';
import { driveTurnScene } from '../../../geo/swing/lessons/build/drive-turn.ts';
import { swingVehicleOf } from '../../../geo/swing/swing-vehicle.ts';
import { report } from '../../state/check.ts';
import { showView, tabId } from '../../state/views.ts';
import { FanDrawing } from '../../swing/drawing/fan-drawing.tsx';
import { KeyList } from '../../swing/key-list.tsx';
import { pick } from '../../swing/state/lesson.ts';

/** The corner with its own widths and the vehicle going round it, to scale, and the way to see it move. */
export function TurnFigure({ finding }: { finding: Finding }) {
  const { turn } = finding;
  const card = report.value?.vehicle;
  const scene = useMemo(
    () => (turn && card ? driveTurnScene(turn, swingVehicleOf(card)) : undefined),
    [turn, card],
  );
  if (!scene) return null;
  return (
    <div class="turn-figure">
      <FanDrawing scene={scene} widthPx={380} heightPx={250} />
      <KeyList scene={scene} />
      <button
        type="button"
        onClick={() => {
          pick(finding);
          showView('swing');
          document.getElementById(tabId('swing'))?.focus();
        }}
      >
        See this turn
      </button>
    </div>
  );
}
