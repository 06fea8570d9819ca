import { describe, it } from 'vitest';
import { findingsTold, SAMPLE_TOLD, type WatchedPage } from './support/page.ts';
import { withSampleWindow } from './support/sample-window.ts';
import { type States, walkStates } from './support/walk-states.ts';

let watched: WatchedPage;

withSampleWindow((opened) => {
  watched = opened;
});

const STATES: States = [
  ['the sample drive', (page) => findingsTold(page, SAMPLE_TOLD)],
  [
    'a turn opened',
    (page) =>
      page
        .locator('.row-head', { hasText: /(Take care|Tight) turn/ })
        .first()
        .click(),
  ],
  ['that turn in the swing view', (page) => page.getByRole('button', { name: 'See this turn' }).click()],
  ['pulling away', (page) => page.getByRole('button', { name: 'Pulling away', exact: true }).click()],
  ['beside another vehicle', (page) => page.getByLabel('Compare with').selectOption({ index: 1 })],
  ['a mini-roundabout', (page) => page.getByRole('button', { name: 'Mini-roundabout' }).click()],
  ['steered by hand', (page) => page.getByRole('button', { name: 'Steer by hand' }).click()],
];

describe('every state of the swing lessons', () => {
  it('is free of faults at three widths, by day and by night', { timeout: 240_000 }, () =>
    walkStates(watched, STATES),
  );
});
