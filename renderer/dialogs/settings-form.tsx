import { useState } from 'preact/hooks';
import { MARGIN_MAX_M } from '../../main/contract/limits.ts';
import type { Settings } from '../../main/contract/settings.ts';
import { tileOrigin } from '../../main/contract/tile-address.ts';
import { saveSettings } from '../actions/keep.ts';
import { settings } from '../state/kept.ts';

/** Countries whose rules the program is most often asked for; the place of the drive tells by itself where it can. */
const COUNTRIES = 'AT AU BE CA CH CZ DE DK ES FI FR GB IE IT LU NL NO NZ PL PT SE US'.split(' ');

/** Every choice holds at once and is kept. */
export function SettingsForm() {
  const now = settings.value;
  const change = (part: Partial<Settings>) => void saveSettings({ ...settings.peek(), ...part });
  return (
    <>
      <Choice
        legend="Units"
        name="units"
        value={now.units}
        options={{ metric: 'metric', imperial: 'miles, feet and inches', both: 'both' }}
        onChoose={(units) => change({ units })}
      />
      <Choice
        legend="Colours"
        name="palette"
        value={now.palette}
        options={{
          system: 'as this computer is set',
          day: 'light, for the day',
          night: 'dark, for the night',
        }}
        onChoose={(palette) => change({ palette })}
      />
      <Margins margins={now.margins} onChange={(margins) => change({ margins })} />
      <label class="field">
        <span>Country where the place does not tell</span>
        <select
          value={now.country ?? ''}
          onChange={({ currentTarget }) => change({ country: currentTarget.value || null })}
        >
          <option value="">none</option>
          {withChosen(now.country).map(({ code, name }) => (
            <option key={code} value={code}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <Tiles tiles={now.tiles} onChange={(tiles) => change({ tiles })} />
    </>
  );
}

function withChosen(chosen: string | null): { code: string; name: string }[] {
  const names = new Intl.DisplayNames('en', { type: 'region' });
  const codes = chosen === null || COUNTRIES.includes(chosen) ? COUNTRIES : [...COUNTRIES, chosen];
  return codes
    .map((code) => ({ code, name: names.of(code) ?? code }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en'));
}

function Choice<T extends string>({
  legend,
  name,
  value,
  options,
  onChoose,
}: {
  legend: string;
  name: string;
  value: T;
  options: Readonly<Record<T, string>>;
  onChoose(chosen: T): void;
}) {
  return (
    <fieldset class="field">
      <legend>{legend}</legend>
      {(Object.keys(options) as T[]).map((option) => (
        <label key={option}>
          <input
            type="radio"
            name={name}
            value={option}
            checked={option === value}
            onChange={() => onChoose(option)}
          />{' '}
          {options[option]}
        </label>
      ))}
    </fieldset>
  );
}

function Margins({
  margins,
  onChange,
}: {
  margins: Settings['margins'];
  onChange(changed: Settings['margins']): void;
}) {
  return (
    <fieldset class="field">
      <legend>A passage is called tight when less than this is left</legend>
      <MarginField
        say="in height"
        value={margins.heightM}
        onChange={(heightM) => onChange({ ...margins, heightM })}
      />
      <MarginField
        say="in width between posts, in all"
        value={margins.physicalWidthM}
        onChange={(physicalWidthM) => onChange({ ...margins, physicalWidthM })}
      />
    </fieldset>
  );
}

function MarginField({
  say,
  value,
  onChange,
}: {
  say: string;
  value: number;
  onChange(metres: number): void;
}) {
  const [problem, setProblem] = useState(false);
  return (
    <label class="margin">
      <input
        type="text"
        inputMode="decimal"
        defaultValue={value.toFixed(2)}
        aria-invalid={problem}
        onInput={({ currentTarget }) => {
          const text = currentTarget.value.trim().replace(',', '.');
          const metres = Number(text);
          const usable = /^\d*\.?\d+$/.test(text) && metres <= MARGIN_MAX_M;
          setProblem(!usable);
          if (usable && metres !== value) onChange(metres);
        }}
      />{' '}
      m {say}
      {problem && <span class="problem-inline"> Write metres from 0 to {MARGIN_MAX_M}, such as 0.15.</span>}
    </label>
  );
}

function Tiles({
  tiles,
  onChange,
}: {
  tiles: Settings['tiles'];
  onChange(changed: Settings['tiles']): void;
}) {
  const [address, setAddress] = useState(tiles?.address ?? '');
  const [attribution, setAttribution] = useState(tiles?.attribution ?? '');
  const wrong = address !== '' && tileOrigin(address) === undefined;
  const keep = () => {
    if (wrong) return;
    onChange(address === '' ? null : { address, attribution });
  };
  return (
    <fieldset class="field">
      <legend>Background picture from the network</legend>
      <label class="wide-field">
        <span>Tile address, empty for none</span>
        <input
          type="url"
          value={address}
          maxLength={500}
          aria-invalid={wrong}
          placeholder="https://…/{z}/{x}/{y}.png"
          onInput={({ currentTarget }) => setAddress(currentTarget.value.trim())}
          onChange={keep}
        />
      </label>
      {wrong && (
        <p class="problem-inline">An address starts with https:// and contains {'{z}, {x} and {y}'}.</p>
      )}
      <label class="wide-field">
        <span>Whose picture it is, shown on the map</span>
        <input
          type="text"
          value={attribution}
          maxLength={300}
          onInput={({ currentTarget }) => setAttribution(currentTarget.value)}
          onChange={keep}
        />
      </label>
      <p class="small soft">
        The program draws its own map and needs no network. With an address, the places you look at become
        known to that server. It takes effect when the window is loaded again.
      </p>
    </fieldset>
  );
}
