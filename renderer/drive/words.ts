import type { Verdict } from '../../geo/report/report.ts';

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
