/** The help figures by the name that a question's front matter gives. */
import type { Component } from 'svelte';
import Cavity from './Cavity.svelte';
import CladdingLap from './CladdingLap.svelte';
import DeckKinds from './DeckKinds.svelte';
import DeckView from './DeckView.svelte';
import Fascia from './Fascia.svelte';
import FramingKinds from './FramingKinds.svelte';
import Layers from './Layers.svelte';
import Overhang from './Overhang.svelte';
import Pitch from './Pitch.svelte';
import RidgeRise from './RidgeRise.svelte';
import RoofShapes from './RoofShapes.svelte';
import Tails from './Tails.svelte';
import Valley from './Valley.svelte';
import VentGap from './VentGap.svelte';

export const figures: Readonly<Record<string, Component>> = {
  cavity: Cavity,
  'cladding-lap': CladdingLap,
  'deck-kinds': DeckKinds,
  'deck-view': DeckView,
  fascia: Fascia,
  'framing-kinds': FramingKinds,
  layers: Layers,
  overhang: Overhang,
  pitch: Pitch,
  'ridge-rise': RidgeRise,
  'roof-shapes': RoofShapes,
  tails: Tails,
  valley: Valley,
  'vent-gap': VentGap,
};

/** Drawings that belong to one field, beside that of the whole question. */
const byField: Readonly<Record<string, Component>> = {
  'roof.shape': RoofShapes,
  'framing.deckSeenFromBelow': DeckView,
  'overhang.eave_m': Overhang,
  'profile.ridgeRiseLimit_m': RidgeRise,
};

export const figuresOfFields = (paths: readonly string[]): readonly Component[] =>
  paths.flatMap((path) => byField[path] ?? []);
