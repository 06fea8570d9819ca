import { given } from '../../given.ts';
import type { CardFigure } from '../bounds.ts';
import type { VehicleCard } from '../card.ts';
import type { Draft } from './draft.ts';
import type { ReadPlaces } from './read-places.ts';

/** The figures of a card that could be read, metres and kilograms. */
export type Figures = Readonly<Partial<Record<CardFigure, number>>>;

/** The card of a draft in which nothing is wrong: every figure that a card must have is there. */
export function cardOf(
  draft: Draft,
  figures: Figures,
  places: NonNullable<ReadPlaces['places']>,
): VehicleCard {
  const figure = (key: CardFigure) => figures[key] ?? 0;
  return {
    format: 'lanegauge.vehicle',
    version: 1,
    name: draft.name.trim(),
    heightM: figure('heightM'),
    widthM: figure('widthM'),
    widthMirrorsM: figure('widthMirrorsM'),
    lengthM: figure('lengthM'),
    wheelbaseM: figure('wheelbaseM'),
    frontOverhangM: figure('frontOverhangM'),
    rearOverhangM: figure('rearOverhangM'),
    grossKg: figure('grossKg'),
    axleKg: { front: figure('axleFrontKg'), rear: figure('axleRearKg') },
    ...given({
      widthMirrorsFoldedM: figures.widthMirrorsFoldedM,
      trackM: figures.trackM,
      turningCircleM: figures.turningCircleM,
      turningCircleWallM: figures.turningCircleWallM,
      rearAxleRadiusMinM: figures.rearAxleRadiusMinM,
      unladenKg: figures.unladenKg,
      rearClearanceM: figures.rearClearanceM,
      bellyClearanceM: figures.bellyClearanceM,
      gasKg: figures.gasKg,
      rack: rackOf(draft, figures),
      runningOrder: emptyWeightOf(draft, figures),
      measured: draft.measured,
      notes: draft.notes.trim() === '' ? undefined : draft.notes,
    }),
    ...places,
  };
}

function rackOf(
  { rackFitted }: Draft,
  { rackLengthM, rackWidthM, rackLimitKg }: Figures,
): VehicleCard['rack'] {
  if (rackLengthM === undefined || rackWidthM === undefined) return undefined;
  return {
    lengthM: rackLengthM,
    widthM: rackWidthM,
    fitted: rackFitted,
    ...given({ limitKg: rackLimitKg }),
  };
}

function emptyWeightOf(
  { includesDriver, includesFreshWater }: Draft,
  { emptyFrontKg, emptyRearKg }: Figures,
): VehicleCard['runningOrder'] {
  if (emptyFrontKg === undefined || emptyRearKg === undefined) return undefined;
  return { frontKg: emptyFrontKg, rearKg: emptyRearKg, includesDriver, includesFreshWater };
}
