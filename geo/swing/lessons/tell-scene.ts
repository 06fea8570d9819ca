import { toDeg } from '../../earth/angles.ts';
import { sayAssumed } from '../../report/say-assumed.ts';
import { fullLockSwingM } from '../circle.ts';
import { noseOf, tailPointsOf } from '../outline.ts';
import { type Swing, swingBeyond } from '../swing-beyond.ts';
import { adviseFor } from './advise.ts';
import { contactOf, leastGapOf } from './contact.ts';
import { gapNeededM } from './gap-needed.ts';
import { overLines } from './over-line.ts';
import { cutInAt, swingsOfScene } from './read-scene.ts';
import type { Contact, Scene } from './scene.ts';
import { POST_BACK_M } from './scenes/fixtures.ts';
import { radiusOfShareM } from './scenes/legs.ts';
import { pitchGapM } from './scenes/pitch.ts';

/** Said wherever the figures stand. */
export const MODEL =
  'Worked out for a rectangle body and tyres that do not slip; a measured vehicle may differ by ±5 cm. Mirrors are not counted.';
/** Less than this is not worth a sentence. Metres. */
const TELL_M = 0.015;

/** What happens in a scene, in short sentences: for the ear, and for the lesson's sheet. */
export function tellScene(scene: Scene): readonly string[] {
  const contact = contactOf(scene);
  return [
    set(scene),
    swing(scene),
    ...worst(scene),
    ...over(scene, contact),
    touch(scene, contact),
    ...cutIn(scene),
    ...whatToDo(scene, contact),
    MODEL,
  ].filter((sentence) => sentence !== '');
}

/** How it stands and what is steered. */
function set(scene: Scene): string {
  const { vehicle, settings, lesson, turn } = scene;
  const rack = vehicle.rack && !/rack/i.test(vehicle.name) ? ' with its rack' : '';
  if (scene.steered) return `${vehicle.name}${rack} is steered by hand.`;
  if (turn)
    return `${vehicle.name}${rack} turns ${Math.round(turn.turnDeg)}° to the ${turn.side}, the rear axle on a radius of ${metres(Math.max(turn.rearAxleRadiusM, vehicle.lock.rearAxleRadiusM))}${ROOM[turn.room]}.`;
  if (!settings) return `${vehicle.name}${rack}.`;
  const lock =
    settings.lockShare >= 0.995 ? 'full lock' : `${Math.round(settings.lockShare * 100)} % of full lock`;
  const radius = metres(radiusOfShareM(vehicle, settings.lockShare));
  const first = settings.straightM > 0 ? `, ${metres(settings.straightM)} straight first` : '';
  const way = scene.reversing ? 'backwards, ' : '';
  const besides = BESIDE[lesson] ?? `the ${settings.beside}`;
  const gapM = lesson === 'pitch' ? pitchGapM(vehicle, settings) : settings.gapM;
  return `${vehicle.name}${rack} stands ${centimetres(gapM)} from ${besides} and goes ${way}at ${lock}, a radius of ${radius} at the rear axle${first}.`;
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
  shunt: ', full lock, and may need a second go',
} as const;

/** Where the tail starts to go out, the most, and when. */
function swing(scene: Scene): string {
  const { motion, reversing, vehicle } = scene;
  const points = reversing ? [noseOf(vehicle)] : tailPointsOf(vehicle);
  const { turns } = swingsOfScene(scene);
  const most = turns
    .map((turn) => {
      const side = turn.wheel === 'left' ? 'right' : 'left';
      const swung = swingBeyond(motion, turn, turn.began, side, points, vehicle.widthM);
      return { ...swung, afterM: swung.atTravelM - motion.travelM[turn.from]! };
    })
    .reduce<(Swing & { afterM: number }) | undefined>(
      (best, each) => (best && best.swingM >= each.swingM ? best : each),
      undefined,
    );
  const end = reversing ? 'nose' : 'tail';
  if (!most) return `The ${end} does not swing out: the wheel stays straight.`;
  if (most.swingM < 0.001) return `The ${end} does not swing out.`;
  const many =
    turns.length > 1 ? 'each time the wheel goes over; the most is' : 'as soon as the wheel turns:';
  return `The ${most.side} ${reversing ? 'front' : 'rear'} corner swings out ${many} ${centimetres(most.swingM, 'up')} beyond the line of its side, after ${metres(most.afterM)} and ${degrees(most.headingChangeRad)}.`;
}

/** For a turn of a drive: what a hard wheel would do, and what the picture rests on. */
function worst({ turn, vehicle, steered }: Scene): string[] {
  if (!turn || steered) return [];
  const assumed = turn.assumed.length > 0 ? ` Assumed: ${sayAssumed(turn.assumed)}.` : '';
  return [
    `At full lock from straight it would swing out ${centimetres(fullLockSwingM(vehicle), 'up')}.${assumed}`,
  ];
}

/** Over a kerb or a painted line, with what may stand there. */
function over(scene: Scene, contact: Contact | undefined): string[] {
  const said = overLines(scene).filter(({ overM }) => overM >= TELL_M);
  return said.slice(0, 2).map(({ overM, part, fixture }) => {
    const much = centimetres(overM, 'up');
    if (fixture.kind === 'lane line') return `The ${part} crosses ${fixture.name} by ${much}.`;
    const post = contact?.fixture.startsWith('the post') === true;
    const stands =
      post || fixture.kind !== 'kerb'
        ? ''
        : overM >= POST_BACK_M
          ? ' A post or a lamp may stand 45 cm back: it would be hit.'
          : ' People stand there; posts usually stand 45 cm back.';
    return `The ${part} hangs over ${fixture.name} by ${much}.${stands}`;
  });
}

function touch(scene: Scene, contact: Contact | undefined): string {
  if (contact) {
    const touches = `It touches ${contact.fixture} with ${/rack/.test(contact.part) ? 'the' : 'its'} ${contact.part}`;
    if (contact.index === 0) return `${touches} where it stands.`;
    const turned = Math.abs(contact.pose.headingRad - scene.motion.headingRad[0]!);
    return `${touches} after ${metres(contact.travelM)}, turned by ${degrees(turned)}.`;
  }
  const least = leastGapOf(scene);
  if (!least) return '';
  return `It touches nothing; it comes nearest to ${least.near.fixture.name}: ${centimetres(least.gapM, 'down')} at its ${least.near.part}.`;
}

function cutIn(scene: Scene): string[] {
  const { turnAt, turns } = swingsOfScene(scene);
  let most = 0;
  // a hair's breadth between samples is lost, and the work is a tenth
  for (let index = 0; index < turnAt.length; index += 10)
    most = Math.max(most, cutInAt(scene, index, turns[turnAt[index]!]?.wheel));
  if (most < 0.1) return [];
  return [`The inner rear wheel runs up to ${centimetres(most, 'up')} inside the track of the front wheel.`];
}

function whatToDo(scene: Scene, contact: Contact | undefined): string[] {
  const { settings, lesson } = scene;
  if (scene.steered) return [];
  if (!settings || (lesson !== 'leave' && lesson !== 'reverse'))
    return contact ? [otherwise(scene, contact)] : [];
  const needed = gapNeededM(scene);
  const kerb = lesson === 'leave' && settings.beside === 'kerb';
  const gap = kerb ? settings.gapM + POST_BACK_M : settings.gapM;
  const what = kerb
    ? 'the post behind the kerb'
    : lesson === 'reverse'
      ? 'the parked car'
      : `the ${settings.beside}`;
  if (needed <= gap)
    return [
      `This needs ${centimetres(needed, 'up')} beside it; to ${what} there are ${centimetres(gap, 'down')}.`,
      ...(contact ? [`Stop short of ${contact.fixture} and take a second go.`] : []),
    ];
  const { lockShare, straightM } = adviseFor(scene, gap);
  const lock = Math.floor(lockShare * 100);
  const ways = [
    ...(straightM === undefined
      ? []
      : [
          `go ${metres(straightM)} ${scene.reversing ? 'straight back' : 'straight on'}${settings.straightM > 0 ? ' farther' : ''} first`,
        ]),
    lock >= 5 ? `turn no more than ${lock} % of full lock` : 'leave a wider gap',
  ];
  return [
    `It needs ${centimetres(needed, 'up')} and has ${centimetres(gap, 'down')} to ${what}: ${ways.join(', or ')}.`,
  ];
}

/** What helps depends on the end that touched. */
function otherwise({ motion, swingSide, turn, settings }: Scene, { part, index, fixture }: Contact): string {
  if (fixture === 'the dome')
    return 'Go slowly and evenly; where there is no other way, the dome may be run over.';
  if (turn?.room === 'shunt')
    return 'One sweep at full lock does not fit: stop short and take a second go, with somebody watching the tail.';
  if (part.includes('front')) {
    const inside = fixture === 'the inner kerb' || fixture === 'the kerb of the corner';
    const harder = settings?.lockShare === 1 ? 'Turn earlier' : 'Turn earlier or harder';
    return `${inside ? 'Turn later' : harder}, or stop short and take a second go.`;
  }
  if (part.includes('rear corner') || part.includes('rack'))
    return `Keep more room on the ${swingSide} before turning, or turn the wheel less at first: the tail comes back in.`;
  const turning = motion.steerRad[index]! !== 0;
  return turning ? 'Go farther ahead before turning: the rear wheels cut in.' : 'Keep more room beside.';
}

/** Whole centimetres, rounded against the driver where it matters. */
function centimetres(m: number, to: 'up' | 'down' | 'near' = 'near'): string {
  const cm = m * 100;
  const whole = to === 'up' ? Math.ceil(cm - 1e-6) : to === 'down' ? Math.floor(cm + 1e-6) : Math.round(cm);
  return `${whole} cm`;
}

function metres(m: number): string {
  return `${m.toFixed(1)} m`;
}

function degrees(rad: number): string {
  return `${Math.round(toDeg(rad))}°`;
}
