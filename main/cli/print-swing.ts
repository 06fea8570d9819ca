import { toDeg } from '../../geo/earth/angles.ts';
import type { SwingMeasures } from '../../geo/swing/measure/measure-swing.ts';
import type { SwingReport } from '../../geo/swing/measure/swing-report.ts';
import type { Guide } from '../../geo/swing/motion/guide-path.ts';
import { LOCK_FROM, sayModel } from '../../geo/swing/say-model.ts';
import type { SwingVehicle } from '../../geo/swing/swing-vehicle.ts';
import { printCm } from '../../geo/units/print.ts';
import { clip } from '../../geo/units/text.ts';
import type { FullLock } from '../../geo/vehicle/lock/full-lock.ts';
import { sayRange } from '../../geo/vehicle/lock/lock-doubts.ts';
import type { Paint } from './paint.ts';
import { wrap } from './wrap.ts';

export interface DrivenPath {
  readonly vehicle: SwingVehicle;
  readonly guide: Guide;
  readonly measures: SwingMeasures;
  readonly report: SwingReport;
}

/** A vehicle driven along a path, as a page of text. Centimetres, rounded up. */
export function printSwing(
  { vehicle, guide, measures, report }: DrivenPath,
  width: number,
  paint: Paint,
): string {
  const { tail, tailLater } = measures;
  const { pathRearAxleRadiusMinM: pathM } = report;
  const rack = vehicle.rack ? `, with its rack of ${printCm(vehicle.rack.lengthM, 'up')}` : '';
  const how = typeof guide === 'string' ? guide : 'guided point';
  const tailSays =
    tail.swingM > 0
      ? `to the ${tail.side}, most ${tail.atTravelM.toFixed(1)} m along, after ${Math.round(toDeg(tail.headingChangeRad))}° of turn`
      : 'it does not come out';
  const lines = [
    ...(report.tighterThanFullLock
      ? [
          ...wrap(
            `CANNOT BE MADE: the path asks for ${metresDown(pathM ?? 0)} at the rear axle, full lock gives ${metres(vehicle.lock.rearAxleRadiusM)} (${LOCK_FROM[vehicle.lock.from]}). The figures are what it would need.`,
            width,
          ).map((text) => paint.level('barred', text)),
          '',
        ]
      : []),
    ...wrap(`${clip(vehicle.name)}${rack}, ${how} on the path`, width),
    row('Tail swing', tail.swingM, tailSays),
    ...(tailLater
      ? [
          row(
            '  in a later turn',
            tailLater.swingM,
            `to the ${tailLater.side}, ${tailLater.atTravelM.toFixed(1)} m along${tailLater.swingM > tail.swingM + 0.005 ? ', the most of the path' : ''}`,
          ),
        ]
      : []),
    row('  at full lock', report.fullLockSwingM, 'wheels hard over from straight, the most within the lock'),
    row('Cut-in', report.cutInM, 'how far the side between the axles cuts the first turn'),
    row('Nose out', report.frontCornerOutM, 'how far its corner goes wide of the path'),
    row('Rear axle off path', report.offTrackingM, 'at most'),
    row('Width swept', report.sweptWidthM, 'the widest strip of ground that it takes'),
    '',
    ...wrap(
      pathM === null
        ? 'The path never turns.'
        : `Tightest at the rear axle: ${metres(pathM)}; full lock ${metres(vehicle.lock.rearAxleRadiusM)}, ${LOCK_FROM[vehicle.lock.from]}.${doubt(vehicle.lock, pathM)}`,
      width,
    ),
    ...wrap(sayModel(vehicle.lock, 'metric'), width),
  ];
  return `${lines.join('\n')}\n`;
}

/** An estimate may be wrong either way. */
function doubt({ from, lowM, highM, rearAxleRadiusM }: FullLock, pathM: number): string {
  if (from === 'measured') return ` It may lie anywhere from ${sayRange({ lowM, highM }, 'metric')}.`;
  if (from !== 'estimate' || pathM >= highM) return '';
  const range = `${metres(lowM)} to ${metres(highM)}`;
  return pathM >= rearAxleRadiusM
    ? ` It may lie anywhere from ${range}, so this path may be too tight: measure the turning circle.`
    : ` It may lie anywhere from ${range}: measure the turning circle.`;
}

function row(name: string, lengthM: number, says: string): string {
  return `  ${name.padEnd(18)} ${printCm(lengthM, 'up').padStart(7)}  ${says}`.trimEnd();
}

function metres(lengthM: number): string {
  return `${lengthM.toFixed(2)} m`;
}

/** Rounded down, so that a path a hair too tight does not read as full lock. */
function metresDown(lengthM: number): string {
  return metres(Math.floor(lengthM * 100 + 1e-6) / 100);
}
