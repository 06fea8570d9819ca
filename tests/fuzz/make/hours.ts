import { hostileText, numberText } from './hostile.ts';
import type { Random } from './random.ts';

const DAYS = ['Mo', 'Tu', 'We', 'Th', 'Fr', 'Sa', 'Su'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const SUN = ['sunrise', 'sunset', 'dawn', 'dusk'];
/** Words the library knows, or takes for slips; of other languages, too. */
const WORDS = (
  'open off closed unknown day days week easter Montag Sonntag und bis Uhr pm am h late to from until daily midnight noon ' +
  'Ne So täglich Feiertage except season weekdays weekend and year appointment by on a x lundi Okt 24/7 PH SH'
).split(' ');
const SIGNS = [
  '-',
  ',',
  ';',
  ':',
  '+',
  '/',
  '||',
  '[1]',
  '[-1]',
  '[1,3]',
  '(',
  ')',
  '"x"',
  ' ',
  '.',
  '–',
  '@',
  '?',
  '&',
  '→',
];

/** Hours, most of them in the build of the opening_hours syntax. */
export function hoursText(random: Random): string {
  if (random.chance(0.1)) return tokens(random);
  const rules = Array.from({ length: random.pick([1, 1, 2, 3, 6, 12]) }, () => rule(random));
  const text = rules.reduce((all, each) => all + random.pick(['; ', '; ', ';', ' || ', ', ']) + each);
  if (random.chance(0.1)) return random.pick([';', '; ', ' ', ',', '||']).repeat(random.below(60)) + text;
  return random.chance(0.3) ? text.slice(0, 255) : text;
}

function tokens(random: Random): string {
  const word = () =>
    random.pick([
      () => random.pick(DAYS),
      () => random.pick(MONTHS),
      () => random.pick(WORDS),
      () => random.pick(SIGNS),
      () => random.pick(SIGNS),
      () => clock(random),
      () => numberText(random),
      () => hostileText(random),
    ])();
  const pool = Array.from({ length: 1 + random.below(5) }, word);
  const glue = random.pick(['', ' ', '; ', ',']);
  return Array.from({ length: random.below(40) }, () => random.pick(pool)).join(glue);
}

function rule(random: Random): string {
  const some = (share: number, make: () => string) => (random.chance(share) ? make() : '');
  return [
    some(0.2, () => years(random)),
    some(0.15, () => weeks(random)),
    some(0.3, () => dates(random)),
    some(0.5, () => days(random)),
    some(0.75, () =>
      Array.from({ length: 1 + random.below(random.pick([1, 3, 8])) }, () => times(random)).join(','),
    ),
    some(0.25, () => random.pick(['off', 'open', 'closed', 'unknown', '"x"', 'open "y"', '24/7'])),
  ]
    .filter((part) => part !== '')
    .join(' ');
}

const sign = (random: Random): string => random.pick(['+', '-']);
const two = (number: number): string => String(number).padStart(2, '0');
const year = (random: Random): number =>
  random.pick([1901 + random.below(200), 2020 + random.below(15), random.below(1e4)]);

function years(random: Random): string {
  const [from, to] = [year(random), year(random)];
  return random.pick([
    `${from}`,
    `${from}-${to}`,
    `${from}+`,
    `${from}-${to}/${random.below(30)}`,
    `${from},${to}`,
  ]);
}

function weeks(random: Random): string {
  const to = random.chance(0.6) ? `-${random.below(55)}` : '';
  return `week ${random.below(55)}${to}${random.chance(0.4) ? `/${random.below(9)}` : ''}`;
}

function dates(random: Random): string {
  const [from, to, day] = [random.pick(MONTHS), random.pick(MONTHS), random.below(33)];
  return random.pick([
    from,
    `${from}-${to}`,
    `${from} ${day}`,
    `${from} ${day}-${random.below(33)}`,
    `${from} ${day}-${to} ${random.below(33)}`,
    `${year(random)} ${from} ${day}-${year(random)} ${to} ${random.below(33)}`,
    `easter ${sign(random)}${random.below(60)} days`,
    `easter-${to} ${day}`,
    `${from} ${random.pick(DAYS)}[1]-${to} ${random.pick(DAYS)}[-1]`,
    `${from} ${day}+`,
  ]);
}

function days(random: Random): string {
  const [from, to] = [random.pick(DAYS), random.pick(DAYS)];
  return random.pick([
    from,
    `${from}-${to}`,
    `${from},${to}`,
    `${from}${random.pick(['[1]', '[-1]', '[2,4]', '[1-3]', '[0]', '[9]'])}`,
    `${from}[1] ${sign(random)}${random.below(40)} days`,
    'PH',
    'SH',
    `PH,${to}`,
    `PH ${sign(random)}${random.below(3)} day`,
    'Mo-Su',
  ]);
}

function clock(random: Random): string {
  const sun = random.pick(SUN);
  return random.pick([
    `${two(random.below(25))}:${two(random.below(60))}`,
    `${two(random.below(50))}:${two(random.below(60))}`,
    sun,
    `(${sun}${sign(random)}${two(random.below(30))}:${two(random.below(60))})`,
    '00:00',
    '24:00',
  ]);
}

function times(random: Random): string {
  const [from, to] = [clock(random), clock(random)];
  return random.pick([
    `${from}-${to}`,
    `${from}-${to}`,
    `${from}+`,
    `${from}-${to}+`,
    `${from}-${to}/${two(random.below(60))}`,
    from,
  ]);
}

const CONDITIONS = (
  'weight>3.5 weight<=7.5t maxweight>3,5 length>7.4 height>2.5m axles>2 destination delivery wet hazmat hgv motorhome ' +
  'caravan permit snow emptyweight>3 width>2.3'
).split(' ');

/** The value of a `:conditional` tag. */
export function conditionalText(random: Random): string {
  const condition = (): string => {
    if (random.chance(0.5)) return hoursText(random);
    if (random.chance(0.1)) return `(${condition()})`;
    return random.chance(0.1) ? hostileText(random) : random.pick(CONDITIONS);
  };
  const clause = () => {
    const parts = Array.from({ length: 1 + random.below(3) }, condition);
    const joined = parts.reduce(
      (all, each) => all + random.pick([' AND ', ' OR ', ' and ', ',', '; ']) + each,
    );
    const value = random.pick(['no', 'yes', 'destination', '3.5', '2.5 m', 'none', '-1', '7.5 t']);
    return `${value} @ ${random.chance(0.8) ? `(${joined})` : joined}`;
  };
  return Array.from({ length: 1 + random.below(3) }, clause).join(random.pick(['; ', ';', ' ; ', ', ']));
}
