import { FUSE_STANDARDS } from '../../compute/parts/fuse.ts';
import { INSULATION_CLASSES } from '../../compute/parts/transformer.ts';
import type { Face, FieldSet } from '../shared/definition.ts';
import { diodeFields, mainsFields, reservoirFields, topologyField, windingFields } from '../shared/supply-fields.ts';
import { windingPickFace } from '../winding-pick/fields.ts';

export const fields = {
  place: {
    kind: 'choice',
    label: 'Where the fuse sits',
    options: [{ value: 'secondary', label: 'between winding and rectifier' }, { value: 'primary', label: 'in the primary of an added transformer' }],
    default: 'secondary',
  },
  fuse: { kind: 'choice', label: 'Fuse', options: [{ value: 'pick', label: 'picked here' }, { value: 'this', label: 'the one fitted' }, { value: 'none', label: 'not there' }], default: 'pick' },
  fuseAmps: { kind: 'quantity', label: 'Fuse fitted', unit: 'A', default: 1, min: 0.032, max: 10, stepping: 'e12' },
  standard: { kind: 'choice', label: 'Made to', options: FUSE_STANDARDS.map(({ id, name }) => ({ value: id, label: name })), default: 'iec-sheet-5' },
  starts: { kind: 'quantity', label: 'Switch-ons in its life', unit: '', default: 10_000, min: 100, max: 100_000, stepping: '1-2-5', whole: true },
  ...windingFields,
  topology: topologyField,
  diode: diodeFields.diode,
  farads: reservoirFields.farads,
  loadAmps: { kind: 'quantity', label: 'Load', unit: 'A', default: 0.114, min: 0.001, max: 10, assume: 'mA', stepping: 'e12', hint: 'DC behind the rectifier, the regulator’s own included' },
  mark: windingPickFace.fields.mark,
  insulationClass: { kind: 'choice', label: 'Insulation class of the winding', options: INSULATION_CLASSES.map(({ id, name }) => ({ value: id, label: name })), default: 'a', hint: 'class A where nobody has read it' },
  mainsSide: {
    kind: 'choice',
    label: 'What stands on the mains side',
    options: [
      { value: 'own-fuse', label: 'a fuse of its own' },
      { value: 'amp-fuse', label: 'only the amp’s mains fuse' },
      { value: 'nothing', label: 'nothing' },
      { value: 'amp-winding', label: 'the amp’s own transformer, fused as it was' },
    ],
    default: 'own-fuse',
  },
  prospectiveAmps: { kind: 'quantity', label: 'What the mains can drive into a short here', unit: 'A', min: 10, max: 20_000, optional: true, blank: 'not known', stepping: '1-2-5' },
  ...mainsFields,
  airCelsius: { kind: 'quantity', label: 'Air inside the chassis', unit: '°C', default: 55, min: -10, max: 100, stepping: 5 },
} as const satisfies FieldSet;

/** What other calculators need to hand a case on to this one. */
export const fusePickFace = { id: 'fuse-pick', version: 1, question: 'Which fuse, where, and does it survive switch-on and still blow on a fault?', fields } as const satisfies Face;
