import { clip } from '../../../geo/units/text.ts';
import { type Arrangement, ORDERS, type Order, TAKES, type Takes } from '../../../geo/yard/arrange.ts';
import { arrangement, columns } from '../state/yard.ts';
import { Lengths } from './lengths.tsx';
import { NearField } from './near-field.tsx';

const ORDER_WORD: Readonly<Record<Order, string>> = {
  name: 'by name',
  length: 'longest first',
  worst: 'worst first',
};

function change(part: Partial<Arrangement>): void {
  arrangement.value = { ...arrangement.peek(), ...part };
}

/** Which drives are shown, and in which order. */
export function Filters({ shown }: { shown: boolean }) {
  const asked = arrangement.value;
  return (
    <search
      class={shown ? 'yard-filters yard-filters-shown' : 'yard-filters'}
      aria-label="Drives of the yard"
    >
      <label>
        <span class="small soft">Find</span>
        <input
          type="search"
          placeholder="name, file or road"
          value={asked.text}
          onInput={({ currentTarget }) => change({ text: currentTarget.value })}
        />
      </label>
      <label>
        <span class="small soft">Vehicle</span>
        <select
          value={asked.vehicle ?? ''}
          onChange={({ currentTarget }) => change({ vehicle: currentTarget.value || undefined })}
        >
          <option value="">any</option>
          {columns.value.map(({ id, name }) => (
            <option key={id} value={id}>
              {clip(name, 40)}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span class="small soft">Show</span>
        <select
          value={asked.takes}
          onChange={({ currentTarget }) =>
            change({ takes: TAKES.find((each) => each === currentTarget.value) ?? 'any' })
          }
        >
          {TAKES.map((each) => (
            <option key={each} value={each}>
              {takesWord(each, asked.vehicle !== undefined)}
            </option>
          ))}
        </select>
      </label>
      <Lengths />
      <label>
        <span class="small soft">Sort</span>
        <select
          value={asked.order}
          onChange={({ currentTarget }) =>
            change({ order: ORDERS.find((each) => each === currentTarget.value) ?? 'name' })
          }
        >
          {ORDERS.map((each) => (
            <option key={each} value={each}>
              {ORDER_WORD[each]}
            </option>
          ))}
        </select>
      </label>
      <NearField />
    </search>
  );
}

function takesWord(takes: Takes, named: boolean): string {
  if (takes === 'any') return 'every drive';
  const who = named ? 'it' : 'some vehicle';
  return takes === 'takes' ? `where nothing bars ${who}` : `where ${who} is barred`;
}
