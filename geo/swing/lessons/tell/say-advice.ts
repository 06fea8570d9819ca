import { METRES_PER_FOOT } from '../../../units/exact.ts';
import { inUnits, shortIn, type Units } from '../../../units/in-units.ts';
import { CORNER_CLEARANCE_M, clearanceOf } from '../../corner/clearance.ts';
import type { Advice } from '../read/advise.ts';
import type { Scene } from '../scene/scene.ts';
import { sayFixture, sayRole } from './say-part.ts';

/** What to do about a run, in sentences; none where there is nothing to do. */
export function sayAdvice(scene: Scene, advice: Advice | undefined, units: Units): readonly string[] {
  if (!advice) return [];
  switch (advice.kind) {
    case 'gap does':
      return [
        `This needs ${sayNeeded(advice, units)} beside it; to ${sayRole(advice.beside)} there are ${shortIn(units, advice.gapM, 'down')}.`,
        ...(advice.stopShort ? [`Stop short of ${sayFixture(advice.stopShort)} and take a second go.`] : []),
      ];
    case 'gap too small':
      return [
        `It needs ${sayNeeded(advice, units)} and has ${shortIn(units, advice.gapM, 'down')} to ${sayRole(advice.beside)}: ${waysPast(scene, advice, units)}.`,
      ];
    case 'over the dome':
      return ['Go slowly and evenly; where there is no other way, the dome may be run over.'];
    case 'back up':
      return [
        `No sweep at one lock keeps the whole body ${shortIn(units, scene.turn ? clearanceOf(scene.turn) : CORNER_CLEARANCE_M, 'nearest')} inside the kerbs; it is drawn at full lock. More or less wheel on the way round, or the body over a kerb where nothing stands, may still do it. Else stop short and back up once, with somebody watching the tail.`,
      ];
    case 'turn later':
      return ['Turn later, or stop short and take a second go.'];
    case 'turn earlier':
      return [`Turn earlier${advice.orHarder ? ' or harder' : ''}, or stop short and take a second go.`];
    case 'room for the tail':
      return [
        `Keep more room on the ${advice.side} before turning, or turn the wheel less at first: the tail comes back in.`,
      ];
    case 'farther ahead':
      return ['Go farther ahead before turning: the rear wheels cut in.'];
    case 'more room':
      return ['Keep more room beside.'];
  }
}

/** What passes by the figures, and what is added because they may be off. */
function sayNeeded({ neededM, sureM }: { readonly neededM: number; readonly sureM: number }, units: Units) {
  return `${shortIn(units, neededM, 'up')}, with ${shortIn(units, sureM, 'up')} more to be sure,`;
}

/** Less lock than this is as good as none. Per cent. */
const LOCK_LEAST = 5;

function waysPast(
  { reversing, settings }: Scene,
  { lockShare, straightM }: Extract<Advice, { kind: 'gap too small' }>,
  units: Units,
): string {
  const lock = Math.floor(lockShare * 100);
  const ways = [lock >= LOCK_LEAST ? `turn no more than ${lock} % of full lock` : 'leave a wider gap'];
  if (straightM !== undefined) {
    const farther = settings && settings.straightM > 0 ? ' farther' : '';
    const way = inUnits(units, `${upToTenth(straightM)} m`, `${upToTenth(straightM / METRES_PER_FOOT)} ft`);
    ways.unshift(`go ${way} ${reversing ? 'straight back' : 'straight on'}${farther} first`);
  }
  return ways.join(', or ');
}

/** Rounded up: a little farther still passes. */
function upToTenth(length: number): string {
  return (Math.ceil(length * 10 - 1e-6) / 10).toFixed(1);
}
