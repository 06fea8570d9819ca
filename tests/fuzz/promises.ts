import { isDeepStrictEqual } from 'node:util';
import type { Result } from '../../geo/result.ts';

/** Control, direction and line-breaking characters, and half characters: what a sentence must never carry out. */
const UNPRINTABLE =
  /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u061c\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/u;
/** Some sentences list what was found, or name a file by its whole path; none is a page. */
const LONGEST = 12_000;

/** What is wrong with something told; undefined for a sentence. */
export function faultInSentence(sentence: unknown): string | undefined {
  if (typeof sentence !== 'string' || sentence.trim() === '') return `no sentence but ${String(sentence)}`;
  if (/\b(?:Type|Range|Reference|Syntax)Error\b|\.js:\d/.test(sentence))
    return `a sentence for programmers: ${JSON.stringify(sentence.slice(0, 300))}`;
  return sentence.length > LONGEST ? `a sentence of ${sentence.length} characters` : undefined;
}

/** The first fault among several sentences. */
export function faultInSentences(sentences: readonly unknown[]): string | undefined {
  return sentences.map(faultInSentence).find((fault) => fault !== undefined);
}

/** The same for what has passed the last door before a person: nothing in it may steer a terminal or hide a word. */
export function faultInShown(sentences: readonly string[]): string | undefined {
  const bad = sentences.find((sentence) => UNPRINTABLE.test(sentence));
  if (bad === undefined) return faultInSentences(sentences);
  const code = UNPRINTABLE.exec(bad)?.[0].codePointAt(0)?.toString(16);
  return `a sentence holds U+${code}: ${JSON.stringify(bad.slice(0, 300))}`;
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
