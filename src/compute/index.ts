/** The public face of the computation: everything a page, a widget or a script may use. */
export { InputError, SolveError } from './errors.ts';
export type { AllowedRange, SolveFailureReason } from './errors.ts';

export { solveRectifier } from './rectifier/solve-rectifier.ts';
export { CONDUCTION_FRACTION } from './rectifier/rectifier-types.ts';
export type {
  RectifierLoad,
  RectifierOptions,
  RectifierSolution,
  RectifierTopology,
  RectifierWaveform,
} from './rectifier/rectifier-types.ts';

export { formatQuantity, nearestPreferred, nextPreferredDown, nextPreferredUp, parseQuantity, preferredValues, UNITS } from './quantity.ts';
export type { FormatOptions, ParseOptions, ParsedQuantity, PreferredOptions, PreferredSeries, RefusedQuantity, Unit, UnitFact } from './quantity.ts';
export { bySeverity, levelOfMargin, worstLevel } from './findings.ts';
export type { Basis, Finding, FindingNumber, Harm, Level, Source } from './findings.ts';

export type { CatalogueRow, Spread } from './parts/row.ts';
export { copperRatio, temperatureByResistance } from './parts/copper.ts';
export { DIODES, diodeForwardVolts, diodeLeakageAmps, diodePart, diodeTypeFor, diodeWatts } from './parts/diode.ts';
export type { DiodeModel, DiodePart } from './parts/diode.ts';
export { joinSecondaries, windingAtMains, windingFromRating, windingFromResistance, windingRegulation } from './parts/winding.ts';
export type { WindingModel } from './parts/winding.ts';
export { HAND_HELD_METER, windingFromReadings } from './parts/winding-readings.ts';
export type { Bounded, MeterError, WindingEstimate, WindingReading } from './parts/winding-readings.ts';
export { MAINS_CREST, MAINS_REGIONS, mainsCorners, mainsRegion } from './parts/mains.ts';
export type { MainsCorner, MainsRegion } from './parts/mains.ts';
export {
  ELECTROLYTICS, RATED_VOLTS, REVERSE_MAX_VOLTS, SURGE_FACTOR, capacitanceSpread, capacitorLeakageAmps, capacitorLife, electrolytic, esrLimitOhms, esrOhms,
  nextRatedVolts, rippleLimitAmps, typicalRippleAmps,
} from './parts/capacitor.ts';
export type { ElectrolyticRow } from './parts/capacitor.ts';
export {
  LINEAR_REGULATORS, adjustableOutput, currentLimitAmps, dropoutVolts, linearRegulator, protectionDiodes, quiescentAmps, regulatedVolts, regulatorWatts,
} from './parts/regulator-linear.ts';
export type { LinearRegulator, ProtectionDiode } from './parts/regulator-linear.ts';
export { RELAY_COILS, coilDropper, coilMaxVolts, coilOhms, coilPullIn, coilTemperature, relayCoil } from './parts/relay.ts';
export type { CoilFigures, PullIn, RelayCoil, RelayContacts } from './parts/relay.ts';
export { coilRelease } from './parts/suppression.ts';
export type { CoilRelease, Suppression } from './parts/suppression.ts';
export {
  CHASSIS_AIR_CELSIUS, INSULATORS, JUNCTION_AIM_CELSIUS, JUNCTION_LIMIT_CELSIUS, heatsinkNeeded, insulator, junctionCelsius, wattsAllowed,
} from './parts/heatsink.ts';
export type { HeatPath, InsulatorRow } from './parts/heatsink.ts';

export { operatingCorners } from './supplies/corners.ts';
export type { LoadState, Mains, MainsState, OperatingCorner, ReservoirState } from './supplies/corners.ts';
export { solveChain } from './supplies/chain.ts';
export { chainDiode, chainReservoir, linearStage, REFILLS_PER_CYCLE } from './supplies/chain-parts.ts';
export type {
  AcrossWinding,
  BuckStage,
  ChainCorner,
  ChainDiode,
  ChainInput,
  ChainLoad,
  ChainReservoir,
  ChainSolution,
  ChainStage,
  ChainWinding,
  Cooling,
  LinearStage,
  NoStage,
  RailVolts,
  SolvedCorner,
  UnsolvedCorner,
  WattsTaken,
  WorstCorners,
} from './supplies/chain-types.ts';
export { neededInputVolts, stageHeatsink } from './supplies/regulator-stage.ts';
export type { VoltageStair } from './supplies/voltage-stairs.ts';
export { workingStep } from './supplies/working.ts';
export type { WorkingNumber, WorkingStep } from './supplies/working.ts';
export { NETWORK_INTERVALS, solveNetwork } from './network/solve-network.ts';
export type { NetworkOptions, NetworkSolution } from './network/solve-network.ts';
export { GROUND } from './network/elements.ts';
export type {
  BehaviourElement,
  BehaviourInput,
  CapacitorElement,
  CurrentElement,
  DcElement,
  DiodeElement,
  Element,
  HeaterElement,
  InductorElement,
  LoadElement,
  ResistorElement,
  SineElement,
  SwitchElement,
} from './network/elements.ts';
export {
  waveformMax,
  waveformMean,
  waveformMeanProduct,
  waveformMin,
  waveformPeak,
  waveformRms,
} from './network/waveform.ts';
