import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSampleFleet } from '../../../../main/services/fleet/sample-fleet.ts';
import { presentSample, sampleFiles } from '../../../../main/services/samples.ts';

const files = sampleFiles(resolve(import.meta.dirname, '../../../../sample-routes'));

describe('the sample that comes with the program', () => {
  it('has its first drive and its first vehicle', async () => {
    const { drives, defaultDrive, defaultVehicle } = await presentSample(files);
    expect(drives.map(({ id }) => id)).toContain(defaultDrive);
    const { vehicles, notices } = await readSampleFleet(files.vehicles);
    expect(vehicles.map(({ id }) => id)).toContain(defaultVehicle);
    expect(notices).toEqual([]);
  });
});
