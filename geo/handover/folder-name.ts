import { octetsOf } from '../units/octets.ts';

/** What some file system takes for something else than a part of a name; signs that are not seen are none either. */
const NEVER = /[<>:"/\\|?*\p{C}\p{Zl}\p{Zp}]+/gu;
/** Names of devices, with any ending, on one system. */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)(?=\.|$)/iu;
/** Octets: file systems that keep names encrypted take 143; a number may follow. */
const LONGEST_OCTETS = 120;

/**
 * A folder's name that every file system takes, from names as people write them.
 * @param taken names of the other folders there, as this function has given them
 */
export function folderName(names: readonly string[], taken: Iterable<string> = []): string {
  const plain = names.map(plainName).filter((name) => name !== '');
  const whole = tidy(shorten(plain.join(', '))) || 'unnamed';
  const name = DEVICE.test(whole) ? `_${whole}` : whole;
  const others = new Set([...taken].map(sameAs));
  if (!others.has(sameAs(name))) return name;
  let count = 2;
  while (others.has(sameAs(`${name} (${count})`))) count++;
  return `${name} (${count})`;
}

function plainName(name: string): string {
  return tidy(name.normalize('NFC').replace(NEVER, ' ').replace(/\s+/gu, ' '));
}

/** Dots and spaces at an end are lost on one system; a dot before all hides the folder on the others. */
function tidy(name: string): string {
  return name.replace(/^[\s.]+|[\s.,]+$/gu, '');
}

function shorten(name: string): string {
  let [kept, octets] = ['', 0];
  for (const character of name) {
    octets += octetsOf(character);
    if (octets > LONGEST_OCTETS) break;
    kept += character;
  }
  return kept;
}

/** Some file systems tell no letter case apart. */
function sameAs(name: string): string {
  return name.normalize('NFC').toLowerCase();
}
