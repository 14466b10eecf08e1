export * from './pitchline-web-daa7df7773911af5.js';
export { default } from './pitchline-web-daa7df7773911af5.js';
