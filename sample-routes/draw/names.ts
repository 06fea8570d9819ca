import { ENDS, STEMS } from '../plan/street-names.ts';
import type { Random } from './lines/random.ts';

/** Hands out street names, each once. */
export class Names {
  private readonly used = new Set<string>();
  private readonly random: Random;

  constructor(random: Random) {
    this.random = random;
  }

  next(kind: keyof typeof ENDS): string {
    const ends = ENDS[kind];
    for (let tries = 0; tries < 5000; tries++) {
      const stem = STEMS[Math.floor(this.random() * STEMS.length)];
      const end = ends[Math.floor(this.random() * ends.length)];
      const name = `${stem} ${end}`;
      if (this.used.has(name)) continue;
      this.used.add(name);
      return name;
    }
    throw new Error('out of street names');
  }
}
