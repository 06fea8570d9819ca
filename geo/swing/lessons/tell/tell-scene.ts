import { sayAssumed } from '../../../report/say-assumed.ts';
import {
  mostOutM,
  sayKeepFree,
  sayOverLane,
  sayTurnDeg,
  sayTurnFigures,
} from '../../../report/say-turn-figures.ts';
import type { Turn } from '../../../report/turn.ts';
import { shortIn, type Units } from '../../../units/in-units.ts';
import { capital } from '../../../units/text.ts';
import { radiusOfShareM } from '../../circle.ts';
import { POST_BACK_M } from '../../corner/clearance.ts';
import { MODEL_OFF_M } from '../../model-off.ts';
import { sayTurnRange } from '../../say-model.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import { pitchGapM } from '../build/pitch.ts';
import { swingingEnd } from '../read/judge.ts';
import { type LessonResult, resultOf } from '../read/lesson-result.ts';
import { atTightest, atWidest, swingDoubtOf } from '../read/lock-doubt.ts';
import type { VehiclePart } from '../read/part.ts';
import type { Scene } from '../scene/scene.ts';
import type { LessonSettings } from '../scene/settings.ts';
import { sayDegrees, sayWay } from './lengths.ts';
import { sayAdvice } from './say-advice.ts';
import { sayOver } from './say-contact.ts';
import { sayMayTouch } from './say-decides.ts';
import { sayFixture, sayPart, sayRole } from './say-part.ts';
import { sayRack } from './say-rack.ts';

/** What happens in a scene, in short sentences: for the ear, and for the lesson's page. */
export function tellScene(scene: Scene, units: Units): readonly string[] {
  const result = resultOf(scene);
  return [
    ...sayKeep(scene, units),
    saySetting(scene, units),
    saySwing(scene, result, units),
    ...sayFullLock(scene, units),
    ...sayLinesPassed(result, units),
    ...sayTouch(scene, result, units),
    ...sayCutIn(result, units),
    ...sayAdvice(scene, result.advice, units),
  ];
}

/** For a turn of a drive, what the driver does about the tail: the figure of its row. */
function sayKeep({ turn, steered }: Scene, units: Units): string[] {
  return turn && !steered ? [`${capital(sayKeepFree(turn, units))} for the tail.`] : [];
}

/** How it stands and what is steered. */
function saySetting(scene: Scene, units: Units): string {
  const { vehicle, settings, turn } = scene;
  const who = `${vehicle.name}${vehicle.rack ? ` (${sayRack(vehicle, units)})` : ''}`;
  if (scene.steered) return `${who} is steered by hand.`;
  if (turn)
    return `${who} turns ${sayTurnDeg(turn)} to the ${turn.side}, the rear axle on a radius of ${sayWay(units, Math.max(turn.rearAxleRadiusM, vehicle.lock.rearAxleRadiusM))}${scene.wheel === 'full lock' ? ', the wheel hard over' : ROOM[turn.room]}.`;
  return settings ? `${who} ${sayLesson(scene, settings, units)}.` : `${who}.`;
}

function sayLesson({ vehicle, lesson, reversing }: Scene, settings: LessonSettings, units: Units): string {
  const { lockShare, straightM } = settings;
  const lock = lockShare >= 0.995 ? 'full lock' : `${Math.round(lockShare * 100)} % of full lock`;
  const radius = sayRadius(vehicle, lockShare, units);
  const first = straightM > 0 ? `, ${sayWay(units, straightM)} straight first` : '';
  const way = reversing ? 'backwards, ' : '';
  const besides = BESIDE[lesson] ?? `the ${settings.beside}`;
  const gapM = lesson === 'pitch' ? pitchGapM(vehicle, settings) : settings.gapM;
  return `stands ${shortIn(units, gapM, 'down')} from ${besides} and goes ${way}at ${lock}, a radius of ${radius} at the rear axle${first}`;
}

/** An estimated lock with its range: what is drawn is the middle of it. */
function sayRadius(vehicle: SwingVehicle, lockShare: number, units: Units): string {
  const radius = sayWay(units, radiusOfShareM(vehicle, lockShare));
  if (vehicle.lock.from !== 'estimate') return radius;
  const [tight, wide] = [atTightest(vehicle), atWidest(vehicle)].map((of) => radiusOfShareM(of, lockShare));
  return `${radius} (an estimate: ${sayTurnRange(units, tight!, wide!)})`;
}

const BESIDE: Readonly<Partial<Record<Scene['lesson'], string>>> = {
  'side-road': 'the kerb',
  'drive-turn': 'the kerb',
  'mini-roundabout': 'the kerb',
  pitch: 'the hedge opposite the gateway',
  reverse: 'the parked car',
};

const ROOM = {
  'own lane': ', and fits its own lane',
  'other lane on the exit': ', and needs the other lane on the exit',
  'whole road': ', and needs the whole road',
  'back up': ', full lock, and may have to back up once',
} as const;

/** Where the tail starts to go out, the most, and when. */
function saySwing(scene: Scene, { swing, spans }: LessonResult, units: Units): string {
  const { reversing } = scene;
  const end = swingingEnd(scene);
  if (!swing) return `The ${end} does not swing out: the wheel stays straight.`;
  if (swing.swingM < 0.001) return `The ${end} does not swing out.`;
  const many = spans > 1 ? 'each time the wheel goes over; the most is' : 'as soon as the wheel turns:';
  const corner = swing.what === 'rack' ? 'corner of the rack' : `${reversing ? 'front' : 'rear'} corner`;
  return `The ${swing.side} ${corner} swings out ${many} ${shortIn(units, swing.swingM, 'up')}${sayDoubt(scene, swing.swingM, units)} beyond the line of its side, ${sayWay(units, swing.atTravelM)} from the start and ${sayDegrees(swing.headingChangeRad)}.`;
}

/** ` (an estimate: 31 to 46 cm)`, where full lock is one; the row of a turn has its own ranges. */
function sayDoubt(scene: Scene, swingM: number, units: Units): string {
  if (scene.turn || scene.vehicle.lock.from !== 'estimate') return '';
  const { lessM, moreM } = swingDoubtOf(scene);
  return ` (an estimate: ${shortIn(units, Math.max(0, swingM - lessM), 'down')} to ${shortIn(units, swingM + moreM, 'up')})`;
}

/** For a turn of a drive: the figures of its row, from which gap each starts, and what the picture rests on. */
function sayFullLock({ turn, starts, steered, wheel }: Scene, units: Units): string[] {
  if (!turn || steered) return [];
  const { plan, gently, worst } = sayTurnFigures(turn, units);
  return [
    turn.room === 'back up' || wheel === 'full lock'
      ? `At full lock the tail swings out ${worst}.`
      : `On this sweep the tail swings out ${plan}; driven gently ${gently}, at full lock ${worst}.`,
    sayStart(turn, starts, units),
    turn.assumed.length > 0 ? `Not mapped, so usual figures: ${sayAssumed(turn.assumed, units)}.` : '',
  ].filter((sentence) => sentence !== '');
}

/** Where it is drawn starting, and what the middle of its lane leaves beside it: the figures of the row. */
function sayStart(turn: Turn, starts: Scene['starts'], units: Units): string {
  const { gap } = sayTurnFigures(turn, units);
  const drawn = starts && shortIn(units, starts.gapM, 'down');
  const over = sayOverLane(turn, mostOutM(turn), units);
  const tail =
    over === undefined
      ? 'the tail stays within the lane'
      : `the tail goes up to ${over} over the edge of the lane`;
  if (gap === undefined) return starts ? `It is drawn starting ${drawn} from ${sayRole(starts.beside)}.` : '';
  if (starts && drawn === gap)
    return `It is drawn starting in the middle of its lane, ${gap} from ${sayRole(starts.beside)}; ${tail}.`;
  const first = starts ? `It is drawn starting ${drawn} from ${sayRole(starts.beside)}. ` : '';
  return `${first}In the middle of its lane it has ${gap} beside it, and ${tail}.`;
}

/** Over a kerb or a painted line, with what may stand there. */
function sayLinesPassed({ over, contact }: LessonResult, units: Units): string[] {
  const back = shortIn(units, POST_BACK_M, 'nearest');
  const hitsPost = contact?.fixture.kind === 'post';
  return over.slice(0, 2).map((line) => {
    if (hitsPost || line.fixture.kind !== 'kerb') return sayOver(line, units);
    const stands =
      line.overM >= POST_BACK_M
        ? `A post or a lamp may stand ${back} back: it would be hit.`
        : `People stand there; posts usually stand ${back} back.`;
    return `${sayOver(line, units)} ${stands}`;
  });
}

function sayTouch({ motion }: Scene, { contact, least }: LessonResult, units: Units): string[] {
  if (contact) {
    const { part, fixture, pose, travelM } = contact;
    const touches = `It touches ${sayFixture(fixture)} with ${sayOwn(part)}`;
    if (contact.index === 0) return [`${touches} where it stands.`];
    const turned = Math.abs(pose.headingRad - motion.headingRad[0]!);
    return [`${touches} ${sayWay(units, travelM)} from the start, turned by ${sayDegrees(turned)}.`];
  }
  if (!least) return [];
  if (least.gapM < MODEL_OFF_M) return [sayMayTouch(least, units)];
  return [
    `It touches nothing; it comes nearest to ${sayFixture(least.fixture)}: ${shortIn(units, least.gapM, 'down')} at ${sayOwn(least.part)}.`,
  ];
}

/** A part of the vehicle; the rack is not grown on it. */
function sayOwn(part: VehiclePart): string {
  const ofRack = part.kind === 'rack' || part.kind === 'rack corner';
  return `${ofRack ? 'the' : 'its'} ${sayPart(part)}`;
}

/** Less cut-in than this is not worth a sentence. Metres. */
const CUT_IN_LEAST_M = 0.1;

function sayCutIn({ cutInM }: LessonResult, units: Units): string[] {
  if (cutInM < CUT_IN_LEAST_M) return [];
  return [
    `The inner rear wheel runs up to ${shortIn(units, cutInM, 'up')} inside the track of the front wheel.`,
  ];
}
