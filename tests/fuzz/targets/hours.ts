import { isDeepStrictEqual } from 'node:util';
import { hoursHold, nextHoursChange } from '../../../geo/clock/hours.ts';
import { hoursText as inWords } from '../../../geo/clock/hours-text.ts';
import type { LocalMoment } from '../../../geo/clock/moment.ts';
import type { ConditionContext } from '../../../geo/tags/conditional/context.ts';
import { resolveTag } from '../../../geo/tags/resolve.ts';
import { conditionalText, hoursText } from '../make/hours.ts';
import type { Random } from '../make/random.ts';
import { jsonTarget } from '../target.ts';

const PLACES = [
  { lat: 52.5, lon: 13.4, country: 'DE' },
  { lat: 51.5, lon: -0.1, country: 'GB' },
  { lat: 71.1, lon: 25.8, country: 'NO' },
  { lat: 41.4, lon: 2.2, country: 'ES' },
  { lat: 47.1, lon: 9.5, country: 'LI' },
  undefined,
];

interface Asked {
  readonly text: string;
  readonly place: number;
  readonly moment: LocalMoment;
}

function asked(random: Random, text: string): Asked {
  const moment = {
    year: 2027,
    month: 1 + random.below(12),
    day: 1 + random.below(28),
    hour: random.below(24),
    minute: random.below(60),
    weekday: random.below(7) + 1,
    zone: 'Europe/Berlin',
    offsetMinutes: random.pick([0, 60, 120]),
  };
  return { text, place: random.below(PLACES.length), moment };
}

export const hours = jsonTarget<Asked>({
  name: 'hours',
  weight: 4,
  make: (random) => asked(random, hoursText(random)),
  check({ text, place, moment }) {
    const judge = () => [
      hoursHold(text, moment, PLACES[place]),
      nextHoursChange(text, moment, PLACES[place]),
      inWords(text),
    ];
    const [answer] = judge() as [ReturnType<typeof hoursHold>];
    if (answer.is === 'unknown' && answer.why === '') return 'unknown without a reason';
    return isDeepStrictEqual(judge()[0], answer) ? undefined : 'asked twice, it answers differently';
  },
});

export const conditionals = jsonTarget<Asked>({
  name: 'conditional tags',
  weight: 2,
  make: (random) => asked(random, conditionalText(random)),
  check({ text, place, moment }) {
    const context: ConditionContext = {
      vehicle: { weight: 3500, weightrating: 3500, length: 7.4, height: 3.05 },
      place: PLACES[place],
      moment,
    };
    const resolve = () => resolveTag(undefined, [{ key: 'access:conditional', text }], () => [context]);
    const { possible, open } = resolve();
    if (possible.length === 0) return 'no value is possible';
    if (open.some(({ why }) => why === '')) return 'open without a reason';
    return isDeepStrictEqual(resolve().possible, possible)
      ? undefined
      : 'asked twice, it answers differently';
  },
});
