import { compareReports } from '../../library/differences/compare-reports.ts';
import type { Difference } from '../../library/differences/difference.ts';
import { LOAD_MARGIN_KG } from '../../load/weigh/load-level.ts';
import { headlineOf } from '../../load/weigh/say-plates.ts';
import { rankOf } from '../../report/level.ts';
import type { DriveReport } from '../../report/report.ts';
import type { Result } from '../../result.ts';
import type { Units } from '../../units/in-units.ts';
import { printKg, printMetres } from '../../units/print.ts';
import type { VehicleCard } from '../../vehicle/card.ts';

/** Spares closer than this are one. Metres, kilograms or whatever their unit is. */
const SAME_SPARE = 0.005;

/**
 * What a check of today says that the one handed out did not, or says worse: a sentence each, in driving order. What is
 * better, or gone, is not told: nobody has to be rung for it.
 */
export function newOrWorse(was: DriveReport, now: DriveReport, units: Units): Result<readonly string[]> {
  const compared = compareReports({ was, now, units, otherCard: true, otherLoad: true });
  if (!compared.ok) return compared;
  const worse = compared.value.differences.filter(isWorse).map(({ say }) => say);
  return { ok: true, value: [...sizesNow(was.vehicle, now.vehicle), ...overNow(was, now), ...worse] };
}

function isWorse({ was, now }: Difference): boolean {
  if (now === undefined || now.folded === true) return false;
  if (was === undefined || was.folded === true) return true;
  const [before, after] = [rankOf(was.level), rankOf(now.level)];
  if (before !== after) return after < before;
  return (now.spare ?? 0) < (was.spare ?? 0) - SAME_SPARE;
}

/** Figures on the papers in the cab that the vehicle has outgrown: who drives by them trusts them. */
function sizesNow(was: VehicleCard, now: VehicleCard): string[] {
  const figures: readonly (readonly [string, number, number, (value: number) => string])[] = [
    ['height', was.heightM, now.heightM, printMetres],
    ['width', was.widthM, now.widthM, printMetres],
    ['width over mirrors', was.widthMirrorsM, now.widthMirrorsM, printMetres],
    ['length', overallLengthM(was), overallLengthM(now), printMetres],
    // a plate is the other way round: less is worse
    ['plated weight', -was.grossKg, -now.grossKg, (kg) => printKg(-kg)],
  ];
  return figures
    .filter(([, before, after]) => after > before + SAME_SPARE)
    .map(
      ([what, before, after, print]) =>
        `The papers handed out say ${what} ${print(before)}; the card says ${print(after)} now. Hand them out anew.`,
    );
}

function overallLengthM({ lengthM, rack }: VehicleCard): number {
  return lengthM + (rack?.fitted === true ? rack.lengthM : 0);
}

/** A load that is over a plate now and was not. */
function overNow(was: DriveReport, now: DriveReport): string[] {
  if (now.load === undefined || now.load.over.length === 0 || (was.load?.over.length ?? 0) > 0) return [];
  return [`As loaded: ${headlineOf(now.load, { doubtful: false, marginKg: LOAD_MARGIN_KG })}`];
}
