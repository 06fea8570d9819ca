import type { Stretch } from '../drive.ts';

/** A turn of a drive as the map draws it; nothing of the vehicle or of widths yet. */
export interface DrivenTurn {
  readonly kind: 'junction' | 'bend' | 'roundabout' | 'mini-roundabout' | 'u-turn';
  readonly side: 'left' | 'right';
  /** how far the heading changes, 0 … 180; round a ring as far as it is driven */
  readonly turnDeg: number;
  /** metres along the drive: first and last place of the turn as drawn, and its middle */
  readonly fromM: number;
  readonly toM: number;
  readonly atM: number;
  /** index into Roads.nodes of the node it turns at, -1 where none stands */
  readonly node: number;
  /** what is driven before and after */
  readonly entry: Stretch;
  readonly exit: Stretch;
  /** part of a roundabout: onto the ring, round it, off it */
  readonly part?: 'entry' | 'ring' | 'exit';
  /** mean radius of a ring or a hairpin as drawn along its middle line */
  readonly drawnRadiusM?: number;
  /** a hairpin drawn with too few places to be measured */
  readonly unmeasured?: true;
  /** between the two roadways that a turn back joins */
  readonly apartM?: number;
}
