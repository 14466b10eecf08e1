export * from './pitchline-web-7dee8335af8920a9.js';
export { default } from './pitchline-web-7dee8335af8920a9.js';
