import { sayAssumed } from '../../report/say-assumed.ts';
import { keepFreeM, mostOutM, sayKeepFree, sayOverLane, sayTurnDeg } from '../../report/say-turn-figures.ts';
import { clearanceOf, POST_BACK_M } from '../../swing/corner/clearance.ts';
import { METRES_PER_FOOT } from '../../units/exact.ts';
import { inUnits, shortIn, type Units } from '../../units/in-units.ts';
import { type Beside, type MeasuredTurn, mustBackUp } from './measure-turn.ts';

/** What one corner asks: what to keep free for the tail first, then the room, the tail's figures, what was assumed. */
export function sayTurn(measured: MeasuredTurn, units: Units): string {
  const { turn } = measured;
  const { assumed, room } = turn;
  const second = room === 'back up' ? ', and be ready to back up once' : '';
  const usual = assumed.length === 0 ? [] : [`${sayUsual(measured)}: ${sayAssumed(assumed, units)}.`];
  return [
    `${sayWhat(measured, units)}: ${sayKeepFree(turn, units)} for the tail${second}.`,
    `${sayRoom(measured, units)}; ${sayTail(measured, units)}.`,
    ...usual,
  ].join(' ');
}

/** How far the tail comes out at the most: on the sweep that fits, and with the wheel hard over. */
function sayTail(measured: MeasuredTurn, units: Units): string {
  const { turn } = measured;
  const most = (m: number) => `up to ${shortIn(units, m, 'up')}`;
  const lock = `with the wheel hard over${turn.lockFrom === 'measured' ? ', as measured in the yard,' : ''}`;
  const out = `the tail swings out ${most(mostOutM(turn))}${sayOver(measured, mostOutM(turn), units)}`;
  return turn.room === 'back up'
    ? `${lock} ${out}`
    : `on that sweep ${out}, ${lock} ${most(keepFreeM(turn))}`;
}

/** Where the mapped widths decide the room, the tail's figures alone rest on what is usual. */
function sayUsual(measured: MeasuredTurn): string {
  return mustBackUp(measured)
    ? 'For the tail, usual figures stand in for what is not mapped'
    : 'Not mapped, so usual figures stand in';
}

function sayWhat({ turn, driven }: MeasuredTurn, units: Units): string {
  const { side, kind, circleM } = turn;
  const deg = sayTurnDeg(turn);
  const Side = side === 'left' ? 'Left' : 'Right';
  switch (kind) {
    case 'roundabout':
      if (driven.part === 'ring')
        return `Round the roundabout${circleM === undefined ? '' : ` of ${inUnits(units, `${circleM.toFixed(0)} m`, `${(circleM / METRES_PER_FOOT).toFixed(0)} ft`)}`}`;
      return driven.part === 'entry' ? `${Side} onto the roundabout` : `${Side} off the roundabout`;
    case 'mini-roundabout':
      return `${Side} at the mini-roundabout`;
    case 'u-turn':
      return `Turning back${circleM === undefined ? '' : ` within ${inUnits(units, `${circleM.toFixed(1)} m`, `${(circleM / METRES_PER_FOOT).toFixed(0)} ft`)}`}`;
    case 'bend':
      return turn.bendRadiusM === undefined ? `${Side} corner of ${deg}` : `Hairpin to the ${side}`;
    case 'junction':
      return `${Side} turn of ${deg}`;
  }
}

function sayRoom(measured: MeasuredTurn, units: Units): string {
  switch (measured.turn.room) {
    case 'own lane':
      return 'It fits its own lane';
    case 'other lane on the exit':
      return 'It takes the other lane on the exit';
    case 'whole road':
      return 'It takes the whole road';
    case 'back up':
      if (mustBackUp(measured))
        return `On the road widths mapped no single sweep keeps the whole body ${shortIn(units, clearanceOf(measured.turn), 'nearest')} inside the kerbs`;
      return measured.roomiest.room === 'back up'
        ? 'It may need a second go'
        : 'It may need a second go, unless there is more room than usual';
  }
}

/** What a tail that comes out so far goes over, by how much, and from where it starts. */
function sayOver({ turn, beside }: MeasuredTurn, outM: number, units: Units): string {
  const over = sayOverLane(turn, outM, units);
  return over === undefined || turn.start === undefined
    ? ''
    : ` (${over} over ${LINE[beside]} where it starts ${shortIn(units, turn.start.gapM, 'down')} from it)`;
}

const LINE: Readonly<Record<Beside, string>> = {
  kerb: 'the edge of the road',
  'oncoming traffic': 'the middle line',
  'lane beside': 'the edge of the lane',
};

/** What to do: watch the mirror on the tail's side, and what may stand there. */
export function adviseTurn(measured: MeasuredTurn): string {
  const { turn, beside, besideM, driven } = measured;
  const { room, swing } = turn;
  const watch = `Watch the tail in the ${swing.side} mirror`;
  if (room === 'back up') return adviseSecondGo(measured);
  const wait = room === 'own lane' ? '' : 'Wait until nothing comes, turn late and slowly. ';
  if (driven.part === 'ring' || (turn.kind === 'mini-roundabout' && !turn.start))
    return `${wait}${watch}; the nose goes round far outside the rear wheels.`;
  switch (beside) {
    case 'kerb': {
      const posts = keepFreeM(turn) - besideM > POST_BACK_M ? ', and posts behind it,' : '';
      return `${wait}${watch}: whoever stands at the edge of the road${posts} must be clear of it.`;
    }
    case 'oncoming traffic':
      return `${wait}${watch}: what comes or waits there must be clear of it.`;
    case 'lane beside':
      return `${wait}${watch}: what stands beside you must be clear of it.`;
  }
}

function adviseSecondGo(measured: MeasuredTurn): string {
  const isTurnBack = measured.turn.kind === 'u-turn';
  if (mustBackUp(measured))
    return isTurnBack
      ? 'Find a place with more room to turn, or have somebody watch the tail.'
      : 'Have somebody watch the tail, or take another way; turning the wheel more or less on the way round, or the body over a kerb where nothing stands, may still do it in one go.';
  return isTurnBack
    ? 'Have somebody watch the tail; a place with more room to turn is better.'
    : 'Have somebody watch the tail; turning the wheel more or less on the way round may still do it in one go.';
}
