/** The plots of a candidate by name: which numbers of the evaluation each one shows. */
import { ventilations, type Ventilation } from '../catalog/sets.ts';
import type { Candidate, Evaluation, Layer } from '../evaluation/evaluation.ts';
import type { DryingPlace } from '../evaluation/heatMoisture.ts';
import { airLeakPlot } from './airLeak.ts';
import { condensatePlot } from './condensate.ts';
import { deckMonthsPlot } from './deckMonths.ts';
import { dryingPlot, type DryingLine } from './drying.ts';
import { heatLossPlot } from './heatLoss.ts';
import { plotNames, type Plot, type PlotName, type PlotOptions } from './plot.ts';
import { profilePlot } from './profile.ts';

/** The first words of a layer's name: up to a comma or a parenthesis. */
const shortName = (name: string): string => (name.split(/,| \(/)[0] ?? name).trim();

/** A layer by the first words of its name; of two with one name, the lower or the upper. */
function layerName(layers: readonly Layer[], layer: Layer): string {
  const name = shortName(layer.name);
  const same = layers.filter((other) => shortName(other.name) === name);
  if (same.length < 2) return name;
  const place = same.indexOf(layer);
  if (same.length === 2) return `${place === 0 ? 'lower' : 'upper'} ${name}`;
  return `${name} ${String(place + 1)} of ${String(same.length)}`;
}

/** Where a plane lies, in words. */
export function whereOf(layers: readonly Layer[], after: string, within_pct: number | null = null): string {
  const layer = layers.find(({ id }) => id === after);
  if (layer === undefined) return 'on the room side';
  const name = layerName(layers, layer);
  return within_pct === null ? `outside of the ${name}` : `within the ${name}`;
}

export const placeNames: Readonly<Record<DryingPlace['place'], string>> = {
  deck: 'the deck',
  'insulation-joint': 'the joint in the insulation',
  'under-underlayment': 'under the underlayment',
};

const kindNames: Readonly<Record<Ventilation, string>> = {
  unvented: 'unvented',
  'vented-furring': 'vented furring',
  'drainage-mat': 'drainage mat',
  'panel-gap': 'panel gap',
};

const dryingLine = (id: string, what: string, drying: DryingPlace, candidate: Candidate): DryingLine => ({
  id,
  what,
  drying,
  leftWhere: drying.leftAfter === null ? null : whereOf(candidate.layers, drying.leftAfter),
});

/** The best candidate of each kind of ventilation: the first in the ranking, else the first that was computed. */
export function firstByVentilation({ candidates, ranking }: Evaluation): Candidate[] {
  const byId = new Map(candidates.map((candidate) => [candidate.id, candidate]));
  const ranked = ranking.order.flatMap((id) => byId.get(id) ?? []);
  return ventilations.flatMap((kind) => {
    const has = (candidate: Candidate): boolean => candidate.ventilation.kind === kind;
    return ranked.find(has) ?? candidates.find(has) ?? [];
  });
}

/** Which place of the roof the kinds of ventilation are compared by: where a leak from outside wets it first. */
const COMPARED: DryingPlace['place'] = 'under-underlayment';

const makers: Readonly<
  Record<PlotName, (evaluation: Evaluation, candidate: Candidate, options: PlotOptions) => Plot | null>
> = {
  'heat-loss': (_, { thermal }, options) =>
    heatLossPlot(
      {
        bridges: thermal.losses,
        transmittance_W_m2K: thermal.transmittance_W_m2K,
        effectiveResistance_m2K_W: thermal.effectiveResistance_m2K_W,
      },
      options,
    ),
  'deck-months': ({ climate }, { condensationControl, moisture }, options) => {
    const plane = condensationControl.planes.find(({ id }) => id === 'deck-underside');
    return plane === undefined
      ? null
      : deckMonthsPlot(
          { plane, outdoor_C: climate.monthlyTemperature_C, indoor: moisture.indoorAir },
          options,
        );
  },
  profile: (_, { layers, moisture }, options) =>
    profilePlot(
      {
        profile: moisture.profile,
        layers: layers.map((layer) => ({
          id: layer.id,
          name: layerName(layers, layer),
          material: layer.material,
        })),
        planes: moisture.planes.map((plane) => ({
          ...plane,
          where: whereOf(layers, plane.after, plane.within_pct),
        })),
        indoorDewPoint_C: moisture.indoorAir.dewPoint_C[moisture.profile.month - 1] ?? 0,
      },
      options,
    ),
  condensate: (_, { layers, moisture }, options) =>
    condensatePlot(
      {
        planes: moisture.planes.map((plane) => ({
          ...plane,
          where: whereOf(layers, plane.after, plane.within_pct),
        })),
      },
      options,
    ),
  'air-leak': (_, { moisture }, options) =>
    moisture.airLeakage === null ? null : airLeakPlot(moisture.airLeakage, options),
  drying: (_, candidate, options) =>
    candidate.drying.places.length === 0
      ? null
      : dryingPlot(
          {
            name: 'drying',
            title: 'How water dries out of each place',
            lines: candidate.drying.places.map((drying) =>
              dryingLine(drying.place, placeNames[drying.place], drying, candidate),
            ),
          },
          options,
        ),
  'drying-compared': (evaluation, _, options) => {
    const lines = firstByVentilation(evaluation).flatMap((candidate) => {
      const drying = candidate.drying.places.find(({ place }) => place === COMPARED);
      const { kind } = candidate.ventilation;
      return drying === undefined ? [] : [dryingLine(kind, kindNames[kind], drying, candidate)];
    });
    return lines.length === 0
      ? null
      : dryingPlot(
          {
            name: 'drying-compared',
            title: 'Water under the underlayment, by kind of ventilation',
            lines,
          },
          options,
        );
  },
};

/**
 * One plot of a candidate.
 *
 * @param evaluation  the evaluation that the candidate belongs to
 * @param options     unit system, wide or narrow, theme
 * @returns           [-] null when the roof has nothing of the kind; a plot without a picture says why in its sentence
 */
export const plotOf = (
  name: PlotName,
  evaluation: Evaluation,
  candidate: Candidate,
  options: PlotOptions,
): Plot | null => makers[name](evaluation, candidate, options);

/** Every plot of a candidate, in reading order. */
export const plotsOf = (evaluation: Evaluation, candidate: Candidate, options: PlotOptions): Plot[] =>
  plotNames.flatMap((name) => plotOf(name, evaluation, candidate, options) ?? []);
