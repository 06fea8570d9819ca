import type { District } from './elements.ts';
import { makeNetwork, type Network, planDrive, type Stop } from './plan.ts';
import { dense, recorded, sparse } from './positions.ts';
import { seededRandom } from './random.ts';
import { type DriveText, writeDrive } from './write-drive.ts';

const YARD: Stop = { x: 1340, y: -300, on: 'Saltpan Road' };
const HIGH_STREET: Stop = { x: -300, y: -60, on: 'High Street' };
/** 13 June 2026, 08:40 UTC. */
const RECORDED_S = 1_781_340_000;

/** Every sample drive by file name, as GPX text. */
export function makeDrives(district: District): Record<string, string> {
  const network = makeNetwork(district);
  return {
    'clear.gpx': writeDrive(clear(network)),
    'barred.gpx': writeDrive(barred(network)),
    'recorded.gpx': writeDrive(recordedDrive(network)),
    'sparse.gpx': writeDrive(sparseDrive(network)),
  };
}

function clear(network: Network): DriveText {
  const stops = [YARD, { x: 5000, y: 1300, on: 'A9910' }, { x: -5580, y: -868, on: 'Pellam Cross' }];
  return {
    name: 'Saltpan Yard to Pellam Cross',
    about: 'Quay Road and the A9910: nothing stands in the way',
    kind: 'track',
    segments: [dense(planDrive(network, stops), seededRandom(101))],
  };
}

function barred(network: Network): DriveText {
  const stops: Stop[] = [
    YARD,
    { x: -60, y: 265, on: 'Castle Street' },
    { x: -120, y: 90, on: 'Tanner Row' },
    HIGH_STREET,
    { x: -440, y: -500, on: 'Station Road' },
    { x: -2650, y: -2300, on: 'Quillet Lane' },
    { x: -3200, y: 1500, on: 'Mossgate Lane' },
    { x: -3420, y: 1900, on: 'Mill Lane' },
    { x: -4100, y: 2640, on: 'Dale Road' },
    { x: -5750, y: 3980, on: 'Dale Road' },
  ];
  return {
    name: 'Saltpan Yard to Thrushcombe the short way',
    about: 'Past the posts in Tanner Row, under Station Arch and over Oxholt Bridge',
    kind: 'track',
    segments: [dense(planDrive(network, stops), seededRandom(102))],
  };
}

function sparseDrive(network: Network): DriveText {
  const stops = [
    YARD,
    { x: 2900, y: -600, on: 'Brackwater Road' },
    { x: 300, y: -3230, on: 'Marsh Road' },
    { x: 540, y: -4250, on: 'Sands Road' },
  ];
  return {
    name: 'Saltpan Yard to Gannet Sands',
    about: 'A route of few points: what lies between them is guessed',
    kind: 'route',
    segments: [sparse(planDrive(network, stops), 950)],
  };
}

function recordedDrive(network: Network): DriveText {
  const stops = [
    { x: 1480, y: 4200, on: 'B9957' },
    { x: 425, y: 1650, on: 'North Road' },
    HIGH_STREET,
    { x: -5580, y: -868, on: 'Pellam Cross' },
  ];
  const fixes = recorded(planDrive(network, stops), seededRandom(103), 4);
  const lost = Math.floor(fixes.length * 0.6);
  return {
    name: 'Larkenfold to Pellam Cross, recorded',
    about: 'A logger’s track with its wandering, and a break where it lost its fix',
    kind: 'track',
    startS: RECORDED_S,
    segments: [fixes.slice(0, lost), fixes.slice(lost + 25)],
  };
}
