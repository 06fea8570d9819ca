import { sayAssumed } from '../../report/say-assumed.ts';
import { sayTurnDeg, sayTurnFigures } from '../../report/say-turn-figures.ts';
import { clearanceOf, POST_BACK_M } from '../../swing/corner/clearance.ts';
import { printCm } from '../../units/print.ts';
import { type Beside, type MeasuredTurn, mustBackUp } from './measure-turn.ts';

/** What one corner asks, the worst first: room, tail with its side and range, what was assumed. */
export function sayTurn(measured: MeasuredTurn): string {
  const { turn } = measured;
  const { swing, assumed } = turn;
  const over = sayOver(measured);
  const figures = sayTurnFigures(turn, 'metric');
  const tail =
    turn.room === 'back up'
      ? [`At full lock the tail swings out to the ${swing.side} ${figures.worst}${over}.`]
      : [
          `${turn.room === 'own lane' ? 'the' : 'The'} tail swings out to the ${swing.side} ${figures.plan}${over};`,
          `driven gently ${figures.gently}, at full lock ${figures.worst}.`,
        ];
  const usual = assumed.length === 0 ? [] : [`${sayUsual(measured)}: ${sayAssumed(assumed)}.`];
  return [`${sayWhat(measured)}${sayRoom(measured)}`, ...tail, ...usual].join(' ');
}

/** Where the mapped widths decide the room, the tail's figures alone rest on what is usual. */
function sayUsual(measured: MeasuredTurn): string {
  return mustBackUp(measured)
    ? 'For the tail, usual figures stand in for what is not mapped'
    : 'Not mapped, so usual figures stand in';
}

function sayWhat({ turn, driven }: MeasuredTurn): string {
  const { side, kind } = turn;
  const deg = sayTurnDeg(turn);
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

function sayRoom(measured: MeasuredTurn): string {
  switch (measured.turn.room) {
    case 'own lane':
      return ':';
    case 'other lane on the exit':
      return ' takes the other lane on the exit.';
    case 'whole road':
      return ' takes the whole road.';
    case 'back up':
      if (mustBackUp(measured))
        return ` leaves no room for one sweep with the whole body ${printCm(clearanceOf(measured.turn), 'nearest')} inside the kerbs on the road widths mapped: be ready to back up once.`;
      return measured.roomiest.room === 'back up'
        ? ' may need a second go: be ready to back up once.'
        : ' may need a second go, unless there is more room than usual.';
  }
}

/** What the tail goes out over, by how much, and from where it starts. */
function sayOver({ turn, beside }: MeasuredTurn): string {
  const { over, gap } = sayTurnFigures(turn, 'metric');
  return over === undefined ? '' : `, ${over} over ${LINE[beside]} where it starts ${gap} from it`;
}

const LINE: Readonly<Record<Beside, string>> = {
  kerb: 'the kerb line',
  'oncoming traffic': 'the middle line',
  'lane beside': 'the edge of the lane',
};

/** Less to keep off a kerb is not worth asking for. Metres. */
const KEEP_LEAST_M = 0.05;

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
      const beyondM = swing.worstM - besideM;
      const posts = beyondM > POST_BACK_M ? ', and off posts that stand behind it' : '';
      return `${wait}${watch}: keep ${printCm(Math.max(KEEP_LEAST_M, beyondM), 'up')} more than usual off the kerb${posts}.`;
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
