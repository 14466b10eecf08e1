export * from './pitchline-web-16dd0cfcf5a8e396.js';
export { default } from './pitchline-web-16dd0cfcf5a8e396.js';
