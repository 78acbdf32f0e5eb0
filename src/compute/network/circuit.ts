import { InputError, SolveError } from '../errors.ts';
import { behaviourDevice } from './behaviour-device.ts';
import { checkElement } from './check-element.ts';
import type { Device } from './device.ts';
import { diodeDevice } from './diode-device.ts';
import { GROUND } from './elements.ts';
import type { Element } from './elements.ts';
import { heaterDevice } from './heater-device.ts';
import { loadDevice } from './load-device.ts';
import { NodeEquations } from './node-equations.ts';
import { capacitorDevice, currentDevice, dcDevice, inductorDevice, resistorDevice } from './passive-devices.ts';
import { regulatorDevice } from './regulator-device.ts';
import { sineDevice } from './sine-device.ts';
import { switchDevice } from './switch-device.ts';

/** More unknowns than this are refused: equations are dense, and the circuits of an amplifier's rail are small. */
export const MAX_UNKNOWNS = 120;

function makeDevice(element: Element, ends: readonly [number, number], hertz: number, placeOf: (node: string) => number): Device {
  switch (element.kind) {
    case 'resistor':
      return resistorDevice(element, ends);
    case 'capacitor':
      return capacitorDevice(element, ends);
    case 'inductor':
      return inductorDevice(element, ends);
    case 'sine':
      return sineDevice(element, ends, hertz);
    case 'dc':
      return dcDevice(element, ends);
    case 'current':
      return currentDevice(element, ends);
    case 'diode':
      return diodeDevice(element, ends);
    case 'switch':
      return switchDevice(element, ends);
    case 'load':
      return loadDevice(element, ends);
    case 'regulator':
      return regulatorDevice(element, [ends[0], ends[1], placeOf(element.reference)]);
    case 'heater':
      return heaterDevice(element, ends);
    case 'behaviour':
      return behaviourDevice(element, ends);
  }
}

/** A circuit ready to be solved: its nodes and branches numbered, its elements made into devices. */
export interface Circuit {
  readonly nodes: readonly string[];
  readonly devices: readonly Device[];
  readonly equations: NodeEquations;
  readonly initialStates: Float64Array;
  /** Nodes that each hold up a floating part; see `findPins`. */
  pins: readonly number[];
}

/**
 * One node of every part that nothing joins to ground. Such a part has no level of its own; its first-named node is
 * held at zero through 1 Ω, which carries nothing, since what flows in must flow out through the same node.
 */
export function findPins(nodeCount: number, devices: readonly Device[]): readonly number[] {
  const leader = Array.from({ length: nodeCount + 1 }, (_, i) => i);
  const find = (start: number): number => {
    let i = start;
    while (leader[i] !== i) i = leader[i] = leader[leader[i] as number] as number;
    return i;
  };
  for (const device of devices) if (device.connects()) leader[find(device.first)] = find(device.second);
  const held = new Set([find(0)]);
  const pins: number[] = [];
  for (let i = 1; i <= nodeCount; i += 1) {
    if (held.has(find(i))) continue;
    held.add(find(i));
    pins.push(i);
  }
  return pins;
}

/** Numbers and checks a circuit. Throws `InputError` for a bad element, `SolveError` 'too-large' beyond the limits. */
export function makeCircuit(elements: readonly Element[], hertz: number): Circuit {
  if (!Array.isArray(elements) || elements.length === 0) {
    throw new InputError('elements', elements, { expected: 'at least one element' });
  }
  const names = new Set<string>();
  const places = new Map([[GROUND, 0]]);
  for (const element of elements) {
    checkElement(element);
    if (names.has(element.name)) throw new InputError('name', element.name, { expected: 'a different name for each element' });
    names.add(element.name);
    const named = element.kind === 'regulator' ? [...element.between, element.reference] : element.between;
    for (const node of named) if (!places.has(node)) places.set(node, places.size);
  }
  const nodes = [...places.keys()].slice(1);
  const devices = elements.map((element) => {
    const [first, second] = element.between;
    const placeOf = (node: string): number => places.get(node) as number;
    return makeDevice(element, [placeOf(first), placeOf(second)], hertz, placeOf);
  });
  let unknowns = nodes.length;
  const initial: number[] = [];
  for (const device of devices) {
    if (device.needsBranch === true) device.branch = ++unknowns;
    if (device.initialStates) {
      device.state = initial.length;
      initial.push(...device.initialStates);
    }
  }
  if (unknowns > MAX_UNKNOWNS) {
    throw new SolveError('too-large', `The circuit has ${unknowns} unknowns; ${MAX_UNKNOWNS} are the limit.`);
  }
  return {
    nodes,
    devices,
    equations: new NodeEquations(unknowns, initial.length),
    initialStates: Float64Array.from(initial),
    pins: findPins(nodes.length, devices),
  };
}
