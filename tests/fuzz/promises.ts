import { isDeepStrictEqual } from 'node:util';
import type { Result } from '../../geo/result.ts';

/** Control, direction and line-breaking characters, and half characters: what a sentence must never carry out. */
const UNPRINTABLE =
  /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u061c\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/u;
/** Some sentences list what was found; none is a page. */
const LONGEST = 4000;

/** What is wrong with something told; undefined for a plain sentence. */
export function faultInSentence(sentence: unknown): string | undefined {
  if (typeof sentence !== 'string' || sentence.trim() === '') return `no sentence but ${String(sentence)}`;
  const found = UNPRINTABLE.exec(sentence);
  if (found !== null) {
    const code = sentence.codePointAt(found.index)?.toString(16);
    return `a sentence holds U+${code}: ${JSON.stringify(sentence.slice(0, 200))}`;
  }
  return sentence.length > LONGEST ? `a sentence of ${sentence.length} characters` : undefined;
}

/** The first fault among several sentences. */
export function faultInSentences(sentences: readonly unknown[]): string | undefined {
  for (const sentence of sentences) {
    const fault = faultInSentence(sentence);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

/** Asks twice: a refusal must be a sentence, and the second answer the first. */
export async function askedTwice<T>(
  ask: () => Result<T> | Promise<Result<T>>,
  faultIn: (value: T) => string | undefined = () => undefined,
): Promise<string | undefined> {
  const first = await ask();
  const fault = first.ok ? faultIn(first.value) : faultInSentence(first.error.message);
  if (fault !== undefined) return fault;
  return isDeepStrictEqual(first, await ask()) ? undefined : 'asked twice, it answers differently';
}
