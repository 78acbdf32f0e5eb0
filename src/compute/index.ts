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
export { HAND_HELD_METER, HAND_HELD_OHMMETER, windingFromOhmmeter, windingFromReadings } from './parts/winding-readings.ts';
export { loadedVolts, sagOfEstimate } from './parts/winding-sag.ts';
export type { Bounded, MeterError, OhmmeterError, WindingEstimate, WindingReading } from './parts/winding-readings.ts';
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
export { RELAY_COILS, RELAY_KINDS, coilDropper, coilHenries, coilMaxVolts, coilOhms, coilPullIn, coilTemperature, relayCoil, relayOfKind } from './parts/relay.ts';
export { USUAL_RELEASE_RATIO, coilOnRail, droppedCoils, releaseSpread } from './parts/coil-on-rail.ts';
export type { CoilMargin, CoilOnRail, DroppedCoils, ReleaseSpread } from './parts/coil-on-rail.ts';
export type { CoilFigures, PullIn, RelayCoil, RelayContacts } from './parts/relay.ts';
export { coilRelease } from './parts/suppression.ts';
export type { CoilRelease, Suppression } from './parts/suppression.ts';
export {
  CHASSIS_AIR_CELSIUS, INSULATORS, JUNCTION_AIM_CELSIUS, JUNCTION_LIMIT_CELSIUS, heatsinkNeeded, insulator, junctionCelsius, wattsAllowed,
} from './parts/heatsink.ts';
export type { HeatPath, InsulatorRow } from './parts/heatsink.ts';

export { operatingCorners } from './supplies/corners.ts';
export type { LoadState, Mains, MainsState, OperatingCorner, ReservoirState } from './supplies/corners.ts';
export { RESERVOIR_SIZES, smallestReservoir, sweepReservoir } from './supplies/reservoir-sweep.ts';
export type { ReservoirPoint } from './supplies/reservoir-sweep.ts';
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
export { solveTransient } from './network/solve-transient.ts';
export type { TransientOptions } from './network/solve-transient.ts';
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
  RegulatorElement,
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

export {
  COMMON_SECONDARY_VOLTS, COMMON_VOLT_AMPS, CONSTRUCTIONS, INSULATION_CLASSES, SHORT_CIRCUIT_MARKS, allowedNoLoadExcess, construction, frequencyUse, inrushBoundAmps,
  insulationClass, ratedPrimaryAmps, shortCircuitAmps, temperatureRise, typicalRegulation, windingCelsiusAt,
} from './parts/transformer.ts';
export type { ConstructionRow, InsulationClassRow, ShortCircuitMark } from './parts/transformer.ts';
export { BUCKS, buck, buckClampVolts, buckInput, buckMinimumInputVolts } from './parts/regulator-switching.ts';
export type { BuckInput, BuckRow } from './parts/regulator-switching.ts';
export { CONVERTERS, converter, converterHeatWatts, deratedOutput, ratingForHeaters, startUpLimit, yCapacitorAmps, yCapacitorFarads } from './parts/converter.ts';
export type { ConverterRow, StartUpLimit } from './parts/converter.ts';
export { COLD_INRUSH, HEATERS, HEATER_TOLERANCE, heaterKelvinPerSecond, heaterModel, heaterOhms, heaterRow, seriesHeaters } from './parts/heater.ts';
export type { HeaterModel, HeaterRating, HeaterRow, HeaterString } from './parts/heater.ts';
export { warmUpHeater } from './parts/heater-warm-up.ts';
export type { HeaterWarmUp } from './parts/heater-warm-up.ts';
export { LEDS, ledAmps, ledOnAc, ledResistor, ledResistorOnAc, ledRow } from './parts/led.ts';
export { ledCorners } from './parts/led-corners.ts';
export type { LedCorner, LedCorners } from './parts/led-corners.ts';
export type { LedOnAc, LedRow } from './parts/led.ts';
export { OPTOCOUPLERS, OPTOCOUPLER_AGEING, SATURATED_VOLTS, driveOptocoupler, optocoupler, pullUpAmps, reliableSinkAmps } from './parts/optocoupler.ts';
export type { OptocouplerDrive, OptocouplerRow } from './parts/optocoupler.ts';
export {
  FUSE_STANDARDS, IEC_FUSE_AMPS, breakingCapacityAmps, fuseColdOhms, fuseGates, fuseRatingFor, fuseStandard, fuseTimes, meltingIntegral, pulseA2s, pulseShare,
  reservoirInrushA2s,
} from './parts/fuse.ts';
export type { FuseGate, FuseStandard, FuseTimes, Pulse } from './parts/fuse.ts';
export { WIRES, copperOhms, gaugeMetres, loopDropVolts, wire, wireCapacityAmps, wireFor, wireOhms } from './parts/wire.ts';
export type { WireRow } from './parts/wire.ts';
export { WIRE_CEILING_CELSIUS, wireTemperature } from './parts/wire-heating.ts';
export type { WireHeat } from './parts/wire-heating.ts';
export { mainsCornersOf, pulsesOnWire } from './noise/pulses-on-wire.ts';
export type { PulsesOnWire, SharedCurrent } from './noise/pulses-on-wire.ts';
export { checkSharedGround, checkWireCurrent, checkWireDrop, checkWireFuse, checkWireTemperature } from './findings/wire.ts';
export { RESISTORS, resistorAllowance, resistorFor, resistorRow, resistorWattsAllowed } from './parts/resistor.ts';
export type { ResistorRow } from './parts/resistor.ts';
export { TOUCH_LIMIT_VOLTS, bleedSeconds, bleederWatts, storedJoules } from './parts/stored-charge.ts';

export { LOAD_MARGIN, addLoads } from './loads/load-list.ts';
export type { LoadLine, LoadSums } from './loads/load-list.ts';
export type {
  AmpsSpread, FixedAmpsLoad, FixedWattsLoad, HeaterLoad, LedLoad, LoadItem, LoadNature, LoadRail, RelayLoad,
} from './loads/load-types.ts';

export type { CheckContext } from './findings/check.ts';
export { checkCoilPullIn, checkCoilVolts } from './findings/coil.ts';
export { ANODE_SWING, checkCoilToContact, checkContactLoad, checkContactVolts } from './findings/contacts.ts';
export { checkDiodeCurrent, checkReverseVolts } from './findings/diode.ts';
export { checkFuseBreaking, checkFuseFault, checkFuseInrush, checkFuseRunning } from './findings/fuse.ts';
export { checkHeaterVolts } from './findings/heater.ts';
export {
  WANTED_LED_SHARE, checkLedCurrent, checkLedLit, checkLedReverse, checkOptocouplerDrive, checkOptocouplerSink, checkResistorWatts,
} from './findings/indicator.ts';
export { checkJunction, checkRegulatorInput, checkRegulatorValley } from './findings/regulator.ts';
export { checkDriverVolts, checkRelease } from './findings/release.ts';
export { checkCapacitorLife, checkCapacitorPolarity, checkCapacitorVolts, checkReservoirValley, checkRippleCurrent } from './findings/reservoir.ts';
export { checkSpareCurrent, checkWindingCurrent } from './findings/winding.ts';
export { checkOhmmeter, checkReadingsTell, checkWindingPurpose, noteWindingInsulation } from './findings/winding-estimate.ts';
export type { WindingPurpose } from './findings/winding-estimate.ts';
export { chainFindings } from './supplies/chain-findings.ts';
export { buckStage } from './supplies/chain-parts.ts';
export { coolChain } from './supplies/chain.ts';
export { startConverter } from './supplies/converter-start.ts';
export type { ConverterStart, ConverterStartOptions } from './supplies/converter-start.ts';

export { PLAN_VERSION, migratePlan, readPlan } from './plan.ts';
export type {
  Approach,
  Barriers,
  HeaterWinding,
  Migration,
  MigrationResult,
  PlanAmp,
  PlanConverter,
  PlanFuse,
  PlanGrounds,
  PlanParts,
  PlanProtections,
  PlanRail,
  PlanReading,
  PlanTransformer,
  PlanWinding,
  PresentHeater,
  ReadProblem,
  Regulation,
  Room,
  SpareWinding,
  SupplyPlan,
} from './plan.ts';

export { analyseGrounding, solveGrounding } from './grounding/analyse-grounding.ts';
export type { GroundingAnalysis, GroundingSolution } from './grounding/grounding-result.ts';
export type { ConverterSupply, GroundingDiode, GroundingFuse, GroundingJob, GroundingSupply, WindingSupply } from './grounding/job.ts';
export { UNCONNECTED } from './grounding/connections.ts';
export type {
  CentreResistor,
  ConverterCoupling,
  GroundConnections,
  Insulation,
  Jack,
  JackContact,
  OutsideGear,
  RailPole,
  RailReference,
  RelayContacts as RelayBarrier,
  WindingCentre,
  WindingKind,
  WindingLeg,
  WindingReference,
} from './grounding/connections.ts';
export { circuitNodes, groundLinks, groundPoints } from './grounding/ground-links.ts';
export type { CircuitNodes, GroundLink, GroundPoint } from './grounding/ground-links.ts';
export type { BranchKind } from './grounding/circuit.ts';
export type { BranchCurrent } from './grounding/branch-currents.ts';
export type { ClearingOption } from './grounding/clearing.ts';
export type { HeaterBalance, LegSwing } from './grounding/heater-balance.ts';
export { isBeyondTouch } from './grounding/jack-potentials.ts';
export type { ContactPotential } from './grounding/jack-potentials.ts';
export type { PartStress } from './grounding/overheating.ts';
export type { FuseLoading, PrimaryCurrent } from './grounding/fuses-in-fault.ts';
export { solveShortedDiode } from './grounding/shorted-diode.ts';
export type { HandCurrent, SingleFault, TouchReading } from './grounding/single-faults.ts';

export { compareSupplies, openJob } from './supplies/compare-supplies.ts';
export type { Preference, SupplyComparison } from './supplies/compare-supplies.ts';
export { supplyFromConverter } from './supplies/converter.ts';
export type { ConverterSolution } from './supplies/converter-types.ts';
export { heatersOhms, supplyFromHeaterWinding } from './supplies/heater-winding.ts';
export type { HeaterSupply, HeaterVariant } from './supplies/heater-winding.ts';
export { supplyFromTransformer } from './supplies/separate-transformer.ts';
export { supplyFromSpareWinding } from './supplies/spare-winding.ts';
export { transformerWinding } from './supplies/size-transformer.ts';
export { sizeReservoir } from './supplies/size-reservoir.ts';
export { groundsFor } from './supplies/grounds-for.ts';
export { groundingJob } from './supplies/grounding-job.ts';
export { loadDraw, loadFindingsAt } from './supplies/load-draw.ts';
export type { LoadDraw } from './supplies/load-draw.ts';
export type {
  GroundMeasure,
  HeatMeasure,
  HoldsMeasure,
  LoadingMeasure,
  MainsSideMeasure,
  PartRole,
  RoomMeasure,
  SizedPart,
  Supply,
  SupplyMeasures,
} from './supplies/supply-types.ts';

export { timedSupply } from './in-time/timed-supply.ts';
export type { TimedRegulator, TimedSupply } from './in-time/timed-supply.ts';
export { loadSiemens, timedCoil } from './in-time/timed-load.ts';
export type { TimedCoil, TimedLoad } from './in-time/timed-load.ts';
export { settleRail } from './in-time/settled-rail.ts';
export type { SettledRail } from './in-time/settled-rail.ts';
export { chargingSurge, primarySurge } from './in-time/inrush.ts';
export type { ChargingSurge, PrimarySurge } from './in-time/inrush.ts';
export { warmUpRail } from './in-time/warm-up.ts';
export type { RailWarmUp } from './in-time/warm-up.ts';
export { switchOn } from './in-time/switch-on.ts';
export type { CoilAtSwitchOn, SwitchOn } from './in-time/switch-on.ts';
export { releaseCoil } from './in-time/coil-release.ts';
export type { CoilReleaseInTime, CoilSuppression } from './in-time/coil-release.ts';
export { stepRail } from './in-time/rail-step.ts';
export type { RailStep, SteppedLoad, SteppedNode, WatchedLed } from './in-time/rail-step.ts';
export { windingHeat, windingKelvinPerSecond } from './in-time/winding-heating.ts';
export type { WindingHeat } from './in-time/winding-heating.ts';
export { fuseInFault } from './in-time/fuse-in-fault.ts';
export type { FuseInFault } from './in-time/fuse-in-fault.ts';
export { fuseAtSwitchOn, leastMeltingA2s } from './in-time/fuse-at-switch-on.ts';
export type { FuseAtSwitchOn, SlowCurrent } from './in-time/fuse-at-switch-on.ts';

export { harmonicsOf, waveOf } from './noise/harmonics.ts';
export type { Harmonic, Spectrum } from './noise/harmonics.ts';
export { loopAmps, pulseSpectrum } from './noise/pulse-spectrum.ts';
export type { LoopAmps, PulseSpectrum } from './noise/pulse-spectrum.ts';
export { sharedWireVolts, straightWireHenries } from './noise/shared-wire.ts';
export type { SharedWire } from './noise/shared-wire.ts';
export { rejectionDecibels, rippleBehindRegulator } from './noise/regulator-ripple.ts';
export type { RegulatorRipple } from './noise/regulator-ripple.ts';
export { capacitiveVolts, edgePeakVolts, heaterLeakageVolts, magneticVolts } from './noise/stray-coupling.ts';
export { converterResidue } from './noise/converter-residue.ts';
export type { ConverterResidue, FilterSection } from './noise/converter-residue.ts';

export { meterReading } from './tolerance/meter-reading.ts';
export type { MeterKind, MeterReading } from './tolerance/meter-reading.ts';
export { seededRandom } from './tolerance/random.ts';
export type { RandomSource } from './tolerance/random.ts';
export { TEST_POINTS, testPoint } from './tolerance/test-points.ts';
export type { Readings, TestPoint, TestPointId } from './tolerance/test-points.ts';
export { benchJob } from './tolerance/bench-job.ts';
export type { BenchFeed, BenchJob } from './tolerance/bench-job.ts';
export { partSpreads } from './tolerance/part-draw.ts';
export type { PartSpread } from './tolerance/part-draw.ts';
export { judgeReading, runTolerance, toleranceRun } from './tolerance/spread-of-readings.ts';
export type { ReadingSpread, ToleranceOptions, ToleranceRun } from './tolerance/spread-of-readings.ts';
export { CAUSES } from './tolerance/causes.ts';
export type { Cause, CauseId } from './tolerance/causes.ts';
export { expectCause, expectCauses, rankCauses } from './tolerance/rank-causes.ts';
export type { ExpectedOfCause, RankedCause } from './tolerance/rank-causes.ts';
