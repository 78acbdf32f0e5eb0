import { describe, expect, it } from 'vitest';
import { checkCoilPullIn, checkCoilVolts } from '../../../src/compute/findings/coil.ts';
import { checkFuseBreaking, checkFuseFault, checkFuseInrush, checkFuseRunning } from '../../../src/compute/findings/fuse.ts';
import { checkHeaterVolts } from '../../../src/compute/findings/heater.ts';
import { checkCoilToContact, checkContactLoad, checkContactVolts } from '../../../src/compute/findings/contacts.ts';
import { checkDiodeCurrent, checkReverseVolts } from '../../../src/compute/findings/diode.ts';
import { checkLedCurrent, checkLedLit, checkLedReverse, checkOptocouplerDrive, checkOptocouplerSink, checkResistorWatts } from '../../../src/compute/findings/indicator.ts';
import { checkDriverVolts, checkRelease } from '../../../src/compute/findings/release.ts';
import { checkCapacitorLife, checkCapacitorPolarity, checkCapacitorVolts, checkReservoirValley, checkRippleCurrent } from '../../../src/compute/findings/reservoir.ts';
import { checkJunction, checkRegulatorInput, checkRegulatorValley } from '../../../src/compute/findings/regulator.ts';
import { checkSharedGround, checkWireCurrent, checkWireDrop, checkWireFuse, checkWireTemperature } from '../../../src/compute/findings/wire.ts';
import { checkOhmmeter, checkReadingsTell, checkWindingPurpose, noteWindingInsulation } from '../../../src/compute/findings/winding-estimate.ts';
import { checkSpareCurrent, checkWindingCurrent } from '../../../src/compute/findings/winding.ts';
import { fuseStandard } from '../../../src/compute/parts/fuse.ts';
import type { Finding, Level } from '../../../src/compute/findings.ts';

const context = { corner: 'low mains, everything on', restsOn: ['rated', 'typical'] } as const;
const coil = { coil: 'The coil', ratedVolts: 12, coilCelsius: 80 };
const junction = { part: 'The regulator', watts: 2, airCelsius: 55 };
const heater = { heater: 'The heaters', ratedVolts: 12.6 };
const iec = { standard: fuseStandard('iec-sheet-5'), ratedAmps: 1 };
const ul = { standard: fuseStandard('ul-248-14'), ratedAmps: 1 };
const EPS = 1e-6;

const driver = { suppression: { kind: 'diode' }, switchedBy: 'transistor', ratedVolts: 50 } as const;

/** Each rule just inside and just outside each of its limits. */
const CASES: readonly [string, Level, Finding][] = [
  ['valley, wanted margin met', 'within', checkRegulatorValley({ ...context, valleyVolts: 8.05 + EPS, outputMaxVolts: 5.25, dropoutVolts: 2.5 })],
  ['valley, wanted margin missed', 'marginal', checkRegulatorValley({ ...context, valleyVolts: 8.05 - EPS, outputMaxVolts: 5.25, dropoutVolts: 2.5 })],
  ['valley, just held', 'marginal', checkRegulatorValley({ ...context, valleyVolts: 7.75 + EPS, outputMaxVolts: 5.25, dropoutVolts: 2.5 })],
  ['valley, just lost', 'outside', checkRegulatorValley({ ...context, valleyVolts: 7.75 - EPS, outputMaxVolts: 5.25, dropoutVolts: 2.5 })],
  ['junction at the aim', 'within', checkJunction({ ...context, ...junction, junctionCelsius: 110 - EPS })],
  ['junction over the aim', 'marginal', checkJunction({ ...context, ...junction, junctionCelsius: 110 + EPS })],
  ['junction under the limit', 'marginal', checkJunction({ ...context, ...junction, junctionCelsius: 125 - EPS })],
  ['junction over the limit', 'outside', checkJunction({ ...context, ...junction, junctionCelsius: 125 + EPS })],
  ['input with room', 'within', checkRegulatorInput({ ...context, inputMaxVolts: 31.5 - EPS, ratedMaxVolts: 35 })],
  ['input close', 'marginal', checkRegulatorInput({ ...context, inputMaxVolts: 35 - EPS, ratedMaxVolts: 35 })],
  ['input beyond', 'outside', checkRegulatorInput({ ...context, inputMaxVolts: 35 + EPS, ratedMaxVolts: 35 })],
  ['capacitor four fifths full', 'within', checkCapacitorVolts({ ...context, maxVolts: 20 - EPS, ratedVolts: 25 })],
  ['capacitor nearly full', 'marginal', checkCapacitorVolts({ ...context, maxVolts: 25 - EPS, ratedVolts: 25 })],
  ['capacitor over its rating', 'outside', checkCapacitorVolts({ ...context, maxVolts: 25 + EPS, ratedVolts: 25 })],
  ['capacitor up to its surge rating', 'outside', checkCapacitorVolts({ ...context, maxVolts: 28.75 - EPS, ratedVolts: 25 })],
  ['capacitor over its surge rating', 'hazard', checkCapacitorVolts({ ...context, maxVolts: 28.75 + EPS, ratedVolts: 25 })],
  ['ripple within four fifths', 'within', checkRippleCurrent({ ...context, rmsAmps: 0.8 - EPS, limitAmps: 1 })],
  ['ripple within the limit', 'marginal', checkRippleCurrent({ ...context, rmsAmps: 1 - EPS, limitAmps: 1 })],
  ['ripple over the limit', 'outside', checkRippleCurrent({ ...context, rmsAmps: 1 + EPS, limitAmps: 1 })],
  ['winding within nine tenths', 'within', checkWindingCurrent({ ...context, rmsAmps: 1.8 - EPS, ratedAmps: 2 })],
  ['winding within its rating', 'marginal', checkWindingCurrent({ ...context, rmsAmps: 2 - EPS, ratedAmps: 2 })],
  ['winding over its rating', 'outside', checkWindingCurrent({ ...context, rmsAmps: 2 + EPS, ratedAmps: 2 })],
  ['winding a third too hot', 'hazard', checkWindingCurrent({ ...context, rmsAmps: 2.3 + EPS, ratedAmps: 2 })],
  ['winding nobody has rated', 'not assessed', checkWindingCurrent({ ...context, rmsAmps: 0.01 })],
  ['spare current at hand', 'within', checkSpareCurrent({ ...context, carriedRmsAmps: 3, ratedAmps: 5, wantedRmsAmps: 3.6 - EPS })],
  ['spare current tight', 'marginal', checkSpareCurrent({ ...context, carriedRmsAmps: 3, ratedAmps: 5, wantedRmsAmps: 4 - EPS })],
  ['spare current lacking', 'outside', checkSpareCurrent({ ...context, carriedRmsAmps: 3, ratedAmps: 5, wantedRmsAmps: 4 + EPS })],
  ['spare current unknown', 'not assessed', checkSpareCurrent({ ...context, carriedRmsAmps: 3, wantedRmsAmps: 0.1 })],
  ['reverse volts halved', 'within', checkReverseVolts({ ...context, reverseVolts: 25 - EPS, ratedVolts: 50 })],
  ['reverse volts under the rating', 'marginal', checkReverseVolts({ ...context, reverseVolts: 50 - EPS, ratedVolts: 50 })],
  ['reverse volts over the rating', 'outside', checkReverseVolts({ ...context, reverseVolts: 50 + EPS, ratedVolts: 50 })],
  ['diode with room', 'within', checkDiodeCurrent({ ...context, meanAmps: 0.64 - EPS, ratedMeanAmps: 0.8 })],
  ['diode close', 'marginal', checkDiodeCurrent({ ...context, meanAmps: 0.8 - EPS, ratedMeanAmps: 0.8 })],
  ['diode beyond', 'outside', checkDiodeCurrent({ ...context, meanAmps: 0.8 + EPS, ratedMeanAmps: 0.8 })],
  ['pull-in with room', 'within', checkCoilPullIn({ ...context, ...coil, operateVolts: 10, coilMinVolts: 10.3 + EPS })],
  ['pull-in tight', 'marginal', checkCoilPullIn({ ...context, ...coil, operateVolts: 10, coilMinVolts: 10.3 - EPS })],
  ['pull-in just held', 'marginal', checkCoilPullIn({ ...context, ...coil, operateVolts: 10, coilMinVolts: 10 + EPS })],
  ['pull-in just lost', 'outside', checkCoilPullIn({ ...context, ...coil, operateVolts: 10, coilMinVolts: 10 - EPS })],
  ['coil volts with room', 'within', checkCoilVolts({ ...context, coil: 'The coil', coilMaxVolts: 14.25 - EPS, limitVolts: 15 })],
  ['coil volts close', 'marginal', checkCoilVolts({ ...context, coil: 'The coil', coilMaxVolts: 15 - EPS, limitVolts: 15 })],
  ['coil volts beyond', 'outside', checkCoilVolts({ ...context, coil: 'The coil', coilMaxVolts: 15 + EPS, limitVolts: 15 })],
  ['LED with room', 'within', checkLedCurrent({ ...context, amps: 0.016, ratedAmps: 0.02 })],
  ['LED at its rating', 'marginal', checkLedCurrent({ ...context, amps: 0.02, ratedAmps: 0.02 })],
  ['LED beyond', 'outside', checkLedCurrent({ ...context, amps: 0.02 + EPS, ratedAmps: 0.02 })],
  ['LED lit', 'within', checkLedLit({ ...context, leastAmps: 0.005, usualAmps: 0.01 })],
  ['LED dim', 'marginal', checkLedLit({ ...context, leastAmps: 0.005 - EPS, usualAmps: 0.01 })],
  ['LED dark', 'outside', checkLedLit({ ...context, leastAmps: 0, usualAmps: 0.01 })],
  ['LED little reversed', 'within', checkLedReverse({ ...context, reverseVolts: 4, limitVolts: 5 })],
  ['LED reversed to its limit', 'marginal', checkLedReverse({ ...context, reverseVolts: 5, limitVolts: 5 })],
  ['LED reversed beyond', 'outside', checkLedReverse({ ...context, reverseVolts: 5 + EPS, limitVolts: 5 })],
  ['resistor at half', 'within', checkResistorWatts({ ...context, watts: 0.5, ratedWatts: 1, allowedWatts: 1 })],
  ['resistor warm', 'marginal', checkResistorWatts({ ...context, watts: 1, ratedWatts: 1, allowedWatts: 1 })],
  ['resistor beyond', 'hazard', checkResistorWatts({ ...context, watts: 1 + EPS, ratedWatts: 1, allowedWatts: 1 })],
  ['coupler with room', 'within', checkOptocouplerSink({ ...context, loadAmps: 0.8e-3, collectorAmps: 1e-3 })],
  ['coupler tight', 'marginal', checkOptocouplerSink({ ...context, loadAmps: 1e-3, collectorAmps: 1e-3 })],
  ['coupler too weak', 'outside', checkOptocouplerSink({ ...context, loadAmps: 1e-3 + EPS, collectorAmps: 1e-3 })],
  ['coupler driven as stated', 'within', checkOptocouplerDrive({ ...context, leastAmps: 0.0025, testAmps: 0.005 })],
  ['coupler driven less', 'marginal', checkOptocouplerDrive({ ...context, leastAmps: 0.0025 - EPS, testAmps: 0.005 })],
  ['winding of a rectifier valve', 'hazard', checkWindingPurpose({ ...context, purpose: 'rectifier-valve', openCircuitVolts: 12 })],
  ['winding near 5 V, unnamed', 'hazard', checkWindingPurpose({ ...context, purpose: 'unknown', openCircuitVolts: 6 })],
  ['winding off 5 V, unnamed', 'not assessed', checkWindingPurpose({ ...context, purpose: 'unknown', openCircuitVolts: 6 + EPS })],
  ['winding that is named', 'within', checkWindingPurpose({ ...context, purpose: 'spare', openCircuitVolts: 5 })],
  ['readings that tell', 'within', checkReadingsTell({ ...context, ohms: { value: 1, least: 0.9, most: 1.1 }, telling: true })],
  ['readings that do not', 'not assessed', checkReadingsTell({ ...context, ohms: { value: 1, least: 0, most: 2 }, telling: false })],
  ['ohmmeter on a dead winding', 'within', checkOhmmeter({ ...context, secondaryOhms: 0.2, ohms: 0.4, provedDead: true })],
  ['ohmmeter on a winding not proved dead', 'hazard', checkOhmmeter({ ...context, secondaryOhms: 0.2, ohms: 0.4, provedDead: false })],
  ['insulation by volts', 'not assessed', noteWindingInsulation({ ...context, openCircuitVolts: 12 })],
  ['valley clear', 'within', checkReservoirValley({ ...context, valleyVolts: 15.4 + EPS, floorVolts: 15.1 })],
  ['valley close', 'marginal', checkReservoirValley({ ...context, valleyVolts: 15.1, floorVolts: 15.1 })],
  ['valley below', 'outside', checkReservoirValley({ ...context, valleyVolts: 15.1 - EPS, floorVolts: 15.1 })],
  ['life as wanted', 'within', checkCapacitorLife({ ...context, hours: 10_000, wantedHours: 10_000, coreCelsius: 60 })],
  ['half the life wanted', 'marginal', checkCapacitorLife({ ...context, hours: 5000, wantedHours: 10_000, coreCelsius: 60 })],
  ['less than half the life', 'outside', checkCapacitorLife({ ...context, hours: 5000 - EPS, wantedHours: 10_000, coreCelsius: 60 })],
  ['capacitor the right way round', 'within', checkCapacitorPolarity({ ...context, reversed: false, volts: 20 })],
  ['capacitor reversed by little', 'outside', checkCapacitorPolarity({ ...context, reversed: true, volts: 1.5 })],
  ['capacitor reversed', 'hazard', checkCapacitorPolarity({ ...context, reversed: true, volts: 1.5 + EPS })],
  ['wire with room', 'within', checkWireCurrent({ ...context, rmsAmps: 0.8, capacityAmps: 1 })],
  ['wire at its figure', 'marginal', checkWireCurrent({ ...context, rmsAmps: 1, capacityAmps: 1 })],
  ['wire beyond', 'outside', checkWireCurrent({ ...context, rmsAmps: 1 + EPS, capacityAmps: 1 })],
  ['drop small', 'within', checkWireDrop({ ...context, dropVolts: 0.08, wantedVolts: 0.1 })],
  ['drop as wanted', 'marginal', checkWireDrop({ ...context, dropVolts: 0.1, wantedVolts: 0.1 })],
  ['drop beyond', 'outside', checkWireDrop({ ...context, dropVolts: 0.1 + EPS, wantedVolts: 0.1 })],
  ['copper cool', 'within', checkWireTemperature({ ...context, celsius: 65, limitCelsius: 80, airCelsius: 55 })],
  ['copper near its insulation', 'marginal', checkWireTemperature({ ...context, celsius: 80, limitCelsius: 80, airCelsius: 55 })],
  ['copper over its insulation', 'outside', checkWireTemperature({ ...context, celsius: 130, limitCelsius: 80, airCelsius: 55 })],
  ['copper that scorches', 'hazard', checkWireTemperature({ ...context, celsius: 130 + EPS, limitCelsius: 80, airCelsius: 55 })],
  ['fuse that the wire outlasts', 'within', checkWireFuse({ ...context, fuseAmps: 2, capacityAmps: 3, shortAmps: 30 })],
  ['fuse of the wire’s own figure', 'marginal', checkWireFuse({ ...context, fuseAmps: 2, capacityAmps: 2, shortAmps: 30 })],
  ['fuse that outlasts the wire', 'hazard', checkWireFuse({ ...context, fuseAmps: 2, capacityAmps: 2 - EPS, shortAmps: 30 })],
  ['no fuse and a stiff winding', 'hazard', checkWireFuse({ ...context, capacityAmps: 3, shortAmps: 30 })],
  ['no fuse and a winding that cannot', 'within', checkWireFuse({ ...context, capacityAmps: 3, shortAmps: 2 })],
  ['shared ground quiet', 'within', checkSharedGround({ ...context, peakVolts: 5e-5, toleratedVolts: 1e-4, metres: 0.1 })],
  ['shared ground at its limit', 'marginal', checkSharedGround({ ...context, peakVolts: 1e-4, toleratedVolts: 1e-4, metres: 0.1 })],
  ['shared ground loud', 'outside', checkSharedGround({ ...context, peakVolts: 2e-4, toleratedVolts: 1e-4, metres: 0.1 })],
  ['let go in time', 'within', checkRelease({ ...context, suppression: { kind: 'diode' }, longestSeconds: 0.008 - EPS, wantedSeconds: 0.01 })],
  ['let go just in time', 'marginal', checkRelease({ ...context, suppression: { kind: 'diode' }, longestSeconds: 0.01, wantedSeconds: 0.01 })],
  ['let go late', 'outside', checkRelease({ ...context, suppression: { kind: 'diode' }, longestSeconds: 0.01 + EPS, wantedSeconds: 0.01 })],
  ['driver with room', 'within', checkDriverVolts({ ...context, ...driver, switchVolts: 45 - EPS })],
  ['driver close', 'marginal', checkDriverVolts({ ...context, ...driver, switchVolts: 50 })],
  ['driver beyond', 'outside', checkDriverVolts({ ...context, ...driver, switchVolts: 50 + EPS })],
  ['transistor with a bare coil', 'hazard', checkDriverVolts({ ...context, ...driver, suppression: { kind: 'none' }, switchVolts: 1000 })],
  ['switch with a bare coil', 'outside', checkDriverVolts({ ...context, ...driver, switchedBy: 'contact', suppression: { kind: 'none' }, switchVolts: 1000 })],
  ['contacts at little', 'within', checkCoilToContact({ ...context, workingVolts: 60, insulation: { kind: 'unknown' }, railOutside: true })],
  ['contacts at more, unread', 'not assessed', checkCoilToContact({ ...context, workingVolts: 60 + EPS, insulation: { kind: 'unknown' }, railOutside: true })],
  ['contacts at more, tested only', 'outside', checkCoilToContact({ ...context, workingVolts: 300, insulation: { kind: 'test-voltage-only', testVolts: 4000 }, railOutside: false })],
  ['contacts at more, tested only, on a jack', 'hazard', checkCoilToContact({ ...context, workingVolts: 300, insulation: { kind: 'test-voltage-only', testVolts: 4000 }, railOutside: true })],
  ['contacts at their rated barrier', 'within', checkCoilToContact({ ...context, workingVolts: 300, insulation: { kind: 'reinforced', workingVolts: 300 }, railOutside: true })],
  ['contacts over their rated barrier', 'hazard', checkCoilToContact({ ...context, workingVolts: 300 + EPS, insulation: { kind: 'reinforced', workingVolts: 300 }, railOutside: true })],
  ['contacts within four fifths', 'within', checkContactVolts({ ...context, workingVolts: 48, ratedVolts: 60, movedLive: true })],
  ['contacts within their rating', 'marginal', checkContactVolts({ ...context, workingVolts: 60, ratedVolts: 60, movedLive: true })],
  ['contacts over, moved dead', 'outside', checkContactVolts({ ...context, workingVolts: 60 + EPS, ratedVolts: 60, movedLive: false })],
  ['contacts over, moved live', 'hazard', checkContactVolts({ ...context, workingVolts: 60 + EPS, ratedVolts: 60, movedLive: true })],
  ['contacts for signals', 'within', checkContactLoad({ ...context, minLoad: { volts: 5, amps: 0.001 } })],
  ['contacts for power', 'marginal', checkContactLoad({ ...context, minLoad: { volts: 5, amps: 0.1 } })],
  ['heaters low by a twentieth', 'within', checkHeaterVolts({ ...context, ...heater, minVolts: 11.97 + EPS, maxVolts: 12.6 })],
  ['heaters high by a twentieth', 'within', checkHeaterVolts({ ...context, ...heater, minVolts: 12.6, maxVolts: 13.23 - EPS })],
  ['heaters low by more', 'marginal', checkHeaterVolts({ ...context, ...heater, minVolts: 11.97 - EPS, maxVolts: 12.6 })],
  ['heaters high by more than a tenth', 'outside', checkHeaterVolts({ ...context, ...heater, minVolts: 12.6, maxVolts: 13.86 + EPS })],
  ['fuse at nine tenths', 'within', checkFuseRunning({ ...context, ...iec, rmsAmps: 0.9 - EPS })],
  ['fuse at its rating', 'marginal', checkFuseRunning({ ...context, ...iec, rmsAmps: 1 - EPS })],
  ['fuse over its rating', 'outside', checkFuseRunning({ ...context, ...iec, rmsAmps: 1 + EPS })],
  ['UL fuse at three quarters', 'marginal', checkFuseRunning({ ...context, ...ul, rmsAmps: 0.75 - EPS })],
  ['UL fuse over three quarters', 'outside', checkFuseRunning({ ...context, ...ul, rmsAmps: 0.75 + EPS })],
  ['inrush under 29 % of melting', 'within', checkFuseInrush({ ...context, inrushA2s: 0.29 - EPS, meltingA2s: 1 })],
  ['inrush over 29 % of melting', 'marginal', checkFuseInrush({ ...context, inrushA2s: 0.29 + EPS, meltingA2s: 1 })],
  ['inrush over 48 % of melting', 'outside', checkFuseInrush({ ...context, inrushA2s: 0.48 + EPS, meltingA2s: 1 })],
  ['fault ended in time', 'within', checkFuseFault({ ...context, ...iec, faultAmps: 4 })],
  ['fault ended late', 'outside', checkFuseFault({ ...context, ...iec, faultAmps: 2.75 })],
  ['fault just seen', 'outside', checkFuseFault({ ...context, ...iec, faultAmps: 2.1 })],
  ['fault never seen', 'hazard', checkFuseFault({ ...context, ...iec, faultAmps: 2.1 - EPS })],
  ['fault within breaking capacity', 'within', checkFuseBreaking({ ...context, ...ul, prospectiveAmps: 35 })],
  ['fault beyond breaking capacity', 'hazard', checkFuseBreaking({ ...context, ...ul, prospectiveAmps: 35 + EPS })],
];

describe('each rule on either side of each limit', () => {
  it.each(CASES)('%s: %s', (_, level, found) => {
    expect(found.level).toBe(level);
  });

  it.each(CASES)('%s says its numbers, corner, reason and remedy', (_, level, found) => {
    if (level !== 'not assessed') expect(found.what).toMatch(/\d/);
    expect(found.numbers.length).toBeGreaterThan(0);
    expect(found.numbers.every(({ value }) => Number.isFinite(value))).toBe(true);
    expect(found).toMatchObject({ worstCorner: context.corner, restsOn: context.restsOn });
    expect(found.why.length).toBeGreaterThan(20);
    expect(found.todo.length).toBeGreaterThan(5);
    if (level === 'hazard') expect(found.harm).toBeDefined();
    expect(`${found.what} ${found.why} ${found.todo}`).not.toMatch(/\bsafe\b|NaN|undefined/);
  });
});

describe('a check', () => {
  it('takes the source it is told', () => {
    expect(checkReverseVolts({ ...context, source: { id: 'ds-1n5820' }, reverseVolts: 9, ratedVolts: 40 }).source).toEqual({ id: 'ds-1n5820' });
  });

  it('refuses figures that are not numbers', () => {
    expect(() => checkRegulatorValley({ ...context, valleyVolts: NaN, outputMaxVolts: 5, dropoutVolts: 2 })).toThrow(RangeError);
    expect(() => checkWindingCurrent({ ...context, rmsAmps: Infinity })).toThrow(RangeError);
  });
});
