import type { Finding } from '../../src/compute/findings.ts';
import { say } from '../../src/compute/findings/check.ts';
import { analyseGrounding } from '../../src/compute/grounding/analyse-grounding.ts';
import type { SupplyPlan } from '../../src/compute/plan.ts';
import { compareSupplies } from '../../src/compute/supplies/compare-supplies.ts';
import { groundingJob } from '../../src/compute/supplies/grounding-job.ts';
import type { HeaterSupply } from '../../src/compute/supplies/heater-winding.ts';
import type { Supply } from '../../src/compute/supplies/supply-types.ts';
import { SHOP_PLANS, shopPlan } from './read-shop-plan.ts';

/** Prints the shop's three jobs fed in all four ways, for a reviewer to read line by line. */

const mark = ({ level }: Pick<Finding, 'level'>): string => `[${level}]`.padEnd(15);

/** The grounds as solved: what the structural look above only names. */
function printGrounding(plan: SupplyPlan, supply: Supply): void {
  const job = groundingJob(plan, supply);
  if (job === undefined) return;
  const { circulating, findings, firstToOverheat } = analyseGrounding(job);
  console.log(`     grounds solved: ${say(circulating.rmsAmps, 'A')} RMS circulates${firstToOverheat === undefined ? '' : `, the ${firstToOverheat.name} overheats first`}`);
  for (const finding of findings.filter((each) => each.level === 'hazard' || each.level === 'outside')) console.log(`       ${mark(finding)} ${finding.rule}: ${finding.what}`);
}

function printSupply(plan: SupplyPlan, supply: Supply): void {
  console.log(`\n  ── ${supply.approach} ── ${mark(supply)}${supply.available ? '' : 'not available'}`);
  for (const part of supply.parts) console.log(`     ${part.chosenBy === 'plan' ? 'plan ' : 'sized'} ${part.count} × ${part.name}\n             ${part.why}`);
  const { measures } = supply;
  for (const [name, measure] of Object.entries(measures)) console.log(`     ${mark(measure)} ${name}: ${measure.words}`);
  const worst = supply.chain?.worst;
  if (worst !== undefined) {
    const { valley, windingCurrent, peak } = worst;
    console.log(
      `     valley ${say(valley.rectifier.rail.minVolts, 'V')} (needs ${say(valley.neededVolts, 'V')}) at ${valley.corner.words}; winding ${say(windingCurrent.windingRmsAmps, 'A')} RMS; ` +
        `reservoir up to ${say(peak.rectifier.rail.maxVolts, 'V')}`,
    );
    console.log(`     stairs ${supply.chain?.stairs.map((stair) => `${stair.name} ${stair.kind === 'loss' ? '−' : ''}${say(stair.volts, 'V')}`).join(' · ')}`);
  }
  for (const variant of (supply as Partial<HeaterSupply>).variants ?? []) {
    console.log(
      `     tried ${variant.kind} ${variant.topology}: margin ${variant.marginVolts === undefined ? 'none' : say(variant.marginVolts, 'V')}, ` +
        `winding ${variant.windingRmsAmps === undefined ? '?' : say(variant.windingRmsAmps, 'A')}, heaters ${variant.heaterVolts === undefined ? '?' : say(variant.heaterVolts, 'V')}`,
    );
  }
  printGrounding(plan, supply);
  for (const finding of supply.findings) console.log(`     ${mark(finding)} ${finding.rule}: ${finding.what}${finding.worstCorner === undefined ? '' : ` (${finding.worstCorner})`}`);
}

function printJob(plan: SupplyPlan): void {
  console.log(`\n${'═'.repeat(100)}\n${plan.name}\n${say(plan.mains.nominalVolts, 'V')} ${say(plan.mains.hertz, 'Hz')}, rail ${say(plan.rail.volts, 'V')} ${plan.rail.regulation}, air ${say(plan.amp.airCelsius, '°C')}`);
  const comparison = compareSupplies(plan);
  console.log(`\n  ${comparison.words}`);
  for (const [place, { approach, reason }] of comparison.order.entries()) console.log(`  ${place + 1}. ${approach}: ${reason}`);
  for (const { approach } of comparison.order) printSupply(plan, comparison.supplies[approach]);
}

for (const name of SHOP_PLANS) printJob(shopPlan(name));
