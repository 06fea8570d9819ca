import fc from 'fast-check';
import { expect, it } from 'vitest';
import { folderName } from '../../../geo/handover/folder-name.ts';

it('a folder is called as the drive and the vehicle are, without what some file system would not take', () => {
  expect(folderName(['A1/M1: north?', 'Van "Otter"'])).toBe('A1 M1 north, Van Otter');
  expect(folderName(['../../etc', 'x'])).toBe('etc, x');
  expect(folderName(['con.', ''])).toBe('_con');
  expect(folderName(['LPT1.gpx'])).toBe('_LPT1.gpx');
  expect(folderName(['Tail. ', '  '])).toBe('Tail');
  expect(folderName(['\u202Egnp.exe\u202C', 'b\u0000\nc'])).toBe('gnp.exe, b c');
  expect(folderName(['???', ''])).toBe('unnamed');
  expect(folderName(['Łódź → Ústí', 'מסע'])).toBe('Łódź → Ústí, מסע');
});

it('two folders are never the same to a system that tells no letter case apart', () => {
  expect(folderName(['North', 'Van'], ['north, van', 'NORTH, VAN (2)'])).toBe('North, Van (3)');
});

it('any names make one that every file system takes', () => {
  fc.assert(
    fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 200 }), { maxLength: 3 }), (names) => {
      const name = folderName(names);
      expect(name).toMatch(/^[^<>:"/\\|?*\p{C}]+$/u);
      expect(name).not.toMatch(/^[\s.]|[\s.]$/u);
      expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(130);
    }),
  );
});
