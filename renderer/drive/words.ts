import type { Level, Subject, Verdict } from '../../geo/report/report.ts';

/** The levels, worst first. */
export const LEVEL_ORDER = ['barred', 'tight', 'unknown', 'care'] as const satisfies readonly Level[];

export const LEVEL_WORD: Readonly<Record<Verdict, string>> = {
  barred: 'Barred',
  tight: 'Tight',
  unknown: 'Unknown',
  care: 'Take care',
  clear: 'Clear',
};

/** What each level means, for the help. */
export const LEVEL_MEANS: Readonly<Record<Verdict, string>> = {
  barred: 'The vehicle exceeds a mapped limit that binds it there and then, or may not go there.',
  tight:
    'Inside the limit, but by less than the margin asked for; or binding only in one lane, or at hours that are not settled.',
  unknown:
    'Something there could stop the vehicle, and the map gives no figure for it, gives one that cannot be read, or has no road there.',
  care: 'Passable. Drive it with care.',
  clear: 'Nothing that is mapped stands against this vehicle on this drive.',
};

export const SUBJECT_WORD: Readonly<Record<Subject, string>> = {
  height: 'Height',
  width: 'Width',
  length: 'Length',
  mass: 'Mass',
  axle: 'Axle load',
  access: 'Access',
  barrier: 'Barrier',
  ground: 'Ground',
  water: 'Water',
  slope: 'Slope',
  narrow: 'Narrow road',
  trees: 'Trees',
  tunnel: 'Tunnel',
  crossing: 'Hump or crossing',
  turn: 'Turn',
  swing: 'Tail swing',
  zone: 'Zone',
  map: 'Map',
};

/** The verdict in words. @param places findings of the deciding level; `slight` what they are where all are folded away */
export function sayVerdict(verdict: Verdict, places: number, slight?: string): string {
  if (slight !== undefined && verdict === 'unknown')
    return `Nothing mapped bars it. What the map cannot prove is slight, nothing but ${slight}: mind the signs there.`;
  const at = slight ?? (places === 1 ? 'one place' : `${places} places`);
  switch (verdict) {
    case 'barred':
      return `Do not drive this as planned: this vehicle is barred at ${at}.`;
    case 'tight':
      return `Nothing mapped bars it, but it is close at ${at}. Look before you drive it.`;
    case 'unknown':
      return `Nothing mapped bars it, but at ${at} the map cannot prove it. Look before you drive it.`;
    case 'care':
      return `Nothing mapped bars it. Take care at ${at}.`;
    case 'clear':
      return 'Nothing mapped is against it.';
  }
}

/** Text from a file, cut where it would fill the screen; control characters, line ends among them, shown as spaces. */
export function clip(text: string, max = 120): string {
  const plain = text.replace(/\p{Cc}+/gu, ' ').trim();
  const letters = [...plain.slice(0, 2 * max + 2)];
  return letters.length > max ? `${letters.slice(0, max).join('')}…` : plain;
}
