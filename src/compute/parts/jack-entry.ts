import { requireNumber } from '../errors.ts';

/** What a contact of a jack passes while plug or switch joins it to the sleeve. */
export interface JoinedContact {
  readonly amps: number;
  /** In the resistor at the jack. */
  readonly entryWatts: number;
  /** Share of the volts that is left across what the contact feeds: a coil, a lamp. */
  readonly share: number;
}

/**
 * A contact joined to the sleeve: by the switch, for a moment as the plug slides in, or for good by a plug of fewer
 * poles. Ohm's law through what the contact feeds (`loadOhms`, 0 for the bare rail), the resistor at the jack and the
 * cable there and back, up to the most that the supply gives (`limitAmps`). Volts 0–1000; ohms 0–100 MΩ each.
 */
export function joinedContact(options: { readonly volts: number; readonly loadOhms: number; readonly entryOhms: number; readonly cableOhms: number; readonly limitAmps: number }): JoinedContact {
  const limit = requireNumber('limitAmps', options.limitAmps, { min: 0, max: 1e5 });
  const volts = requireNumber('volts', options.volts, { min: 0, max: 1000 });
  const [load, entry, cable] = (['loadOhms', 'entryOhms', 'cableOhms'] as const).map((name) => requireNumber(name, options[name], { min: 0, max: 1e8 })) as [number, number, number];
  const ohms = load + entry + cable;
  const amps = ohms === 0 ? limit : Math.min(limit, volts / ohms);
  return { amps, entryWatts: amps * amps * entry, share: volts === 0 ? 0 : (amps * load) / volts };
}

/** How fast a logic input behind a jack follows its switch. */
export interface EntryTimes {
  /** From the switch opening until the input passes its threshold: pull-up into the capacitor and the cable. */
  readonly riseSeconds: number;
  /** From the switch closing: the capacitor through the resistor at the jack and the cable. */
  readonly fallSeconds: number;
  /** Above this the resistor and the capacitor keep out what the cable picks up; none without a capacitor. */
  readonly cornerHertz?: number;
  /** Where the input rests while the switch is closed, over the rail. */
  readonly lowRatio: number;
}

/**
 * A pull-up to the rail, a resistor from the input to the jack, a capacitor from the input to the rail's negative, and a
 * cable with a switch at its end. Each time is that of one capacitor through one resistance (the cable's capacitance is
 * counted with the input's), up or down to half of the rail's volts, a usual threshold. Exact to a few per cent while the
 * resistor at the jack is a tenth of the pull-up or less. Ohms 1–100 MΩ (resistor and cable from 0), farads 0–1 mF.
 */
export function entryTimes(options: {
  readonly pullUpOhms: number;
  readonly entryOhms: number;
  readonly cableOhms: number;
  readonly entryFarads: number;
  readonly cableFarads: number;
}): EntryTimes {
  const pullUp = requireNumber('pullUpOhms', options.pullUpOhms, { min: 1, max: 1e8 });
  const entry = requireNumber('entryOhms', options.entryOhms, { min: 0, max: 1e8 });
  const cable = requireNumber('cableOhms', options.cableOhms, { min: 0, max: 1e8 });
  const entryFarads = requireNumber('entryFarads', options.entryFarads, { min: 0, max: 1e-3 });
  const farads = entryFarads + requireNumber('cableFarads', options.cableFarads, { min: 0, max: 1e-3 });
  const threshold = 0.5;
  const low = (entry + cable) / (pullUp + entry + cable);
  const through = ((entry + cable) * pullUp) / (pullUp + entry + cable);
  return {
    riseSeconds: pullUp * farads * Math.log((1 - low) / (1 - threshold)),
    fallSeconds: low < threshold ? through * entryFarads * Math.log((1 - low) / (threshold - low)) : Infinity,
    ...(entry > 0 && entryFarads > 0 ? { cornerHertz: 1 / (2 * Math.PI * entry * entryFarads) } : {}),
    lowRatio: low,
  };
}
