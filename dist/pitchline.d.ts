export * from './pitchline-web-fdd7ee9ac929d618.js';
export { default } from './pitchline-web-fdd7ee9ac929d618.js';
