import { describe, expect, it } from 'vitest';
import { createSession } from '../../../main/loopback/session.ts';

describe('a one-time code', () => {
  it('is good for a minute', () => {
    let now = 0;
    const session = createSession(() => now);
    const code = session.newCode();
    now = 60_000;
    expect(session.redeem(code)).toBeDefined();
    const late = session.newCode();
    now = 120_001;
    expect(session.redeem(late)).toBeUndefined();
  });

  it('gives a key that holds as long as the program runs', () => {
    let now = 0;
    const session = createSession(() => now);
    const key = session.redeem(session.newCode()) ?? '';
    now = 1e9;
    expect(session.holds(key)).toBe(true);
    expect(session.holds(`${key}x`)).toBe(false);
    expect(session.holds('')).toBe(false);
    expect(key).toHaveLength(43);
  });

  it('is remembered as spent, a made-up one is not', () => {
    const session = createSession(() => 0);
    const code = session.newCode();
    session.redeem(code);
    expect(session.isSpent(code)).toBe(true);
    expect(session.isSpent('made up')).toBe(false);
    expect(session.redeem(code)).toBeUndefined();
  });

  it('of a second page does not end the first', () => {
    const session = createSession(() => 0);
    const first = session.redeem(session.newCode()) ?? '';
    const second = session.redeem(session.newCode()) ?? '';
    expect(session.holds(first) && session.holds(second)).toBe(true);
  });
});
