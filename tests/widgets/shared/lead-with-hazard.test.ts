import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/compute/findings.ts';
import { leadWithHazard } from '../../../src/widgets/shared/lead-with-hazard.ts';

const finding = (level: Finding['level'], what: string): Finding => ({ rule: 'r', level, what, numbers: [], why: '', todo: '', restsOn: [], source: { id: 'solved' } });

describe('a summary', () => {
  it('stands as it is without a hazard', () => {
    expect(leadWithHazard([finding('outside', 'The wire is thin.')], 'it drops 3 mV')).toBe('it drops 3 mV');
  });

  it('names the hazard first, and counts the others', () => {
    const hazards = [finding('hazard', 'The coil is bare.'), finding('within', 'All is well.'), finding('hazard', 'The barrier fails.')];
    expect(leadWithHazard(hazards.slice(0, 2), 'pulls in')).toBe('the coil is bare. Besides: pulls in');
    expect(leadWithHazard(hazards, 'pulls in')).toBe('the coil is bare, and another hazard below. Besides: pulls in');
    expect(leadWithHazard([...hazards, finding('hazard', 'Third.')], 'pulls in')).toContain('and 2 more hazards below');
  });
});
