import { LEVEL_WORD } from '../../geo/report/level.ts';
import type { WayRound } from '../../geo/report/way-round.ts';
import { sayDriveByWays } from '../../geo/report/ways/say-drive-by-ways.ts';
import { VerdictMark } from '../look/level-mark.tsx';
import { findings } from '../state/check.ts';
import { settings } from '../state/kept.ts';

/** What the whole drive comes to by ways that are driven together: told before what is met on the ways themselves. */
export function WholeDrive({ ways }: { readonly ways: readonly WayRound[] }) {
  const { verdict, say, folded } = sayDriveByWays(findings.value, ways, settings.value.units);
  return (
    <span class="small way-verdict">
      <VerdictMark verdict={verdict} size={16} />
      <span>
        The whole drive: <b class={`level-${verdict}`}>{LEVEL_WORD[verdict]}</b>. {say} {folded}
      </span>
    </span>
  );
}
