import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** A code in an address may have been seen (process list, history), so it lives shortly. */
export const CODE_LIVES_MS = 60_000;

/** Who may call: a one-time code is swapped for a key that only one page knows. */
export interface Session {
  /** A new code; the one before it is void. */
  newCode(): string;
  /** @returns the key; undefined for a code that is wrong, old or spent */
  redeem(code: string): string | undefined;
  /** Whether this was a code of ours that has already been used. */
  isSpent(code: string): boolean;
  holds(key: string): boolean;
}

/** @param now milliseconds that only go forward */
export function createSession(now: () => number): Session {
  const spent = new Set<string>();
  const keys: Buffer[] = [];
  let open: { hash: Buffer; until: number } | undefined;
  return {
    newCode() {
      const code = secret();
      open = { hash: hashOf(code), until: now() + CODE_LIVES_MS };
      return code;
    },
    redeem(code) {
      const given = hashOf(code);
      if (!open || !timingSafeEqual(given, open.hash)) return undefined;
      const late = now() > open.until;
      open = undefined;
      spent.add(given.toString('hex'));
      if (late) return undefined;
      const key = secret();
      keys.push(hashOf(key));
      return key;
    },
    isSpent: (code) => spent.has(hashOf(code).toString('hex')),
    holds(key) {
      const given = hashOf(key);
      // no early way out: every key is compared in full
      return keys.reduce((held, hash) => timingSafeEqual(given, hash) || held, false);
    },
  };
}

function secret(): string {
  return randomBytes(32).toString('base64url');
}

/** Equal lengths for a comparison that takes the same time for every guess. */
function hashOf(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
