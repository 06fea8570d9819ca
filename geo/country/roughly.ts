import { type Cited, COMMON_PRACTICE, cite, FROM_MEMORY, SOURCES } from './cited.ts';
import { CONTINENTAL_WIDTHS } from './default-widths.ts';
import type { CountryCode, CountryRule, SpeedBand } from './rule.ts';

/** What is known of a country whose signs nobody looked up: its side of the road and its general limits. */
interface Known {
  readonly code: CountryCode;
  readonly name: string;
  readonly urbanKmh?: Cited<number>;
  readonly bands: CountryRule['bands'];
}

/**
 * A row for a country of which only the speeds were looked up. Signs are read strictly, and what was not read
 * anywhere says so: such cells are used where something must be, and never told as facts.
 */
export function roughly({ code, name, urbanKmh, bands }: Known): CountryRule {
  return {
    code,
    name,
    driveSide: cite('right', SOURCES.borderData),
    unsignedHeight: cite({ meaning: 'No height sign promises no clearance.' }, FROM_MEMORY),
    legalHeightM: cite(4.0, SOURCES.directive96),
    massSign: cite('plated', FROM_MEMORY, 'The stricter reading.'),
    goodsSigns: cite('not known', FROM_MEMORY),
    widthSign: cite('with mirrors', FROM_MEMORY, 'The stricter reading.'),
    widths: cite(CONTINENTAL_WIDTHS, COMMON_PRACTICE, 'Judgement; ± 0.5 m.'),
    kerbRadiusM: cite({ urban: 3, rural: 8 }, COMMON_PRACTICE, 'Judgement.'),
    urbanKmh: urbanKmh ?? cite(50, SOURCES.speedData),
    livingStreetKmh: cite(20, FROM_MEMORY),
    bandsBy: cite('plated', FROM_MEMORY),
    bands,
  };
}

/** One band of masses. */
export function band(overKg: number, limits: SpeedBand['limits']): SpeedBand {
  return { overKg, limits };
}
