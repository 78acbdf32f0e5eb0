import { describe, expect, it } from 'vitest';
import { outsideGear, type OutsideGearView } from '../../../src/widgets/outside-gear/state.ts';
import { evaluate, open } from '../../../src/widgets/shared/evaluate.ts';

const opened = open(outsideGear);

function solved(changes: Readonly<Record<string, string>>): OutsideGearView {
  const after = evaluate(outsideGear, { ...opened.raw, ...changes }, opened);
  expect(after.problem ?? Object.entries(after.errors).flat().join(': ')).toBe('');
  return after.view;
}
const finding = (view: OutsideGearView, rule: string) => view.findings.find((each) => each.rule === rule);
const stands = (view: OutsideGearView, contact: string, moment: string) => view.contacts.find((each) => each.contact === contact && each.moment === moment);

describe('the worked case: a bonded converter, a coil on the tip, a switcher with its own earth', () => {
  const { view } = opened;

  it('stands within what may be touched, and hums at worst', () => {
    expect(view.level).toBe('marginal');
    expect(finding(view, 'earth-loop')).toMatchObject({ level: 'marginal', harm: 'noise' });
    expect(stands(view, 'tip', 'unplugged')?.dcVolts).toBeCloseTo(12, 1);
    expect(stands(view, 'tip', 'pressed')?.dcVolts).toBeLessThan(0.5);
    expect(view.contacts.every(({ level }) => level === 'within')).toBe(true);
  });

  it('passes by hand: 12 V over coil, resistor and cable; the two earths over the loop', () => {
    expect(view.corners.find(({ name }) => name.startsWith('through the switch'))?.value).toBeCloseTo(12 / 370.5, 5);
    // 50 mV round 0.25 Ω of sleeve, 0.3 Ω of earth and 1 mΩ of bond.
    expect(view.sleeveAmps).toBeCloseTo(0.05 / 0.551, 4);
    expect(view.sleeveIsFault).toBe(false);
  });

  it('says what a hand would pass were the bond lost, against three standards', () => {
    expect(view.touch?.when).toBe('bond-lost');
    // 0.3 mA at 230 V 50 Hz, read as twice the capacitance from half of the mains; at 264 V a hand of 2 kΩ at most changes little.
    expect(Math.abs((view.touch?.rmsAmps ?? 0) / (0.3e-3 * (264 / 230)) - 1)).toBeLessThan(0.01);
    expect(Math.abs((view.touch?.peakAmps ?? 0) / (view.touch?.rmsAmps ?? 1) / Math.SQRT2 - 1)).toBeLessThan(0.01);
    expect(view.touch?.rows.map(({ level }) => level)).toEqual(['outside', 'marginal', 'marginal']);
    expect(new Set(view.touch?.rows.map(({ source }) => source.id))).toEqual(new Set(['iec-60950-1', 'iec-62368-1', 'iec-60065']));
  });
});

describe('hazards at a jack', () => {
  it('a sleeve that completes a second ground', () => {
    const view = solved({ feed: 'heater', windingGround: 'centre-tap', railGround: 'floating' });
    expect(view.level).toBe('hazard');
    expect(finding(view, 'outside-sleeve-grounds')).toMatchObject({ level: 'hazard' });
    expect(view.sleeveIsFault).toBe(true);
    expect(view.sleeveAmps).toBeGreaterThan(3);
    expect(view.summary).toMatch(/^the circuit is grounded at 2 points/);
  });

  it('a converter left floating: half of the mains on the jack', () => {
    const view = solved({ railGround: 'floating', gear: 'footswitch' });
    expect(finding(view, 'jack-voltage')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(view.touch?.when).toBe('now');
    expect(stands(view, 'tip', 'plugged')?.acVolts).toBeCloseTo(132, 0);
    expect(view.corners[0]).toMatchObject({ of: 'AC', level: 'hazard' });
  });

  it('what a box’s own earth held, once it is pulled out', () => {
    const view = solved({ railGround: 'floating' });
    expect(view.findings.some(({ what, level }) => level === 'hazard' && what.startsWith('With nothing plugged in: '))).toBe(true);
  });

  it('the rail’s positive on a sleeve that a hand can reach', () => {
    expect(finding(solved({ sleeve: 'rail-positive' }), 'live-shield')).toMatchObject({ level: 'hazard' });
  });

  it('a rail lifted with its heaters', () => {
    const view = solved({ feed: 'heater', windingGround: 'elevated', railGround: 'floating', gear: 'footswitch', liftVolts: '60 V' });
    expect(finding(view, 'elevated-rail')).toMatchObject({ level: 'hazard', harm: 'shock' });
    expect(finding(view, 'jack-voltage')).toMatchObject({ level: 'hazard' });
  });

  it('a chassis without earth: nothing above it is called within', () => {
    const view = solved({ ampEarth: 'absent' });
    expect(view.level).toBe('hazard');
    expect(view.contacts.every(({ level }) => level === 'not assessed')).toBe(true);
  });
});

describe('contacts joined to the sleeve', () => {
  it('a bare rail on the tip shorts the supply as the plug slides in', () => {
    const view = solved({ tip: 'rail-positive', entryOhms: '0' });
    expect(finding(view, 'plug-in-tip')).toMatchObject({ level: 'outside', harm: 'damage' });
    expect(view.corners.find(({ name }) => name.startsWith('through the switch'))?.value).toBe(0.46);
  });

  it('a resistor at the jack bears it for good, or does not', () => {
    // 12 V over 1 kΩ is 144 mW: within half of 0.5 W, past half of 0.25 W; over 470 Ω it is 306 mW, past all of 0.25 W.
    const level = (entryOhms: string, entryWatts: string) => finding(solved({ tip: 'rail-positive', entryOhms, entryWatts }), 'plug-in-tip')?.level;
    expect(level('1k', '0.5 W')).toBe('within');
    expect(level('1k', '0.25 W')).toBe('marginal');
    expect(level('470', '0.25 W')).toBe('outside');
  });

  it('an input follows its switch by the sums of resistor and capacitor', () => {
    const view = solved({ tip: 'logic', tipOhms: '10k', entryOhms: '1k', entryFarads: '1 µF', cableMetres: '10 m' });
    const numbers = Object.fromEntries(finding(view, 'entry-filter')?.numbers.map(({ name, value }) => [name, value]) ?? []);
    // From 1/11 of the rail up to half of it through 10 kΩ into 1 µF and 1 nF; corner 1/(2π · 1 kΩ · 1 µF).
    expect(numbers['rise']).toBeCloseTo(1e4 * 1.001e-6 * Math.log((1 - 1000.5 / 11000.5) / 0.5), 5);
    expect(numbers['corner']).toBeCloseTo(159.2, 0);
    expect(finding(view, 'entry-filter')?.level).toBe('within');
    expect(finding(solved({ tip: 'logic', tipOhms: '10k', entryOhms: '8k2' }), 'entry-filter')?.level).toBe('outside');
    expect(finding(solved({ tip: 'logic', tipOhms: '100k', entryOhms: '1k', entryFarads: '1 µF' }), 'entry-filter')?.level).toBe('marginal');
  });

  it('a coil behind too much resistance does not get its volts', () => {
    expect(finding(solved({ entryOhms: '100' }), 'switched-tip')?.level).toBe('outside');
    expect(finding(solved({ entryOhms: '47' }), 'switched-tip')?.level).toBe('marginal');
  });

  it('a ring is held to the same', () => {
    const view = solved({ ring: 'led', ringOhms: '2k2' });
    expect(finding(view, 'plug-in-ring')?.level).toBe('within');
    expect(view.contacts.some(({ contact }) => contact === 'ring')).toBe(true);
  });
});

describe('an optocoupler in the amp', () => {
  it('keeps the rail off the jack and is sized at its worst: least drive, least ratio, half of it left', () => {
    const view = solved({ gear: 'optocoupler' });
    expect(view.contacts).toEqual([]);
    expect(view.sleeveAmps).toBeUndefined();
    // 8.1 V less 1.4 V over the preferred resistor for 5 mA at 9 V (1.5 kΩ), times 1.3, times a half.
    expect(view.corners[0]?.value).toBeCloseTo(((8.1 - 1.4) / 1500) * 1.3 * 0.5, 5);
    expect(finding(view, 'optocoupler-barrier')).toMatchObject({ level: 'within' });
  });

  it('is not called a barrier for a rail that rests on it alone', () => {
    const view = solved({ gear: 'optocoupler', railGround: 'floating' });
    expect(finding(view, 'optocoupler-barrier')).toMatchObject({ level: 'not assessed' });
    expect(view.level).not.toBe('within');
  });

  it('fails when it must sink more than an old one is sure of', () => {
    expect(finding(solved({ gear: 'optocoupler', pullOhms: '1k' }), 'optocoupler-sink')?.level).toBe('outside');
  });
});

describe('where it goes on', () => {
  it('hands the coil on with all that is in series with it, and the grounds', () => {
    const paths = opened.view.handOn.map(({ path }) => decodeURIComponent(path));
    expect(paths[0]).toMatch(/coil-check\/.*seriesOhms\.10\.5/);
    expect(paths[1]).toMatch(/ground-check\/.*jack\.negative.*groundGear\.chassis/);
  });
});
