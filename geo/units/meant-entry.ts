import { doubtfulFeet, type Meant, readingsInFeet } from './decimal-feet.ts';
import { METRES_PER_INCH } from './exact.ts';
import { printKg, printMetres } from './print.ts';

/** What a figure may be, the ends included: metres or kilograms. */
interface May {
  readonly least: number;
  readonly most: number;
}

const BARE = /^\d+(?:[.,]\d+)?$/;

/**
 * What was likely meant in a field of metres by a figure that cannot be right as it stands. Bare: millimetres or
 * centimetres where one of them fits, else inches or feet. Of feet with decimals each reading, the longest first.
 */
export function meantLengths(text: string, may: May): readonly Meant[] {
  const within = (meant: readonly Meant[]) => meant.filter(({ value }) => isWithin(value, may));
  const doubtful = doubtfulFeet(text);
  if (doubtful.length > 0) return within(doubtful);
  const figure = bareFigure(text);
  if (figure === undefined || isWithin(figure, may)) return [];
  const metric = within([inMetres(figure * 0.001), inMetres(figure * 0.01)]);
  if (metric.length > 0) return metric.length > 1 ? [] : metric;
  const [inches, feet] = [within([inMetres(figure * METRES_PER_INCH)]), within(readingsInFeet(text.trim()))];
  return inches.length > 0 && feet.length > 0 ? [] : [...inches, ...feet];
}

/** Of a bare figure in a field of kilograms: tonnes. */
export function meantMass(text: string, may: May): readonly Meant[] {
  const figure = bareFigure(text);
  if (figure === undefined || isWithin(figure, may)) return [];
  const kg = Math.round(figure * 1000);
  return isWithin(kg, may) ? [{ text: String(kg), says: printKg(kg), value: kg }] : [];
}

function inMetres(m: number): Meant {
  const value = Math.round(m * 10_000) / 10_000;
  return { text: String(value), says: printMetres(value, 'up'), value };
}

/** "3,050" may be thousands as well: of a length no whole metres are meant by it either way. */
function bareFigure(text: string): number | undefined {
  const entry = text.trim();
  if (!BARE.test(entry)) return undefined;
  const figure = Number(/^\d{1,2},\d{3}$/.test(entry) ? entry.replace(',', '') : entry.replace(',', '.'));
  return figure > 0 ? figure : undefined;
}

function isWithin(value: number, { least, most }: May): boolean {
  return value >= least && value <= most;
}
