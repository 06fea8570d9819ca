import { signal } from '@preact/signals';

/** The parts of the drive's view; where the window is narrow one of them is shown at a time. */
export const PARTS = [
  { id: 'list', name: 'Findings' },
  { id: 'map', name: 'Map' },
  { id: 'strip', name: 'Strip' },
] as const;
type PartId = (typeof PARTS)[number]['id'];

/** The one that is shown in a narrow window; a wider one shows all of them. */
export const shownPart = signal<PartId>('list');
