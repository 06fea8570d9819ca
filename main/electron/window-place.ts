import { z } from 'zod';
import { ok } from '../../geo/result.ts';
import { keptFile } from '../services/files/kept-file.ts';

const side = z.number().int().min(200).max(20_000);
const corner = z.number().int().min(-20_000).max(20_000);

const placeSchema = z.strictObject({
  x: corner,
  y: corner,
  width: side,
  height: side,
  maximized: z.boolean(),
});
export type Place = z.infer<typeof placeSchema>;

/** The place of the window, from one start to the next. */
export interface KeptPlace {
  /** where it last stood */
  readonly place: Place | undefined;
  keep(place: Place): void;
  /** Waits until what is to be kept is on the disk. */
  kept(): Promise<unknown>;
}

/** Nothing is said of a file that cannot be used: the window then opens in the middle. */
export async function keepPlace(folder: string): Promise<KeptPlace> {
  const file = keptFile({
    folder,
    name: 'window.json',
    what: 'place of the window',
    schema: placeSchema,
    now: () => new Date(),
  });
  const { value } = await file.read();
  let keeping: Promise<unknown> = Promise.resolve();
  return {
    place: value,
    keep: (place) => {
      if (placeSchema.safeParse(place).success) keeping = file.update(() => ok(place));
    },
    kept: () => keeping,
  };
}
