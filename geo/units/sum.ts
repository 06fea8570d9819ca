import { METRES_PER_INCH } from './exact.ts';
import { inUnits, trueMinus, type Units } from './in-units.ts';
import { NOISE_STEPS, printCm, printFeetHalfInches, printHalfInches, printKg, printMetres } from './print.ts';

/** limit − needed = spare as it is shown: what stands there adds up. */
export interface ShownSum {
  readonly limit: string;
  readonly needed: string;
  /** with its sign, a true minus */
  readonly spare: string;
  /** without it */
  readonly short: string;
}

/** What is held against what, in one unit: metres or kilograms. */
export interface Against {
  readonly limit: number;
  readonly needed: number;
}

interface Steps {
  readonly limit: number;
  readonly needed: number;
  readonly spare: number;
}

/**
 * A sum in whole steps: the limit rounded down and what is needed up, against the driver, and the spare as the
 * difference of the two, so that it never flatters and always adds up. What just fits is not shown as over: there the
 * limit is shown as large as what stands against it.
 */
function inSteps({ limit, needed }: Against, step: number): Steps {
  const [down, up] = [Math.floor(limit / step + NOISE_STEPS), Math.ceil(needed / step - NOISE_STEPS)];
  const fits = needed <= limit + NOISE_STEPS * step;
  const shown = fits ? Math.max(down, up) : down;
  return { limit: shown, needed: up, spare: shown - up };
}

type Print = (value: number) => string;

function shown(steps: Steps, step: number, print: Print): ShownSum {
  const text = (count: number) => trueMinus(print(count * step));
  return {
    limit: text(steps.limit),
    needed: text(steps.needed),
    spare: text(steps.spare),
    short: text(Math.abs(steps.spare)),
  };
}

/** How a quantity is shown in one unit: its step in metres, and the text of so many metres. */
interface Shown {
  readonly stepM: number;
  readonly print: Print;
}

/**
 * A sum in the units asked for, in each of which it adds up. Where whole inches would take from the spare an inch more
 * than it has, half inches stand: 3.20 m and 3.15 m are not both `10'5"`, and `0.35 m (1'2")` is not an inch more than
 * a tape would show.
 */
function sumIn(units: Units, sum: Against, metric: Shown, imperial: Shown): ShownSum {
  const inOne = ({ stepM, print }: Shown) => shown(inSteps(sum, stepM), stepM, print);
  const spareSteps = Math.floor((sum.limit - sum.needed) / imperial.stepM + NOISE_STEPS);
  const isLost = inSteps(sum, imperial.stepM).spare < spareSteps;
  const [inMetres, inInches] = [
    inOne(metric),
    inOne(isLost ? { ...imperial, stepM: imperial.stepM / 2 } : imperial),
  ];
  const of = (key: keyof ShownSum) => inUnits(units, inMetres[key], inInches[key]);
  return { limit: of('limit'), needed: of('needed'), spare: of('spare'), short: of('short') };
}

const METRES: Shown = { stepM: 0.01, print: (m) => printMetres(m) };
const CENTIMETRES: Shown = { stepM: 0.01, print: (m) => printCm(m) };
const FEET: Shown = { stepM: METRES_PER_INCH, print: (m) => printFeetHalfInches(m) };
const INCHES: Shown = { stepM: METRES_PER_INCH, print: (m) => printHalfInches(m) };

/** Sizes: `3.20 m − 3.25 m = −0.05 m`, `10'5" − 10'8" = −0'3"`, or the first with feet in brackets. */
export function sizeSumIn(units: Units, sum: Against): ShownSum {
  return sumIn(units, sum, METRES, FEET);
}

/** Gaps and swings: `30 cm − 61 cm = −31 cm`, `11 in − 24 in = −13 in`, or both. */
export function shortSumIn(units: Units, sum: Against): ShownSum {
  return sumIn(units, sum, CENTIMETRES, INCHES);
}

/** Masses, in whole kilograms whatever the units: plates give no others. */
export function massSum(sum: Against): ShownSum {
  return shown(inSteps(sum, 1), 1, (kg) => printKg(kg));
}
