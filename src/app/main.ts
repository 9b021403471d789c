import { mount } from 'svelte';
import './styles/tokens.css';
import './styles/base.css';
import App from './App.svelte';
import { installDrawingColors } from './styles/drawingColors.ts';

const target = document.getElementById('app');
if (!target) throw new Error('The page has no element with the id app.');
installDrawingColors(document);
mount(App, { target });
