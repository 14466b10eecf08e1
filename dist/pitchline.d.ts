export * from './pitchline-web-f6c4a21f689f0e25.js';
export { default } from './pitchline-web-f6c4a21f689f0e25.js';
