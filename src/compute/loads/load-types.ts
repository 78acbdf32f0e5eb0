/** One kind of thing on the rail, so many of it. Plain JSON in SI units: it travels inside a supply plan. */
export type LoadItem = RelayLoad | LedLoad | HeaterLoad | FixedAmpsLoad | FixedWattsLoad;

interface Counted {
  /** What a reader calls it. */
  readonly name: string;
  /** How many there are, 1 to 100. */
  readonly count: number;
  /** Most of them on at once in normal use; all when left out. */
  readonly onAtOnce?: number;
  /** `always` is on whenever the rail is; `switched` comes and goes. Heaters, indicators and logic are always on unless said otherwise. */
  readonly when?: 'always' | 'switched';
}

export interface RelayLoad extends Counted {
  readonly kind: 'relay';
  /** Rated volts of the coil. */
  readonly volts: number;
  /** Coil resistance at 23 °C; or give `watts` at rated volts. */
  readonly ohms?: number;
  readonly watts?: number;
  /** Ratio either way; 0.1 when left out. */
  readonly tolerance?: number;
  /** Pull-in as a share of rated volts at 23 °C; 0.75 when left out (typical). */
  readonly mustOperateRatio?: number;
  /** Coil rise per watt; when left out, what gives 25 K at rated volts (assumed). */
  readonly kelvinPerWatt?: number;
  /** Most volts over rated at 23 and 70 °C; 1.3 and 1.1 when left out (typical of power relays, cautious for others). */
  readonly maxRatio?: { readonly at23: number; readonly at70: number };
  /** Resistor in series with each coil. */
  readonly dropperOhms?: number;
  /** Lost in what switches it. */
  readonly driverVolts?: number;
}

export interface LedLoad extends Counted {
  readonly kind: 'indicator' | 'optocoupler';
  /** Current wanted at the nominal rail (its resistor follows); or give `seriesOhms`. */
  readonly amps?: number;
  readonly seriesOhms?: number;
  /** Drop of the LED or string; 2 V for an indicator, 1.2 V for an optocoupler when left out (typical). */
  readonly forwardVolts?: number;
}

export interface HeaterLoad extends Counted {
  readonly kind: 'heater';
  /** One heater hot. `count` strings in parallel. */
  readonly volts: number;
  readonly amps: number;
  /** Equal heaters in series in each string; 1 when left out. */
  readonly inSeries?: number;
  /** Cold inrush over hot current; 6 when left out (typical, 2.7 to 7.2 seen). */
  readonly coldRatio?: number;
}

export interface FixedAmpsLoad extends Counted {
  readonly kind: 'fixed-amps' | 'logic';
  readonly amps: number;
  /** Ratio either way; none for fixed amps, 0.2 for logic (assumed) when left out. */
  readonly tolerance?: number;
}

export interface FixedWattsLoad extends Counted {
  readonly kind: 'fixed-watts';
  readonly watts: number;
}

/** What the rail is reckoned to be while the list is added up. */
export interface LoadRail {
  readonly volts: number;
  readonly minVolts: number;
  readonly maxVolts: number;
}

/** How a load behaves as the rail moves. A heater lies between resistive and constant current. */
export type LoadNature = 'resistive' | 'behind a diode drop' | 'heater' | 'constant current' | 'constant power';

export interface AmpsSpread {
  readonly min: number;
  readonly typical: number;
  readonly max: number;
}
