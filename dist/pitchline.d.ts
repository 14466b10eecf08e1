export * from './pitchline-web-a1f8051a98964ab.js';
export { default } from './pitchline-web-a1f8051a98964ab.js';
