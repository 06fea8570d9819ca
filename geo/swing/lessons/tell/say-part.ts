import type { VehiclePart } from '../read/part.ts';
import type { Fixture, FixtureRole } from '../scene/fixture.ts';

/** "right rear corner", "left side", "rack", "left front wheel": part of the vehicle, without an article. */
export function sayPart(part: VehiclePart): string {
  switch (part.kind) {
    case 'corner':
      return `${part.side} ${part.end} corner`;
    case 'wheel':
      return `${part.side} ${part.end} wheel`;
    case 'side':
      return `${part.side} side`;
    case 'end':
      return part.end === 'front' ? 'front' : 'tail';
    case 'rack':
      return 'rack';
    case 'rack corner':
      return `${part.side} corner of the rack`;
  }
}

/** "the wall", "the post behind the kerb": what stands there, by its role. */
export function sayFixture({ role }: Pick<Fixture, 'role'>): string {
  return sayRole(role);
}

export function sayRole(role: FixtureRole): string {
  return `the ${role}`;
}
