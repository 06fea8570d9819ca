import { z } from 'zod';
import { ok } from '../../../geo/result.ts';
import { keptFile } from '../files/kept-file.ts';
import { localDay } from '../local-day.ts';

/** How much a server was asked today. */
export interface Asked {
  readonly questions: number;
  /** over the line */
  readonly bytes: number;
}

const count = z.int().min(0);
const schema = z.strictObject({
  format: z.literal('lanegauge.asked'),
  version: z.literal(1),
  /** of this computer's calendar, YYYY-MM-DD */
  day: z.string(),
  /** by the server's host */
  servers: z.record(z.string(), z.strictObject({ questions: count, bytes: count })),
});

/** Keeps in the data folder how much was asked of whom today, by all programs together. */
export interface AskedToday {
  of(host: string): Promise<Asked>;
  /** That it cannot be written down keeps nobody from asking. */
  add(host: string, bytes: number): Promise<void>;
}

/** @param folder where what is fetched is kept */
export function askedToday(folder: string, now: () => Date): AskedToday {
  const file = keptFile({ folder, name: 'asked.json', what: 'count of what was fetched today', schema, now });
  const today = () => localDay(now());
  return {
    async of(host) {
      const { value } = await file.read();
      const found = value?.day === today() ? value.servers[host] : undefined;
      return found ?? { questions: 0, bytes: 0 };
    },
    async add(host, bytes) {
      await file.update((found) => {
        const servers = found?.day === today() ? found.servers : {};
        const so = servers[host] ?? { questions: 0, bytes: 0 };
        const more = { questions: so.questions + 1, bytes: so.bytes + bytes };
        return ok({
          format: 'lanegauge.asked',
          version: 1,
          day: today(),
          servers: { ...servers, [host]: more },
        });
      });
    },
  };
}
