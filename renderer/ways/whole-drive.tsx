import { LEVEL_WORD } from '../../geo/report/level.ts';
import type { WayRound } from '../../geo/report/way-round.ts';
import { driveByWays } from '../../geo/report/ways/drive-by-ways.ts';
import { sayDriveByWays } from '../../geo/report/ways/say-drive-by-ways.ts';
import { findings } from '../state/check.ts';
import { settings } from '../state/kept.ts';

/** What the whole drive comes to by ways that are driven together: told before what is met on the ways themselves. */
export function WholeDrive({ ways }: { readonly ways: readonly WayRound[] }) {
  const { verdict, say, folded } = sayDriveByWays(driveByWays(findings.value, ways), settings.value.units);
  return (
    <span class="small">
      The whole drive: <b class={`level-${verdict}`}>{LEVEL_WORD[verdict]}</b>. {say} {folded}
    </span>
  );
}
