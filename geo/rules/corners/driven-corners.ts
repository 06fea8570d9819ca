import { oncePerDrive } from '../../drive/once-per-drive.ts';
import type { DrivenTurn } from '../../drive/turns/driven-turn.ts';
import { findTurns } from '../../drive/turns/find-turns.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Tags } from '../../roads/roads.ts';
import { isSiteRoad } from '../../tags/road-class.ts';
import { textOf } from '../../tags/text-of.ts';

/** A turn of the drive that is judged, with what is the same of it for every vehicle. */
export interface DrivenCorner {
  readonly driven: DrivenTurn;
  /** the same for every pass of one corner in one direction */
  readonly corner: string;
  /** the same where besides its line is drawn alike: there every vehicle is measured alike */
  readonly drawn: string;
  /** the drive is perhaps on another road there */
  readonly unsure: boolean;
  /** both its roads are a site's own */
  readonly onSite: boolean;
}

/** The turns of a drive but those within a car park, in driving order. */
export const drivenCorners = oncePerDrive((drive, roads): DrivenCorner[] =>
  findTurns(drive, roads).flatMap((driven) => {
    const before = mappedOn(roads, driven.entry.way);
    const after = mappedOn(roads, driven.exit.way);
    if (isParking(before) || isParking(after)) return [];
    const corner = cornerKey(driven);
    const { drawnRadiusM, unmeasured, apartM, atM } = driven;
    return [
      {
        driven,
        corner,
        drawn: `${drawnRadiusM} ${unmeasured} ${apartM} ${corner}`,
        unsure: drive.doubtful.some(({ fromM, toM }) => atM >= fromM && atM <= toM),
        onSite: isSiteRoad(before) && isSiteRoad(after),
      },
    ];
  }),
);

function cornerKey({ node, entry, exit, kind, part, side, turnDeg }: DrivenTurn): string {
  return [node, entry.way, entry.forward, exit.way, exit.forward, kind, part, side, turnDeg.toFixed(1)].join(
    ' ',
  );
}

const PARKING_SERVICES = new Set(['parking_aisle', 'driveway', 'drive-through']);

function isParking(tags: Tags): boolean {
  return PARKING_SERVICES.has(textOf(tags, 'service'));
}
