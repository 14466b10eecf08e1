export * from './pitchline-web-386d0f769d84f2dc.js';
export { default } from './pitchline-web-386d0f769d84f2dc.js';
