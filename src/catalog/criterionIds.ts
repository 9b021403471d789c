/** Names of the criteria of content/tables/criteria.json: the fields that `priorities` of a case may have. */
import json from '../../content/tables/criteria.json' with { type: 'json' };

export const criterionIds: readonly string[] = json.rows.map(({ id }) => id);
