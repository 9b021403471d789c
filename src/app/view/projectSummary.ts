/** One line about a saved project, for the list. */
import type { SavedProject } from '../storage/projectStore.ts';

export function summaryOf(project: SavedProject): string {
  const { place, roof } = project.answers;
  const parts = [
    place?.name ?? (place?.zone ? `Zone ${place.zone}` : place ? 'Place given' : 'Place not given yet'),
    roof?.pitch_rise_per_12 === undefined ? null : `${roof.pitch_rise_per_12}:12`,
  ];
  return parts.filter(Boolean).join(', ');
}
