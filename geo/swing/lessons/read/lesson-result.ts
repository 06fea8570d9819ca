import { type Swing, swingBeyond } from '../../measure/swing-beyond.ts';
import { swingingCorners } from '../../outline.ts';
import type { Scene } from '../scene/scene.ts';
import { type Advice, adviseFor } from './advise.ts';
import { type Contact, contactOf, leastGapOf } from './contact.ts';
import { mostCutInM } from './cut-in.ts';
import { type OverLine, overLines } from './over-line.ts';
import type { Separation } from './separation.ts';
import { mostSwingM, swingsOf } from './swings.ts';

/** What happens on a lesson's whole way. Metres. */
export interface LessonResult {
  /** undefined: the wheel stays straight */
  readonly swing: Swing | undefined;
  /** how often the wheel goes to a side */
  readonly spans: number;
  /** kerbs and painted lines that a corner passes, the farthest first */
  readonly over: readonly OverLine[];
  readonly contact: Contact | undefined;
  /** where it comes nearest to anything hard; not looked for where something is touched */
  readonly least: Separation | undefined;
  readonly cutInM: number;
  readonly advice: Advice | undefined;
}

export function resultOf(scene: Scene): LessonResult {
  const contact = contactOf(scene);
  return {
    swing: swingOf(scene),
    spans: swingsOf(scene).spans.length,
    over: overLines(scene),
    contact,
    least: contact ? undefined : leastGapOf(scene),
    cutInM: mostCutInM(scene),
    advice: adviseFor(scene, contact),
  };
}

/** Of a turn of a drive the size is the figure of its row, which the samples come near. */
function swingOf(scene: Scene): Swing | undefined {
  const swing = mostSwing(scene);
  return swing && scene.turn && !scene.steered ? { ...swing, swingM: mostSwingM(scene) } : swing;
}

function mostSwing(scene: Scene): Swing | undefined {
  const { motion, reversing, vehicle } = scene;
  const corners = swingingCorners(vehicle, { reversing });
  return swingsOf(scene)
    .spans.map((span) => swingBeyond(vehicle, motion, span, corners))
    .reduce<Swing | undefined>((best, each) => (best && best.swingM >= each.swingM ? best : each), undefined);
}
