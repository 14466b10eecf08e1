export * from './pitchline-web-ee303a17d57b269d.js';
export { default } from './pitchline-web-ee303a17d57b269d.js';
