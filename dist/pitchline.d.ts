export * from './pitchline-web-de9750be3f9d863d.js';
export { default } from './pitchline-web-de9750be3f9d863d.js';
