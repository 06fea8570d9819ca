import { DRIVES, type DrawnAs } from '../../plan/drives.ts';
import type { District } from '../elements.ts';
import { seededRandom } from '../lines/random.ts';
import { type Driven, makeNetwork, planDrive } from './plan-drive.ts';
import { dense, type Position, recorded, sparse } from './positions.ts';

/** A drive as a file says it. */
export interface DriveText {
  readonly name: string;
  readonly about: string;
  readonly kind: 'track' | 'route';
  readonly segments: readonly (readonly Position[])[];
  /** Unix seconds of the start, for positions with a time */
  readonly startS?: number;
}

/** Every sample drive by file name. */
export function makeDrives(district: District): ReadonlyMap<string, DriveText> {
  const network = makeNetwork(district);
  return new Map(
    DRIVES.map(({ file, name, about, stops, drawn }) => [
      file,
      { name, about, ...draw(planDrive(network, stops), drawn) },
    ]),
  );
}

function draw(driven: readonly Driven[], drawn: DrawnAs): Pick<DriveText, 'kind' | 'segments' | 'startS'> {
  switch (drawn.how) {
    case 'dense':
      return { kind: 'track', segments: [dense(driven, seededRandom(drawn.seed))] };
    case 'sparse':
      return { kind: 'route', segments: [sparse(driven, drawn.everyM)] };
    case 'recorded': {
      const fixes = recorded(driven, seededRandom(drawn.seed), drawn.sigmaM);
      const lost = Math.floor(fixes.length * drawn.lostAt);
      const segments = [fixes.slice(0, lost), fixes.slice(lost + drawn.lostFixes)];
      return { kind: 'track', startS: drawn.startS, segments };
    }
  }
}
