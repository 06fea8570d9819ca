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

/** Where the window last stood. Nothing is said of a file that cannot be used: the window then opens in the middle. */
export async function keepPlace(
  folder: string,
): Promise<{ place: Place | undefined; keep(place: Place): void }> {
  const file = keptFile({
    folder,
    name: 'window.json',
    what: 'place of the window',
    schema: placeSchema,
    now: () => new Date(),
  });
  const { value } = await file.read();
  return {
    place: value,
    keep: (place) => {
      if (placeSchema.safeParse(place).success) void file.update(() => ok(place));
    },
  };
}
