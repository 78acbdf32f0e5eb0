import type { VNode } from 'preact';
import { ChargingLoopSheet } from '../../drawings/charging-loop-sheet.tsx';
import { Corners } from '../shared/corners.tsx';
import { Field } from '../shared/field.tsx';
import { Findings } from '../shared/findings-list.tsx';
import { HandOn } from '../shared/hand-on.tsx';
import { island } from '../shared/island.tsx';
import { Plot } from '../shared/plot.tsx';
import { Results } from '../shared/results.tsx';
import { Sentence } from '../shared/sentence.tsx';
import type { ViewProps } from '../shared/use-calculator.ts';
import { Working } from '../shared/working.tsx';
import type { SpectrumLine, wireDrop } from './state.ts';

/** What the noise is made of, for an ear: the first lines are hum, the many above them the edge of a buzz. */
function Spectrum({ lines }: { readonly lines: readonly SpectrumLine[] }): VNode {
  return (
    <details class="plot-table">
      <summary>What it sounds of: its harmonics</summary>
      <div class="table-box" tabIndex={0} role="group" aria-label="Harmonics of the volts along the shared wire">
        <table>
          <thead>
            <tr>
              <th scope="col">frequency</th>
              <th scope="col">RMS</th>
            </tr>
          </thead>
          <tbody>
            {lines.map(({ hertz, volts }) => (
              <tr key={hertz}>
                <th scope="row">{hertz}</th>
                <td>{volts}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function WireDropCalculator({ state, sources }: ViewProps<typeof wireDrop>): VNode {
  const { field, view, values, instance, stale } = state;
  return (
    <>
      <Sentence state={state} drag="sharedMetres">
        <p>
          <Field {...field('wire')} /> runs <Field {...field('metres')} /> to the load, <Field {...field('laid')} then="," /> in air of <Field {...field('airCelsius')} then=";" /> its
          insulation is good for <Field {...field('limitCelsius')} then="," /> the drop may be <Field {...field('wantedVolts')} then="," /> and the winding is fused
          at <Field {...field('fuseAmps')} then="." />
        </p>
        <p>
          The rectifier returns <Field {...field('wiring')} then="," /> over <Field {...field('sharedMetres')} then=";" /> <Field {...field('toleratedVolts')} /> of noise is put up with
          there.
        </p>
        <p>
          The load takes <Field {...field('loadAmps')} /> from a winding rated <Field {...field('windingVolts')} /> at <Field {...field('windingAmps')} /> that rises{' '}
          <Field {...field('regulation')} /> unloaded, through a <Field {...field('topology')} /> of <Field {...field('diode')} /> rated <Field {...field('diodeVolts')} /> and{' '}
          <Field {...field('farads')} then="." /> The mains is <Field {...field('mainsVolts')} /> at <Field {...field('mainsHertz')} then="," /> give or take{' '}
          <Field {...field('mainsSpread')} then="." />
        </p>
      </Sentence>
      <Results state={state}>
        <Corners corners={view.corners} stale={stale} instance={instance} />
        <Findings findings={view.findings} sources={sources} />
        <div class="pictures">
          <figure class="circuit">
            <ChargingLoopSheet id={`${instance}-loop`} wiring={values.wiring} {...view.sheet} />
            <figcaption>
              {values.wiring === 'shared'
                ? 'The pulses go round by way of the star, along the wire that the first stage calls ground.'
                : 'The pulses keep to their own loop; the wire to the star carries the load’s steady current and nothing else.'}
            </figcaption>
          </figure>
          <Plot data={view.plot} />
        </div>
        {view.spectrum.length > 0 && <Spectrum lines={view.spectrum} />}
        <Working steps={view.working} sources={sources} />
        <HandOn instance={instance} links={view.handOn} />
      </Results>
    </>
  );
}

export default island(() => import('./state.ts').then((module) => module.wireDrop), WireDropCalculator);
