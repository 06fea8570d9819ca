import { given } from '../../../../geo/given.ts';
import { fail, ok, type Result } from '../../../../geo/result.ts';
import { askForText } from '../http/ask-for-text.ts';
import type { MapAsk } from './map-ask.ts';

/** What a server says of a file beside it. */
export type Checksum =
  | { readonly kind: 'md5'; readonly md5: string }
  /** @property why a sentence */
  | { readonly kind: 'none'; readonly why: string };

/** One line: the sum and the name. */
const MOST_BYTES = 100_000;

/** Asks for the md5 that lies beside a map file. A server without one is no failure; one that cannot be reached is. */
export async function askChecksum({ server, region, patience, signal }: MapAsk): Promise<Result<Checksum>> {
  const answer = await askForText({
    server,
    url: new URL(`${region.url}.md5`),
    packing: 'gzip',
    patience,
    most: { packed: MOST_BYTES, unpacked: MOST_BYTES },
    ...given({ signal }),
  });
  const none = (why: string) => ok({ kind: 'none' as const, why: sayNone(region.name, why) });
  if (!answer.ok) {
    const { kind } = answer.error.trouble;
    return kind === 'large' || kind === 'garbled'
      ? none('what lies there is none')
      : fail(answer.error.code, answer.error.message);
  }
  const { status, text } = answer.value;
  if (status !== 200) return none(`the server answered ${status}`);
  const [, md5] = /^([0-9a-f]{32})(?:\s|$)/iu.exec(text.trim()) ?? [];
  return md5 === undefined ? none('what lies there is none') : ok({ kind: 'md5', md5: md5.toLowerCase() });
}

function sayNone(name: string, why: string): string {
  return `The checksum of the map of ${name} could not be had (${why}): that it came whole is told by its length alone.`;
}
