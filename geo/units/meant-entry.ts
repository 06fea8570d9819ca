import { METRES_PER_FOOT, METRES_PER_INCH } from './exact.ts';
import { printKg, printMetres } from './print.ts';

/** What was likely meant by a bare figure that cannot be right as it stands. */
export interface Meant {
  /** to be put in the field */
  readonly text: string;
  /** to be asked: `3.05 m` */
  readonly says: string;
}

/** What a figure may be, the ends included: metres or kilograms. */
interface May {
  readonly least: number;
  readonly most: number;
}

const BARE = /^\d+(?:[.,]\d+)?$/;

/** Of a bare figure in a field of metres: millimetres or centimetres where one of them fits, else inches or feet. */
export function meantLength(text: string, may: May): Meant | undefined {
  const figure = bareFigure(text);
  if (figure === undefined || isWithin(figure, may)) return undefined;
  const fits = (...each: readonly number[]) => each.map((m) => figure * m).filter((m) => isWithin(m, may));
  const [metric, otherMetric] = fits(0.001, 0.01);
  if (otherMetric !== undefined) return undefined;
  const [imperial, otherImperial] = fits(METRES_PER_INCH, METRES_PER_FOOT);
  const m = metric ?? (otherImperial === undefined ? imperial : undefined);
  if (m === undefined) return undefined;
  const kept = Math.round(m * 10_000) / 10_000;
  return { text: String(kept), says: printMetres(kept, 'up') };
}

/** Of a bare figure in a field of kilograms: tonnes. */
export function meantMass(text: string, may: May): Meant | undefined {
  const figure = bareFigure(text);
  if (figure === undefined || isWithin(figure, may)) return undefined;
  const kg = Math.round(figure * 1000);
  return isWithin(kg, may) ? { text: String(kg), says: printKg(kg) } : undefined;
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
