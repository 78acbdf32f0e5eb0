/**
 * How a low-voltage rail, the winding or converter that feeds it, and the world outside meet the chassis.
 * Plain JSON in SI units: it travels inside a supply plan. RMS for alternating quantities.
 */

/** One end of a winding, or of the pair of resistors across it. */
export type WindingLeg = 'first' | 'second';

/** One of two resistors that make an artificial centre across a heater winding. */
export interface CentreResistor {
  readonly ohms: number;
  readonly ratedWatts: number;
}

/** The centre that a heater winding is held by: its own tap, or two resistors. */
export type WindingCentre =
  | { readonly kind: 'centre-tap' }
  | { readonly kind: 'artificial-centre'; readonly resistors: readonly [CentreResistor, CentreResistor] };

/** What ties the winding to the chassis before anything is added. */
export type WindingReference =
  | { readonly kind: 'none' }
  | WindingCentre
  | { readonly kind: 'one-leg'; readonly leg: WindingLeg }
  | {
      /** The centre held at a positive voltage by a divider from the high voltage (`highTensionVolts` must be given). */
      readonly kind: 'elevated';
      readonly volts: number;
      readonly centre: WindingCentre;
      /** The divider's resistor from the centre to the chassis; the upper one follows from the volts. */
      readonly lowerOhms: number;
      /** Capacitor across the lower resistor; none when left out. */
      readonly bypassFarads?: number;
    };

/** Either terminal of the rail. */
export type RailPole = 'negative' | 'positive';

/** What ties the rail to the chassis. A resistance is not a protective bond, whatever it does for hum. */
export type RailReference =
  | { readonly kind: 'floating' }
  | { readonly kind: 'bonded'; readonly pole: RailPole }
  | { readonly kind: 'through-resistance'; readonly pole: RailPole; readonly ohms: number; readonly ratedWatts?: number };

/**
 * What a contact of a jack is wired to inside the amp. `coil`, `logic` and `led` reach the rail's positive terminal
 * through the ohms given with them; `isolated` is wired to nothing of the rail (a dry contact, an optocoupler's side).
 */
export type JackContact =
  | { readonly kind: 'rail-positive' }
  | { readonly kind: 'rail-negative' }
  | { readonly kind: 'coil' | 'logic' | 'led'; readonly ohms: number }
  | { readonly kind: 'chassis' }
  | { readonly kind: 'isolated' };

/** What is plugged into a jack. */
export type OutsideGear =
  | { readonly kind: 'none' }
  | {
      /** A box whose sleeve is joined to its own protective earth: mains plug, building wiring, back to this amp's. */
      readonly kind: 'sleeve-to-earth';
      readonly cableOhms: number;
      readonly earthOhms: number;
      /** Mains-frequency difference between the two earths before they are joined; 0 when left out. */
      readonly earthDifferenceVolts?: number;
    }
  /** A switch or relay contact in the box outside that touches neither its earth nor its supply. */
  | { readonly kind: 'isolated-contact' }
  /** The jack drives the light side of an optocoupler in the amp: its contacts touch nothing of the rail, whatever is listed. */
  | { readonly kind: 'optocoupler' };

/** A socket on the panel. */
export interface Jack {
  readonly name: string;
  /** `chassis`: the bush joins the sleeve to the chassis. `insulated`: it does not. */
  readonly mounting: 'insulated' | 'chassis';
  readonly tip: JackContact;
  readonly sleeve: JackContact;
  /** A hand can reach metal joined to the sleeve: the jack's bush, a metal plug, a pedal's box. */
  readonly touchable: boolean;
  readonly gear: OutsideGear;
  /** The switch outside joins tip and sleeve at this moment; open when left out. */
  readonly pressed?: boolean;
}

/** Insulation that somebody has vouched for, or nobody. */
export type Insulation =
  /** Nobody has vouched for it. */
  | { readonly kind: 'unknown' }
  /** Only a test voltage between the parts is printed, with no insulation class: shows little of what it withstands for years. */
  | { readonly kind: 'test-voltage-only'; readonly testVolts: number }
  | { readonly kind: 'basic' | 'reinforced'; readonly workingVolts: number };

/** A relay of which coil and contacts lie on different sides. */
export interface RelayContacts {
  readonly name: string;
  /** `output-anode` works at twice the high voltage; `given` states the volts (0 for an audio signal at ground). */
  readonly work: { readonly at: 'high-tension' | 'output-anode' } | { readonly at: 'given'; readonly volts: number };
  readonly insulation: Insulation;
}

/** What the winding was made for; `rectifier-valve` feeds a directly heated rectifier, or one whose cathode sits at the high voltage. */
export type WindingKind = 'low-voltage' | 'heater' | 'rectifier-valve';

/** How mains reaches the output of a converter through its insulation. */
export type ConverterCoupling =
  /** A Y capacitor (or the sum of several) from line, or from a point that swings as half the mains does, to output negative. */
  | { readonly kind: 'y-capacitor'; readonly farads: number; readonly from: 'line' | 'midpoint' }
  /** Only the leakage current on the data sheet, at 230 V 50 Hz; read as coming from the middle of the mains. */
  | { readonly kind: 'rated-leakage'; readonly amps: number }
  | { readonly kind: 'unknown' };

/** A point of the supply that can be wired to the chassis. `tap` needs a winding that has one; `centre` two resistors across it. */
export type SupplyPoint = 'first' | 'tap' | 'centre' | 'second' | 'negative' | 'positive';

/** Every connection of a plan that decides where current flows to the chassis, and every fact about insulation. */
export interface GroundConnections {
  readonly winding: WindingReference;
  readonly rail: RailReference;
  /** Points that are wired to the chassis besides: a mistake, or one being tried out. */
  readonly furtherGrounds?: readonly SupplyPoint[];
  readonly jacks: readonly Jack[];
  /** A metal control, switch or lamp on the panel is joined to the rail. */
  readonly touchableControls: boolean;
  /** Protective earth of the chassis, by test. */
  readonly ampEarth: 'verified' | 'absent' | 'not-checked';
  /** From the mains and from the high voltage to the rail, other than through a relay: winding to winding, board, module. */
  readonly insulation: { readonly fromMains: Insulation; readonly fromHighTension: Insulation };
  readonly relays: readonly RelayContacts[];
  /** The amp's B+ above chassis at no load; left out when unknown. */
  readonly highTensionVolts?: number;
  /** Only for the converter approach. */
  readonly converterCoupling?: ConverterCoupling;
  /** Resistance of each short bonding wire inside the chassis; 1 mΩ when left out. */
  readonly bondOhms?: number;
}

/** The connections of a rail that touches nothing: a place for a plan to begin, with every unknown left unknown. */
export const UNCONNECTED: GroundConnections = {
  winding: { kind: 'none' },
  rail: { kind: 'floating' },
  jacks: [],
  touchableControls: false,
  ampEarth: 'not-checked',
  insulation: { fromMains: { kind: 'unknown' }, fromHighTension: { kind: 'unknown' } },
  relays: [],
};
