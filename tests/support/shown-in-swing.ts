import { largest } from '../../geo/lists.ts';
import type { Finding } from '../../geo/report/report.ts';
import type { Turn } from '../../geo/report/turn.ts';
import { driveTurnScene } from '../../geo/swing/lessons/build/drive-turn.ts';
import { type OverLine, overLines } from '../../geo/swing/lessons/read/over-line.ts';
import { swingsOf } from '../../geo/swing/lessons/read/swings.ts';
import { tellScene } from '../../geo/swing/lessons/tell/tell-scene.ts';
import { swingVehicleOf } from '../../geo/swing/swing-vehicle.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';

/** A turn of a drive as the Swing view has it. */
interface ShownTurn {
  readonly turn: Turn | undefined;
  readonly told: string;
  /** centimetres of the row that the view does not say */
  readonly missing: readonly string[];
  /** how far the tail comes out as it is driven there, metres */
  readonly drivenM: number;
  readonly over: readonly OverLine[];
}

/** Opens a finding's turn in Swing, for the vehicle of its report. */
export function shownInSwing({ turn, say }: Finding, card: VehicleCard): ShownTurn {
  if (!turn) throw new Error('no turn');
  const scene = driveTurnScene(turn, swingVehicleOf(card));
  const told = tellScene(scene, 'metric').join(' ');
  const rowCm = say.match(/\d+ (?:to \d+ )?cm/g) ?? [];
  return {
    turn: scene.turn,
    told,
    missing: rowCm.filter((figure) => !told.includes(figure)),
    drivenM: largest(swingsOf(scene).nowM),
    over: overLines(scene),
  };
}
