import { readIncline } from '../../../geo/tags/incline.ts';
import { readEntryLength, readEntryMass } from '../../../geo/units/read-entry.ts';
import { readLength } from '../../../geo/units/read-length.ts';
import { readMass } from '../../../geo/units/read-mass.ts';
import type { Reading } from '../../../geo/units/reading.ts';
import { readLitres, readPlaceX } from '../../../geo/vehicle/form/read-figures.ts';
import { tagValue } from '../make/tags.ts';
import { faultInSentence } from '../promises.ts';
import { jsonTarget } from '../target.ts';

/** Figures as mapped, and as typed into the forms. */
export const quantities = jsonTarget<string>({
  name: 'quantities',
  weight: 20,
  make: tagValue,
  check(text) {
    return (
      faultInReading(readLength(text)) ??
      faultInReading(readMass(text)) ??
      faultInIncline(text) ??
      faultInEntries(text)
    );
  },
});

function faultInReading(reading: Reading): string | undefined {
  if (reading.kind === 'unreadable') return reading.reason === '' ? 'unreadable without a reason' : undefined;
  if (reading.kind !== 'value') return undefined;
  return Number.isFinite(reading.value) && reading.value >= 0 ? undefined : `read as ${reading.value}`;
}

function faultInIncline(text: string): string | undefined {
  const numbers = Object.values(readIncline(text)).filter((each) => typeof each === 'number');
  return numbers.every(Number.isFinite) ? undefined : `an incline of ${numbers.join(' ')}`;
}

function faultInEntries(text: string): string | undefined {
  for (const read of [readEntryLength, readEntryMass, readLitres, readPlaceX]) {
    const entry = read(text);
    const fault = entry.ok
      ? Number.isFinite(entry.value)
        ? undefined
        : `${read.name} gives ${entry.value}`
      : faultInSentence(entry.error.message);
    if (fault !== undefined) return fault;
  }
  return undefined;
}
