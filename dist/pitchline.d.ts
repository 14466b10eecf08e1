export * from './pitchline-web-f072509f51334055.js';
export { default } from './pitchline-web-f072509f51334055.js';
