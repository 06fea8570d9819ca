import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { CALLS } from '../../main/contract/calls.ts';
import { createDispatch, type Services } from '../../main/dispatch.ts';
import { sayThrown } from '../../main/say-thrown.ts';
import { COACHBUILT } from '../support/ask.ts';

/** A reply as main/contract/reply.ts has it, and nothing beside. */
const replySchema = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), value: z.unknown() }),
  z.strictObject({ ok: z.literal(false), error: z.strictObject({ code: z.string(), message: z.string() }) }),
]);

const hooks = { onProgress: () => {}, signal: new AbortController().signal };

const broken = new Proxy({} as Services, {
  get: () => async () => {
    throw new Error('inside /home/ann');
  },
});

describe('dispatch', () => {
  it('answers anything at all with a reply, and never throws', async () => {
    const dispatch = createDispatch(broken, () => {});
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(fc.constantFrom(...Object.keys(CALLS)), fc.anything()),
        fc.anything(),
        async (name, request) => {
          const reply = await dispatch(name, request, hooks);
          expect(replySchema.safeParse(reply).success).toBe(true);
          expect(reply.ok).toBe(false);
          expect(JSON.stringify(reply)).not.toContain('/home/');
        },
      ),
      { numRuns: 300 },
    );
  });

  it('says so where a part of the program that was replaced under it is gone', async () => {
    const missing = `./${'no-such-part'}.mjs`;
    const gone = new Proxy({} as Services, { get: () => () => import(missing) });
    const thrown = await import(missing).catch((error: unknown) => error);
    expect(sayThrown(thrown)).toMatch(/^Files of the program were replaced/);
    expect(await createDispatch(gone, () => {})('yard', {}, hooks)).toMatchObject({
      ok: false,
      error: { code: 'program-replaced' },
    });
  });

  it('survives a request whose fields bite', async () => {
    const dispatch = createDispatch(broken, () => {});
    const trap = Object.defineProperty({}, 'vehicles', {
      enumerable: true,
      get: () => {
        throw new Error('trap');
      },
    });
    expect(await dispatch('saveVehicles', trap, hooks)).toMatchObject({ ok: false });
  });

  it('a card it cannot use is refused by its name and the field, as on the terminal', async () => {
    const dispatch = createDispatch(broken, () => {});
    const said = async (card: object) => {
      const reply = await dispatch('saveVehicles', { vehicles: [{ id: 'a', card }] }, hooks);
      return reply.ok ? '' : reply.error.message;
    };
    expect(await said({ ...COACHBUILT, hieghtM: 3 })).toBe(
      'This cannot be used: the card "Test coach-built": "hieghtM" is no field of a vehicle card.',
    );
    expect(await said({ ...COACHBUILT, heightM: 30 })).toBe(
      'This cannot be used: the card "Test coach-built": heightM is 30, but at most 5 m can be right.',
    );
    expect(await said({ ...COACHBUILT, axleKg: { front: '1850', rear: 2000 } })).toContain(
      'axleKg.front must be a number, not the text "1850" (write 1850 without quotes)',
    );
    const { name: _, ...nameless } = COACHBUILT;
    expect(await said(nameless)).toBe('This cannot be used: the card: name is missing.');
  });

  it('keeps a refusal short, however much is wrong', async () => {
    const dispatch = createDispatch(broken, () => {});
    const vehicles = Array.from({ length: 200 }, () => ({ ['x'.repeat(5000)]: 1 }));
    const reply = await dispatch('saveVehicles', { vehicles }, hooks);
    expect(reply.ok ? 0 : reply.error.message.length).toBeLessThan(3000);
  });

  it('tells the log what went wrong inside', async () => {
    const logged: unknown[] = [];
    await createDispatch(broken, (error) => logged.push(error))('describe', {}, hooks);
    expect(String(logged[0])).toContain('inside');
  });
});
