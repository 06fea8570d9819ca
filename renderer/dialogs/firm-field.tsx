import { useState } from 'preact/hooks';
import { BEFORE_SETTING_OFF } from '../../geo/handover/document/before-setting-off.ts';
import { BEFORE_MAX, FIRM_MAX } from '../../main/contract/limits.ts';
import type { Settings } from '../../main/contract/settings.ts';

type Own = Pick<Settings, 'firm' | 'before'>;

/** What of the firm's own stands on a drive sheet. */
export function FirmFields({ firm, before, onChange }: Own & { onChange(part: Partial<Own>): void }) {
  const [list, setList] = useState((before ?? BEFORE_SETTING_OFF).join('\n'));
  const lines = linesOf(list);
  const wrong = lines.length > BEFORE_MAX.lines || lines.some((line) => line.length > BEFORE_MAX.letters);
  const change = (typed: string) => {
    setList(typed);
    const taken = linesOf(typed);
    if (taken.length > BEFORE_MAX.lines || taken.some((line) => line.length > BEFORE_MAX.letters)) return;
    const own = taken.join('\n') === BEFORE_SETTING_OFF.join('\n');
    onChange({ before: own ? null : taken });
  };
  const text = (name: keyof Settings['firm'], say: string) => (
    <label class="wide-field">
      <span>{say}</span>
      <input
        type="text"
        inputMode={name === 'telephone' ? 'tel' : 'text'}
        defaultValue={firm[name]}
        maxLength={FIRM_MAX[name]}
        onChange={({ currentTarget }) => onChange({ firm: { ...firm, [name]: currentTarget.value.trim() } })}
      />
    </label>
  );
  return (
    <fieldset class="field">
      <legend>On every drive sheet</legend>
      {text('heading', 'Your firm’s heading, empty for none')}
      {text('telephone', 'The telephone that the driver rings, empty for none')}
      <label class="wide-field">
        <span>Before you set off, a line each</span>
        <textarea
          rows={8}
          value={list}
          aria-invalid={wrong}
          onInput={({ currentTarget }) => change(currentTarget.value)}
        />
      </label>
      {wrong && (
        <p class="problem-inline">
          At most {BEFORE_MAX.lines} lines of {BEFORE_MAX.letters} letters each: this is not kept yet.
        </p>
      )}
      {before !== null && (
        <button type="button" onClick={() => change(BEFORE_SETTING_OFF.join('\n'))}>
          The usual list again
        </button>
      )}
    </fieldset>
  );
}

function linesOf(text: string): string[] {
  return text.split('\n').flatMap((line) => (line.trim() === '' ? [] : [line.trim()]));
}
