import type { MeasuredTurn } from './measure-turn.ts';

/** Room weighs most, then the lock it takes (at most 1), then how far the tail leaves its lane. Judgement. */
const ROOM_WEIGHT = {
  'own lane': 0,
  'other lane on the exit': 0.3,
  'whole road': 0.7,
  'back up': 1.5,
} as const;
const TAIL_WEIGHT_PER_M = 2;
/** Posts, walls and people stand beside a kerb, a middle line has only traffic that can be waited for. */
const KERB_WEIGHT_PER_M = 3;
/** The tail this far beyond its lane is worth a word. Metres. */
const WORTH_SAYING_M = 0.05;
/** Round a small ring there is no lane line to measure from: a swing of this much is worth a word. Metres. */
const RING_SWING_M = 0.3;
/** An even sweep at so many times the least radius is a gentle one, even where it takes the other lane for a moment. */
const GENTLE = 1.8;

/**
 * What a corner is about: `turn` where room is the matter, `swing` where the tail is; undefined where it is not worth
 * a word. @param lockM least radius of the rear-axle centre, metres
 */
export function subjectOf({ turn, besideM }: MeasuredTurn, lockM: number): 'turn' | 'swing' | undefined {
  const spareM = turn.circleM === undefined ? besideM + WORTH_SAYING_M : RING_SWING_M;
  const tailOut = turn.swing.planM >= spareM;
  if (turn.room === 'own lane') return tailOut ? 'swing' : undefined;
  const gentle = turn.room === 'other lane on the exit' && turn.rearAxleRadiusM >= GENTLE * lockM;
  return gentle && !tailOut ? undefined : 'turn';
}

/**
 * How much a corner asks of the driver: where room is the matter, halfway between the usual figures for what is not
 * mapped and the roomiest they may stand for. Backing up that only usual figures ask for counts as no more than the
 * whole road: no alarm by guesswork. @param lockM least radius of the rear-axle centre, metres
 */
export function weightOf({ turn, besideM, beside, roomiest }: MeasuredTurn, lockM: number): number {
  const guessed = turn.room === 'back up' && roomiest.room !== 'back up';
  const usual = guessed
    ? { room: 'whole road' as const, rearAxleRadiusM: roomiest.rearAxleRadiusM, planM: roomiest.planM }
    : { room: turn.room, rearAxleRadiusM: turn.rearAxleRadiusM, planM: turn.swing.planM };
  const perM = beside === 'kerb' ? KERB_WEIGHT_PER_M : TAIL_WEIGHT_PER_M;
  const weigh = ({ room, rearAxleRadiusM, planM }: typeof usual | MeasuredTurn['roomiest']) => {
    const overM = turn.kind === 'u-turn' ? 0 : Math.max(0, planM - besideM);
    return ROOM_WEIGHT[room] + lockM / rearAxleRadiusM + perM * overM;
  };
  return turn.room === 'own lane' ? weigh(usual) : (weigh(usual) + weigh(roomiest)) / 2;
}
