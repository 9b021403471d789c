/** What the visitor answers: an invented re-roof in Duluth, Minnesota. Every other field stays at "not sure". */

export interface PickedAnswer {
  /** Dotted path of the field. */
  readonly path: string;
  /** Value of a choice, text typed into a field, or the words of the place that is looked for. */
  readonly pick?: string;
  readonly type?: string;
  readonly find?: string;
}

export const roofName = 'Lakeside house (invented)';
export const placeFound = 'Duluth';

/** Answers by question; a question that is not listed is passed with "Next". */
export const answers: Readonly<Record<string, readonly PickedAnswer[]>> = {
  reader: [{ path: 'project.role', pick: 'designer' }],
  job: [{ path: 'project.kind', pick: 're-roof' }],
  place: [{ path: 'place.zone', find: placeFound }],
  code: [
    { path: 'codes.edition', pick: '2018' },
    { path: 'codes.iceBarrierRequired', pick: 'yes' },
  ],
  'roof-shape': [
    { path: 'roof.shape', pick: 'gable' },
    { path: 'roof.pitch_rise_per_12', type: '8' },
    { path: 'roof.length_m', type: '44 ft' },
    { path: 'roof.width_m', type: '30 ft' },
  ],
  'roof-breaks': [{ path: 'roof.chimneys', type: '1' }],
  covering: [{ path: 'covering.kind', pick: 'asphalt-shingle' }],
  framing: [{ path: 'framing.kind', pick: 'rafter' }],
  deck: [{ path: 'framing.deck', pick: 'plank' }],
  'below-deck': [{ path: 'belowDeck.attic', pick: 'cathedral' }],
  indoor: [
    { path: 'indoor.temperature_C', type: '70' },
    { path: 'indoor.relativeHumidity_pct', type: '35' },
  ],
  overhang: [{ path: 'overhang.eave_m', type: '18' }],
  wall: [{ path: 'wall.airBarrier', pick: 'taped-sheathing' }],
  snow: [{ path: 'loads.groundSnow_Pa', type: '60' }],
  crew: [{ path: 'work.crew', pick: 'roofer' }],
  budget: [{ path: 'work.budget', pick: 'middle' }],
};

export const fieldId = (path: string): string => `answer-${path.replaceAll('.', '-')}`;
