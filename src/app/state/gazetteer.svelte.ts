/** Places and counties, fetched when the place is first asked for: they are large and only one page needs them. */
import type * as CountiesModule from '../../catalog/counties.ts';
import type * as NotesModule from '../../catalog/placeNotes.ts';
import type * as PlacesModule from '../../catalog/places.ts';
import type { County } from '../../catalog/counties.ts';
import type { Place } from '../../catalog/places.ts';

type Places = typeof PlacesModule;
type Counties = typeof CountiesModule;
type Notes = typeof NotesModule;

export interface Hit {
  readonly key: string;
  readonly name: string;
  /** `weather place, zone 6A`. */
  readonly what: string;
  /** What choosing it answers. */
  readonly answers: Readonly<
    Record<'place.id' | 'place.name' | 'place.countyFips' | 'place.zone', string | undefined>
  >;
}

const PLACES_SHOWN = 6;
const COUNTIES_SHOWN = 6;

export class Gazetteer {
  #places = $state.raw<Places | null>(null);
  #counties = $state.raw<Counties | null>(null);
  #notes = $state.raw<Notes | null>(null);

  get isReady(): boolean {
    return this.#places !== null && this.#counties !== null;
  }

  async load(): Promise<void> {
    const [places, counties, notes] = await Promise.all([
      import('../../catalog/places.ts'),
      import('../../catalog/counties.ts'),
      import('../../catalog/placeNotes.ts'),
    ]);
    this.#places = places;
    this.#counties = counties;
    this.#notes = notes;
  }

  search(query: string): Hit[] {
    const places = this.#places?.searchPlaces(query, PLACES_SHOWN) ?? [];
    const counties = this.#counties?.searchCounties(query, COUNTIES_SHOWN) ?? [];
    return [
      ...places.map((place) => this.#ofPlace(place)),
      ...counties.map((county) => this.#ofCounty(county)),
    ];
  }

  /** What to know about a place of the table before leaning on it. */
  notes(
    id: string | undefined,
  ): readonly { readonly id: string; readonly title: string; readonly text: string }[] {
    const place = id === undefined ? undefined : this.#places?.placeById(id);
    return place ? (this.#notes?.notesOf(place) ?? []) : [];
  }

  /** The note of a county row, such as an island or a zone that differs between the maps. */
  countyNote(fips: string | undefined): string | null {
    return fips === undefined ? null : (this.#counties?.countyByFips(fips)?.note ?? null);
  }

  #ofPlace(place: Place): Hit {
    const name = this.#places?.placeLabel(place) ?? place.name;
    const zone = place.zone ?? place.zoneNumberOnly;
    return {
      key: `place-${place.id}`,
      name,
      what: `place with monthly weather${zone === null ? '' : `, zone ${zone}`}`,
      answers: {
        'place.id': place.id,
        'place.name': name,
        'place.countyFips': undefined,
        'place.zone': undefined,
      },
    };
  }

  #ofCounty(county: County): Hit {
    const name = this.#counties?.countyLabel(county) ?? county.name;
    const older = county.olderZone === county.zone ? '' : ` (${county.olderZone} on the older map)`;
    return {
      key: `county-${county.fips}`,
      name: `${name} (county)`,
      what: `county, zone ${county.zone}${older}`,
      answers: {
        'place.id': undefined,
        'place.name': name,
        'place.countyFips': county.fips,
        'place.zone': undefined,
      },
    };
  }
}
