import { sayMoment } from '../../../geo/clock/print-dates.ts';
import { clip } from '../../../geo/units/text.ts';
import type { Apart } from '../../../main/contract/yard/yard.ts';
import { chooseVersion } from '../state/choose-version.ts';

/** Something that was changed in two places at once: what each version says, and the way to keep one. */
export function Versions({ of: { id, versions, removed } }: { of: Apart }) {
  return (
    <div class="yard-versions">
      <p>
        {removed === undefined
          ? 'It was changed on two computers at once. Which holds?'
          : `It was removed on one computer (${sayMoment(removed)}) and changed on another at the same time. Keep it, or remove it again.`}
      </p>
      <ul class="yard-list">
        {versions.map(({ version, made, says }) => (
          <li key={version}>
            <span>
              {says.map((line) => (
                <div key={line}>
                  <bdi>{clip(line, 300)}</bdi>
                </div>
              ))}
              {made !== '' && <span class="small soft">changed {sayMoment(made)}</span>}
            </span>
            <button type="button" onClick={() => void chooseVersion(id, version)}>
              Keep this<span class="unseen">: {clip(says.join('; '), 120)}</span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
