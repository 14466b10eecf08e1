export * from './pitchline-web-f1532a9063318a80.js';
export { default } from './pitchline-web-f1532a9063318a80.js';
