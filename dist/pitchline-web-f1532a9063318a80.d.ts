/* tslint:disable */
/* eslint-disable */

/**
 * Answers the four questions for a build.
 *
 * `build` is a plain object in the form of a build file: one object for each
 * slot, units in the key names; a slot left out gets typical values. Gives
 * `{ answers, ignored }` in SI, or `{ errors: [{ field, reason }], ignored }`.
 * What is not understood, or has no effect here, is listed in `ignored` by
 * name, in the form of an error, and changes nothing. Never throws.
 */
export function answers(build: any): any;

/**
 * Version of this module, by semantic versioning.
 */
export function version(): string;

export type InitInput = RequestInfo | URL | Response | BufferSource | WebAssembly.Module;

export interface InitOutput {
    readonly memory: WebAssembly.Memory;
    readonly main: (a: number, b: number) => number;
    readonly answers: (a: any) => any;
    readonly version: () => [number, number];
    readonly _ZN12wasm_bindgen7convert8closures1_6invoke17h5c2f74158a8de600E: (a: number, b: number, c: any, d: any) => any;
    readonly _ZN12wasm_bindgen7convert8closures1_6invoke17hd67a926fc4356021E: (a: number, b: number, c: any) => [number, number];
    readonly _ZN12wasm_bindgen7convert8closures1_1_6invoke17h494cbfef6538b47fE: (a: number, b: number, c: any) => void;
    readonly _ZN12wasm_bindgen7convert8closures1_6invoke17h1434b3152910d808E: (a: number, b: number, c: any) => void;
    readonly _ZN12wasm_bindgen7convert8closures1_6invoke17h1434b3152910d808E_5: (a: number, b: number, c: any) => void;
    readonly _ZN12wasm_bindgen7convert8closures1_6invoke17h1a062021a36bf94bE: (a: number, b: number) => void;
    readonly __wbindgen_malloc: (a: number, b: number) => number;
    readonly __wbindgen_realloc: (a: number, b: number, c: number, d: number) => number;
    readonly __wbindgen_exn_store: (a: number) => void;
    readonly __externref_table_alloc: () => number;
    readonly __wbindgen_externrefs: WebAssembly.Table;
    readonly __wbindgen_destroy_closure: (a: number, b: number) => void;
    readonly __wbindgen_free: (a: number, b: number, c: number) => void;
    readonly __externref_table_dealloc: (a: number) => void;
    readonly __wbindgen_start: () => void;
}

export type SyncInitInput = BufferSource | WebAssembly.Module;

/**
 * Instantiates the given `module`, which can either be bytes or
 * a precompiled `WebAssembly.Module`.
 *
 * @param {{ module: SyncInitInput }} module - Passing `SyncInitInput` directly is deprecated.
 *
 * @returns {InitOutput}
 */
export function initSync(module: { module: SyncInitInput } | SyncInitInput): InitOutput;

/**
 * If `module_or_path` is {RequestInfo} or {URL}, makes a request and
 * for everything else, calls `WebAssembly.instantiate` directly.
 *
 * @param {{ module_or_path: InitInput | Promise<InitInput> }} module_or_path - Passing `InitInput` directly is deprecated.
 *
 * @returns {Promise<InitOutput>}
 */
export default function __wbg_init (module_or_path?: { module_or_path: InitInput | Promise<InitInput> } | InitInput | Promise<InitInput>): Promise<InitOutput>;
