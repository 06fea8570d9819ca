import type { MeasuredTurn } from '../../drive/turns/measure-turn.ts';

/** Swing figures are no truer than this. Metres; model and measuring, see the standing caution. */
const STEP_M = 0.05;
/** Posts and walls may stand this near behind a kerb. Metres; from memory. */
const POSTS_M = 0.45;

/** `0.25 m`, to the nearest 5 cm. */
function size(m: number): string {
  return `${(Math.round(m / STEP_M) * STEP_M).toFixed(2)} m`;
}

function range(fromM: number, toM: number): string {
  const [from, to] = [size(fromM), size(toM)];
  return from === to ? '' : ` (${from.slice(0, -2)} to ${to})`;
}

/** What one corner asks, the worst first: room, tail with its side and range, what was assumed. */
export function sayTurn(measured: MeasuredTurn, twoWay: boolean): string {
  const { turn } = measured;
  const { swing, assumed } = turn;
  const over = sayOver(measured, twoWay);
  const worst = `${size(swing.worstM)}${range(swing.worstFromM, swing.worstToM)}`;
  const tail =
    turn.room === 'shunt'
      ? [`At full lock the tail swings out to the ${swing.side} ${worst}${over}.`]
      : [
          `${turn.room === 'own lane' ? 'the' : 'The'} tail swings out to the ${swing.side} ${size(swing.planM)}${range(swing.planFromM, swing.planToM)}${over};`,
          `driven gently ${swing.gentleM < STEP_M / 2 ? 'hardly at all' : size(swing.gentleM)}, at full lock ${worst}.`,
        ];
  const usual = `Not mapped, so usual figures stand in: ${assumed.join(', ')}.`;
  return [`${sayWhat(measured)}${sayRoom(measured)}`, ...tail, ...(assumed.length === 0 ? [] : [usual])].join(
    ' ',
  );
}

function sayWhat({ turn, driven }: MeasuredTurn): string {
  const { side, kind } = turn;
  const deg = `${Math.round(turn.turnDeg / 5) * 5}°`;
  const Side = side === 'left' ? 'Left' : 'Right';
  switch (kind) {
    case 'roundabout':
      if (driven.part === 'ring')
        return `Round the roundabout${turn.circleM === undefined ? '' : ` of ${turn.circleM.toFixed(0)} m`}`;
      return driven.part === 'entry' ? `${Side} onto the roundabout` : `${Side} off the roundabout`;
    case 'mini-roundabout':
      return `${Side} at the mini-roundabout`;
    case 'u-turn':
      return `Turning back${turn.circleM === undefined ? '' : ` within ${turn.circleM.toFixed(1)} m`}`;
    case 'bend':
      return turn.bendRadiusM === undefined ? `${Side} corner of ${deg}` : `Hairpin to the ${side}`;
    case 'junction':
      return `${Side} turn of ${deg}`;
  }
}

function sayRoom({ turn, roomiest }: MeasuredTurn): string {
  switch (turn.room) {
    case 'own lane':
      return ':';
    case 'other lane on the exit':
      return ' takes the other lane on the exit.';
    case 'whole road':
      return ' takes the whole road.';
    case 'shunt':
      return roomiest.room === 'shunt'
        ? ' may need a shunt.'
        : ' may need a shunt, unless there is more room than usual.';
  }
}

/** What stands on the side that the tail goes out to. */
function sayOver({ turn, besideM, driven }: MeasuredTurn, twoWay: boolean): string {
  if (driven.part === 'ring' || turn.kind === 'u-turn' || turn.swing.planM <= besideM) return '';
  if (turn.swing.side === turn.driveSide) return ', over the kerb line';
  return twoWay ? ', over the middle line' : ', over the edge of the lane';
}

/** What to do: watch the mirror on the tail's side, and what may stand there. */
export function adviseTurn({ turn, besideM, driven }: MeasuredTurn, twoWay: boolean): string {
  const { room, swing, driveSide } = turn;
  const watch = `Watch the tail in the ${swing.side} mirror`;
  if (room === 'shunt')
    return turn.kind === 'u-turn'
      ? 'Find a place with more room to turn, or have somebody watch the tail.'
      : `Have somebody watch the tail, or take another way; a driver who varies the lock may still get round in one.`;
  const wait = room === 'own lane' ? '' : 'Wait until nothing comes, turn late and slowly. ';
  if (driven.part === 'ring') return `${wait}${watch}; the nose goes round far outside the rear wheels.`;
  if (swing.side === driveSide) {
    const keepM = Math.max(0, swing.worstM - besideM);
    const posts = swing.worstM - besideM > POSTS_M ? ', and off posts that stand behind it' : '';
    return `${wait}${watch}: keep ${size(Math.max(STEP_M, keepM))} more than usual off the kerb${posts}.`;
  }
  return `${wait}${watch}: ${twoWay ? 'what comes or waits there' : 'what stands beside you'} must be clear of it.`;
}
