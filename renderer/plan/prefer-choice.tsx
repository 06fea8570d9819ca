import { saveSettings } from '../actions/keep.ts';
import { settings } from '../state/kept.ts';

const CHOICES = [
  { prefer: 'quickest', name: 'Quickest' },
  { prefer: 'widest', name: 'Widest roads' },
] as const;

/** What a planned drive and a way round keep to where there is a choice; kept as a setting. */
export function PreferChoice() {
  return (
    <fieldset class="plan-prefer">
      <legend>Prefer</legend>
      {CHOICES.map(({ prefer, name }) => (
        <label key={prefer}>
          <input
            type="radio"
            name="prefer"
            checked={settings.value.prefer === prefer}
            onChange={() => saveSettings({ ...settings.peek(), prefer })}
          />{' '}
          {name}
        </label>
      ))}
    </fieldset>
  );
}
