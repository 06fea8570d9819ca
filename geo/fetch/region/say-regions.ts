import { distanceIn } from '../../units/in-units.ts';
import { printBytes } from '../../units/print.ts';
import { counted, listed } from '../../units/text.ts';
import type { ChosenRegion, LeftOut, RegionChoice } from './choose-regions.ts';
import type { Price } from './drawn-through.ts';
import type { Region } from './region.ts';

/** Names in one sentence; the rest is counted. */
const NAMED = 8;

export function sayIndexStep(host: string, bytes: number): string {
  return `First the list of regions is asked of ${host}: about ${printBytes(bytes)}, kept for 30 days. It is the same for everybody and tells the server nothing of the drive.`;
}

export function saySizesStep(host: string, regions: readonly Region[]): string {
  return `${host} is asked how large ${counted(regions.length, 'file')} would be: ${nameAll(regions)}. It learns these names, and so roughly where the drive goes; nothing else of the drive, the vehicle or the day.`;
}

export function sayMapsStep(host: string, { regions, bytes, guessed, leftOut }: RegionChoice): string {
  const size = `${guessed ? 'about ' : ''}${printBytes(bytes)}`;
  const what = `${counted(regions.length, 'map')} from ${host}, ${size} in all: ${listed(regions.map(sayRegion))}.`;
  return [what, ...leftOut.map(sayLeftOut)].join(' ');
}

/** What the drive's line lies in is not in the list. */
export function sayNoRegion(host: string): string {
  return `No region of ${host} holds any of this drive. Fetch the map along the drive instead, or name another server.`;
}

/** `Denmark (463 MB, 120.4 km of the drive)` */
export function sayRegion({ region, price, coversM }: ChosenRegion): string {
  return `${region.name} (${sayPrice(price)}, ${distanceIn('both', coversM)} of the drive)`;
}

/** A part of the drive that stays unknown unless another map holds it. */
export function sayLeftOut({ span, within }: LeftOut): string {
  const where = `${distanceIn('both', span.toM - span.fromM)} from ${distanceIn('both', span.fromM)} on`;
  if (within === undefined) return `${where} lie in no region of the list and stay unknown.`;
  const { region, price } = within;
  return `${where} lie in no region smaller than ${region.name} (${sayPrice(price)}): water, or a strip between two regions. They are left out; what is a road there stays unknown.`;
}

function sayPrice({ bytes, guessed }: Price): string {
  return `${guessed ? 'about ' : ''}${printBytes(bytes)}`;
}

function nameAll(regions: readonly Region[]): string {
  const names = regions.slice(0, NAMED).map(({ name }) => name);
  const rest = regions.length - names.length;
  return listed(rest > 0 ? [...names, `${rest} more`] : names);
}
