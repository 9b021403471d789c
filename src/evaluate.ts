/** The one door: Case -> Evaluation. Pure; the same case always gives the same evaluation. */
import { source } from './catalog/sources.ts';
import type { Case } from './case/case.ts';
import { complete, type CompleteCase } from './case/complete.ts';
import { placeFaults, standingOf, zoneOf, type Fault } from './case/place.ts';
import { valueAt, withValueAt } from './case/paths.ts';
import type { Assumption, Candidate, Evaluation } from './evaluation/evaluation.ts';
import { weightsOf } from './judgement/criteria.ts';
import { cautionsOf, deferralsOf, judge, stopsOf, type Setting } from './judgement/judge.ts';
import { rankingOf } from './judgement/ranking.ts';
import { rationaleOf } from './judgement/rationale.ts';
import { geometryChecksOf } from './roof/geometryChecks.ts';
import { climateOf } from './roof/site.ts';
import { siteLoadsOf } from './roof/loads.ts';
import { requirementsOf } from './roof/requirements.ts';
import { roofGeometryOf, takeoffListOf } from './roof/takeoffList.ts';
import { buildCandidate, strategies } from './strategies/index.ts';

/** A valid case that no table can place. */
export class UnplacedCaseError extends Error {
  override readonly name = 'UnplacedCaseError';
  readonly faults: readonly Fault[];
  constructor(faults: readonly Fault[]) {
    super(faults.map(({ path, message }) => `${path}: ${message}`).join('\n'));
    this.faults = faults;
  }
}

/** Takes the place table's ground snow where the user gave none: a hint to be confirmed, so it is an assumption. */
function withPlaceHints(given: Case): { hinted: Case; hints: Assumption[] } {
  const { place } = standingOf(given);
  const path = 'loads.groundSnow_Pa';
  const listed_Pa = place?.groundSnow_Pa ?? null;
  if (listed_Pa === null || valueAt(given, path) !== undefined) return { hinted: given, hints: [] };
  return {
    hinted: withValueAt(given, path, listed_Pa),
    hints: [
      {
        path,
        question: 'snow',
        value: listed_Pa,
        reason: 'A figure listed for this place, mostly from memory; not a map value.',
        cost: 'Ask the authority: the mapped value governs.',
        source: 'IBC-1608-2',
      },
    ],
  };
}

/** Every source that the result leans on, once each, in order of first use. */
function sourcesOf(parts: Omit<Evaluation, 'sources'>): Evaluation['sources'] {
  const ids = new Set<string>();
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(walk);
    else if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value)) {
        if (key === 'source' && typeof inner === 'string') ids.add(inner);
        else if (key === 'sources' && Array.isArray(inner)) inner.forEach((id) => ids.add(String(id)));
        else walk(inner);
      }
  };
  walk(parts);
  const file = parts.case.place.weatherFile;
  return [...ids].map((id) => {
    const { publisher, title, how, ...row } = source(id);
    const edition = id === 'WEATHER-FILE' ? file?.name : row.edition;
    return { id, publisher, title, ...(edition === undefined ? {} : { edition }), known: how };
  });
}

/** The completed case as plain JSON again, for the evaluation's `case`. */
const asCase = (completed: CompleteCase): Case => completed as unknown as Case;

/**
 * Evaluates a case: every feasible variant of the three strategies, ranked, with reasons.
 *
 * @param given  a valid case (see readCase)
 * @returns      the evaluation; after a stop the ranking is empty and the stop is the first caution
 * @throws       UnplacedCaseError when the tables do not list the place or county named
 */
export function evaluate(given: Case): Evaluation {
  const faults = placeFaults(given);
  if (faults.length > 0) throw new UnplacedCaseError(faults);
  const zone = zoneOf(given);
  const { hinted, hints } = withPlaceHints(given);
  const { completed, assumptions } = complete(hinted, zone.zone);
  const climate = climateOf(given, zone);
  const setting: Setting = { given: completed, climate, requirements: requirementsOf(completed, climate) };
  const judged = strategies
    .flatMap((strategy) => strategy.variants(completed))
    .map((variant) => judge(setting, buildCandidate(completed, variant, climate, setting.requirements)));
  const candidates: Candidate[] = judged.map(({ candidate }) => candidate);
  const ranking = rankingOf(candidates, weightsOf(completed, climate), stopsOf(setting).length > 0);
  const leaders = ranking.leaders.flatMap(
    ({ candidate }) => judged.find((one) => one.candidate.id === candidate)?.draft ?? [],
  );
  const { requirements } = setting;
  const parts: Omit<Evaluation, 'sources'> = {
    overdeck: 1,
    case: asCase(completed),
    assumptions: [...hints, ...assumptions],
    climate,
    requirements,
    siteLoads: siteLoadsOf(completed),
    roofGeometry: roofGeometryOf(completed),
    candidates,
    ranking,
    rationale: rationaleOf({ ranking, candidates, assumptions: [...hints, ...assumptions] }),
    takeoffs: leaders.map((draft) => takeoffListOf({ given: completed, draft, requirements })),
    geometryChecks: leaders.map(({ candidate }) => geometryChecksOf(completed, candidate, requirements)),
    cautions: cautionsOf(setting, ranking, judged),
    deferrals: deferralsOf(setting),
  };
  return { ...parts, sources: sourcesOf(parts) };
}
