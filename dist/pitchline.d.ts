export * from './pitchline-web-a9fb0f62e037d3e2.js';
export { default } from './pitchline-web-a9fb0f62e037d3e2.js';
