import { type LoadLevel, loadLevel } from '../weigh/load-level.ts';
import { kgText, LIMIT_SAID, sayPlates } from '../weigh/say-plates.ts';
import type { Answer } from './ask-about.ts';

/** Whether what is asked about comes along, with how much to spare. */
export function answerLevel({ fits, result }: Answer, marginKg: number): LoadLevel {
  return fits ? loadLevel(result, marginKg) : 'over';
}

const WORD: Readonly<Record<LoadLevel, string>> = {
  over: 'Not like this',
  tight: 'Yes, but it gets tight',
  within: 'Yes',
};

/** `Yes: 83 kg spare, rear axle.`, `Yes, but it gets tight: …` or `Not like this: gross over by 44 kg.` */
export function sayAnswer(answer: Answer, marginKg: number): string {
  return `${WORD[answerLevel(answer, marginKg)]}: ${sayPlates(answer.decides)}.`;
}

/** How much more can be added at the place, and what is reached then: a sentence or two. */
export function sayMost({ most: { massKg, binds, handbookKg } }: Answer): string {
  const most =
    massKg < 0.5
      ? `Nothing more can be added there as things are: the ${LIMIT_SAID[binds]} is reached.`
      : `At most ${kgText(massKg, 'down')} can be added there as things are; then the ${LIMIT_SAID[binds]} is reached.`;
  if (handbookKg === undefined) return most;
  return `${most} From ${kgText(handbookKg, 'down')} less than 40 % stand on the front axle.`;
}
