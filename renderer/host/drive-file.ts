import { trackGpx } from '../../geo/export/track-gpx.ts';
import { clip } from '../../geo/units/text.ts';
import type { FollowedDrive } from '../../main/contract/followed-drive.ts';
import { fileName } from './download.ts';

/** A drive as a GPX file of all the nodes of its roads; undefined where there is nothing to write. */
export function gpxFileOf(followed: FollowedDrive): File | undefined {
  const name = followed.name || followed.file.replace(/\.gpx$/i, '');
  const written = trackGpx({ ...followed, name: clip(name, 200) }, 'Lanegauge');
  return written === undefined
    ? undefined
    : new File([written], fileName(name || 'drive', 'gpx'), { type: 'application/gpx+xml' });
}
